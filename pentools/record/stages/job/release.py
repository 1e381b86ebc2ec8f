"""Release: how the job ended, how to care for the pen, and what to do if something comes up."""

from __future__ import annotations

import datetime as dt

from pentools.calc.base.findings import Finding
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.ending_kinds import ENDINGS, FOLLOWED_UP, LIMIT, RESULT
from pentools.record.stages.job.makeshifts import makeshifts_of

__all__ = ["ENDINGS", "RELEASE_STAGE", "ended_on", "ending"]


def ending(job: Job) -> str | None:
    """How the job ended (a key of `ENDINGS`); None while it is open."""
    return job.newest(RESULT).ending


def ended_on(job: Job) -> dt.date | None:
    """The day on which the job ended: that of its release, else that of the entry; None while it is open."""
    result = job.newest(RESULT)
    if result.ending is None:
        return None
    return dt.date.fromisoformat(result.released_on) if result.released_on else job.log(RESULT)[-1].entry.time.date()


def _state(job: Job) -> StageState:
    end = ending(job)
    return StageState("not begun") if end is None else StageState("done", end)


def _checks(job: Job) -> tuple[Finding, ...]:
    end, limits = ending(job), bool(job.log(LIMIT) or makeshifts_of(job))
    if end is None:
        return (Finding("note", "job.open-job"),)
    if end == "done" and limits:
        return (Finding("warning", "job.ending-limits:done"),)
    if end == "done with limits" and not limits:
        return (Finding("warning", "job.ending-limits:none"),)
    return ()


RELEASE_STAGE = Stage(
    "release",
    "Release",
    "How the job ended, how to care for the pen, and what to watch for.",
    (RESULT, FOLLOWED_UP),
    panel="pentools.panels.stages.job.release:ReleasePanel",
    section="pentools.writeup.sections.job.release:section",
    state=_state,
    checks=_checks,
    hold="release",
    held_from_start=True,
)
