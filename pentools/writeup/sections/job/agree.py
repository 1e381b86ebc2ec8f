"""Proposal and agreement on a page: what was proposed and what else was weighed; for the client, price and answers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import yes_and_no
from pentools.record.stages.job.agree_kinds import ACTIONS
from pentools.writeup.blocks import Audience, Block, Facts, Lead, Paragraph, Section
from pentools.writeup.sections.generic import kind_facts, kind_table, may_show, releases_of, shown
from pentools.writeup.words import capital, list_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["answers_in_words", "section"]


def answers_in_words(job: Job) -> str:
    """What the owner said yes and no to, in one sentence; empty where nothing was answered.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    str
        For the client's page only.
    """
    names = dict(ACTIONS)
    yes, no = ([names[key] for key, _ in ACTIONS if key in said] for said in yes_and_no(job))
    said = [f"{word} to {list_in_words(found)}" for word, found in (("yes", yes), ("no", no)) if found]
    return f"You said {', and '.join(said)}." if said else ""


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was proposed and agreed.

    Parameters
    ----------
    job : Job
        The job.
    stage : Stage
        The stage.
    audience : {"client", "blog"}
        Who will see the page; price, answers and what does not apply are for the client.

    Returns
    -------
    Section
        No blocks where nothing was entered that this audience may see.
    """
    client = audience == "client"
    blocks: list[Block] = []
    conclusion = job.values(stage.key, "survey")["conclusion"]
    if conclusion is not None:
        blocks.append(Lead(sentence(str(conclusion))))
    blocks += kind_facts(job, stage, stage.kind("survey"), audience, without=("conclusion",), caption="The survey")
    blocks += _proposals(job, stage, audience)
    if client:
        said = answers_in_words(job) if job.record.live(stage.key, "answer") else ""
        if said:
            blocks.append(Paragraph(said))
        blocks += kind_table(job, stage, stage.kind("answer"), audience, caption="Your answers")
        blocks += kind_facts(job, stage, stage.kind("estimate"), audience, caption="Hours and price, as estimated")
        blocks += kind_table(job, stage, stage.kind("not applicable"), audience, caption="What does not apply here")
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "What was proposed and agreed" if client else "What was proposed", tuple(blocks))


def _proposals(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """One list of facts a proposal, with the part as its caption."""
    kind, parts = stage.kind("proposal"), dict(PARTS)
    found: list[Block] = []
    for _, values in job.log(stage.key, kind.key):
        part = parts.get(str(values["part"]), str(values["part"]))
        rows = tuple(
            (field.label, shown(field, values[field.name]))
            for field in kind.fields
            if field.name != "part" and values[field.name] is not None and may_show(field, audience)
        )
        found.append(Facts(f"{capital(part)}: proposed", rows))
    return found
