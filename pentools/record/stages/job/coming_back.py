"""A pen that was here before: which job it goes on from, and whether what failed is covered."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.intake_kinds import ARRIVAL

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["continued_on", "covered_by_date", "return_findings", "return_words"]


def continued_on(job: Job) -> str:
    """The name of the job that this one goes on from; empty where it goes on from none."""
    return job.newest(RETURN).older or ""


def covered_by_date(job: Job) -> bool | None:
    """Whether the pen came back within what was promised; None where no day of the two is on record."""
    until, came = job.newest(RETURN).promised_until, job.newest(ARRIVAL).arrived_on
    return None if until is None or came is None else came <= until


def return_words(job: Job) -> str:
    """What it comes back for and whether that is covered, in a sentence or two; empty where it goes on from no job."""
    back = job.newest(RETURN)
    if back.older is None:
        return ""
    until = f" It was answered for until {_day(back.promised_until)}." if back.promised_until else ""
    in_time = covered_by_date(job)
    came = "" if in_time is None else " It came back in time." if in_time else " It came back after that."
    return f"It was here as {back.older}.{until}{came}"


def return_findings(job: Job) -> tuple[Finding, ...]:
    """What is missing or odd about a pen that comes back."""
    back = job.newest(RETURN)
    if back.older is None:
        return ()
    found = []
    if back.failed is not None and back.part is None:
        found.append(Finding("note", "job.return-part"))
    if back.covered is None and back.failed is not None:
        found.append(Finding("note", "job.return-covered"))
    in_time = covered_by_date(job)
    if back.covered is False and in_time is True and back.cause in ("part", "way"):
        found.append(Finding("note", "job.return-in-time", until=back.promised_until))
    if back.older == job.name:
        found.append(Finding("warning", "job.return-itself"))
    return tuple(found)


def _day(text: str | None) -> str:
    return f"{dt.date.fromisoformat(text):%d %B %Y}".lstrip("0") if text else ""
