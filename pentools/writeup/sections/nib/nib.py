"""The nib on a page: what it writes, how it was seen under the loupe, what was done to it, and every test as it was entered."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.uncertainty import format_value
from pentools.errors import InputError
from pentools.numbers import capital
from pentools.record.stages.nib.fit import room_now
from pentools.record.stages.nib.kinds import FEED_SETTING, LOUPE, SMOOTHED, WHEN
from pentools.record.stages.nib.paper import flex_of, writes
from pentools.record.stages.nib.tip import loupe
from pentools.record.stages.nib.words import done_in_words, loupe_in_words, writes_in_words
from pentools.words.treatment import CLOSING_LINE
from pentools.writeup.blocks import Audience, Block, Details, Lead, Notice, Paragraph, Section
from pentools.writeup.sections.generic import kind_table, releases_of

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.kinds import Stage

__all__ = ["nib_caution", "section"]

TITLE = "The nib, and what it writes"
_SCALD = "Nearly boiling water scalds, and warms more than the feed: tongs, and only on hard rubber."
_TIP = "What is taken off a tip is not given back."


def section(job: Job, stage: Stage, audience: Audience) -> Section:
    """What the nib writes, how it was and is, what was done to it, and how that was measured.

    Parameters
    ----------
    stage : Stage
        The nib.
    audience : {"owner", "everybody"}
        Who will see the page.

    Returns
    -------
    Section
        No blocks where nothing was entered.
    """
    if not job.record.live(stage.key):
        return Section(stage.key, TITLE)
    blocks: list[Block] = []
    now, before = writes(job, "after"), writes(job, "found")
    lead = writes_in_words(now) if now is not None else ""
    first = writes_in_words(before) if before is not None else ""
    blocks += [Lead(lead or first)] if lead or first else []
    blocks += [Paragraph(first)] if lead and first else []
    looks = [loupe_in_words(seen) for when, _ in WHEN if (seen := loupe(job, when)) is not None]
    blocks += [Paragraph(" ".join(looks))] if looks else []
    called = [logged.values.called for logged in job.log(LOUPE) if logged.values.called]
    blocks += (
        [
            Paragraph(
                f"Its owner calls it “{called[-1]}”. Letters on nibs are a maker's word: one maker's F is another's M."
            )
        ]
        if called
        else []
    )
    done = done_in_words(job)
    blocks += [Paragraph(done)] if done else []
    blocks += _cap(job) + _flex(job)
    caution = nib_caution(job)
    blocks += [Notice(caution, "Caution")] if caution else []
    blocks += _workings(job, stage, audience) + releases_of(job, stage, audience)
    return Section(stage.key, TITLE, tuple(blocks))


def nib_caution(job: Job) -> str:
    """What anyone who does the same must know; empty where neither heat nor abrasive was used."""
    hot = any(logged.values.way != "cold" for logged in job.log(FEED_SETTING))
    said = [_SCALD] * hot + [_TIP] * bool(job.log(SMOOTHED))
    return " ".join((*said, CLOSING_LINE)) if said else ""


def _cap(job: Job) -> list[Block]:
    """Room in front of the nib, capped: a figure, and whether the cap may go on; what the bench does about it is not told."""
    room = room_now(job)
    if room is None or room.verdict == "cannot tell":
        return []
    said = f"Capped, the nib has {format_value(max(room.clearance_mm, 0.0), room.expanded_mm, 'mm')} of room in front of it."
    return [Paragraph(said)] if room.may_be_capped else [Notice(f"{said} It must not be capped.", "Caution")]


def _flex(job: Job) -> list[Block]:
    """How stiff it is, with its ±; a test that gives no result is named. Flow stands in what it writes."""
    blocks: list[Block] = []
    for when, words in WHEN:
        try:
            flex = flex_of(job, when)
        except InputError:
            blocks.append(Notice(f"Flex, {words}: the readings give no result.", "To be settled"))
            continue
        blocks += (
            [] if flex is None else [Paragraph(f"{capital(words)}: {flex.sentence[:1].lower()}{flex.sentence[1:]}")]
        )
    return blocks


def _workings(job: Job, stage: Stage, audience: Audience) -> list[Block]:
    """Everything as it was entered: folded on the screen, open in print."""
    blocks: list[Block] = []
    for key in (
        "loupe",
        "fit",
        "adjust",
        "smoothing",
        "feed setting",
        "writing test",
        "lines",
        "start",
        "flow",
        "flex",
    ):
        blocks += kind_table(job, stage.kind(key), audience)
    return [Details("The nib, as it was entered", tuple(blocks))] if blocks else []
