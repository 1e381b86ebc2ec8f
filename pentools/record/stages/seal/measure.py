"""What was measured of each seal, and what would fit there."""

from __future__ import annotations

import functools
import math
from dataclasses import replace
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.seal.bore import bore_from_readings, odd_findings
from pentools.calc.seal.fit import SealFit, seal_fit
from pentools.calc.seal.gland import Gland, Halves, Ring
from pentools.calc.seal.judge import Duty
from pentools.fields import Value
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE, PLACES, SEALANT, TRIAL, Measure
from pentools.record.stages.seal.seats import seat_answer
from pentools.record.view import once_a_state
from pentools.sums.base import SumAnswer
from pentools.sums.seal.drawer import at_hand
from pentools.sums.seal.sac import SAC
from pentools.sums.seal.stock import read_stock
from pentools.sums.seal.washer import WASHER
from pentools.tables import seals
from pentools.units import Reading, read_quantity

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "bore_mm",
    "candidates",
    "gland_of",
    "in_mm",
    "measured",
    "odd_readings",
    "places_in_use",
    "stock_rings",
    "work_out",
]

STANDARD_TO_HALF_WIDTH = math.sqrt(3)
_RINGS = ("head", "packing", "tube-ring")
FULL_TABLES = ("as568", "metric")


@once_a_state
def measured(job: Job, place: str) -> Measure:
    """What was measured at a place: its newest entry; all None where there is none.

    Parameters
    ----------
    place : str
        A key of `PLACES`.

    Returns
    -------
    Measure
        The readings.
    """
    found = [logged.values for logged in job.log(MEASURE) if logged.values.place == place]
    return found[-1] if found else Measure()


@once_a_state
def places_in_use(job: Job) -> tuple[str, ...]:
    """The places that something was measured, tried or sealed at, in the order they were first named."""
    named = [
        *(logged.values.place for logged in job.log(MEASURE)),
        *(logged.values.place for logged in job.log(TRIAL)),
        *(logged.values.place for logged in job.log(SEALANT)),
    ]
    return tuple(dict.fromkeys(name for name in named if name in PLACES))


def bore_mm(values: Measure) -> tuple[float, ...]:
    """Every reading of the bore at both depths, or of the housing [mm]."""
    return tuple(reading.value for reading in values.readings)


def in_mm(reading: Reading | None) -> float | None:
    """A length that was read [mm]; None where it was not."""
    return None if reading is None else reading.value


def _half_width_mm(job: Job) -> float:
    """Half-width of one calliper reading: the bench's standard uncertainty times the root of three."""
    text = job.bench.text("caliper", "uncertainty")
    return 0.03 if not text else STANDARD_TO_HALF_WIDTH * read_quantity(text, "mm", name="calliper").value


@once_a_state
def gland_of(job: Job, place: str) -> Gland | None:
    """The groove that a ring goes into.

    Parameters
    ----------
    place : str
        "head", "packing" or "tube-ring".

    Returns
    -------
    Gland or None
        None where another place is asked for, or its two diameters are not both measured.

    Raises
    ------
    InputError
        If the measurements contradict each other.
    """
    values = measured(job, place)
    seat, guide = (values.groove, values.head) if place == "head" else (values.rod, values.guide)
    if place not in _RINGS or seat is None or not values.readings:
        return None
    mean, ovality = bore_from_readings(bore_mm(values))
    width = values.width
    halves = Halves(_half_mm(seat), _half_mm(*values.readings), _half_mm(width), _half_mm(guide))
    kind = "piston" if place == "head" else "packing"
    return Gland(kind, seat.value, mean, in_mm(width), in_mm(guide), _half_width_mm(job), ovality, halves)


def _half_mm(*readings: Reading | None) -> float | None:
    """Half-width of what was typed after ± beside one dimension [mm]; None where nothing was."""
    typed = [r.standard_uncertainty for r in readings if r is not None and r.standard_uncertainty]
    return STANDARD_TO_HALF_WIDTH * max(typed) if typed else None


@once_a_state
def odd_readings(job: Job, place: str) -> tuple[Finding, ...]:
    """The one reading of a bore or housing that does not belong with the others, to be said; nothing where all do."""
    return odd_findings(bore_mm(measured(job, place)), _half_width_mm(job))


def stock_rings(job: Job) -> tuple[Ring, ...]:
    """The bench's own rings with their measured sizes, from ``bench.toml``."""
    return read_stock(job.bench.strings("stock", "rings"))


@once_a_state
def candidates(job: Job, place: str) -> SealFit | None:
    """Rings for a head or a packing, best first: the bench's own, AS568 and common metric sizes together.

    Parameters
    ----------
    place : str
        "head" or "packing".

    Returns
    -------
    SealFit or None
        None where the place takes no ring or was not measured yet.

    Raises
    ------
    InputError
        If the measurements or the bench's stock cannot be used.
    """
    gland = gland_of(job, place)
    if gland is None:
        return None
    usual = "low-friction" if place == "tube-ring" else "hand-turned"  # a tube is pushed through its ring
    return _ranked(gland, stock_rings(job), measured(job, place).duty or usual)


@functools.lru_cache(maxsize=16)
def _ranked(gland: Gland, stock: tuple[Ring, ...], duty: str) -> SealFit:
    own = tuple(replace(ring, designation=f"own {ring.designation}", at_hand=True) for ring in stock)
    chosen: Duty = seals.duty(duty)
    return seal_fit(gland, (*own, *(ring for name in FULL_TABLES for ring in seals.rings(name))), chosen)


@once_a_state
def work_out(job: Job, place: str) -> SumAnswer | None:
    """What to cut or to choose where no ring goes: washer, cork, packing or sac.

    Parameters
    ----------
    place : str
        A key of `PLACES`.

    Returns
    -------
    SumAnswer or None
        The answer of the washer or the sac sum, or of the seat's two measurements; None where nothing can be worked out.

    Raises
    ------
    InputError
        If the measurements contradict each other.
    """
    values = measured(job, place)
    if place not in PLACES or any(getattr(values, name) is None for name in PLACES[place].needs):
        return None
    if PLACES[place].way in ("washer", "packing"):
        return WASHER.run(
            _washer_inputs(values, place) | {"drawer": at_hand("washer", job.bench.strings("stock", "washers"))}
        )
    if PLACES[place].way in ("stretch", "press", "liner"):
        return seat_answer(place, values, _half_width_mm(job))
    return SAC.run(_sac_inputs(job, values)) if PLACES[place].way == "sac" else None


def _washer_inputs(values: Measure, place: str) -> dict[str, Value]:
    kind = {
        "washer": values.washer or "flat",
        "cork": "cork",
        "stack": values.stack or "stacked",
        "gasket": values.stack or "stacked",
    }[place]
    return {
        "bore": values.readings,
        "rod": values.groove if place == "cork" else values.rod,
        "kind": kind,
        "length": values.length,
        "thickness": values.thickness,
        "backing": values.head if place == "washer" else None,
    }


def _sac_inputs(job: Job, values: Measure) -> dict[str, Value]:
    system = job.newest(ARRIVAL).system or ""
    return {
        # a sac must pass the narrowest place
        "barrel": min(values.readings, key=lambda r: r.value),
        "material": values.material or ("pleated" if system == "bellows" else "latex"),
        "nipple": values.nipple,
        "nipple_length": values.nipple_length,
        "depth": values.depth,
        "bar": values.bar,
        "sac": values.sac,
        "wall": values.wall,
        "mouth": values.mouth,
        "before": values.bore_before,
        "cleaned": values.cleaned,
        "pneumatic": system.startswith("pneumatic"),
        "drawer": at_hand("sac", job.bench.strings("stock", "sacs")),
    }
