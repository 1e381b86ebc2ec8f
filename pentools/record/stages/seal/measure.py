"""What was measured of each seal, and what would fit there."""

from __future__ import annotations

import functools
import math
from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.seal.bore import bore_from_readings, odd_findings
from pentools.calc.seal.fit import SealFit, seal_fit
from pentools.calc.seal.gland import Gland, Halves, Ring
from pentools.calc.seal.judge import Duty
from pentools.fields import Value
from pentools.record.stages.seal.kinds import MEASURE, PLACES, millimetres
from pentools.sums.base import SumAnswer
from pentools.sums.seal.sac import SAC
from pentools.sums.seal.stock import read_stock
from pentools.sums.seal.washer import WASHER
from pentools.tables import seals
from pentools.units import Reading, read_quantity

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = [
    "bore_readings",
    "candidates",
    "entries_at",
    "gland_of",
    "measured",
    "odd_readings",
    "places_in_use",
    "stock_rings",
    "work_out",
]

STANDARD_TO_HALF_WIDTH = math.sqrt(3)
FULL_TABLES = ("as568", "metric")


def entries_at(job: Job, kind: str, place: str) -> list[tuple[Entry, dict[str, Value]]]:
    """The entries of a kind that belong to a place, with their values."""
    return [(entry, values) for entry, values in job.log("seal", kind) if values["place"] == place]


def measured(job: Job, place: str) -> dict[str, Value]:
    """What was measured at a place: its newest entry; all None where there is none.

    Parameters
    ----------
    job : Job
        The job.
    place : str
        A key of `PLACES`.

    Returns
    -------
    dict
        Field name to value.
    """
    found = entries_at(job, "measure", place)
    return found[-1][1] if found else {field.name: None for field in MEASURE.fields}


def places_in_use(job: Job) -> tuple[str, ...]:
    """The places that something was measured, tried or sealed at, in the order they were first named."""
    named = [str(values["place"]) for kind in ("measure", "trial", "sealant") for _, values in job.log("seal", kind)]
    return tuple(dict.fromkeys(name for name in named if name in PLACES))


def bore_readings(values: Mapping[str, Value]) -> tuple[float, ...]:
    """Every reading of the bore at both depths, or of the housing [mm]."""
    names = ("bore", "bore_deep") if values.get("bore") else ("housing",)
    groups = (values.get(name) for name in names)
    return tuple(r.value for group in groups if isinstance(group, tuple) for r in group if isinstance(r, Reading))


def _half_width_mm(job: Job) -> float:
    """Half-width of one calliper reading: the bench's standard uncertainty times the root of three."""
    text = job.bench.text("caliper", "uncertainty")
    return 0.03 if not text else STANDARD_TO_HALF_WIDTH * read_quantity(text, "mm", name="calliper").value


def gland_of(job: Job, place: str) -> Gland | None:
    """The groove that a ring goes into.

    Parameters
    ----------
    job : Job
        The job.
    place : str
        "head" or "packing".

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
    inner = millimetres(values, "groove" if place == "head" else "rod")
    readings = bore_readings(values)
    if place not in ("head", "packing") or inner is None or not readings:
        return None
    mean, ovality = bore_from_readings(readings)
    head = place == "head"
    names = ("groove", "bore", "width", "head") if head else ("rod", "housing", "width", "guide")
    halves = Halves(*(_typed_half_mm(values[name]) for name in names))
    guide, width = millimetres(values, names[3]), millimetres(values, "width")
    kind = "piston" if head else "packing"
    return Gland(kind, inner, mean, width, guide, _half_width_mm(job), ovality, halves)


def _typed_half_mm(value: Value) -> float | None:
    """Half-width of what was typed after ± beside one dimension [mm]; None where nothing was."""
    several = value if isinstance(value, tuple) else (value,)
    typed = [r.standard_uncertainty for r in several if isinstance(r, Reading) and r.standard_uncertainty]
    return STANDARD_TO_HALF_WIDTH * max(typed) if typed else None


def odd_readings(job: Job, place: str) -> tuple[Finding, ...]:
    """The one reading of a bore or housing that does not belong with the others, to be said; nothing where all do."""
    values = measured(job, place)
    return odd_findings(bore_readings(values), _half_width_mm(job)) if place in PLACES else ()


def stock_rings(job: Job) -> tuple[Ring, ...]:
    """The bench's own rings with their measured sizes, from ``bench.toml``."""
    return read_stock(job.bench.strings("stock", "rings"))


def candidates(job: Job, place: str) -> SealFit | None:
    """Rings for a head or a packing, best first: the bench's own, AS568 and common metric sizes together.

    Parameters
    ----------
    job : Job
        The job.
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
    return _ranked(gland, stock_rings(job), str(measured(job, place)["duty"] or "hand-turned"))


@functools.lru_cache(maxsize=16)
def _ranked(gland: Gland, stock: tuple[Ring, ...], duty: str) -> SealFit:
    own = tuple(replace(ring, designation=f"own {ring.designation}") for ring in stock)
    chosen: Duty = seals.duty(duty)
    return seal_fit(gland, (*own, *(ring for name in FULL_TABLES for ring in seals.rings(name))), chosen)


def work_out(job: Job, place: str) -> SumAnswer | None:
    """What to cut or to choose where no ring goes: washer, cork, packing or sac.

    Parameters
    ----------
    job : Job
        The job.
    place : str
        A key of `PLACES`.

    Returns
    -------
    SumAnswer or None
        The answer of the washer or the sac sum; None where nothing can be worked out.

    Raises
    ------
    InputError
        If the measurements contradict each other.
    """
    values = measured(job, place)
    if place not in PLACES or any(values[name] is None for name in PLACES[place].needs):
        return None
    readings = tuple(Reading(mm, "mm") for mm in bore_readings(values))
    if PLACES[place].way in ("washer", "packing"):
        given: dict[str, Value] = dict.fromkeys(field.name for field in WASHER.fields)
        kind = {"washer": values["washer"] or "flat", "cork": "cork", "stack": values["stack"] or "stacked"}[place]
        seat = values["groove"] if place == "cork" else values["rod"]
        given |= {"bore": readings, "rod": seat, "kind": kind, "length": values["length"]}
        given |= {"thickness": values["thickness"], "backing": values["head"] if place == "washer" else None}
        return WASHER.run(given)
    if PLACES[place].way == "sac":
        given = {field.name: field.read(field.default) for field in SAC.fields if not field.required}
        names = ("nipple", "nipple_length", "depth", "bar", "cleaned", "sac", "wall", "mouth")
        given |= {name: values[name] for name in names} | {"before": values["bore_before"]}
        given["pneumatic"] = str(job.values("intake", "arrival")["system"]).startswith("pneumatic")
        # a sac must pass the narrowest place
        given |= {"barrel": min(readings, key=lambda r: r.value), "material": values["material"] or "latex"}
        return SAC.run(given)
    return None
