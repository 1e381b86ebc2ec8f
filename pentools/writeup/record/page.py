"""The record put together: the course of the job stage by stage, the story, the dated log, methods; with its contents."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from pentools.record.holds import held
from pentools.record.registry import STAGES
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.release import ending
from pentools.writeup.blocks import Audience, Notice, Paragraph, Section
from pentools.writeup.closing import full_log, key_facts, methods, pen_title, summary
from pentools.writeup.making import Maker, made, section_of
from pentools.writeup.notebook import PublishedCell, StageCell, StoryCell, cells_for, read_notebook
from pentools.writeup.outputs import published_html
from pentools.writeup.page_parts import Page, Passage, Placed, each_picture_once
from pentools.writeup.photos import PhotoBook
from pentools.writeup.record.reader import for_reader
from pentools.writeup.sections.job.intake import what_it_is
from pentools.writeup.sections.job.pictures import before_and_after
from pentools.writeup.sections.job.release import care, price
from pentools.writeup.sections.job.work_log import departures, materials
from pentools.writeup.story import tell
from pentools.writeup.template import fill_template
from pentools.writeup.words import date_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.writeup.forms import Files

__all__ = ["build_record", "record_files"]

OWNER: Audience = "owner"


def _summary(job: Job, audience: Audience) -> Section:
    """The restorer's own words first; what the record says in four sentences where there are none."""
    own = job.newest(RESULT).summary
    return Section("summary", "In short", (Paragraph(own),)) if own else summary(job, audience)


_HEAD: tuple[tuple[str, str, Maker], ...] = (
    ("summary", "In short", _summary),
    ("before-after", "Before and after", before_and_after),
    ("identity", "What it is", what_it_is),
)
_AFTER: tuple[tuple[str, str, Maker], ...] = (
    ("care", "Care", care),
    ("price", "Price", price),
    ("materials", "Materials added and removed", materials),
    ("departures", "Departures from what was agreed", departures),
)
_FOOT: tuple[tuple[str, str, Maker], ...] = (
    ("methods", "Methods and uncertainties", methods),
    ("log", "The full dated log", full_log),
)


def record_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - the owner's
    """The record's one file.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content.
    draft : bool
        Not used: the owner's forms need no consent.

    Returns
    -------
    mapping
        ``record.html`` and its content.
    """
    return {"record.html": fill_template(job, build_record(job, notebook), PhotoBook(job, OWNER))}


def build_record(job: Job, notebook: Mapping[str, Any] | None = None) -> Page:
    """Gather what the record shows.

    Parameters
    ----------
    notebook : mapping or None
        The notebook's content; by default the job's own notebook is read.

    Returns
    -------
    Page
        Its parts, empty sections left out.
    """
    content = read_notebook(job.notebook) if notebook is None else notebook
    passages, strays = _story(job, content)
    head = made(job, OWNER, _HEAD)
    course = [_without(head[0], section_of(job, key, OWNER)) for key in STAGES]
    first = [for_reader(section) for section in (*head, *course, *made(job, OWNER, _AFTER))]
    last = [for_reader(section) for section in made(job, OWNER, _FOOT)]
    first, passages, last = each_picture_once(first, passages, last)
    return Page(
        OWNER,
        pen_title(job),
        key_facts(job),
        (*_unfinished(job), *strays),
        tuple(Placed(s) for s in first if s.blocks),
        tuple(passages),
        tuple(Placed(s) for s in last if s.blocks),
    )


def _without(said: Section, section: Section) -> Section:
    """The section without what stands at the head of the page already."""
    return replace(section, blocks=tuple(block for block in section.blocks if block not in said.blocks))


def _story(job: Job, notebook: Mapping[str, Any] | None) -> tuple[list[Passage], list[Notice]]:
    """What the restorer told and published, under one heading of the page, and what could not be placed."""
    cells = list(cells_for(notebook, OWNER))
    book = PhotoBook(job, OWNER)
    passages: list[Passage] = []
    strays: list[Notice] = []
    level = 2
    for cell in cells:
        if isinstance(cell, StoryCell):
            story = tell(cell.text, book, lift=2, level_before=level, attachments=cell.attachments)
            strays += [Notice(f"A picture was left out: {sentence(reason)}", "Note") for reason in story.left_out]
            level = story.last_level or level
            if story.html:
                passages.append(Passage(story.html))
        elif isinstance(cell, PublishedCell):
            outputs: list[Placed | str] = [html for o in cell.outputs if (html := published_html(o, book))]
            if outputs:
                passages.append(Passage(placed=outputs))
        else:
            strays += _stray(cell)
    return passages, strays


def _stray(cell: StageCell) -> Iterator[Notice]:
    if cell.key not in STAGES:
        known = ", ".join(STAGES)
        yield Notice(
            f"The notebook asks for a stage “{cell.key}”, which this version does not know. It knows: {known}. Nothing of it is shown here."
        )


def _unfinished(job: Job) -> Iterator[Notice]:
    if ending(job) is not None:
        return
    moments = [entry.time for entry in job.record.entries]
    state = f"It shows the state of {date_in_words(max(moments))}." if moments else "Nothing has been entered yet."
    why = held(job, "release")
    still = f" Before the pen can be released: {sentence(why)}" if why else ""
    yield Notice(f"This job is not finished. {state}{still}", "Unfinished")
