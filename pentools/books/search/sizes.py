"""The sizes of a pen under one name each, wherever they were measured: at intake, with a seal, at the fill test, at closing."""

from __future__ import annotations

import math
import statistics
from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

import msgspec

from pentools.calc.books.nearness import ROUGH_MM
from pentools.errors import InputError
from pentools.fields import Field
from pentools.record.stages.closing.kinds import ROUND
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE
from pentools.record.stages.treatment.opening_kinds import BLOCK
from pentools.record.stages.weighing.kinds import DIMENSIONS as FILL
from pentools.systems.dimensions import ASKED, DIMENSIONS
from pentools.units import Reading, read_quantity

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.job import Job
    from pentools.record.stages.seal.kinds import Measure

__all__ = ["EITHER", "SIZE_FIELDS", "Size", "calliper_of", "doubt_of", "size_words", "sizes_of"]

_OF_SEAL: Mapping[str, str] = {
    "groove": "groove_diameter", "width": "groove_width", "head": "head_diameter", "rod": "rod", "housing": "housing",
    "guide": "guide", "length": "seat_length", "thickness": "packing_thickness", "nipple": "nipple",
    "nipple_length": "nipple_length", "depth": "depth", "bar": "bar", "sac": "sac_outside", "wall": "sac_wall",
    "mouth": "mouth", "rubber": "rubber", "rubber_length": "rubber_length", "tube": "breather_diameter",
    "tube_hole": "tube_hole", "reach": "breather_length", "lip": "lip", "lip_reach": "lip_reach", "lip_depth": "lip_depth",
    "was_outside": "was_outside", "was_length": "was_length", "bore": "bore",
}  # fmt: skip
"""A measurement of the seal stage -> the name of the size."""
_OF_BLOCK = {"tail": "feed_tail", "shoulder": "feed_shoulder", "bore": "section_bore"}
_OF_ROUND = {"sac_length": "sac_length", "tube_reach": "breather_length", "bar_length": "bar_length"}
_ROUGH = {name for name, one in DIMENSIONS.items() if one.rough} | {
    "depth", "seat_length", "nipple_length", "rubber_length", "lip_reach", "lip_depth", "was_length", "bar_length",
}  # fmt: skip
EITHER: Mapping[str, tuple[str, ...]] = {"barrel": ("bore", "barrel_diameter"), "cap": ("cap_diameter",), "section": ("section_diameter",), "sac": ("sac_outside",)}  # fmt: skip
"""A short word -> the sizes that may be meant by it; the nearer one counts."""


class Size(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """A size in the unit of its name.

    Parameters
    ----------
    name : str
        A key of `SIZE_FIELDS`.
    value : float
        The value; the mean of several readings.
    stated : float or None
        The standard uncertainty that was typed with it; None where none was.
    spread : float
        What the scatter of several readings leaves of doubt in their mean; 0 of one reading.
    """

    name: str
    value: float
    stated: float | None
    spread: float = 0.0


def _fields() -> dict[str, Field]:
    found = {}
    for name, one in DIMENSIONS.items():
        asked = Field(name, one.words, "quantity" if one.unit else "count", unit=one.unit, low=one.low, high=one.high)
        found[name] = asked if one.unit else replace(asked, low=int(one.low), high=int(one.high))
    others = [(MEASURE.field(seal), name) for seal, name in _OF_SEAL.items()]
    others += [(BLOCK.field(own), name) for own, name in _OF_BLOCK.items()]
    others += [(ROUND.field(own), name) for own, name in _OF_ROUND.items()]
    for asked, name in others:
        if name not in found:
            found[name] = replace(asked, name=name, kind="quantity", required=False, default="")
    for short, names in EITHER.items():
        low, high = min(found[n].low or 0 for n in names), max(found[n].high or 0 for n in names)
        words = "barrel, inside or outside" if short == "barrel" else found[names[0]].label
        found[short] = replace(found[names[0]], name=short, label=words, low=low, high=high)
    return found


SIZE_FIELDS: Mapping[str, Field] = MappingProxyType(_fields())
"""Everything that can be asked for: every dimension of a pen, what the seals are measured by, and a few short words."""


def size_words(name: str) -> str:
    """A size in words, such as "nipple diameter"."""
    return SIZE_FIELDS[name].label[:1].lower() + SIZE_FIELDS[name].label[1:]


def calliper_of(bench: Bench) -> float:
    """One standard uncertainty of a reading of the bench's calliper [mm]; 0.02 mm where nothing usable is said."""
    try:
        told = read_quantity(bench.text("caliper", "uncertainty"), "mm").value
    except InputError:
        told = 0.0
    return told if told > 0 else 0.02


def sizes_of(job: Job) -> tuple[Size, ...]:
    """Every size of a pen, the newest reading of each; a bore of each seal by itself.

    Returns
    -------
    tuple of Size
        In no order that matters; a name may stand twice where it was measured at several places.
    """
    found: dict[tuple[str, str], Size] = {}
    for place, size in _all(job):
        found[place, size.name] = size
    return tuple(dict.fromkeys(found.values()))


def _all(job: Job) -> Iterator[tuple[str, Size]]:
    for kind in (ARRIVAL, FILL):
        newest = job.newest(kind)
        for field in kind.fields:
            if field.name in ASKED:
                yield from _taken("", ASKED[field.name].name, getattr(newest, field.name))
    block = job.newest(BLOCK)
    for own, name in _OF_BLOCK.items():
        yield from _taken("", name, getattr(block, own))
    for logged in job.log(ROUND):
        for own, name in _OF_ROUND.items():
            yield from _taken("closing", name, getattr(logged.values, own))
    for measured in job.log(MEASURE):
        yield from _of_measure(measured.values)


def _of_measure(values: Measure) -> Iterator[tuple[str, Size]]:
    place = values.place or ""
    for own, name in _OF_SEAL.items():
        if own in ("bore", "housing"):
            readings = (*(getattr(values, own) or ()), *((values.bore_deep or ()) if own == "bore" else ()))
            if readings:
                yield place, _mean(name, readings)
        else:
            yield from _taken(place, name, getattr(values, own))


def _taken(place: str, name: str, value: Reading | float | None) -> Iterator[tuple[str, Size]]:
    if isinstance(value, Reading):
        yield place, Size(name, value.value, value.standard_uncertainty)
    elif value is not None:
        yield place, Size(name, float(value), None)


def _mean(name: str, readings: tuple[Reading, ...]) -> Size:
    """The mean of several readings; of what was stated the largest counts, because it may be of the same calliper."""
    stated = [one.standard_uncertainty for one in readings if one.standard_uncertainty is not None]
    spread = statistics.stdev(one.value for one in readings) / math.sqrt(len(readings)) if len(readings) > 1 else 0.0
    return Size(name, statistics.fmean(one.value for one in readings), max(stated, default=None), spread)


def doubt_of(size: Size, calliper: float) -> float:
    """The standard uncertainty of a size: as stated, else the bench's calliper (`ROUGH_MM` for a depth inside a pen)."""
    usual = max(calliper, ROUGH_MM) if size.name in _ROUGH else calliper
    return math.hypot(usual if size.stated is None else size.stated, size.spread)
