"""The contact sheet: every picture that is listed with its words, and half of each where a pair could be aligned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from pentools.numbers import capital, in_words
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.pictures import lacking
from pentools.writeup.blocks import Photo, Photos
from pentools.writeup.forms import PAGE_FORMS, Files
from pentools.writeup.photos import EmbeddedPhoto, PhotoBook, left_out
from pentools.writeup.sections.job.pictures import before_and_after, listed_photos
from pentools.writeup.template import for_css, named, render, styles
from pentools.writeup.words import date_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Frame", "contact_sheet_files", "frames", "halves"]

THUMBNAIL_PX, HALVES_PX = 640, 1100


@dataclass(frozen=True, slots=True)
class Frame:
    """One picture of the sheet: its number, empty for a pair, the picture, the words over it and under it."""

    number: str
    photo: Photo
    picture: EmbeddedPhoto
    head: str
    under: str


def contact_sheet_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - the owner's, from the record
    """The contact sheet's one file, from the record alone."""
    lacks = {moment: lacking(job, moment) for moment in ("before", "after")}
    moments = [entry.time for entry in job.record.entries]
    text = render(
        job,
        "contact/contact.html.j2",
        title="Pictures",
        about=capital(job.newest(ARRIVAL).pen or ""),
        job_name=named(job),
        date=date_in_words(max(moments)) if moments else "",
        running=for_css(f"Job {job.name}"),
        style=styles("papers/paper.css") + styles("contact/contact.css"),
        halves=halves(job),
        frames=frames(job),
        missing=[f"No picture {moment} the work of: {in_words(views)}." for moment, views in lacks.items() if views],
        left_out=left_out(job),
    )
    return {PAGE_FORMS["pictures"].file: text}


def frames(job: Job) -> tuple[Frame, ...]:
    """Every listed picture that can be shown, in the order of the record, each file's newest words once."""
    book = PhotoBook(job, "owner")
    shown = ((photo, book.embed(photo.file, THUMBNAIL_PX)) for photo in listed_photos(job))
    found = [(photo, picture) for photo, picture in shown if picture is not None]
    return tuple(
        Frame(str(number), photo, picture, *_words(photo.caption)) for number, (photo, picture) in enumerate(found, 1)
    )


def halves(job: Job) -> tuple[Frame, ...]:
    """One picture of each pair that could be aligned: half before, half after."""
    book = PhotoBook(job, "owner")
    found = []
    for block in before_and_after(job, "owner").blocks:
        if isinstance(block, Photos) and len(block.photos) == 2 and block.photos[0].beside:
            one, two = block.photos
            photo = replace(
                one, place="halves", alt=f"Half of each, before and after. Before: {one.alt}. After: {two.alt}"
            )
            picture = book.shown(photo, HALVES_PX)
            if picture is not None:
                said = "; ".join(_words(each.caption)[0] for each in (one, two))
                drawn = replace(photo, drawn=one.drawn or two.drawn)
                found.append(Frame("", drawn, picture, "Half of each", sentence(said)))
    return tuple(found)


def _words(caption: str) -> tuple[str, str]:
    head, _, under = caption.partition(": ")
    return head.rstrip("."), under
