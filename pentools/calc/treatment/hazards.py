"""From which strength a solution hurts eyes, skin and lungs, or feeds a fire."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

import msgspec

from pentools.calc.base.findings import LEVELS, Level
from pentools.errors import InputError

__all__ = ["Hazard", "HazardRow", "hazards_of"]


class HazardRow(msgspec.Struct, frozen=True):
    """One row of the table ``substance_hazards``: from and below which strength by weight [%] it holds."""

    substance: str
    from_percent: float
    below_percent: float | None
    level: Literal["warning", "stop"]
    hazard: str
    labelled: str = msgspec.field(name="class")
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class Hazard:
    """What a solution of some strength does.

    Parameters
    ----------
    level : {"warning", "stop"}
        How the kit takes it.
    does : str
        What it does, as a clause.
    labelled : str
        Hazard class and statement of the labelling rules.
    source, certainty : str
        Keys of the table's sources, and how sure it is.
    """

    level: Level
    does: str
    labelled: str
    source: str
    certainty: str


def hazards_of(substance: str, percent: float, rows: Iterable[HazardRow]) -> tuple[Hazard, ...]:
    """The hazards of a solution, the gravest first.

    Parameters
    ----------
    substance : str
        "peroxide", "ammonia" or "bleach", as the table names it.
    percent : float
        Strength by weight [%], 0 to 100; bleach in active chlorine.
    rows : iterable of HazardRow
        The table ``substance_hazards``.

    Returns
    -------
    tuple of Hazard
        Empty where the table knows of none at this strength, which is not to say that there is none.

    Raises
    ------
    InputError
        If the table does not know the substance, or the strength is not 0 to 100 %.

    Examples
    --------
    >>> row = HazardRow("peroxide", 8, 70, "stop", "it damages eyes for good", "Eye Dam. 1, H318", "x", "y")
    >>> [hazard.does for hazard in hazards_of("peroxide", 8, [row])], hazards_of("peroxide", 7.9, [row])
    (['it damages eyes for good'], ())
    """
    table = [row for row in rows if row.substance == substance]
    if not table:
        raise InputError("substance", "one the table of hazards knows", substance)
    if not 0 <= percent <= 100:
        raise InputError("strength", "0 to 100 %", percent)
    found = [_hazard(row) for row in table if _holds(row, percent)]
    return tuple(sorted(found, key=lambda hazard: -LEVELS.index(hazard.level)))


def _holds(row: HazardRow, percent: float) -> bool:
    return row.from_percent <= percent and (row.below_percent is None or percent < row.below_percent)


def _hazard(row: HazardRow) -> Hazard:
    return Hazard(row.level, row.hazard, row.labelled, row.source, row.certainty)
