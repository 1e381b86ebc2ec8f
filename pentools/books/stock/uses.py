"""What each job took from the drawer: materials, trials, sealants and mends with their lots, and the tools it needed."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import msgspec

from pentools.books.asked import Question
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.coming_back_kinds import RETURN
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.work_kinds import MATERIAL, TOOL
from pentools.record.stages.repairs.kinds import REPAIR
from pentools.record.stages.seal.kinds import SEALANT, TRIAL, place_words

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = ["USES", "JobUses", "ToolUse", "Use", "pieces_in"]

_PIECES = re.compile(r"\s*(\d{1,3})\s*(?:[×x]\s|pcs\.?\s|pieces?\s(?:of\s)?)", re.IGNORECASE)


class Use(msgspec.Struct, frozen=True):
    """One thing that was put in, taken out, tried or used.

    Parameters
    ----------
    way : {"added", "removed", "returned", "fitted", "tried", "sealant", "mended"}
        How it was used; of what was added the drawer has less. Fitted is what pulled back in a dry trial.
    what, lot, where : str
        Its words, its source and lot, and the part of the pen; empty where not said.
    on : str
        The day it was entered, as year-month-day.
    pieces : int
        How many.
    cost : str
        As typed; empty where none was.
    """

    way: str
    what: str
    lot: str
    where: str
    on: str
    pieces: int = 1
    cost: str = ""


class ToolUse(msgspec.Struct, frozen=True):
    """A tool made for a job or taken from the shelf."""

    tool: str
    part: str
    dimensions: str
    made_from: str
    photo: str
    on: str


class JobUses(msgspec.Struct, frozen=True):
    """What one job used; the job it goes on from, and which part had failed."""

    pen: str
    system: str
    uses: tuple[Use, ...]
    tools: tuple[ToolUse, ...]
    older: str = ""
    failed: str = ""
    failed_part: str = ""


def pieces_in(what: str) -> int:
    """How many pieces a text names at its head, such as ``3 × cork washer``; 1 where it names none.

    Examples
    --------
    >>> pieces_in("3 x nitrile ring"), pieces_in("2 pieces of felt"), pieces_in("1.78x5.28 ring"), pieces_in("8 mm cork")
    (3, 2, 1, 1)
    """
    found = _PIECES.match(what)
    return int(found[1]) if found and int(found[1]) else 1


def uses_of(job: Job) -> JobUses:
    """What a job used; from its record alone."""
    arrival, back, parts = job.newest(ARRIVAL), job.newest(RETURN), dict(PARTS)

    def day(entry: Entry) -> str:
        return job.first(entry).time.date().isoformat()

    uses = [
        Use(v.way or "", v.what or "", v.lot or "", parts.get(v.part or "", ""), day(e), pieces_in(v.what or ""), v.cost or "")
        for e, v in ((one.entry, one.values) for one in job.log(MATERIAL))
    ]  # fmt: skip
    uses += [
        Use(
            "fitted" if v.happened == "pulls back" else "tried", v.what or "", v.lot or "", place_words(v.place), day(e)
        )
        for e, v in ((one.entry, one.values) for one in job.log(TRIAL))
        if v.lot
    ]
    uses += [
        Use("sealant", v.sealant or "", v.lot or "", place_words(v.place), day(e))
        for e, v in ((one.entry, one.values) for one in job.log(SEALANT))
        if v.sealant not in (None, "none")
    ]
    uses += [
        Use("mended", v.with_what or v.method or "", v.lot or "", parts.get(v.part or "", ""), day(e))
        for e, v in ((one.entry, one.values) for one in job.log(REPAIR))
        if v.lot or v.with_what
    ]
    tools = tuple(
        ToolUse(v.tool or "", parts.get(v.part or "", ""), v.dimensions or "", v.made_from or "", v.photo or "", day(e))
        for e, v in ((one.entry, one.values) for one in job.log(TOOL))
    )
    return JobUses(
        arrival.pen or "", arrival.system or "", tuple(uses), tools, back.older or "", back.failed or "", parts.get(back.part or "", "")
    )  # fmt: skip


USES = Question("stock uses", JobUses, uses_of)
