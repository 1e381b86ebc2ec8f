"""The tables of seals, sacs and threads as the calculations' own types."""

from __future__ import annotations

import functools

import msgspec

from pentools import tables
from pentools.calc.seal.faults import FaultTable, SignRow, SuspectRow, WayRow, faults_from_rows
from pentools.calc.seal.gland import Ring
from pentools.calc.seal.judge import Band, Duty, duties_from_bands
from pentools.calc.seal.sac import SacSize, sac_outside_mm
from pentools.calc.seal.threads import Thread
from pentools.errors import InputError

__all__ = ["RING_TABLES", "duty", "faults", "rings", "sac_note", "sac_sizes", "threads"]

RING_TABLES = ("as568", "metric")
"""The lists of rings that can be chosen from."""


class _Dash(msgspec.Struct, frozen=True):
    dash: str
    inside_mm: float
    section_mm: float
    inside_tol_mm: float
    section_tol_mm: float


class _Metric(msgspec.Struct, frozen=True):
    designation: str
    inside_mm: float
    section_mm: float
    inside_tol_mm: float
    section_tol_mm: float


class _Band(msgspec.Struct, frozen=True):
    duty: str
    quantity: str
    offered_from: float | None
    floor: float | None
    low: float | None
    high: float
    ceiling: float
    offered_to: float
    certainty: str
    note: str


class _Thread(msgspec.Struct, frozen=True):
    series: str
    designation: str
    major_mm: float | None
    pitch_mm: float
    angle_deg: float
    starts: int
    source: str


class _Sac(msgspec.Struct, frozen=True):
    material: str
    size: str
    number: int | None
    nominal_mm: float
    availability: str
    note: str | None


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
    if name == "as568":
        return tuple(_ring(row.dash, row) for row in tables.read(_Dash, "as568"))
    return tuple(_ring(row.designation, row) for row in tables.read(_Metric, "metric_rings"))


def _ring(name: str, row: _Dash | _Metric) -> Ring:
    return Ring(name, row.inside_mm, row.section_mm, row.inside_tol_mm, row.section_tol_mm)


@functools.lru_cache(maxsize=1)
def _duties() -> dict[str, Duty]:
    bands = [
        Band(
            row.duty, row.quantity, row.offered_from, row.floor, row.low, row.high, row.ceiling, row.offered_to,
            f"{row.certainty}: {row.note}",
        )
        for row in tables.read(_Band, "seal_duties")
    ]  # fmt: skip
    return duties_from_bands(bands)


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
    return tuple(
        Thread(row.designation, row.series, row.major_mm, row.pitch_mm, row.angle_deg, row.starts, row.source)
        for row in tables.read(_Thread, "thread_series")
    )


@functools.lru_cache(maxsize=1)
def faults() -> FaultTable:
    """Suspects, tests and signs of every filling system."""
    suspects, ways = tables.read(SuspectRow, "seal_suspects"), tables.read(WayRow, "seal_tests")
    return faults_from_rows(suspects, ways, tables.read(SignRow, "seal_signs"))


@functools.lru_cache(maxsize=8)
def sac_sizes(material: str) -> tuple[SacSize, ...]:
    """The sizes that sacs of a material are sold in; empty where it is sold by none."""
    return tuple(
        SacSize(row.size, row.nominal_mm if row.number is None else sac_outside_mm(row.number), row.number)
        for row in tables.read(_Sac, "sac_sizes")
        if row.material == material
    )


def sac_note(material: str, size: str) -> str:
    """What the table knows of a size: availability and note; empty for one that it does not hold."""
    for row in tables.read(_Sac, "sac_sizes"):
        if (row.material, row.size) == (material, size):
            return "; ".join(part for part in (row.availability, row.note) if part)
    return ""
