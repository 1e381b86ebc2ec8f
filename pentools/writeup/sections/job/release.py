"""Release on a page: how the job ended, what the owner should know first, then care and price at the page's foot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.numbers import capital
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.writeup.blocks import Audience, Block, Facts, Lead, Paragraph, Section
from pentools.writeup.sections.generic import may_show, releases_of, shown
from pentools.writeup.words import date_in_words, decimals_of, shown_mass

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["care", "ending_in_words", "price", "section"]


def ending_in_words(job: Job) -> str:
    """How the job ended, as one sentence; empty while it is open."""
    result = job.newest(RESULT)
    if result.ending is None:
        return ""
    when = f" on {date_in_words(result.released_on)}" if result.released_on else ""
    return {
        "done": f"The work is done and the pen was released{when}.",
        "done with limits": f"The work is done with limits, which this page names; the pen was released{when}.",
        "stopped": f"The work was stopped{when} and will not go on for now.",
        "returned": f"The pen was returned unrepaired{when}.",
    }[result.ending]


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """How the job ended.

    Parameters
    ----------
    stage : Stage
        The release stage.
    audience : {"owner", "everybody"}
        Who will see the page; the page for publication has the care text here, the owner's page at its foot.

    Returns
    -------
    Section
        No blocks while the job is open and no hold was released.
    """
    result = job.newest(RESULT)
    blocks: list[Block] = []
    if result.ending is not None:
        blocks.append(Lead(ending_in_words(job)))
        if result.summary is not None:
            blocks.append(Paragraph(result.summary))
        blocks += _masses(job)
        if audience == "everybody":
            blocks += care(job, audience).blocks
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "How it ended", tuple(blocks))


def care(job: Job, audience: Audience) -> Section:
    """How to care for the pen, and what to watch for.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        No blocks where nothing was written.
    """
    return _facts_of(job, audience, "care", "Care", ("care", "follow_up"))


def price(job: Job, audience: Audience) -> Section:
    """What it costs and how long the work is answered for; nothing of it is for publication.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    return _facts_of(job, audience, "price", "Price", ("price", "promise_until"))


def _facts_of(job: Job, audience: Audience, key: str, title: str, names: tuple[str, ...]) -> Section:
    result = job.newest(RESULT)
    given = [
        (field, shown(field, value))
        for field in RESULT.fields
        if field.name in names and (value := getattr(result, field.name)) is not None and may_show(field, audience)
    ]
    blocks: list[Block] = []
    rows = []
    for field, text in given:
        if field.kind == "long text":
            blocks.append(Paragraph(text if field.name == key else f"{field.label}: {text}"))
        else:
            rows.append((field.label, text))
    if rows:
        blocks.append(Facts("", tuple(rows)))
    return Section(key, title, tuple(blocks))


def _masses(job: Job) -> list[Block]:
    came, leaves = job.newest(ARRIVAL).mass_g, job.newest(RESULT).mass_g
    decimals = decimals_of(job)
    rows = [
        (capital(words), shown_mass(mass, decimals))
        for words, mass in (("mass as it arrived", came), ("mass as it leaves", leaves))
        if mass is not None
    ]
    return [Facts("", tuple(rows))] if leaves is not None else []
