"""Limits: what could not be mended, why, and what was done instead."""

from __future__ import annotations

from pentools.calc.base.findings import Finding
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.ending_kinds import LIMIT, NOTHING_LEFT
from pentools.record.stages.job.makeshifts import makeshifts_of

__all__ = ["LIMITS", "limits_written"]


def limits_written(job: Job) -> bool:
    """Whether the limits are written down, or it is stated that there are none."""
    return bool(job.log(LIMIT)) or job.newest(NOTHING_LEFT).nothing_left is True


def _state(job: Job) -> StageState:
    return StageState("done") if limits_written(job) else StageState("not begun")


def _checks(job: Job) -> tuple[Finding, ...]:
    if job.newest(NOTHING_LEFT).nothing_left is not True:
        return ()
    for_now = [one.where for one in makeshifts_of(job) if not one.limit]
    found = [Finding("warning", "job.limits-contradict")] if job.log(LIMIT) else []
    return (*found, *([Finding("warning", "job.makeshift-left", parts=for_now)] if for_now else []))


LIMITS = Stage(
    "limits",
    "What was left alone, and why",
    "What could not be mended, the reason, and what was done instead.",
    (LIMIT, NOTHING_LEFT),
    section="pentools.writeup.sections.job.limits:section",
    state=_state,
    checks=_checks,
)
