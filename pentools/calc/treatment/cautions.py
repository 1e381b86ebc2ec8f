"""Which cautions apply to what is about to be done, each with hazard, control, source and the closing line."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import msgspec

from pentools.errors import InputError
from pentools.words.treatment import CLOSING_LINE

__all__ = ["CLOSING_LINE", "Caution", "CautionRow", "cautions_for"]


class CautionRow(msgspec.Struct, frozen=True):
    """One row of the table ``cautions``: for which materials and actions it holds, and what to do."""

    key: str
    materials: tuple[str, ...]
    actions: tuple[str, ...]
    hazard: str
    control: str
    source: str
    certainty: str


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution.

    Parameters
    ----------
    key : str
        Its short name, by which a job acknowledges it once.
    hazard, control : str
        What can happen, and what to do about it.
    source, certainty : str
        Keys of the table's sources, and how sure it is.
    """

    key: str
    hazard: str
    control: str
    source: str
    certainty: str

    @property
    def text(self) -> str:
        """Hazard and control, ended by the closing line."""
        return f"{self.hazard} {self.control} {CLOSING_LINE}"


def cautions_for(
    materials: Iterable[str],
    actions: Iterable[str],
    rows: Iterable[CautionRow],
    *,
    acknowledged: Iterable[str] = (),
) -> tuple[Caution, ...]:
    """The cautions that apply.

    Parameters
    ----------
    materials : iterable of str
        Materials at hand, as the table names them; with "unknown" among them, or none at all, every material's
        cautions apply.
    actions : iterable of str
        What is about to be done, as the table names it (a treatment, "opening", "cutting", "storing", …); at
        least one.
    rows : iterable of CautionRow
        The table ``cautions``.
    acknowledged : iterable of str
        Keys already acknowledged in this job; they are left out.

    Returns
    -------
    tuple of Caution
        Those that apply, in the table's order.

    Raises
    ------
    InputError
        If no action is given, or one that no caution knows (a misspelt one would hide its cautions).

    Notes
    -----
    The list is not complete and cannot be: it holds what was found for work at a home bench.
    """
    table = list(rows)
    wanted = {action.casefold() for action in actions}
    known = {action for row in table for action in _folded(row.actions)}
    if not wanted:
        raise InputError("action", "at least one", "")
    for action in sorted(wanted - known):
        raise InputError("action", "one of " + ", ".join(sorted(known - {"any"})), action)
    given = {material.casefold() for material in materials}
    done = set(acknowledged)
    return tuple(
        Caution(row.key, row.hazard, row.control, row.source, row.certainty)
        for row in table
        if row.key not in done and _meets(row, given, wanted)
    )


def _folded(words: Iterable[str]) -> set[str]:
    return {word.casefold() for word in words}


def _meets(row: CautionRow, materials: set[str], actions: set[str]) -> bool:
    of_materials, of_actions = _folded(row.materials), _folded(row.actions)
    any_material = "any" in of_materials or not materials or "unknown" in materials
    return (any_material or bool(of_materials & materials)) and ("any" in of_actions or bool(of_actions & actions))
