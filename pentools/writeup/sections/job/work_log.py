"""The work log on a page: what was done and how long it took, what went in and came out, what was done otherwise."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from pentools.numbers import capital
from pentools.record.stages.job.work_kinds import ACTIVITIES, DEPARTURE, MATERIAL, WORK
from pentools.record.stages.job.work_log import minutes_by_activity, timed_spells
from pentools.writeup.blocks import Audience, Block, FigureBlock, Lead, Paragraph, Section, Table
from pentools.writeup.drawn import minutes_chart
from pentools.writeup.sections.generic import kind_table, releases_of
from pentools.writeup.words import date_in_words, minutes_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["departures", "materials", "section", "time_in_words"]


def time_in_words(job: Job) -> str:
    """How long the work took and what took longest, as one sentence; empty where no time was noted."""
    minutes = minutes_by_activity(job)
    if not minutes:
        return ""
    total = minutes_in_words(sum(minutes.values()))
    longest = max(minutes, key=lambda key: minutes[key])
    if len(minutes) == 1:
        return f"The work took {total}, all of it {_doing(longest)}."
    return f"The work took {total}; the largest share of it, {minutes_in_words(minutes[longest])}, went into {_doing(longest)}."


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was done and how long it took.

    Parameters
    ----------
    stage : Stage
        The work log.
    audience : {"owner", "everybody"}
        Who will see the page; dates and who did the work are for the owner, whose page has materials and
        departures at its foot.

    Returns
    -------
    Section
        No blocks where nothing was noted.
    """
    blocks: list[Block] = []
    words = time_in_words(job)
    if words:
        blocks.append(Lead(words))
    rows = _rows(job, audience)
    if rows:
        head: tuple[str, ...] = ("Activity", "Time", "What was done")
        head = head if audience == "everybody" else ("Date", *head, "By")
        if audience == "owner" and all(not row[-1] for row in rows):
            head, rows = head[:-1], [row[:-1] for row in rows]
        blocks.append(Table("The work, step by step", head, tuple(rows), numeric=(2,) if audience == "owner" else (1,)))
    chart = minutes_chart(job)
    if chart is not None:
        blocks.append(FigureBlock(chart))
    if audience == "everybody":
        blocks += materials(job, audience).blocks
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "What was done", tuple(blocks))


def materials(job: Job, audience: Audience) -> Section:
    """Parts and materials added and removed.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page; lots and cost are for the owner.

    Returns
    -------
    Section
        No blocks where none was noted.
    """
    table = kind_table(job, MATERIAL, audience, caption="Added, removed, given back")
    return Section("materials", "Materials added and removed", tuple(table))


def departures(job: Job, audience: Audience) -> Section:
    """Where the work departed from what was agreed, and when the owner agreed to that.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page; nothing of it is for publication.

    Returns
    -------
    Section
        For the owner a plain sentence where there was none; no blocks for "everybody".
    """
    found = kind_table(job, DEPARTURE, audience, caption="Done otherwise than agreed")
    if not found and audience == "owner":
        found = [Paragraph("None is recorded.")]
    return Section("departures", "Departures from what was agreed", tuple(found))


def _rows(job: Job, audience: Audience) -> list[tuple[str, ...]]:
    labels = dict(ACTIVITIES)
    found: list[tuple[dt.datetime, tuple[str, ...]]] = []
    for logged in job.log(WORK):
        work, begun = logged.values, logged.entry.time
        time = "not measured" if work.minutes is None else minutes_in_words(work.minutes.value)
        cells = (capital(labels.get(work.activity or "", "–")), time, work.done or "–")
        found.append((begun, (date_in_words(begun), *cells, work.by or "")))
    for spell in timed_spells(job):
        cells = (
            capital(labels.get(spell.activity, spell.activity)),
            minutes_in_words(spell.minutes),
            spell.done or "–",
        )
        found.append((spell.begun, (date_in_words(spell.begun), *cells, "")))
    found.sort(key=lambda pair: pair[0])
    return [row if audience == "owner" else row[1:4] for _, row in found]


def _doing(activity: str) -> str:
    return {"seal": "seals and sac", "nib": "nib and feed", "finish": "the finish", "other": "other things"}.get(
        activity, dict(ACTIVITIES).get(activity, activity)
    )
