"""Condition: part by part, what is seen, what it may mean, how serious it is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.record.kinds import Stage, StageState
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.intake_kinds import PART_CONDITION

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["CONDITION", "worst_by_part"]


def worst_by_part(job: Job) -> dict[str, int]:
    """The gravest severity (0 to 4) noted for each part."""
    worst: dict[str, int] = {}
    for _, values in job.log("condition", "part"):
        part, severity = str(values["part"]), int(str(values["severity"]))
        worst[part] = max(severity, worst.get(part, 0))
    return worst


def _state(job: Job) -> StageState:
    looked_at = {values["part"] for _, values in job.log("condition", "part")} - {"whole"}
    if not job.record.live("condition", "part"):
        return StageState("not begun")
    word = "done" if len(looked_at) == len(PARTS) - 1 else "open"
    return StageState(word, f"{len(looked_at)} of {len(PARTS) - 1} parts looked at")


CONDITION = Stage(
    "condition",
    "Condition",
    "Part by part: what is wrong, how serious it is, and the picture that shows it.",
    (PART_CONDITION,),
    panel="pentools.panels.stages.job.condition:ConditionPanel",
    section="pentools.writeup.sections.job.condition:section",
    state=_state,
)
