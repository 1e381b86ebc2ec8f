"""The nib: looked at under the loupe, set and smoothed only with the owner's yes, and tried on paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.nib.fit import fit_findings, room_now, setting_findings
from pentools.record.stages.nib.kinds import (
    ADJUST,
    FEED_SETTING,
    FIT,
    FLEX_TEST,
    FLOW_TEST,
    LINES,
    LOUPE,
    SMOOTHED,
    SMOOTHING_PLAN,
    START,
    WRITING,
)
from pentools.record.stages.nib.paper import paper_findings
from pentools.record.stages.nib.tip import loupe, loupe_findings, smoothing_findings

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["CAUTIONS", "NIB", "nib_findings", "worked_on"]

CAUTIONS = (
    "Nearly boiling water scalds: tongs, a deep vessel, nothing flammable near. Dry warmth by a flame is never right.",
    "A nib under load can slip and a tine fly: eyes protected, fingers out of the line of the slit.",
    "Dust and slurry of old rubber feeds: gloves, wipe it up damp. Follow local codes; ask a licensed professional.",
)
_WORK = (ADJUST, SMOOTHED, FEED_SETTING)


def worked_on(job: Job) -> bool:
    """Whether anything was done to nib or feed."""
    return any(job.log(kind) for kind in _WORK)


def nib_findings(job: Job) -> tuple[Finding, ...]:
    """What is odd or missing about the nib: under the loupe, at the tip, in the cap, on paper.

    Returns
    -------
    tuple of Finding
        Gravest first.
    """
    found = [
        f.under("Nib")
        for f in (
            *loupe_findings(job),
            *smoothing_findings(job),
            *fit_findings(job),
            *setting_findings(job),
            *paper_findings(job),
        )
        if f.level in ("warning", "stop")
    ]
    if job.log(SMOOTHED) and loupe(job) is None:
        found.append(Finding("warning", "nib.align-first:look").under("Nib"))
    if _written_since(job) is False:
        found.append(Finding("note", "nib.not-written").under("Nib"))
    return gravest_first(found)


def _written_since(job: Job) -> bool | None:
    """Whether something was written with it after the last work on it; None where nothing was done to it."""
    last = max((job.line_of(logged.entry) for kind in _WORK for logged in job.log(kind)), default=None)
    if last is None:
        return None
    return any(job.line_of(logged.entry) > last for logged in job.log(WRITING) if logged.values.when == "after")


def _state(job: Job) -> StageState:
    if not any(job.log(kind) for kind in NIB.kinds):
        return StageState("not begun")
    room = room_now(job)
    if room is not None and not room.may_be_capped:
        return StageState("open", "the nib does not stay clear of the inner cap")
    since = _written_since(job)
    if since is False:
        return StageState("open", "worked on, and not written with since")
    if since is None and not job.log(WRITING):
        return StageState("open", "nothing is written with it yet")
    return StageState("done")


NIB = Stage(
    "nib",
    "The nib",
    "Under the loupe first; set and smoothed only with the owner's yes; then what it writes, on what, and how sure that is.",
    (LOUPE, FIT, ADJUST, SMOOTHING_PLAN, SMOOTHED, FEED_SETTING, WRITING, LINES, START, FLOW_TEST, FLEX_TEST),
    panel="pentools.panels.stages.nib.nib:NibPanel",
    section="pentools.writeup.sections.nib.nib:section",
    state=_state,
    checks=nib_findings,
    cautions=CAUTIONS,
)
