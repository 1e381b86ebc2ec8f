"""Limits on a page: what was left alone, why, what was done instead, and what the next repairer should know."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.numbers import capital
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.ending_kinds import LIMIT, NOTHING_LEFT
from pentools.writeup.blocks import Audience, Block, Facts, Paragraph, Photos, Section
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.generic import facts_of, releases_of
from pentools.writeup.sections.job.pictures import photo_among

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["section"]


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was left alone, one list of facts a thing.

    Parameters
    ----------
    stage : Stage
        The limits stage.
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        One plain sentence where it was stated that nothing was left; no blocks where nothing was said.
    """
    labels, book = dict(PARTS), PhotoBook(job, audience)
    blocks: list[Block] = []
    for logged in job.log(LIMIT):
        limit = logged.values
        rows = facts_of(LIMIT, limit, audience, without={"part", "photo"})
        blocks.append(Facts(capital(labels.get(limit.part or "", "A part that is not named")), rows))
        if limit.photo is not None and book.allowed(limit.photo):
            blocks.append(Photos((photo_among(job, limit.photo, limit.left or ""),)))
    if not blocks and job.newest(NOTHING_LEFT).nothing_left is True:
        blocks.append(Paragraph("Nothing that was found was left unmended."))
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, stage.title, tuple(blocks))
