"""Proposal and agreement on a page: what was proposed and what else was weighed; for the owner, price and answers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.numbers import capital, in_words
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import answers_of, yes_and_no
from pentools.record.stages.job.agree_kinds import ACTIONS, ANSWER, ESTIMATE, NOT_APPLICABLE, PROPOSAL, SURVEY
from pentools.record.stages.job.money_kinds import INVOICE, RECEIVED
from pentools.writeup.blocks import Audience, Block, Facts, Lead, Paragraph, Section, Table
from pentools.writeup.sections.generic import facts_of, kind_facts, kind_table, releases_of
from pentools.writeup.words import date_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["answers_in_words", "section"]

_NOT_IN_SHORT = ("place", "lines", "before_tax", "tax", "tax_words", "deposit", "why", "remarks")
"""What of an invoice stands on its own page."""


def answers_in_words(job: Job) -> str:
    """What the owner said yes and no to, in one sentence; empty where nothing was answered.

    Returns
    -------
    str
        For the owner's page only.
    """
    names = dict(ACTIONS)
    yes, no = ([names[key] for key, _ in ACTIONS if key in said] for said in yes_and_no(job))
    said = [f"{word} to {in_words(found)}" for word, found in (("yes", yes), ("no", no)) if found]
    return f"You said {', and '.join(said)}." if said else ""


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was proposed and agreed.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page; price, answers and what does not apply are for the owner.

    Returns
    -------
    Section
        No blocks where nothing was entered that this audience may see.
    """
    owners = audience == "owner"
    blocks: list[Block] = []
    conclusion = job.newest(SURVEY).conclusion
    if conclusion is not None:
        blocks.append(Lead(sentence(conclusion)))
    blocks += kind_facts(job, SURVEY, audience, without=("conclusion",), caption="The survey")
    blocks += _proposals(job, audience)
    if owners:
        said = answers_in_words(job) if answers_of(job) else ""
        if said:
            blocks.append(Paragraph(said))
        blocks += _answers(job)
        blocks += kind_facts(job, ESTIMATE, audience, caption="Hours and price, as estimated")
        blocks += kind_table(job, RECEIVED, audience)
        blocks += kind_table(job, INVOICE, audience, without=_NOT_IN_SHORT, caption="Invoices")
        blocks += kind_table(job, NOT_APPLICABLE, audience, caption="What does not apply here")
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "What was proposed and agreed" if owners else "What was proposed", tuple(blocks))


def _answers(job: Job) -> list[Block]:
    """Every yes and no in one table, with who gave it and in which words, where that was noted."""
    rows: list[tuple[str, ...]] = []
    for logged in answers_of(job):
        said = logged.values
        who = said.by or ("" if said.authority is None else "not named")
        if said.authority is not None:
            who += " (may decide)" if said.authority else " (may not decide: a yes does not count)"
        day, cells = date_in_words(said.answered_on), ("action", "agreed", "channel")
        told = (ANSWER.field(name).shown(getattr(said, name)) for name in cells)
        rows.append((day, *told, who, said.terms or ""))
    head: tuple[str, ...] = ("On", "To what", "Yes or no", "How", "By whom", "In your words")
    used = [column for column in range(len(head)) if column < 4 or any(row[column] for row in rows)]
    cut = tuple(tuple(row[column] or "–" for column in used) for row in rows)
    return [Table("Your answers", tuple(head[column] for column in used), cut)] if rows else []


def _proposals(job: Job, audience: Audience) -> list[Block]:
    """One list of facts a proposal, with the part as its caption."""
    parts = dict(PARTS)
    found: list[Block] = []
    for logged in job.log(PROPOSAL):
        part = parts.get(logged.values.part or "", "a part that is not named")
        rows = facts_of(PROPOSAL, logged.values, audience, without={"part"})
        found.append(Facts(f"{capital(part)}: proposed", rows))
    return found
