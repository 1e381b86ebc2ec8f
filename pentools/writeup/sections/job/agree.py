"""Proposal and agreement on a page: what was proposed and what else was weighed; for the owner, price and answers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import yes_and_no
from pentools.record.stages.job.agree_kinds import ACTIONS, ANSWER, ESTIMATE, NOT_APPLICABLE, PROPOSAL, SURVEY
from pentools.writeup.blocks import Audience, Block, Facts, Lead, Paragraph, Section
from pentools.writeup.sections.generic import facts_of, kind_facts, kind_table, releases_of
from pentools.writeup.words import capital, list_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["answers_in_words", "section"]


def answers_in_words(job: Job) -> str:
    """What the owner said yes and no to, in one sentence; empty where nothing was answered.

    Returns
    -------
    str
        For the owner's page only.
    """
    names = dict(ACTIONS)
    yes, no = ([names[key] for key, _ in ACTIONS if key in said] for said in yes_and_no(job))
    said = [f"{word} to {list_in_words(found)}" for word, found in (("yes", yes), ("no", no)) if found]
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
        said = answers_in_words(job) if job.log(ANSWER) else ""
        if said:
            blocks.append(Paragraph(said))
        blocks += kind_table(job, ANSWER, audience, caption="Your answers")
        blocks += kind_facts(job, ESTIMATE, audience, caption="Hours and price, as estimated")
        blocks += kind_table(job, NOT_APPLICABLE, audience, caption="What does not apply here")
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "What was proposed and agreed" if owners else "What was proposed", tuple(blocks))


def _proposals(job: Job, audience: Audience) -> list[Block]:
    """One list of facts a proposal, with the part as its caption."""
    parts = dict(PARTS)
    found: list[Block] = []
    for logged in job.log(PROPOSAL):
        part = parts.get(logged.values.part or "", "a part that is not named")
        rows = facts_of(PROPOSAL, logged.values, audience, without={"part"})
        found.append(Facts(f"{capital(part)}: proposed", rows))
    return found
