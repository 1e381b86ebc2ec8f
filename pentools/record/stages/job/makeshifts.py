"""Makeshifts: what only holds for now, and what would replace it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.record.stages.common import PARTS
from pentools.record.stages.job.ending_kinds import LIMIT
from pentools.record.stages.repairs.work import Mended, holds_for_now, mended
from pentools.record.view import once_a_state

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Makeshift", "come_back", "makeshifts_of"]

_NAMES = dict(PARTS)


@dataclass(frozen=True, slots=True)
class Makeshift:
    """One thing that only holds for now.

    Parameters
    ----------
    part : str
        A key of the parts; empty where none is named.
    what : str
        What holds it, in the restorer's words or those of the way.
    wanted : str
        What would replace it; empty where nobody said.
    since : str
        The day it was entered, as year-month-day.
    limit : bool
        Whether it stands among what was left; else among the parts mended.
    """

    part: str
    what: str
    wanted: str
    since: str
    limit: bool

    @property
    def where(self) -> str:
        """The part in words."""
        return _NAMES.get(self.part, "a part that is not named")


@once_a_state
def makeshifts_of(job: Job) -> tuple[Makeshift, ...]:
    """What only holds for now in this pen, in the order entered.

    Returns
    -------
    tuple of Makeshift
        Those of the parts mended, without what was mended for good since at the same place; then those left.
    """
    done = mended(job)
    found = [
        Makeshift(one.values.part or "", one.row.method, one.values.wanted or "", f"{one.entry.time:%Y-%m-%d}", False)
        for number, one in enumerate(done)
        if holds_for_now(one) and not any(_replaces(later, one) for later in done[number + 1 :])
    ]
    for logged in job.log(LIMIT):
        limit = logged.values
        if limit.for_now is True:
            what = limit.instead or limit.left or ""
            found.append(Makeshift(limit.part or "", what, limit.wanted or "", f"{logged.entry.time:%Y-%m-%d}", True))
    return tuple(found)


def _replaces(later: Mended, one: Mended) -> bool:
    same = (later.values.part, later.row.place) == (one.values.part, one.row.place)
    return same and not holds_for_now(later) and not later.row.leaves


def come_back(job: Job, said: str = "") -> str:
    """When to come back for what only holds for now, a sentence each.

    Parameters
    ----------
    said : str
        What the follow-up says already: what it names to be wanted is not said again.

    Returns
    -------
    str
        Empty where nothing is wanted.
    """
    told = said.casefold()
    wanted: dict[str, list[str]] = {}
    for one in makeshifts_of(job):
        if one.wanted and one.wanted.casefold() not in told:
            wanted.setdefault(one.wanted, []).append(one.where)
    return " ".join(
        f"What holds the {' and '.join(dict.fromkeys(parts))} now is a makeshift: come back once this can be had: {what.rstrip('.')}."
        for what, parts in wanted.items()
    )
