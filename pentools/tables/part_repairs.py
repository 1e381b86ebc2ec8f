"""The table of repairs of parts as typed rows."""

from __future__ import annotations

from pentools import tables
from pentools.calc.repairs.fitness import RepairRow
from pentools.errors import InputError

__all__ = ["repair_choices", "repair_row", "repairs_for"]


def repair_choices() -> tuple[tuple[str, str], ...]:
    """Every way of mending as a choice: its key, and place and method in words."""
    return tuple((row.key, row.label) for row in tables.read(RepairRow, "part_repairs"))


def repairs_for(part: str) -> tuple[RepairRow, ...]:
    """The ways of mending a part, in the table's order; none for a part that it does not have.

    Parameters
    ----------
    part : str
        A key of the parts, such as ``cap``.

    Returns
    -------
    tuple of RepairRow
        Leaving it is among them wherever that is a way.
    """
    return tuple(row for row in tables.read(RepairRow, "part_repairs") if row.part == part)


def repair_row(key: str) -> RepairRow:
    """One way of mending.

    Parameters
    ----------
    key : str
        Its name in the record, such as ``cap-lip-weld``.

    Returns
    -------
    RepairRow
        Its row.

    Raises
    ------
    InputError
        If there is none of that name.
    """
    rows: tuple[RepairRow, ...] = tables.read(RepairRow, "part_repairs")
    for row in rows:
        if row.key == key:
            return row
    raise InputError("way of mending", "one of " + ", ".join(key for key, _ in repair_choices()), key)
