"""The finish: zones and masks, consent, a plan in micrometres, each step as it was done, and what was measured.

What the entries come to is worked out in `plan`, `rates` and `removal`; what is asked stands in `kinds`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.finish.facts import polish_refused
from pentools.record.stages.finish.kinds import CONSENT, MASKS, MEASURE, NIB_PLAN, PLAN, STEP, ZONE, ZONE_PARTS
from pentools.record.stages.finish.plan import Progress, progress_of
from pentools.record.stages.finish.words import finish_findings

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["FINISH", "ZONE_PARTS"]


def _state(job: Job) -> StageState:
    if polish_refused(job) and not job.log(STEP):
        return StageState("done", "not polished, by the owner’s wish")
    if not job.record.live("finish"):
        return StageState("not begun")
    way = _way(progress_of(job))
    if polish_refused(job) and way.word != "done":
        return StageState("done", "no more polishing, by the owner’s wish")
    return way


def _way(progress: Progress | None) -> StageState:
    if progress is None:
        return StageState("open", "nothing is planned yet")
    if not progress.plan.limits.zone_said:
        return StageState("open", "the plan does not say where on the pen")
    if progress.next_step is not None:
        return StageState("open", f"{progress.planned_done} of {len(progress.working.steps)} steps done")
    return StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("finish"):
        return ()
    return tuple(f for f in finish_findings(job) if f.level in ("warning", "stop"))


FINISH = Stage(
    "finish",
    "Finish",
    "From the deepest scratch worth removing to the gloss agreed, in micrometres, with imprint, threads and plating left alone.",
    (ZONE, CONSENT, MASKS, PLAN, STEP, MEASURE, NIB_PLAN),
    panel="pentools.panels.stages.finish.finishing:FinishPanel",
    section="pentools.writeup.sections.finish.finishing:section",
    state=_state,
    checks=_checks,
    hold="polish",
    cautions=(
        "Eyes and lungs: wear eye protection and a mask for fine dust (P2, N95 or better). Keep the dust of celluloid wet and wipe it up wet; keep that of hard rubber and casein collected, with suction or a barely damp cloth, never blown away.",
        "Fire: celluloid and its dust burn fiercely and are lit by friction. No flame, no spark, no hot wheel, no heap of dry dust; keep the wet residue under water in a lidded tin.",
        "Old red, orange and mottled hard rubber may hold pigments of mercury, antimony or lead: gloves, nothing eaten at the bench, the residue handed in as hazardous waste.",
        "Follow local codes; ask a licensed professional.",
    ),
)
