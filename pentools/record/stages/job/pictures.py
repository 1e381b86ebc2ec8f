"""Pictures: which photos show the pen before, during and after, what each one shows, and which view still lacks its other."""

from __future__ import annotations

from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.numbers import capital
from pentools.pictures.reading import glance
from pentools.pictures.scale import mm_per_px
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.layout import has_picture
from pentools.record.stages.job.ending_kinds import PICTURE, Picture
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ending
from pentools.record.view import once_a_state

__all__ = ["PICTURES", "USUAL_VIEWS", "ViewRow", "lacking", "moments_of", "scale_of", "shown_by", "views_of"]

USUAL_VIEWS = ("side", "open, parts laid out", "nib from above", "nib from the side", "imprint", "cap and clip", "cap lip", "filler")  # fmt: skip
"""What is usually worth a picture: common practice, no source."""
_WHEN = {"before": "before the work", "during": "during the work", "after": "after the work"}


@dataclass(frozen=True, slots=True)
class ViewRow:
    """One view and its pictures, by moment, in the order they were entered; the view is empty for those without one."""

    view: str
    before: tuple[str, ...] = ()
    during: tuple[str, ...] = ()
    after: tuple[str, ...] = ()


@once_a_state
def views_of(job: Job) -> tuple[ViewRow, ...]:
    """The checklist: every view that was named, in the order it came up, with its pictures."""
    names: dict[str, str] = {}
    found: dict[str, dict[str, list[str]]] = {}
    for logged in job.log(PICTURE):
        picture = logged.values
        view = " ".join((picture.view or "").split())
        names.setdefault(view.casefold(), view)
        moments = found.setdefault(view.casefold(), {})
        if picture.photo is not None and picture.moment is not None:
            moments.setdefault(picture.moment, []).append(picture.photo)
    return tuple(ViewRow(names[key], **{when: tuple(files) for when, files in m.items()}) for key, m in found.items())


@once_a_state
def moments_of(job: Job) -> frozenset[str]:
    """The moments that there is a picture of: keys of `MOMENTS`."""
    return frozenset(logged.values.moment for logged in job.log(PICTURE) if logged.values.moment is not None)


def lacking(job: Job, moment: str) -> tuple[str, ...]:
    """The views that have a picture at the other end of the work and none at this one.

    Parameters
    ----------
    moment : {"before", "after"}
        Which end.

    Returns
    -------
    tuple of str
        Views by name; pictures without a view count for none.
    """
    other = "after" if moment == "before" else "before"
    return tuple(row.view for row in views_of(job) if row.view and getattr(row, other) and not getattr(row, moment))


def shown_by(job: Job, picture: Picture) -> str:
    """What a picture shows: as the restorer said, else in a sentence from its view, its moment and the pen.

    Returns
    -------
    str
        For those who cannot see it; never empty.
    """
    if picture.shows:
        return picture.shows
    view = picture.view or "the pen"
    when = _WHEN.get(picture.moment or "", "")
    pen = job.newest(ARRIVAL).pen or ""
    words = " ".join(part for part in (capital(view), when) if part)
    return f"{words}: {pen}" if pen else words


def scale_of(picture: Picture) -> float | None:
    """The scale of a picture as its file is, upright [mm a pixel]; None where no length in it is known."""
    if picture.known_mm is None or picture.known_px is None:
        return None
    try:
        return mm_per_px(picture.known_mm.value, picture.known_px)
    except InputError:
        return None


def _state(job: Job) -> StageState:
    if not job.log(PICTURE):
        return StageState("not begun")
    missing = [moment for moment in ("before", "after") if moment not in moments_of(job)]
    if missing:
        return StageState("open", f"none {missing[0]} the work")
    lacks = lacking(job, "after")
    return StageState("open", f"not yet after the work: {'; '.join(lacks)}") if lacks else StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    shown = [logged.values for logged in job.log(PICTURE)]
    found: list[Finding] = []
    for file in dict.fromkeys(picture.photo for picture in shown if picture.photo is not None):
        if not has_picture(job.folder, file):
            found.append(Finding("warning", "job.photo-missing", photo=file))
        elif why := glance(job.folder / "photos" / file):
            found.append(Finding("warning", "job.photo-unread", photo=file, why=why))
    found += [Finding("note", f"job.no-{moment}") for moment in ("before", "after") if moment not in moments_of(job)]
    if not any(finding.topic in ("no-before", "no-after") for finding in found):
        found += _unpaired(job)
    return tuple(found)


def _unpaired(job: Job) -> tuple[Finding, ...]:
    """In one line, the views whose other picture is missing; while the work goes on, what comes after it may wait."""
    late = lacking(job, "after") if ending(job) is not None else ()
    early = lacking(job, "before")
    if late and early:
        return (Finding("note", "job.views:both", late=late, early=early),)
    if late:
        return (Finding("note", "job.views:after", views=late),)
    return (Finding("note", "job.views:before", views=early),) if early else ()


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
