"""Limits on a page: what was left alone, why, what was done instead, and what the next repairer should know."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.writeup.blocks import Audience, Block, Facts, Paragraph, Photo, Photos, Section
from pentools.writeup.photos import PhotoBook
from pentools.writeup.sections.generic import may_show, releases_of
from pentools.writeup.words import capital

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["section"]


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What was left alone, one list of facts a thing.

    Parameters
    ----------
    job : Job
        The job.
    stage : Stage
        The limits stage.
    audience : {"client", "blog"}
        Who will see the page.

    Returns
    -------
    Section
        One plain sentence where it was stated that nothing was left; no blocks where nothing was said.
    """
    kind = stage.kind("limit")
    labels = dict(kind.field("part").choices)
    book = PhotoBook(job, audience)
    blocks: list[Block] = []
    for _, values in job.log(stage.key, kind.key):
        rows = tuple(
            (field.label, str(values[field.name]))
            for field in kind.fields
            if field.kind == "long text" and values[field.name] is not None and may_show(field, audience)
        )
        blocks.append(Facts(capital(labels.get(str(values["part"]), str(values["part"]))), rows))
        photo = values["photo"]
        if photo is not None and book.allowed(str(photo)):
            blocks.append(Photos((Photo(str(photo), str(values["left"]), str(values["left"])),)))
    if not blocks and job.values(stage.key, "nothing left")["nothing_left"] is True:
        blocks.append(Paragraph("Nothing that was found was left unmended."))
    blocks += releases_of(job, stage, audience)
    return Section(stage.key, stage.title, tuple(blocks))
