"""The letter put together: title, pictures, the restorer's summary and the rows; then the story; then what was agreed."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import OWNER
from pentools.record.view import SPOILT
from pentools.writeup.blocks import Photo, Photos
from pentools.writeup.forms import PAGE_FORMS, Files
from pentools.writeup.letter.after import care_row, contact_row, price_row
from pentools.writeup.letter.agreed import agreed_table
from pentools.writeup.letter.chapters import chapters
from pentools.writeup.letter.now import now_row
from pentools.writeup.letter.row import Row
from pentools.writeup.letter.title import letter_title, status_line
from pentools.writeup.letter.work import done_row, left_row, proposed_row, why_row, wrong_row
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.job.pictures import before_and_after
from pentools.writeup.template import for_css, named, render, styles
from pentools.writeup.words import date_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["first_rows", "letter_files"]

PICTURE_PX = 1100
"""The long side of a picture [px]: 80 mm at 350 to the inch."""

_ROWS: tuple[Callable[[Job], Row | None], ...] = (
    now_row, wrong_row, why_row, proposed_row, done_row, left_row, price_row, care_row, contact_row,
)  # fmt: skip


def letter_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - the owner's
    """The letter's one file.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content.
    draft : bool
        Not used: the owner's forms need no consent.

    Returns
    -------
    mapping
        ``client.html`` and its content.
    """
    book, pair = PhotoBook(job, "owner"), _pair(job)
    result = job.newest(RESULT)
    moments = [entry.time for entry in job.record.entries]
    text = render(
        job,
        "letter/letter.html.j2",
        title=letter_title(job),
        status=status_line(job),
        unfinished=_unfinished(job),
        date=date_in_words(result.released_on or (max(moments).date() if moments else None)),
        owner=job.newest(OWNER).owner or "",
        job_name=named(job),
        running=for_css(f"Job {job.name}"),
        style=styles("letter/letter.css"),
        pair=pair,
        summary=result.summary or "",
        rows=first_rows(job),
        chapters=chapters(job, notebook, frozenset(photo.file for photo in pair)),
        agreed=_if_whole(agreed_table, job),
        record=PAGE_FORMS["record"].file,
        picture=lambda photo: book.shown(photo, PICTURE_PX),
    )
    return {PAGE_FORMS["letter"].file: text}


def first_rows(job: Job) -> tuple[Row, ...]:
    """The rows of the first page; one whose entries were spoilt is left to the record, which says so.

    Returns
    -------
    tuple of Row
        Only those that have something to say.
    """
    return tuple(row for make in _ROWS if (row := _if_whole(make, job)) is not None)


def _if_whole(make: Callable[[Job], Any], job: Job) -> Any:
    try:
        return make(job)
    except SPOILT:
        return None


def _pair(job: Job) -> tuple[Photo, ...]:
    """The first view before and after; a picture that is not there is left out."""
    blocks = before_and_after(job, "owner").blocks
    book = PhotoBook(job, "owner")
    shown = blocks[0].photos if blocks and isinstance(blocks[0], Photos) else ()
    return tuple(photo for photo in shown if book.embed(photo.file, PICTURE_PX) is not None)


def _unfinished(job: Job) -> str:
    if job.newest(RESULT).ending is not None:
        return ""
    moments = [entry.time for entry in job.record.entries]
    state = f"It shows the state of {date_in_words(max(moments))}." if moments else "Nothing has been entered yet."
    return f"This job is not finished. {state}"
