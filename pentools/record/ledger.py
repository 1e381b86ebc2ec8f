"""All jobs on the bench as one table, a row a job: what it was, how it ended, how long it took, what it draws."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pentools.record.bench import open_bench_folder
from pentools.record.each import ask_each
from pentools.record.job import Job
from pentools.record.stages.job.ending_kinds import LIMIT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ending
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.weighing.filling import capacity_of
from pentools.record.view import SPOILT

if TYPE_CHECKING:
    import os

    import pandas as pd

__all__ = ["ledger", "ledger_row"]


def ledger_row(job: Job) -> dict[str, Any]:
    """One job in a row.

    Returns
    -------
    dict
        Plain values; None where something was not entered or not measured.
    """
    arrival = job.newest(ARRIVAL)
    try:
        answer = capacity_of(job)
    except SPOILT:
        answer = None  # the weighings contradict each other; `pentools check` says how
    data = answer.data if answer else {}
    minutes = minutes_by_activity(job)
    return {
        "job": job.name,
        "pen": arrival.pen,
        "system": arrival.system,
        "material": arrival.material,
        "arrived_on": arrival.arrived_on,
        "ending": ending(job),
        "hours": round(sum(minutes.values()) / 60, 2) if minutes else None,
        "volume_ml": data.get("volume_ml"),
        "expanded_uncertainty_ml": data.get("expanded_uncertainty_ml"),
        "share_filled": data.get("share_filled"),
        "limits": len(job.log(LIMIT)),
    }


def ledger(bench: str | os.PathLike[str] | None = None) -> pd.DataFrame:
    """All jobs on a bench.

    Parameters
    ----------
    bench : str, path or None
        The bench folder; the usual one by default.

    Returns
    -------
    pandas.DataFrame
        One row a job, in the order of their names; empty for an empty bench. Of a job that cannot be read the name
        alone stands there.
    """
    import pandas as pd

    rows = [row or {"job": name} for name, row in ask_each(open_bench_folder(bench), ledger_row)]
    columns = [
        "job",
        "pen",
        "system",
        "material",
        "arrived_on",
        "ending",
        "hours",
        "volume_ml",
        "expanded_uncertainty_ml",
        "share_filled",
        "limits",
    ]
    table = pd.DataFrame(rows, columns=columns)
    table["arrived_on"] = pd.to_datetime(table["arrived_on"])
    return table
