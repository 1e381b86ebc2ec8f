"""The story as the restorer told it, chapter by chapter, each with one figure at most and a sentence under it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from pentools.record.after_work import now_ml
from pentools.record.registry import STAGES
from pentools.writeup.blocks import Audience, Block, Details, FigureBlock, Photo, Photos
from pentools.writeup.drawn import capacity_chart, series_chart
from pentools.writeup.letter.row import sentences
from pentools.writeup.making import section_of
from pentools.writeup.notebook import StageCell, StoryCell, cells_for
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.job.pictures import pictures_of
from pentools.writeup.story import heading_levels, tell

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["Chapter", "chapters"]

# a drawing of these tells the story, the others are for the record; its finding stands in it, so the sentence under it
# says how to read it
_DRAWN = {
    "identify": "Each bar is what one feature of the pen allows; shaded is what is left of them together.",
    "open": "Every warming of the joint, against what its material bears.",
    "seal": "Every size that was tried, in the order it was tried.",
    "fill test": "Each point is one filling; its bar holds the value with about 95\u202f% confidence.",
    "finish": "The outside of the pen, nib to the left, and what was left alone on it.",
}
OWNER: Audience = "owner"
WORDS_A_FIGURE = 280
"""One figure for so many words of story, so that the pictures do not outgrow what they belong to."""


@dataclass(slots=True)
class Chapter:
    """A piece of the story with the stages that stand after it, and what is shown beside it."""

    html: str
    stages: list[str] = field(default_factory=list)
    photo: Photo | None = None
    drawing: Drawing | None = None
    reading: str = ""

    @property
    def caption(self) -> str:
        """The one sentence under the figure; empty where there is none."""
        if self.photo is not None:
            said = sentences(self.photo.said)
            return said[0] if said else ""
        return self.reading


def chapters(job: Job, notebook: Mapping[str, Any] | None, shown: frozenset[str]) -> tuple[Chapter, ...]:
    """The owner's story.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content.
    shown : frozenset of str
        Files of pictures that stand on the page already.

    Returns
    -------
    tuple of Chapter
        In the notebook's order; none where nothing was told.
    """
    found = list(_told(job, notebook))
    seen = set(shown)
    for chapter in found:
        if "<img" not in chapter.html:
            chapter.photo = next((p for p in _photos(job, chapter) if p.file not in seen), None)
            seen |= {chapter.photo.file} if chapter.photo is not None else set()
    words = sum(len(re.sub(r"<[^>]*>", " ", chapter.html).split()) for chapter in found)
    room = max(1, words // WORDS_A_FIGURE) - sum(chapter.photo is not None for chapter in found)
    # the fill test first, for it shows what the work came to
    for chapter in sorted(found, key=lambda chapter: "fill test" not in chapter.stages):
        if room > 0 and chapter.photo is None and "<img" not in chapter.html:
            chapter.drawing, chapter.reading = _drawing(job, chapter)
            room -= chapter.drawing is not None
    return tuple(found)


def _told(job: Job, notebook: Mapping[str, Any] | None) -> Iterator[Chapter]:
    cells = list(cells_for(notebook, "owner"))
    book = PhotoBook(job, "owner")
    tops = sum(heading_levels(cell.text).count(1) for cell in cells if isinstance(cell, StoryCell))
    level, chapter = 1, Chapter("")
    for cell in cells:
        if isinstance(cell, StoryCell):
            story = tell(cell.text, book, lift=1 if tops > 1 else 0, level_before=level, attachments=cell.attachments)
            level = story.last_level or level
            if not story.html:
                continue
            if not story.html.startswith("<h") and chapter.html and not chapter.stages:
                chapter.html += "\n" + story.html
                continue
            if chapter.html:
                yield chapter
            chapter = Chapter(story.html)
        elif isinstance(cell, StageCell) and cell.key in STAGES and chapter.html:
            chapter.stages.append(cell.key)
    if chapter.html:
        yield chapter


def _photos(job: Job, chapter: Chapter) -> Iterator[Photo]:
    folder = PhotoBook(job, "owner")
    for key in chapter.stages:
        yield from (photo for photo in pictures_of(job, key, OWNER) if folder.embed(photo.file) is not None)
        for block in _flat(section_of(job, key, OWNER).blocks):
            if isinstance(block, Photos):
                yield from (photo for photo in block.photos if folder.embed(photo.file) is not None)


def _drawing(job: Job, chapter: Chapter) -> tuple[Drawing | None, str]:
    for key in (key for key in chapter.stages if key in _DRAWN):
        if key == "fill test":
            answer = now_ml(job)
            found = series_chart(job) or (capacity_chart(answer) if answer is not None else None)
        else:
            blocks = _flat(section_of(job, key, OWNER).blocks)
            found = next((block.drawing for block in blocks if isinstance(block, FigureBlock)), None)
        if found is not None:
            return found, _DRAWN[key]
    return None, ""


def _flat(blocks: tuple[Block, ...]) -> Iterator[Block]:
    for block in blocks:
        if isinstance(block, Details):
            yield from _flat(block.blocks)
        else:
            yield block
