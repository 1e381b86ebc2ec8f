"""Limits: what could not be mended, why, and what was done instead."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.fields import Field
from pentools.record.kinds import Kind, Stage, StageState
from pentools.record.stages.common import PARTS, yes_no

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["LIMITS", "limits_written"]

LIMIT = Kind(
    "limit",
    "One thing left",
    (
        Field("part", "Part", "choice", choices=PARTS, required=True, public=True, hint="which part of the pen"),
        Field(
            "left",
            "What could not be mended, or was left alone",
            "long text",
            required=True,
            public=True,
            hint="as the owner will find it",
        ),
        Field(
            "why",
            "Why",
            "long text",
            required=True,
            public=True,
            hint="risk, loss of substance, cost, or the owner's wish",
        ),
        Field("instead", "What was done instead", "long text", public=True, hint="the workaround, or nothing"),
        Field("advice", "Advice for the next repair", "long text", public=True, hint="to whoever opens it next"),
        Field("photo", "Photo", "photo", public=True, hint="a file in photos/"),
    ),
)
NOTHING_LEFT = Kind(
    "nothing left",
    "Nothing was left",
    (yes_no("nothing_left", "Is it true that nothing was left unmended?", "yes, if so", public=True, required=True),),
    log=False,
    help="If there is nothing to admit, say so: an empty page is no statement.",
)


def limits_written(job: Job) -> bool:
    """Whether the limits are written down, or it is stated that there are none."""
    return bool(job.record.live("limits", "limit")) or job.values("limits", "nothing left")["nothing_left"] is True


def _state(job: Job) -> StageState:
    return StageState("done") if limits_written(job) else StageState("not begun")


def _checks(job: Job) -> tuple[Finding, ...]:
    if job.values("limits", "nothing left")["nothing_left"] is True and job.record.live("limits", "limit"):
        return (
            Finding(
                "warning",
                "Limits: things left are listed, and it is also stated that nothing was left. Withdraw one of the two.",
                "limits-contradict",
            ),
        )
    return ()


LIMITS = Stage(
    "limits",
    "What was left alone, and why",
    "What could not be mended, the reason, and what was done instead.",
    (LIMIT, NOTHING_LEFT),
    section="pentools.writeup.sections.job.limits:section",
    state=_state,
    checks=_checks,
)
