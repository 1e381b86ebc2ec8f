"""Opening: what each part is made of, which heat its joints can take, and in which order it came apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.materials import UNKNOWN
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.common import PARTS
from pentools.record.stages.treatment.facts import all_materials
from pentools.record.stages.treatment.heat import heated_joints, joint_body, joint_heat
from pentools.record.stages.treatment.opening_kinds import (
    BLOCK,
    CAUTION_READ,
    HEAT_PASS,
    JOINT,
    JOINTS,
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

    Returns
    -------
    tuple of Finding
        On materials, on the heatings of each joint, and on the order of work.
    """
    labels = dict(PARTS)
    found = [Finding("warning", "treatment.not-named:part", part=labels[part]) for part, name, _ in all_materials(job) if name == UNKNOWN]  # fmt: skip
    found += [finding for joint in heated_joints(job) for finding in _of_joint(job, joint)]
    order = order_of(job)
    found += order.findings if order is not None else ()
    return gravest_first(found)


def _of_joint(job: Job, joint: str) -> tuple[Finding, ...]:
    heat = joint_heat(job, joint)
    return () if heat is None else heat.findings


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
    warmed = {logged.values.joint for logged in job.log(HEAT_PASS)} - {None}
    unnamed = [label for key, label in JOINTS if key in warmed and joint_body(job, key) == UNKNOWN]
    if unnamed and not job.record.releases("heat"):
        found.insert(0, Finding("warning", "treatment.heat-held:joint", joints=unnamed).under("Opening"))
    if any(logged.values.came_off for logged in job.log(STEP)) and not job.log(TRAY):
        found.append(Finding("note", "treatment.tray").under("Opening"))
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
