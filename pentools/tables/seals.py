"""The tables of seals, sacs and threads as the calculations' own types."""

from __future__ import annotations

import functools

from pentools import tables
from pentools.calc.seal.faults import FaultTable, faults_from_rows
from pentools.calc.seal.gland import Ring
from pentools.calc.seal.judge import Duty, duties_from_rows
from pentools.calc.seal.sac import SacSize, sac_outside_mm
from pentools.calc.seal.threads import Thread, threads_from_rows
from pentools.errors import InputError

__all__ = ["RING_TABLES", "duty", "faults", "rings", "sac_note", "sac_sizes", "threads"]

RING_TABLES: dict[str, tuple[str, str]] = {"as568": ("as568", "dash"), "metric": ("metric_rings", "designation")}
"""Name of a list of rings -> its table and the column that names a ring."""


@functools.lru_cache(maxsize=4)
def rings(name: str) -> tuple[Ring, ...]:
    """Every ring of a list with its tolerances.

    Parameters
    ----------
    name : {"as568", "metric"}
        The list.

    Returns
    -------
    tuple of Ring
        All its sizes, in mm.

    Raises
    ------
    InputError
        If there is no such list.
    """
    if name not in RING_TABLES:
        raise InputError("list of rings", "one of " + ", ".join(RING_TABLES), name)
    table, column = RING_TABLES[name]
    return tuple(
        Ring(
            row[column],
            float(row["inside_mm"]),
            float(row["section_mm"]),
            float(row["inside_tol_mm"]),
            float(row["section_tol_mm"]),
        )
        for row in tables.rows(table)
    )


@functools.lru_cache(maxsize=1)
def _duties() -> dict[str, Duty]:
    return duties_from_rows(tables.rows("seal_duties"))


def duty(key: str) -> Duty:
    """A duty with its bands of squeeze.

    Parameters
    ----------
    key : {"hand-turned", "low-friction", "static"}
        What the seal does.

    Returns
    -------
    Duty
        Its bands and where they come from.

    Raises
    ------
    InputError
        If the duty is not known.
    """
    found = _duties()
    if key not in found:
        raise InputError("duty", "one of " + ", ".join(found), key)
    return found[key]


@functools.lru_cache(maxsize=1)
def threads() -> tuple[Thread, ...]:
    """Every thread of the table."""
    return threads_from_rows(tables.rows("thread_series"))


@functools.lru_cache(maxsize=1)
def faults() -> FaultTable:
    """Suspects, tests and signs of every filling system."""
    return faults_from_rows(tables.rows("seal_suspects"), tables.rows("seal_tests"), tables.rows("seal_signs"))


@functools.lru_cache(maxsize=8)
def sac_sizes(material: str) -> tuple[SacSize, ...]:
    """The sizes that sacs of a material are sold in; empty where it is sold by none."""
    found = []
    for row in tables.rows("sac_sizes"):
        number = int(row["number"]) if row["number"] else None
        outside = float(row["nominal_mm"]) if number is None else sac_outside_mm(number)
        if row["material"] == material:
            found.append(SacSize(row["size"], outside, number))
    return tuple(found)


def sac_note(material: str, size: str) -> str:
    """What the table knows of a size: availability and note; empty for one that it does not hold."""
    for row in tables.rows("sac_sizes"):
        if (row["material"], row["size"]) == (material, size):
            return "; ".join(part for part in (row["availability"], row["note"]) if part)
    return ""
