"""Cleaning on a page: what each part was in, how long against what it can take, and what came out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.numbers import capital, in_words
from pentools.record.stages.common import PARTS
from pentools.record.stages.treatment.baths import BATHS, bath_findings, baths_done, mix_of, soaks_of
from pentools.record.stages.treatment.cleaning_kinds import FLUSH_MIX, SOAK_ENDED
from pentools.record.stages.treatment.facts import cautions_of, limit_for
from pentools.writeup.blocks import Audience, Block, Findings, Lead, Notice, Paragraph, Section, Table
from pentools.writeup.orders import without_orders
from pentools.writeup.sections.generic import kind_facts, kind_table, releases_of
from pentools.writeup.words import date_in_words, minutes_in_words

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["cleaned_in_words", "cleaning_caution", "section"]

_TITLE = "How it was cleaned"
_LABELS, _PARTS = dict(BATHS), dict(PARTS)


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was cleaned, in what, and for how long.

    Parameters
    ----------
    stage : Stage
        The cleaning stage.
    audience : {"owner", "everybody"}
        Who will see the page; dates and notes are for the owner.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, _TITLE)
    blocks: list[Block] = []
    words = cleaned_in_words(job)
    if words:
        blocks.append(Lead(words))
    findings = bath_findings(job)
    if findings:
        blocks.append(Findings(findings))
    blocks += kind_table(job, stage.kind("bath"), audience, caption="Baths")
    blocks += _soaks(job, audience)
    blocks += _limits(job)
    blocks += _mix(job, stage, audience)
    for key, caption in (("rinse", "Rinsed until water spread again"), ("drying", "Drying")):
        blocks += kind_table(job, stage.kind(key), audience, caption=caption)
    caution = cleaning_caution(job)
    blocks += [Notice(caution, "Caution")] if caution else []
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, _TITLE, tuple(blocks))


def cleaned_in_words(job: Job) -> str:
    """What was cleaned in what, and how long at most, as one sentence; empty where nothing was."""
    done = baths_done(job)
    if not done:
        return ""
    media = in_words(dict.fromkeys(_LABELS[bath] for _, bath, _, _ in done))
    parts = in_words(dict.fromkeys(_PARTS[part] for part, _, _, _ in done))
    timed = [minutes for _, _, minutes, _ in done if minutes is not None]
    longest = f", the longest for {minutes_in_words(max(timed))}" if timed else ""
    verdict = "past a limit, as told below" if bath_findings(job) else "none past what the material can take"
    return f"Cleaned in {media}: {parts}. {len(done)} bath{'s' if len(done) > 1 else ''}{longest}; {verdict}."


def _soaks(job: Job, audience: Audience) -> list[Block]:
    rows = []
    for soak in soaks_of(job):
        rows.append(
            (
                *([date_in_words(soak.started)] if audience == "owner" else []),
                _PARTS[soak.part],
                _LABELS[soak.bath],
                soak.strength or "–",
                "still running" if soak.minutes is None else minutes_in_words(soak.minutes),
                "no number on record" if soak.limit_min is None else minutes_in_words(soak.limit_min),
                soak.came_out or "–",
            )
        )
    head: tuple[str, ...] = ("Part", "In what", "Strength", "For", "Limit", "What came out")
    head = ("Date", *head) if audience == "owner" else head
    first = 1 if audience == "owner" else 0
    stray = [
        logged.values.came_out
        for logged in job.log(SOAK_ENDED)
        if logged.values.came_out and logged.values.came_out not in {soak.came_out for soak in soaks_of(job)}
    ]
    blocks: list[Block] = [Table("Soaks, by the clock", head, tuple(rows), numeric=(first + 3, first + 4))] if rows else []  # fmt: skip
    return [*blocks, *(Paragraph(f"What came out: {text}") for text in stray)]


def _limits(job: Job) -> list[Block]:
    """Why each bath was allowed, as one sentence a bath."""
    said = dict.fromkeys(limit_for(job, part, bath).sentence for part, bath, _, _ in baths_done(job))
    return [Table("What the table of limits says of them", ("Material, bath and limit",), tuple((capital(text),) for text in said))] if said else []  # fmt: skip


def _mix(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    blocks: list[Block] = []
    try:
        answer = mix_of(job)
    except InputError as error:
        if audience == "owner":
            blocks.append(Notice(f"The flush mix cannot be worked out: {error}", "To be settled"))
    else:
        if answer is not None:
            blocks += [Paragraph(text)] if (text := without_orders(answer.sentence)) else []
    return [*blocks, *kind_facts(job, stage.kind("flush mix"), audience)]


def cleaning_caution(job: Job) -> str:
    """What to mind with a flush mix; empty where none was used."""
    used = {bath for _, bath, _, _ in baths_done(job)}
    if "flush mix soak" not in used and job.newest(FLUSH_MIX).ammonia is None:
        return ""
    [bleach] = [c for c in cautions_of(job, ("flush mix soak",)) if c.key == "ammonia-bleach"]
    return bleach.text
