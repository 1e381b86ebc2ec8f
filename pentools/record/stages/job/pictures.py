"""Pictures: which photos show the pen before, during and after, and what each one shows."""

from __future__ import annotations

from pentools.calc.base.findings import Finding
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.layout import has_picture
from pentools.record.stages.job.ending_kinds import PICTURE

__all__ = ["PICTURES"]


def _state(job: Job) -> StageState:
    moments = {logged.values.moment for logged in job.log(PICTURE)}
    if not moments:
        return StageState("not begun")
    missing = [moment for moment in ("before", "after") if moment not in moments]
    return StageState("open", f"none {missing[0]} the work") if missing else StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    shown = [logged.values for logged in job.log(PICTURE)]
    found = [
        Finding("warning", "job.photo-missing", photo=picture.photo)
        for picture in shown
        if picture.photo is not None and not has_picture(job.folder, picture.photo)
    ]
    moments = {picture.moment for picture in shown}
    found += [Finding("note", f"job.no-{moment}") for moment in ("before", "after") if moment not in moments]
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
