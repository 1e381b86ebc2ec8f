"""Cleaning: baths and soaks held against what the part can take, the flush mix, the rinse, and the drying clock."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.common import PARTS
from pentools.record.stages.treatment.baths import bath_findings, drying_of, running_soaks
from pentools.record.stages.treatment.cleaning_kinds import BATH, DRYING, FLUSH_MIX, RINSE, SOAK_ENDED, SOAK_STARTED

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["CLEAN"]


def _state(job: Job) -> StageState:
    if not job.record.live("clean"):
        return StageState("not begun")
    running = running_soaks(job)
    if running:
        count = "a soak is" if len(running) == 1 else f"{len(running)} soaks are"
        return StageState("open", f"{count} running")
    drying = [dry for dry in drying_of(job) if not dry.over]
    return StageState("open", drying[-1].sentence) if drying else StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("clean"):
        return ()
    found = [f.under("Cleaning") for f in bath_findings(job) if f.level in ("warning", "stop")]
    if running_soaks(job):
        found.insert(0, Finding("warning", "treatment.soak-running").under("Cleaning"))
    labels = dict(PARTS)
    spreads = {logged.values.part: logged.values.wets for logged in job.log(RINSE)}
    found += [
        Finding("warning", "treatment.not-wetting", part=labels[part]).under("Cleaning")
        for part, wets in spreads.items()
        if wets is False and part is not None
    ]
    return tuple(found)


CLEAN = Stage(
    "clean",
    "Cleaning",
    "Which water and solvents each part can take, how long it was in them, and when it is dry again.",
    (BATH, SOAK_STARTED, SOAK_ENDED, FLUSH_MIX, RINSE, DRYING),
    panel="pentools.panels.stages.treatment.cleaning:CleanPanel",
    section="pentools.writeup.sections.treatment.cleaning:section",
    state=_state,
    checks=_checks,
)
