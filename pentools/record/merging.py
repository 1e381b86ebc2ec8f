"""Two copies of a record brought together: what is taken over, what was there, what is set aside, and in which order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import msgspec

from pentools.errors import RecordError
from pentools.record.chains import arranged, order_line, together
from pentools.record.entries import Entry, encode_entry
from pentools.record.lines import Line, read_lines

__all__ = ["MergePlan", "MergeReport", "plan_merge"]

Read = tuple[bytes, Line]


@dataclass(frozen=True, slots=True)
class MergeReport:
    """What a merge did.

    Parameters
    ----------
    added : int
        Lines taken over.
    conflicts : tuple of str
        The ids that both copies hold with unlike content; this copy's line stays, the other's was set aside.
    there : int
        Lines that were here already and were passed by.
    unread : int
        Lines that cannot be read, set aside too.
    aside : str
        The file beside the record that took what was set aside; empty where nothing was.
    both : bool
        Whether both copies had lines of their own, so that the time of entry decided between them.
    strangers : bool
        Whether no line of the other copy was here before, although there were lines here.
    """

    added: int
    conflicts: tuple[str, ...]
    there: int = 0
    unread: int = 0
    aside: str = ""
    both: bool = False
    strangers: bool = False


@dataclass(frozen=True, slots=True)
class MergePlan:
    """What a merge will do: the lines to add, and the lines to set aside."""

    lines: tuple[bytes, ...]
    aside: tuple[bytes, ...]
    done: MergeReport

    def report(self, aside: str) -> MergeReport:
        """What was done, with the name of the file that took what was set aside."""
        return replace(self.done, aside=aside)


def plan_merge(mine: bytes, theirs: bytes, name: str) -> MergePlan:
    """What to do to take over another copy.

    Parameters
    ----------
    mine, theirs : bytes
        Both files.
    name : str
        The other file's name, for what is said of it.

    Returns
    -------
    MergePlan
        Every whole line whose id is not here yet is taken over as it stands, one in a newer form too. Where both
        copies hold an id with unlike content, and where a line cannot be read, the other's line is set aside.

    Raises
    ------
    RecordError
        If the other file holds no line of a record.
    """
    here, there = list(read_lines(mine)), list(read_lines(theirs))
    _refuse_no_record(there, name)
    known: dict[str, list[bytes]] = {}
    for raw, line in here:
        known.setdefault(line.name, []).append(raw)
    taken, unlike, unread, passed = _sorted_out(known, there)
    lines = [raw for raw, _ in taken]
    own, others = _entries(here), _entries(there)
    last = order_line(together(arranged(own), arranged(others)), arranged([*own, *_entries(taken)]))
    if last is not None:
        lines.append(encode_entry(last))
    added = [line for _, line in taken if line.counts or line.entry is None]
    theirs_too = {line.name for _, line in there}
    return MergePlan(
        tuple(lines),
        tuple(raw for raw, _ in (*unlike, *unread)),
        MergeReport(
            len(added),
            tuple(line.name for _, line in unlike),
            there=passed,
            unread=len(unread),
            both=bool(added) and any(line.counts and line.name not in theirs_too for _, line in here),
            strangers=bool(here) and not known.keys() & theirs_too,
        ),
    )


def _refuse_no_record(lines: Sequence[Read], name: str) -> None:
    if not lines:
        raise RecordError(f"{name} is empty: there is nothing in it to take over.")
    if not any(line.whole for _, line in lines):
        raise RecordError(
            f"{name} is no record: none of its lines can be read as an entry. Nothing was taken over. "
            "Name a copy of the job's record.jsonl."
        )


def _sorted_out(known: dict[str, list[bytes]], lines: Sequence[Read]) -> tuple[list[Read], list[Read], list[Read], int]:
    """The other's lines: to take over, unlike what is here, not to be read, and the number of those here already."""
    taken: list[Read] = []
    unlike: list[Read] = []
    unread: list[Read] = []
    passed = 0
    for raw, line in lines:
        if any(_same(raw, other) for other in known.get(line.name, ())):
            passed += line.counts or line.entry is None
        elif not line.whole:
            unread.append((raw, line))
        else:
            (unlike if line.name in known else taken).append((raw, line))
    return taken, unlike, unread, passed


def _entries(lines: Sequence[Read]) -> list[Entry]:
    return [line.entry for _, line in lines if line.entry is not None]


def _same(one: bytes, other: bytes) -> bool:
    """Whether two lines say the same, however they are spaced."""
    if one.strip() == other.strip():
        return True
    try:
        return bool(msgspec.json.decode(one) == msgspec.json.decode(other))
    except (msgspec.MsgspecError, ValueError, RecursionError):
        return False
