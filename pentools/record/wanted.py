"""The list of parts wanted: what would replace the makeshifts of every pen on the bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.record.bench import Bench, open_bench_folder
from pentools.record.each import ask_each
from pentools.record.stages.job.coming_back import continued_on
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.makeshifts import makeshifts_of

if TYPE_CHECKING:
    import os

    import pandas as pd

    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = ["parts_wanted", "wanted_in_words", "wanted_on"]

COLUMNS = ("job", "pen", "system", "part", "wanted", "holds_now", "since")


def parts_wanted(bench: str | os.PathLike[str] | None = None) -> pd.DataFrame:
    """Every part that would replace a makeshift, over all pens on a bench.

    Parameters
    ----------
    bench : str, path or None
        The bench folder; the usual one by default.

    Returns
    -------
    pandas.DataFrame
        One row a makeshift (job, pen, system, part, wanted, holds_now, since), oldest first; empty where there is none.
        Of a pen that came back, the newest job alone; of a job that cannot be read nothing (`pentools check` says why).
    """
    import pandas as pd

    return pd.DataFrame(wanted_on(open_bench_folder(bench)), columns=list(COLUMNS))


def wanted_on(bench: Bench) -> list[dict[str, str | None]]:
    """The rows of `parts_wanted`, each by the names of its columns."""
    found = [told for _, told in ask_each(bench, lambda job: (continued_on(job), _rows(job))) if told is not None]
    older = {name for name, _ in found}
    rows = [row for _, own in found for row in own if row["job"] not in older]
    return sorted(rows, key=lambda row: row["since"] or "")


def wanted_in_words(bench: Bench) -> list[str]:
    """The list of parts wanted, a sentence each, and how many they are."""
    lines = [
        f"{row['job']}: {row['part']}: wanted: {row['wanted'] or 'not said'}. Now: {row['holds_now']}, since {row['since']}."
        for row in wanted_on(bench)
    ]
    return [*lines, "1 part wanted." if len(lines) == 1 else f"{len(lines) or 'No'} parts wanted."]


def _rows(job: Job) -> list[dict[str, str | None]]:
    arrival = job.newest(ARRIVAL)
    return [
        {
            "job": job.name, "pen": arrival.pen, "system": arrival.system, "part": one.part,
            "wanted": one.wanted or None, "holds_now": one.what, "since": one.since,
        }
        for one in makeshifts_of(job)
    ]  # fmt: skip
