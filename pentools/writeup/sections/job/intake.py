"""Intake on a page: what the pen is, what was asked, and, for the owner, whose it is and what may be shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.intake_kinds import ARRIVAL, CONSENT, OWNER, REQUEST
from pentools.writeup.blocks import Audience, Block, Facts, Quote, Section
from pentools.writeup.sections.generic import kind_facts, may_show, releases_of, shown

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["section", "what_it_is"]

_DIMENSIONS = (
    "capped_mm", "cap_mm", "cap_outside_mm", "barrel_mm", "barrel_outside_mm",
    "section_mm", "section_outside_mm", "nib_mm", "end_mm",
)  # fmt: skip


def what_it_is(job: Job, audience: Audience) -> Section:
    """The pen itself: description, filling system, material, what arrived, and its dimensions.

    Parameters
    ----------
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        No blocks where nothing of it was entered.
    """
    blocks = kind_facts(job, ARRIVAL, audience, without=_DIMENSIONS, caption="As it arrived")
    arrival = job.newest(ARRIVAL)
    sizes = tuple(
        (field.label, shown(field, value))
        for field in ARRIVAL.fields
        if field.name in _DIMENSIONS
        and (value := getattr(arrival, field.name)) is not None
        and may_show(field, audience)
    )
    if sizes:
        blocks.append(Facts("Measured with the caliper", sizes))
    return Section("identity", "What it is", tuple(blocks))


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What the owner asked for; for the owner also the owner and the consent.

    Parameters
    ----------
    stage : Stage
        The intake stage.
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        The pen itself is left to `what_it_is`, which stands at the head of the page.
    """
    blocks: list[Block] = []
    asked = job.newest(REQUEST).asked
    if asked is not None and may_show(REQUEST.field("asked"), audience):
        blocks.append(Quote(asked, "the owner’s request"))
    blocks += kind_facts(job, REQUEST, audience, without=("asked",), caption="What was agreed on at the start")
    blocks += kind_facts(job, OWNER, audience)
    blocks += kind_facts(job, CONSENT, audience)
    blocks += kind_facts(job, RETURN, audience)
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, "What was asked", tuple(blocks))
