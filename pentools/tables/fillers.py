"""The tables of filling systems, as the calculations take them."""

from __future__ import annotations

from pentools import tables
from pentools.calc.weighing.diagnosis import Suspect

__all__ = ["fill_suspects"]


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
    found = [row for row in tables.rows("fill_suspects") if system in row["systems"].split("; ")]
    found.sort(key=lambda row: int(row["rank"]))
    return tuple(Suspect(row["key"], row["suspect"], row["why"], row["next_test"]) for row in found)
