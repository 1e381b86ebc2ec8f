"""Filling mechanisms with something that slides in the bore: plunger vacuum, piston and syringe."""

from __future__ import annotations

from pentools.figures.pen.anatomy import Anatomy
from pentools.figures.pen.fillers_bore import bore_front, ink
from pentools.figures.pen.front import Stations, barrel, blind_cap
from pentools.figures.pen.profiles import Point, threads
from pentools.figures.pen.proportions import Proportions

__all__ = ["PISTON_FILLERS"]


def _vacuum(a: Anatomy, p: Proportions, s: Stations) -> None:
    unit = s.end - min(11.0, 0.18 * p["barrel_length"])
    thick, rod, head = 0.8, p.radius("rod"), p.radius("head_diameter")
    washer = max(unit - thick - 0.9 - p["stroke"], s.tenon + 2.0)
    flare = min(s.bore + 0.9, s.outer - 0.6)
    neck = washer + 2.6
    inner: list[Point] = [(s.mouth, s.bore), (s.tenon, s.bore), (s.tenon, flare), (neck, flare), (neck + 2.2, s.bore)]
    wide = min(s.bore, s.tail - 0.6)
    barrel(a, p, s, inner=[*inner, (unit, s.bore), (unit, wide), (s.end, wide)], rear=[(s.end, s.tail)])
    bore_front(a, p, s)
    a.path("flare", [(s.tenon, -flare), (neck, -flare), (neck + 2.2, -s.bore)], "line")
    a.path("flare", [(s.tenon, flare), (neck, flare), (neck + 2.2, s.bore)], "line")
    a.anchor("flare", neck + 0.9, 0.5 * (flare + s.bore))
    felt = min(rod + 1.7, wide - 0.5)
    crests = threads(unit + 0.4, s.end - 0.3, wide)
    shape: list[Point] = [(unit, wide - 0.35), *crests, (s.end, wide - 0.35)]
    hollow: list[Point] = [(unit, rod + 0.12), (unit + 1.6, rod + 0.12), (unit + 1.6, felt), (s.end - 2.2, felt)]
    a.shell("packing-unit", shape, [*hollow, (s.end - 2.2, rod + 0.12), (s.end, rod + 0.12)], "cut-back")
    a.anchor("packing-unit", s.end - 1.0, 0.5 * (rod + wide))
    blind_cap(a, s, "blind-cap", rod + 0.1, 0.6 * (s.total - s.end))
    back = s.end + 0.55 * (s.total - s.end)
    a.solid("rod", [(washer - 0.9, 0.7 * rod), (washer, rod), (back, rod)], "metal")
    third = (s.end - 2.2 - unit - 1.6) / 3.0
    for x in (unit + 1.6, unit + 1.6 + third, unit + 1.6 + 2.0 * third):
        a.ring("packing", (x, third), (felt, rod), "soft")
    a.anchor("packing", unit + 1.6 + 1.5 * third, 0.5 * (felt + rod))
    a.ring("backing-washer", (washer + thick, 0.9), (min(0.82 * head, s.bore), rod), "metal")
    a.ring("washer", (washer, thick), (head, rod), "soft")
    a.solid("rod", [(washer - 1.6, 0.5 * head), (washer, 0.5 * head)], "metal")
    a.anchor("washer", washer + 0.5 * thick, 0.85 * head)
    a.anchor("backing-washer", washer + thick + 0.5, 0.6 * head)
    a.anchor("rod", 0.5 * (washer + unit), 0.4 * rod)
    a.length("stroke", washer + thick + 0.9, unit, 0.0)
    a.diameter("housing", unit + 1.6 + 1.5 * third, felt)
    a.diameter("rod", 0.6 * washer + 0.4 * unit, rod)
    a.diameter("head_diameter", washer + 0.5 * thick, head)


def _head(a: Anatomy, p: Proportions, x: float, bore: float) -> float:
    """A piston head with its seal in the groove; returns where the head ends [mm]."""
    head, length = p.radius("head_diameter"), p["head_length"]
    groove, width = p.radius("groove_diameter"), p["groove_width"]
    g0 = x + 0.5 * (length - width)
    shape: list[Point] = [(x, 0.8 * head), (x + 0.4, head), (g0, head), (g0, groove), (g0 + width, groove)]
    a.solid("piston-head", [*shape, (g0 + width, head), (x + length, head)], "plain")
    a.ring("head-seal", (g0 + 0.04, width - 0.08), (bore, groove), "soft")
    a.anchor("piston-head", x + 0.5 * (g0 - x), 0.45 * head)
    a.anchor("head-seal", g0 + 0.5 * width, 0.5 * (bore + groove))
    a.diameter("head_diameter", x + 0.3, head)
    a.diameter("groove_diameter", g0 + 0.5 * width, groove)
    a.length("groove_width", g0, g0 + width, -0.5 * (head + groove))
    a.length("head_length", x, x + length, 0.0)
    return x + length


def _piston(a: Anatomy, p: Proportions, s: Stations) -> None:
    back = s.end - min(14.0, 0.22 * p["barrel_length"])
    barrel(a, p, s, inner=[(s.mouth, s.bore), (s.end, s.bore)], rear=[(s.end, s.tail)])
    x = max(back - 1.0 - p["head_length"] - 0.45 * min(p["stroke"], back - s.tenon - p["head_length"]), s.tenon + 2.0)
    ink(a, s, s.tenon, x)
    bore_front(a, p, s)
    rod = p.radius("rod")
    sleeve = min(rod + 0.15, s.bore - 0.6)
    a.shell(
        "screw-sleeve", [(back, s.bore - 0.06), (s.end, s.bore - 0.06)], [(back, sleeve), (s.end, sleeve)], "cut-back"
    )
    a.anchor("screw-sleeve", back + 2.2, 0.5 * (sleeve + s.bore))
    end = _head(a, p, x, s.bore)
    a.solid("rod", [(end, rod), (back + 4.0, rod)], "plain")
    core = 0.8 * rod
    knob = s.end + 0.65 * (s.total - s.end)
    a.solid(
        "spindle",
        [(back + 4.0, core), *threads(back + 4.0, s.end + 0.5, rod, 0.25, 1.2), (s.end + 0.5, core), (knob, core)],
        "metal",
    )
    blind_cap(a, s, "knob", core + 0.02, 0.66 * (s.total - s.end))
    a.solid("spindle", [(s.end + 0.2, core), (knob, core)], "metal")
    for i in range(5):
        xk = s.end + (0.28 + 0.1 * i) * (s.total - s.end)
        a.path("knob", [(xk, -0.97 * s.tail), (xk, -0.8 * s.tail)], "line")
        a.path("knob", [(xk, 0.8 * s.tail), (xk, 0.97 * s.tail)], "line")
    a.anchor("rod", 0.6 * end + 0.4 * back, 0.4 * rod)
    a.anchor("spindle", s.end - 2.5, 0.3 * core)
    front = (
        max(back - 1.0 - p["head_length"] - p["stroke"], s.tenon)
        if "stroke" in p.assumed
        else back - 1.0 - p["head_length"] - p["stroke"]
    )
    a.length("stroke", front, back - 1.0 - p["head_length"], 0.0)
    a.diameter("rod", 0.5 * (end + back), rod)


def _syringe(a: Anatomy, p: Proportions, s: Stations) -> None:
    rod = p.radius("rod")
    unit = s.end - min(9.0, 0.16 * p["barrel_length"])
    barrel(a, p, s, inner=[(s.mouth, s.bore), (s.end, s.bore)], rear=[(s.end, s.tail)])
    x = max(unit - 1.0 - p["head_length"] - 0.5 * min(p["stroke"], unit - s.tenon - p["head_length"]), s.tenon + 2.0)
    ink(a, s, s.tenon, x)
    bore_front(a, p, s)
    felt = min(rod + 1.4, s.bore - 0.5)
    crests = threads(unit + 0.4, s.end - 0.3, s.bore)
    hollow: list[Point] = [(unit, felt), (s.end - 3.0, felt), (s.end - 3.0, rod + 0.12), (s.end, rod + 0.12)]
    a.shell("gland", [(unit, s.bore - 0.35), *crests, (s.end, s.bore - 0.35)], hollow, "cut-back")
    a.ring("packing", (unit + 0.3, s.end - 3.3 - unit), (felt, rod), "soft")
    a.anchor("packing", unit + 0.4 * (s.end - 3.0 - unit), 0.5 * (felt + rod))
    a.anchor("gland", s.end - 1.4, 0.5 * (rod + s.bore))
    end = _head(a, p, x, s.bore)
    blind_cap(a, s, "end-cap", rod + 0.05, 0.6 * (s.total - s.end))
    a.solid("rod", [(end, rod), (s.end + 0.55 * (s.total - s.end), rod)], "metal")
    a.anchor("rod", 0.5 * (end + unit), 0.4 * rod)
    front = unit - 1.0 - p["head_length"] - p["stroke"]
    a.length("stroke", max(front, s.tenon) if "stroke" in p.assumed else front, unit - 1.0 - p["head_length"], 0.0)
    a.diameter("housing", unit + 0.4 * (s.end - 3.0 - unit), felt)
    a.diameter("rod", 0.4 * end + 0.6 * unit, rod)


PISTON_FILLERS = {"plunger-vacuum": _vacuum, "piston": _piston, "syringe": _syringe}
"""Filling system key -> the function that draws section, barrel and mechanism."""
