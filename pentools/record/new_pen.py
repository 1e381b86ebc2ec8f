"""A new pen on the bench: a name for its job, and its first entry."""

from __future__ import annotations

import datetime as dt
import re
import unicodedata

from pentools.errors import InputError
from pentools.record.bench import MOST_LETTERS, Bench
from pentools.record.job import Job, create_job, jobs_on
from pentools.record.stages.job.intake_kinds import ARRIVAL

__all__ = ["job_name_for", "new_pen"]


def job_name_for(bench: Bench, pen: str, today: dt.date) -> str:
    """A name for a new job: the year, a number that is free, and the pen in plain letters.

    Parameters
    ----------
    pen : str
        The pen in a few words.
    today : date
        The day it is laid out.

    Returns
    -------
    str
        Such as ``2026-014-green-piston-filler``.

    Raises
    ------
    InputError
        If nothing was said of the pen.
    """
    if not pen.strip():
        raise InputError("the pen", "described in a few words", pen, "Type it like: black lever filler, 1920s.")
    plain = unicodedata.normalize("NFKD", pen).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9]+", "-", plain).strip("-") or "pen"
    taken = [int(found[1]) for name in jobs_on(bench) if (found := re.match(rf"{today.year}-(\d+)(?:-|$)", name))]
    start = f"{today.year}-{max(taken, default=0) + 1:03d}-"
    return (start + words)[: MOST_LETTERS // 2].rstrip("-")


def new_pen(bench: Bench, pen: str, today: dt.date) -> Job:
    """Lay out a job for a pen that has arrived, with what was said of it as its first entry.

    Raises
    ------
    InputError, RecordError
        As `job_name_for` and `create_job` do.
    """
    job = create_job(bench, job_name_for(bench, pen, today))
    job.add(ARRIVAL.stage, ARRIVAL.key, {"pen": pen, "arrived_on": today.isoformat()})
    return job
