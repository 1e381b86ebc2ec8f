"""Release: how the job ended, how to care for the pen, and what to do if something comes up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.ending_kinds import ENDINGS, RESULT

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["ENDINGS", "RELEASE_STAGE", "ending"]


def ending(job: Job) -> str | None:
    """How the job ended (a key of `ENDINGS`); None while it is open."""
    found = job.values("release", "result")["ending"]
    return str(found) if found is not None else None


def _state(job: Job) -> StageState:
    if ending(job) is not None:
        return StageState("done", str(ending(job)))
    reason = job.held("release")
    return StageState("held", reason) if reason else StageState("not begun")


def _checks(job: Job) -> tuple[Finding, ...]:
    end = ending(job)
    if end is None:
        return (Finding("note", "job.open-job"),)
    has_limits = bool(job.record.live("limits", "limit"))
    if end == "done" and has_limits:
        return (Finding("warning", "job.ending-limits"),)
    if end == "done with limits" and not has_limits:
        return (Finding("warning", "job.ending-limits:none-written"),)
    return ()


RELEASE_STAGE = Stage(
    "release",
    "Release",
    "How the job ended, how to care for the pen, and what to watch for.",
    (RESULT,),
    panel="pentools.panels.stages.job.release:ReleasePanel",
    section="pentools.writeup.sections.job.release:section",
    state=_state,
    checks=_checks,
)
