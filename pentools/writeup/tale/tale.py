"""The story of a job for everybody: title, pictures, chapters with what carries them, a few facts, the methods."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.release import ending
from pentools.writeup.blocks import Audience, Notice, Photos
from pentools.writeup.closing import pen_title
from pentools.writeup.forms import held_back
from pentools.writeup.outputs import PublishedOutput, published_output
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.job.pictures import before_and_after, pictures_of
from pentools.writeup.tale.carriers import Carried, Figure, carried, chapter_title, rest_of_pictures, weight_of
from pentools.writeup.tale.chapters import Chapter, Output, Words, outline
from pentools.writeup.tale.facts import facts, method_sentences
from pentools.writeup.words import sentence

if TYPE_CHECKING:
    from collections.abc import Iterator

    from markdown_it.token import Token

    from pentools.record.job import Job

__all__ = ["EVERYBODY", "FACTS_TITLE", "METHODS_TITLE", "Heading", "Sentence", "Tale", "TalePart", "tale_of"]

EVERYBODY: Audience = "everybody"
FACTS_TITLE = "In a few facts"
METHODS_TITLE = "How it was measured, and how sure it is"


@dataclass(frozen=True, slots=True)
class Heading:
    """The heading of a chapter for which the restorer wrote none."""

    text: str


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence from the record: under a figure, or where there is none."""

    text: str


TalePart = Words | Heading | Sentence | Figure | PublishedOutput
"""What a chapter is made of."""


@dataclass(frozen=True, slots=True)
class Tale:
    """The story as every form for everybody tells it.

    Parameters
    ----------
    title : tuple of Token
        The restorer's own title; empty where there is none.
    pen : str
        The pen in a few words; the title where the restorer gave none.
    notices : tuple of Notice
        That consent is missing, that the work is not finished.
    pair : Photos or None
        Before and after.
    lead : str
        The restorer's summary, where there is no story to lead.
    chapters : tuple of tuple of TalePart
        The story with what carries it.
    facts : tuple of (label, value)
        What neither figures nor sentences have told.
    methods : tuple of str
        How the figures were reached; the cautions.
    """

    title: tuple[Token, ...]
    pen: str
    notices: tuple[Notice, ...]
    pair: Photos | None
    lead: str
    chapters: tuple[tuple[TalePart, ...], ...]
    facts: tuple[tuple[str, str], ...]
    methods: tuple[str, ...]


def tale_of(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False, top: int = 2) -> Tale:
    """Gather the story of a job, of what everybody may see alone.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content; without one every stage is told by its figure and sentence.
    draft : bool
        Whether it may be made although consent is not recorded; it says so at its head.
    top : int
        Level of a chapter's heading, 2 to 5.

    Returns
    -------
    Tale
        Each picture and each fact once.
    """
    plan = outline(notebook, EVERYBODY, PhotoBook(job, EVERYBODY), top=top)
    in_words = {picture.file for chapter in plan.chapters for picture in chapter.pictures}
    pair = _pair(job, in_words)
    used = in_words | {photo.file for photo in (pair.photos if pair else ())}
    # where the story has a place for the pictures, no other chapter takes one of them
    placed = any("pictures" in chapter.stages for chapter in plan.chapters)
    kept = {photo.file for photo in rest_of_pictures(job, EVERYBODY, used)} if placed else set()
    kept -= {p.file for chapter in plan.chapters for key in chapter.stages for p in pictures_of(job, key, EVERYBODY)}
    used |= kept
    has_story = any(chapter.words for chapter in plan.chapters)
    told: set[str] = set()
    chapters = []
    for chapter in plan.chapters:
        lead_told = not has_story and chapter.stages == ("release",)  # the summary stands at the head
        if "pictures" in chapter.stages:
            used -= kept
        parts = () if lead_told else tuple(_parts(job, chapter, used, told))
        if parts:
            chapters.append(parts)
    return Tale(
        plan.title,
        pen_title(job),
        _notices(job, draft),
        pair,
        "" if has_story else (job.newest(RESULT).summary or ""),
        tuple(chapters),
        facts(job, told),
        method_sentences(job),
    )


def _parts(job: Job, chapter: Chapter, used: set[str], told: set[str]) -> Iterator[TalePart]:
    """A chapter's parts in order; what carries it stands where its stage was brought up."""
    key, found = _what_carries(job, chapter, used)
    shown = _shown(found, bool(chapter.words))
    if isinstance(found.figure, Photos):
        used.update(photo.file for photo in found.figure.photos)
    if shown:
        told.update(found.tells)
        if not chapter.words:
            yield Heading(chapter_title(key))
    for part in chapter.parts:
        if isinstance(part, Words):
            yield part
        elif isinstance(part, Output):
            output = published_output(part.output, PhotoBook(job, EVERYBODY))
            yield from () if output is None else (output,)
        elif part.key == key:
            yield from shown


def _shown(found: Carried, in_words: bool) -> tuple[TalePart, ...]:
    """The figure and the sentence under it; what the restorer's own words tell is not told again."""
    said = found.sentence if in_words else found.alone or found.sentence
    return (*([found.figure] if found.figure is not None else []), *([Sentence(said)] if said else []))


def _what_carries(job: Job, chapter: Chapter, used: Set[str]) -> tuple[str, Carried]:
    """The stage that carries a chapter, with what it gives: the weightiest with a figure, else the first with words."""
    own_figure = bool(chapter.pictures) or any(isinstance(part, Output) for part in chapter.parts)
    spoken: tuple[str, Carried] | None = None
    for key in sorted(chapter.stages, key=weight_of, reverse=True):
        found = carried(job, key, EVERYBODY, used)
        if own_figure and key != "pictures":
            # the restorer's own figure carries the chapter
            found = Carried(None, found.sentence, found.alone, found.tells if found.sentence else frozenset())
        if found.figure is not None:
            return key, found
        if spoken is None and _shown(found, bool(chapter.words)):
            spoken = key, found
    return spoken or ("", Carried())


def _pair(job: Job, placed: set[str]) -> Photos | None:
    """Before and after, side by side; what the restorer placed in the story stands there alone."""
    blocks = before_and_after(job, EVERYBODY).blocks
    book = PhotoBook(job, EVERYBODY)
    for block in blocks[:1]:
        if isinstance(block, Photos):
            seen = tuple(p for p in block.photos if p.file not in placed and book.embed(p.file) is not None)
            return Photos(seen) if seen else None
    return None


def _notices(job: Job, draft: bool) -> tuple[Notice, ...]:
    found = []
    reason = held_back(job) if draft else ""
    if reason:
        found.append(Notice(f"Not for publication. {sentence(reason)}", "Draft"))
    if ending(job) is None:
        found.append(Notice("This job is not finished.", "Unfinished"))
    return tuple(found)
