"""Parts mended on a page: what was done to each and whether it can be undone, trials, the imprint, what was sent out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.numbers import capital, in_words
from pentools.record.stages.common import PARTS
from pentools.record.stages.repairs.kinds import BACK, IMPRINT, OUT, REPAIR, SPOT
from pentools.record.stages.repairs.repairs import repair_findings
from pentools.record.stages.repairs.work import Mended, holds_for_now, mended
from pentools.tables.source_words import source_words
from pentools.words import CERTAINTY
from pentools.writeup.blocks import Audience, Block, Details, Facts, Findings, Lead, Section, Table
from pentools.writeup.sections.generic import facts_of, kind_facts, kind_table, releases_of
from pentools.writeup.sections.job.pictures import photos_beside
from pentools.writeup.words import date_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["mended_in_words", "section"]

_NAMES = dict(PARTS)
_UNDONE = {"yes": "Can be undone", "partly": "Can be undone in part", "no": "Cannot be undone"}
_SHOWN_ELSEWHERE = {"part", "method", "photo", "for_now"}


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was mended, part by part.

    Parameters
    ----------
    stage : Stage
        The stage of the parts mended.
    audience : {"owner", "everybody"}
        Who will see the page; lots, dates and prices are for the owner, to whom a part was sent for nobody.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, stage.title)
    blocks: list[Block] = []
    if words := mended_in_words(job):
        blocks.append(Lead(words))
    grave = tuple(f for f in repair_findings(job) if f.level in ("warning", "stop"))
    if grave:
        blocks.append(Findings(grave))
    blocks += [_facts(one, audience) for one in mended(job)]
    blocks += kind_table(job, SPOT, audience, without=("photo",), caption="Tried on a hidden place first")
    blocks += kind_facts(job, IMPRINT, audience, without=("photo",), caption="The imprint")
    blocks += kind_table(job, OUT, audience, caption="Sent to another workshop")
    blocks += kind_table(job, BACK, audience, without=("photo",), caption="Back from there")
    blocks += photos_beside(job, audience, ((photo, "") for photo in _photos(job)))
    blocks += _sources(job)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, stage.title, tuple(blocks))


def mended_in_words(job: Job, *, left: bool = True) -> str:
    """What was mended and how, in one sentence; empty where nothing was.

    Parameters
    ----------
    left : bool
        Whether to name what was left on purpose, and what only holds for now, too.
    """
    named = [one for one in mended(job) if left or not (one.row.leaves or holds_for_now(one))]
    done = [f"{_NAMES.get(one.values.part or '', 'part')} ({one.row.method})" for one in named]
    done += [f"{_NAMES.get(logged.values.part or '', 'part')} (by another workshop)" for logged in job.log(BACK)]
    return f"{capital(in_words(dict.fromkeys(done)))}." if done else ""


def _facts(one: Mended, audience: Audience) -> Facts:
    """One part: what was done, with the table's own words on what it can bear."""
    rows = [
        ("What was done", capital(one.row.label)),
        *facts_of(REPAIR, one.values, audience, without=_SHOWN_ELSEWHERE),
    ]
    rows.append((_UNDONE[one.row.reversible], one.row.limit or "–"))
    if one.stands is not None:
        rows.append(("Stands until", f"{date_in_words(one.stands.usual)}, {one.row.until}"))
    if holds_for_now(one):
        rows.append(("For now", "It only holds for now."))
    return Facts(capital(_NAMES.get(one.values.part or "", "a part that is not named")), tuple(rows))


def _photos(job: Job) -> list[str | None]:
    """The pictures of mends, trials, imprint and what came back, in this order."""
    return [
        *(logged.values.photo for logged in job.log(REPAIR)), *(logged.values.photo for logged in job.log(SPOT)),
        *(logged.values.photo for logged in job.log(IMPRINT)), *(logged.values.photo for logged in job.log(BACK)),
    ]  # fmt: skip


def _sources(job: Job) -> list[Block]:
    rows = tuple(
        (
            capital(row.label),
            "; ".join(words.rstrip(".") for words in source_words(row.source, "part_repairs")),
            CERTAINTY[row.certainty],
        )
        for row in dict.fromkeys(one.row for one in mended(job))
    )
    table = Table("Where each way is known from", ("Way", "Source", "How sure"), rows)
    return [Details("Where each way of mending is known from", (table,))] if rows else []
