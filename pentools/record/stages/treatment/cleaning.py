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
        found.insert(0, Finding("warning", "Cleaning: a soak is still running. Take the part out, and save that.", "soak-running"))  # fmt: skip
    if job.held("soak"):
        found.append(Finding("warning", f"Cleaning: baths are logged although {job.held('soak')}.", "soak-held"))
    unwetted = {str(v["part"]): v["wets"] for _, v in job.log("clean", "rinse")}
    labels = dict(PARTS)
    found += [
        Finding("warning", f"Cleaning: water does not spread on the {labels[part]} yet; rinse it again.", "not-wetting")
        for part, wets in unwetted.items()
        if wets is False
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
