"""Pictures: which photos show the pen before, during and after, and what each one shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.ending_kinds import PICTURE

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["PICTURES"]


def _state(job: Job) -> StageState:
    moments = {str(values["moment"]) for _, values in job.log("pictures", "picture")}
    if not moments:
        return StageState("not begun")
    missing = [moment for moment in ("before", "after") if moment not in moments]
    return StageState("open", f"none {missing[0]} the work") if missing else StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    found, moments = [], set()
    for _, values in job.log("pictures", "picture"):
        moments.add(values["moment"])
        if not (job.folder / "photos" / str(values["photo"])).is_file():
            found.append(Finding("warning", "job.photo-missing", photo=str(values["photo"])))
    for moment in ("before", "after"):
        if moment not in moments:
            found.append(Finding("note", f"job.no-{moment}"))
    return tuple(found)


PICTURES = Stage(
    "pictures",
    "Pictures",
    "Which pictures show the pen before, during and after.",
    (PICTURE,),
    panel="pentools.panels.stages.job.pictures:PicturesPanel",
    section="pentools.writeup.sections.job.pictures:section",
    state=_state,
    checks=_checks,
)
