"""The tables of nibs: how far a tip is smoothed, and the figures that nib work is held to."""

from __future__ import annotations

import msgspec

from pentools import tables
from pentools.calc.nib.smoothing import Habit
from pentools.errors import RecordError

__all__ = ["Figure", "feels", "figure", "habits"]


class Figure(msgspec.Struct, frozen=True):
    """A figure of nib work: the ends and the middle of what is usual, in its unit; None where nobody says."""

    key: str
    quantity: str
    low: float | None
    typical: float | None
    high: float | None
    unit: str
    note: str
    source: str
    certainty: str


def habits() -> tuple[Habit, ...]:
    """What each feel of a nib may take."""
    return tables.read(Habit, "nib_smoothing")


def feels() -> tuple[tuple[str, str], ...]:
    """How a nib may feel, as choices."""
    return tuple((habit.feel, habit.feel) for habit in habits())


def figure(key: str) -> Figure:
    """The figure of that name.

    Parameters
    ----------
    key : str
        A key of the table ``nib_figures``.

    Returns
    -------
    Figure
        Its row.

    Raises
    ------
    RecordError
        If there is none of that name.
    """
    rows: tuple[Figure, ...] = tables.read(Figure, "nib_figures")
    found = next((row for row in rows if row.key == key), None)
    if found is None:
        raise RecordError(f"The table “nib_figures” has no figure “{key}”.")
    return found
