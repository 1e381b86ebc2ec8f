"""Pictures: which photos show the pen before, during and after, and what each one shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.fields import Field
from pentools.record.kinds import Kind, Stage, StageState
from pentools.record.stages.common import yes_no

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["PICTURES"]

PICTURE = Kind(
    "picture",
    "One picture",
    (
        Field("photo", "File", "photo", required=True, public=True, hint="a file in photos/, such as open-before.jpg"),
        Field(
            "moment",
            "When",
            "choice",
            choices=(("before", "before"), ("during", "during the work"), ("after", "after")),
            required=True,
            public=True,
            hint="before, during or after",
        ),
        Field(
            "shows",
            "What it shows",
            required=True,
            public=True,
            hint="one sentence; it is read aloud to those who cannot see it",
        ),
        Field("view", "View", public=True, hint="the same word for the same view before and after, such as side"),
        Field("light_and_scale", "Light and scale", public=True, hint="such as raking light from the left, 10 mm bar"),
        yes_no("drawn", "Is it drawn or simulated?", public=True),
        yes_no("public", "May it be shown to everybody?"),
    ),
    help="Put the files into the job's photos folder. Place, camera and owner data inside them never reach a page.",
)


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
            found.append(Finding("warning", f"Pictures: photos/{values['photo']} is not there.", "photo-missing"))
    for moment in ("before", "after"):
        if moment not in moments:
            found.append(Finding("note", f"Pictures: none is marked as taken {moment} the work.", f"no-{moment}"))
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
