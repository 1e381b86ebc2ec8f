"""The tables of filling systems, as the calculations take them."""

from __future__ import annotations

import msgspec

from pentools import tables
from pentools.calc.weighing.diagnosis import Suspect, UsualShare

__all__ = ["difficulty_of", "fill_suspects", "usual_fill"]


class _SuspectRow(msgspec.Struct, frozen=True):
    systems: tuple[str, ...]
    rank: int
    key: str
    suspect: str
    why: str
    next_test: str


class _UsualRow(msgspec.Struct, frozen=True):
    system: str
    low: float
    typical: float
    high: float
    certainty: str


class _RankRow(msgspec.Struct, frozen=True):
    key: str
    difficulty: int


def difficulty_of(system: str) -> int | None:
    """How hard a filling system is to mend, by the table: 1 the easiest.

    Parameters
    ----------
    system : str
        A filling system key, such as ``piston``.

    Returns
    -------
    int or None
        Its rank; None for a system that the table does not have.
    """
    return next((row.difficulty for row in tables.read(_RankRow, "filling_systems") if row.key == system), None)


def fill_suspects(system: str) -> tuple[Suspect, ...]:
    """What makes a filling system draw too little.

    Parameters
    ----------
    system : str
        A filling system key, such as ``piston``.

    Returns
    -------
    tuple of Suspect
        In the order in which they are worth a look; empty for a system that the table does not have.
    """
    found = [row for row in tables.read(_SuspectRow, "fill_suspects") if system in row.systems]
    found.sort(key=lambda row: row.rank)
    return tuple(Suspect(row.key, row.suspect, row.why, row.next_test) for row in found)


def usual_fill(system: str) -> UsualShare | None:
    """What a sound pen of a filling system draws of the volume that the table names.

    Parameters
    ----------
    system : str
        A filling system key, such as ``piston``.

    Returns
    -------
    UsualShare or None
        Its lower end, middle and upper end [1]; None for a system that the table does not have.
    """
    for row in tables.read(_UsualRow, "usual_fill"):
        if row.system == system:
            return UsualShare(row.low, row.typical, row.high, row.certainty)
    return None
