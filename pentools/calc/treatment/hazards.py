"""From which strength a solution hurts eyes, skin and lungs, or feeds a fire."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pentools.calc.base.findings import LEVELS, Level
from pentools.errors import InputError

__all__ = ["Hazard", "hazards_of"]


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


def hazards_of(substance: str, percent: float, rows: Iterable[Mapping[str, str]]) -> tuple[Hazard, ...]:
    """The hazards of a solution, the gravest first.

    Parameters
    ----------
    substance : str
        "peroxide", "ammonia" or "bleach", as the table names it.
    percent : float
        Strength by weight [%], 0 to 100; bleach in active chlorine.
    rows : iterable of mapping
        Rows with substance, from_percent, below_percent, level, hazard, class, source, certainty (the table
        ``substance_hazards``).

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
    >>> row = {"substance": "peroxide", "from_percent": "8", "below_percent": "70", "level": "stop", "hazard": "it damages eyes for good",
    ...        "class": "Eye Dam. 1, H318", "source": "x", "certainty": "y"}
    >>> [hazard.does for hazard in hazards_of("peroxide", 8, [row])], hazards_of("peroxide", 7.9, [row])
    (['it damages eyes for good'], ())
    """
    table = [row for row in rows if row["substance"] == substance]
    if not table:
        raise InputError("substance", "one the table of hazards knows", substance)
    if not 0 <= percent <= 100:
        raise InputError("strength", "0 to 100 %", percent)
    found = [_hazard(row) for row in table if _holds(row, percent)]
    return tuple(sorted(found, key=lambda hazard: -LEVELS.index(hazard.level)))


def _holds(row: Mapping[str, str], percent: float) -> bool:
    below = row["below_percent"]
    return float(row["from_percent"]) <= percent and (not below or percent < float(below))


def _hazard(row: Mapping[str, str]) -> Hazard:
    level: Level = "stop" if row["level"] == "stop" else "warning"
    return Hazard(level, row["hazard"], row["class"], row["source"], row["certainty"])
