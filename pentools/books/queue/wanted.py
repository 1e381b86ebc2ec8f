"""The list of parts wanted over all pens: what a job waits for, and what would take the place of a makeshift."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import msgspec

from pentools.books.asked import Question, ask_bench
from pentools.books.queue.standing import parts_waited_for
from pentools.record.bench import open_bench_folder
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.coming_back import continued_on
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.makeshifts import makeshifts_of
from pentools.record.stages.job.release import ending

if TYPE_CHECKING:
    import os

    import pandas as pd

    from pentools.record.bench import Bench
    from pentools.record.job import Job

__all__ = ["parts_wanted", "wanted_in_words", "wanted_on"]

COLUMNS = ("job", "pen", "system", "part", "wanted", "holds_now", "since", "ordered_on", "expected_by", "waits")
_NAMES = dict(PARTS)


class _Row(msgspec.Struct, frozen=True, array_like=True, gc=False):
    part: str | None
    wanted: str | None
    holds_now: str | None
    since: str
    ordered_on: str | None = None
    expected_by: str | None = None
    waits: bool = False


class _Wants(msgspec.Struct, frozen=True, array_like=True, gc=False):
    pen: str | None
    system: str | None
    older: str
    rows: tuple[_Row, ...]


def _wants(job: Job) -> _Wants:
    arrival = job.newest(ARRIVAL)
    rows = [_Row(one.part, one.wanted or None, one.what, one.since) for one in makeshifts_of(job)]
    if ending(job) in (None, "stopped"):  # what will not go on for now may go on once the part is there
        rows += [
            _Row(one.part, one.what, None, one.since, one.ordered_on, one.expected_by, waits=True)
            for one in parts_waited_for(job)
            if one.arrived_on is None
        ]
    return _Wants(arrival.pen, arrival.system, continued_on(job), tuple(rows))


WANTS = Question("wanted", _Wants, _wants)


def parts_wanted(bench: str | os.PathLike[str] | None = None) -> pd.DataFrame:
    """Every part that a job waits for or that would replace a makeshift, over all pens on a bench.

    Parameters
    ----------
    bench : str, path or None
        The bench folder; the usual one by default.

    Returns
    -------
    pandas.DataFrame
        One row a part (job, pen, system, part, wanted, holds_now, since, ordered_on, expected_by, waits), oldest first;
        empty where there is none. `waits` is true where the job waits for it, false where something holds for now. Of a
        pen that came back, the newest job alone; of a job that cannot be read nothing (`pentools check` says why).
    """
    import pandas as pd

    return pd.DataFrame(wanted_on(open_bench_folder(bench)), columns=list(COLUMNS))


def wanted_on(bench: Bench) -> list[dict[str, Any]]:
    """The rows of `parts_wanted`, each by the names of its columns."""
    told = ask_bench(bench, WANTS).answers
    older = {one.older for one in told.values()}
    rows = [
        {"job": job, "pen": one.pen, "system": one.system, **msgspec.structs.asdict(row)}
        for job, one in told.items()
        if job not in older
        for row in one.rows
    ]
    return sorted(rows, key=lambda row: row["since"] or "")


def wanted_in_words(bench: Bench) -> list[str]:
    """The list of parts wanted, a sentence each, and how many they are."""
    lines = [_sentence(row) for row in wanted_on(bench)]
    return [*lines, "1 part wanted." if len(lines) == 1 else f"{len(lines) or 'No'} parts wanted."]


def _sentence(row: dict[str, Any]) -> str:
    if not row["waits"]:
        return f"{row['job']}: {row['part']}: wanted: {row['wanted'] or 'not said'}. Now: {row['holds_now']}, since {row['since']}."
    where = f"{_NAMES.get(row['part'], row['part'])}: " if row["part"] else ""
    ordered = f", ordered on {row['ordered_on']}" if row["ordered_on"] else ", not ordered yet"
    expected = f", expected by {row['expected_by']}" if row["expected_by"] else ""
    return f"{row['job']}: {where}waits for: {row['wanted']}, since {row['since']}{ordered}{expected}."
