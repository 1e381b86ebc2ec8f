"""Opening: what each part is made of, which heat its joints can take, and in which order it came apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.materials import UNKNOWN
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.common import PARTS
from pentools.record.stages.treatment.facts import all_materials
from pentools.record.stages.treatment.heat import heated_joints, joint_heat
from pentools.record.stages.treatment.opening_kinds import (
    BLOCK,
    CAUTION_READ,
    HEAT_PASS,
    JOINT,
    MATERIAL,
    MET,
    OVERRULE,
    STEP,
    TRAY,
)
from pentools.record.stages.treatment.work import order_of

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["OPEN", "opening_findings"]


def opening_findings(job: Job) -> tuple[Finding, ...]:
    """Everything worth knowing about how a pen is opened, gravest first.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of Finding
        On materials, on the heatings of each joint, and on the order of work.
    """
    found: list[Finding] = []
    labels = dict(PARTS)
    for part, name, _ in all_materials(job):
        if name == UNKNOWN:
            text = f"The material of the {labels[part]} is not named: no heat and no soak for it, and the strictest limits."
            found.append(Finding("warning", text, "not-named"))
    for joint in heated_joints(job):
        heat = joint_heat(job, joint)
        if heat is not None:
            found += heat.findings
    order = order_of(job)
    if order is not None:
        found += order.findings
    return gravest_first(found)


def _state(job: Job) -> StageState:
    if not job.record.live("open"):
        return StageState("not begun")
    order = order_of(job)
    if order is None:
        return StageState("open", "the filling system is not named, so there is no order of work")
    done = sum(step.state == "done" for step in order.steps)
    return StageState("done" if order.next_step is None else "open", f"{done} of {len(order.steps)} steps done")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("open"):
        return ()
    topics = ("out of order", "over-limit", "no-heat", "not-measured")
    found = [
        f.under("Opening", "warning")
        for f in opening_findings(job)
        if f.topic in topics and f.level in ("warning", "stop")
    ]
    if job.record.live("open", "heat pass") and job.held("heat"):
        found.insert(0, Finding("warning", f"Opening: heatings are logged although {job.held('heat')}.", "heat-held"))
    off = [str(item) for _, v in job.log("open", "step") if isinstance(v["came_off"], tuple) for item in v["came_off"]]
    if off and not job.record.live("open", "parts tray"):
        found.append(Finding("note", "Opening: parts came off, and no parts tray is listed.", "tray"))
    return tuple(found)


OPEN = Stage(
    "open",
    "Opening",
    "What it is made of, how warm it may get, and in which order it came apart.",
    (MATERIAL, JOINT, HEAT_PASS, STEP, MET, BLOCK, TRAY, OVERRULE, CAUTION_READ),
    panel="pentools.panels.stages.treatment.opening:OpenPanel",
    section="pentools.writeup.sections.treatment.opening:section",
    state=_state,
    checks=_checks,
)
