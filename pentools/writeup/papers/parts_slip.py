"""The slip for the box: what was put in, what was taken out, what holds the joints, and what of it can be undone."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from pentools.numbers import capital
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.work_kinds import MATERIAL, Material
from pentools.record.stages.repairs.kinds import REPAIR
from pentools.record.stages.repairs.work import mended
from pentools.record.stages.seal.kinds import SEALANT, Sealant
from pentools.writeup.forms import Files
from pentools.writeup.papers.sheet import Grid, Paper, Row, paper_files, rows_of, told

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["parts_slip", "parts_slip_files"]

_UNDONE = {True: "yes", False: "no", None: "not entered"}


def parts_slip_files(job: Job, notebook: Mapping[str, Any] | None, *, draft: bool = False) -> Files:  # noqa: ARG001 - the owner's, from the record
    """The slip's one file, from the record alone."""
    return paper_files(job, parts_slip(job))


def parts_slip(job: Job) -> Paper:
    """The slip that lies in the box, for the owner and for whoever opens the pen next; it names no price."""
    released = told(RESULT, job.newest(RESULT), "released_on")
    about = f"Released on {released}." if released else ""
    rows = rows_of(job, _put_in, _taken_out, _mended, _joints)
    if not rows:
        rows = (Row("Parts", ("Nothing was entered as put in or taken out.",)),)
    return Paper(
        "parts",
        "What went in, and what came out",
        about,
        rows,
        "Keep this slip with the pen: the next repair begins with it.",
    )


def _put_in(job: Job) -> Row:
    head = ("What", "Where", "Source and lot", "Can it be undone?")
    found = _of(job, "added")
    rows = tuple((*_what(one), told(MATERIAL, one, "lot"), _UNDONE[one.reversible]) for one in found)
    return Row("Put in", grid=Grid(head, rows).shown() if rows else None)


def _taken_out(job: Job) -> Row:
    head = ("What", "Where", "What became of it")
    became = {"removed": "taken out", "returned": "taken out and given back"}
    rows = tuple((*_what(one), became[one.way or ""]) for one in _of(job, *became))
    return Row("Taken out", grid=Grid(head, rows).shown() if rows else None)


def _of(job: Job, *ways: str) -> list[Material]:
    return [logged.values for logged in job.log(MATERIAL) if logged.values.way in ways]


def _what(values: Material) -> tuple[str, str]:
    return capital(told(MATERIAL, values, "what")), told(MATERIAL, values, "part")


def _mended(job: Job) -> Row:
    """The parts that were mended: how, from which lot, and whether that can be undone."""
    said = ((one, told(REPAIR, one.values, "lot")) for one in mended(job) if not one.row.leaves)
    undone = {"yes": "It can be undone.", "partly": "It can be undone in part.", "no": "It cannot be undone."}
    lines = tuple(f"{_with_lot(capital(one.words), lot)}. {undone[one.row.reversible]}" for one, lot in said)
    return Row("Mended", lines)


def _with_lot(words: str, lot: str) -> str:
    return f"{words} (lot: {lot})" if lot else words


def _joints(job: Job) -> Row:
    """What holds each joint now: the newest sealant of a place."""
    newest: dict[str | None, Sealant] = {}
    for logged in job.log(SEALANT):
        newest[logged.values.place] = logged.values
    undone = {True: "It can be undone.", False: "It cannot be undone.", None: ""}
    held = [one for one in newest.values() if one.sealant not in (None, "none")]
    said = (
        (
            told(SEALANT, one, "place"),
            _with_lot(told(SEALANT, one, "sealant"), told(SEALANT, one, "lot")),
            undone[one.reversible],
        )
        for one in held
    )
    return Row("What holds the joints", tuple(f"{capital(place)}: {what}. {can}".strip() for place, what, can in said))
