"""One job as one HTML page: the notebook gives the order and the story, the record gives every figure."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from pentools.errors import HoldError, InputError
from pentools.record.holds import held
from pentools.record.registry import STAGES
from pentools.record.stages.job.release import ending
from pentools.writeup.blocks import Audience, Notice
from pentools.writeup.closing import key_facts, methods, pen_title, summary
from pentools.writeup.forms import held_back
from pentools.writeup.making import Maker, made, section_of
from pentools.writeup.notebook import PublishedCell, StageCell, StoryCell, cells_for, read_notebook
from pentools.writeup.outputs import published_html
from pentools.writeup.page_parts import Page, Passage, Placed, each_picture_once
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.job.intake import what_it_is
from pentools.writeup.sections.job.pictures import before_and_after
from pentools.writeup.story import heading_levels, tell
from pentools.writeup.strangers import hold_back
from pentools.writeup.template import fill_template
from pentools.writeup.words import date_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["build_page", "render_page"]

_HEAD: tuple[tuple[str, str, Maker], ...] = (
    ("summary", "In short", summary),
    ("before-after", "Before and after", before_and_after),
    ("identity", "What it is", what_it_is),
)
_FOOT: tuple[tuple[str, str, Maker], ...] = (("methods", "Methods and uncertainties", methods),)


def render_page(job: Job, audience: Audience, notebook: Mapping[str, Any] | None = None, *, draft: bool = False) -> str:
    """Make a job's page.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Whom it is for.
    notebook : mapping or None
        The notebook's content; by default the job's own notebook is read.
    draft : bool
        Whether to make the page for publication although consent is not recorded; it says so at its head.

    Returns
    -------
    str
        One self-contained HTML page.

    Raises
    ------
    HoldError
        If the page is for publication, is no draft, and the owner's consent is not recorded, or it would show what is
        the owner's or the bench's own (`strangers.check_public`).
    RecordError
        If the notebook's file is there and cannot be read.
    """
    page = build_page(job, audience, notebook, draft=draft)
    made = fill_template(job, page, PhotoBook(job, audience))
    if audience == "everybody" and not draft:
        hold_back(job, "the page for publication", {"the finished page": made}, notebook)
    return made


def build_page(job: Job, audience: Audience, notebook: Mapping[str, Any] | None = None, *, draft: bool = False) -> Page:
    """Gather what a page shows; see `render_page`.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Whom it is for.
    notebook : mapping or None
        The notebook's content; by default the job's own notebook is read.
    draft : bool
        As for `render_page`.

    Returns
    -------
    Page
        The page's parts, empty sections left out.

    Raises
    ------
    HoldError
        As for `render_page`.
    """
    if audience not in ("owner", "everybody"):
        raise InputError("audience", "owner or everybody", audience)
    if audience == "owner":
        from pentools.writeup.record.page import build_record  # the owner's page is the record

        return build_record(job, notebook)
    kept_back = held_back(job)
    if kept_back and not draft:
        raise HoldError(kept_back)
    content = read_notebook(job.notebook) if notebook is None else notebook
    passages, strays = _passages(job, audience, content)
    notices = [*_unfinished(job, audience), *strays]
    if kept_back:
        notices.insert(0, Notice(f"Not for publication. {kept_back}", "Draft"))
    first = made(job, audience, _HEAD)
    last = made(job, audience, _FOOT)
    told = next((p for p in passages if p.story), None)
    if told is not None:
        # for publication the story leads; what the pen is stands beside its beginning
        identity = Placed(first.pop(), 3 if "<h2>" in told.story else 2)
        told.placed[:0] = [identity] if identity.section.blocks else []
    first, passages, last = each_picture_once(first, passages, last)
    return Page(
        audience,
        pen_title(job),
        key_facts(job),
        tuple(notices),
        tuple(Placed(s) for s in first if s.blocks),
        tuple(p for p in passages if p.story or p.placed),
        tuple(Placed(s) for s in last if s.blocks),
    )


def _passages(job: Job, audience: Audience, notebook: Mapping[str, Any] | None) -> tuple[list[Passage], list[Notice]]:
    """The story and its stages in the notebook's order, and notices about what could not be placed."""
    cells = list(cells_for(notebook, audience))
    book = PhotoBook(job, audience)
    chapters = sum(heading_levels(cell.text).count(1) for cell in cells if isinstance(cell, StoryCell))
    passages: list[Passage] = [Passage()]
    strays: list[Notice] = []
    seen: set[str] = set()
    level, under = 2, 0
    for cell in cells:
        if isinstance(cell, StoryCell):
            story = tell(
                cell.text, book, lift=1 if chapters > 1 else 0, level_before=level, attachments=cell.attachments
            )
            strays += [Notice(f"A picture was left out: {sentence(reason)}", "Note") for reason in story.left_out]
            level, under = story.last_level or level, story.last_level
            passages.append(Passage(story.html))
        elif isinstance(cell, PublishedCell):
            passages[-1].placed += [html for output in cell.outputs if (html := published_html(output, book))]
        elif cell.key not in STAGES:
            strays += _stray(cell, audience)
        elif cell.key not in seen:
            seen.add(cell.key)
            section = section_of(job, cell.key, audience)
            if section.blocks:
                # the first stage after a piece of story belongs to it; a second one begins afresh
                if any(isinstance(item, Placed) for item in passages[-1].placed):
                    passages.append(Passage())
                    under = 0
                level = 3 if under else 2
                passages[-1].placed.append(Placed(section, level))
    if audience == "owner" or notebook is None:
        # the owner's page is whole even where a cell was taken out of the notebook
        rest = [section_of(job, key, audience) for key in STAGES if key not in seen]
        passages += [Passage(placed=[Placed(section)]) for section in rest if section.blocks]
    return [p for p in passages if p.story or p.placed], strays


def _stray(cell: StageCell, audience: Audience) -> list[Notice]:
    if audience != "owner":
        return []
    known = ", ".join(STAGES)
    return [
        Notice(
            f"The notebook asks for a stage “{cell.key}”, which this version does not know. It knows: {known}. Nothing of it is shown here."
        )
    ]


def _unfinished(job: Job, audience: Audience) -> list[Notice]:
    if ending(job) is not None:
        return []
    moments = [entry.time for entry in job.record.entries]
    state = f" It shows the state of {date_in_words(max(moments))}." if moments else " Nothing has been entered yet."
    why = held(job, "release") if audience == "owner" else ""
    still = f" Before the pen can be released: {sentence(why)}" if why else ""
    return [Notice(f"This job is not finished.{state if audience == 'owner' else ''}{still}", "Unfinished")]
