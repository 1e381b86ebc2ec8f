"""The plunger vacuum filler: a down stroke leaves a vacuum that lets go at the wide front of the bore."""

from __future__ import annotations

from pentools.calc.weighing.families import PLUNGER
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import bore_front
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel, blind_cap
from pentools.systems.profiles import Point, threads
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]

_THICK = 0.8  # of the washer, as drawn [mm]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    unit = s.end - min(11.0, 0.18 * p["barrel_length"])
    washer = max(unit - _THICK - 0.9 - p["stroke"], s.tenon + 2.0)
    flare = min(s.bore + 0.9, s.outer - 0.6)
    neck = washer + 2.6
    inner: list[Point] = [(s.mouth, s.bore), (s.tenon, s.bore), (s.tenon, flare), (neck, flare), (neck + 2.2, s.bore)]
    wide = min(s.bore, s.tail - 0.6)
    barrel(a, p, s, inner=[*inner, (unit, s.bore), (unit, wide), (s.end, wide)], rear=[(s.end, s.tail)])
    bore_front(a, p, s)
    for sign in (-1.0, 1.0):
        a.path("flare", [(s.tenon, sign * flare), (neck, sign * flare), (neck + 2.2, sign * s.bore)], "line")
    a.anchor("flare", neck + 0.9, 0.5 * (flare + s.bore))
    _packing_unit(a, s, unit, wide, p.radius("rod"))
    _washer_on_its_rod(a, p, s, washer, unit)


def _packing_unit(a: Anatomy, s: Stations, unit: float, wide: float, rod: float) -> None:
    """The threaded unit at the barrel's end with three rings of packing round the rod, and the blind cap over it."""
    felt = min(rod + 1.7, wide - 0.5)
    crests = threads(unit + 0.4, s.end - 0.3, wide)
    shape: list[Point] = [(unit, wide - 0.35), *crests, (s.end, wide - 0.35)]
    hollow: list[Point] = [(unit, rod + 0.12), (unit + 1.6, rod + 0.12), (unit + 1.6, felt), (s.end - 2.2, felt)]
    a.shell("packing-unit", shape, [*hollow, (s.end - 2.2, rod + 0.12), (s.end, rod + 0.12)], "cut-back")
    a.anchor("packing-unit", s.end - 1.0, 0.5 * (rod + wide))
    blind_cap(a, s, "blind-cap", rod + 0.1, 0.6 * (s.total - s.end))
    third = (s.end - 2.2 - unit - 1.6) / 3.0
    for ring in range(3):
        a.ring("packing", (unit + 1.6 + ring * third, third), (felt, rod), "soft")
    a.anchor("packing", unit + 1.6 + 1.5 * third, 0.5 * (felt + rod))
    a.diameter("housing", unit + 1.6 + 1.5 * third, felt)


def _washer_on_its_rod(a: Anatomy, p: Proportions, s: Stations, washer: float, unit: float) -> None:
    """Rod, washer and backing washer at the end of the stroke."""
    rod, head = p.radius("rod"), p.radius("head_diameter")
    a.solid("rod", [(washer - 0.9, 0.7 * rod), (washer, rod), (s.end + 0.55 * (s.total - s.end), rod)], "metal")
    a.ring("backing-washer", (washer + _THICK, 0.9), (min(0.82 * head, s.bore), rod), "metal")
    a.ring("washer", (washer, _THICK), (head, rod), "soft")
    a.solid("rod", [(washer - 1.6, 0.5 * head), (washer, 0.5 * head)], "metal")
    a.anchor("washer", washer + 0.5 * _THICK, 0.85 * head)
    a.anchor("backing-washer", washer + _THICK + 0.5, 0.6 * head)
    a.anchor("rod", 0.5 * (washer + unit), 0.4 * rod)
    a.length("stroke", washer + _THICK + 0.9, unit, 0.0)
    a.diameter("rod", 0.6 * washer + 0.4 * unit, rod)
    a.diameter("head_diameter", washer + 0.5 * _THICK, head)


SYSTEM = System(
    key="plunger-vacuum",
    label="plunger vacuum filler",
    family=PLUNGER,
    parts=(
        *FRONT_PARTS,
        "section-joint",
        "barrel",
        "cap-threads",
        "flare",
        "backing-washer",
        "washer",
        "rod",
        "packing",
        "packing-unit",
        "blind-cap",
    ),
    seals_at="washer",
    works_at="rod",
    end_part="blind-cap",
    typical=Typical(end_mm=13.0, bore_share=0.70, head_share=0.99),
    draw=_draw,
)
