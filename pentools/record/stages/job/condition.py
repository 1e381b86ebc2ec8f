"""Condition: part by part, what is seen, what it may mean, how serious it is."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.intake_kinds import PART_CONDITION
from pentools.record.view import once_a_state

__all__ = ["CONDITION", "worst_by_part"]


@once_a_state
def worst_by_part(job: Job) -> Mapping[str, int]:
    """The gravest severity (0 to 4) noted for each part; an entry without a part or a severity says nothing of it."""
    worst: dict[str, int] = {}
    for logged in job.log(PART_CONDITION):
        part, severity = logged.values.part, logged.values.severity
        if part is not None and severity is not None:
            worst[part] = max(int(severity), worst.get(part, 0))
    return MappingProxyType(worst)


def _state(job: Job) -> StageState:
    if not job.log(PART_CONDITION):
        return StageState("not begun")
    looked_at = {logged.values.part for logged in job.log(PART_CONDITION)} - {"whole", None}
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
