"""Filling mechanisms that use the bore itself: eyedropper, bulb, diaphragm, plunger, piston, syringe and the rest."""

from __future__ import annotations

from pentools.figures.pen.anatomy import Anatomy, Point, dome, threads
from pentools.figures.pen.fillers_sac import tube
from pentools.figures.pen.front import Stations, barrel, blind_cap, nib_and_feed, section
from pentools.figures.pen.proportions import Proportions

__all__ = ["BORE_FILLERS"]


def _front(a: Anatomy, p: Proportions, s: Stations) -> float:
    nib_and_feed(a, s, s.tenon + 0.8)
    return section(a, p, s, nipple=False)


def _ink(a: Anatomy, s: Stations, x0: float, x1: float) -> None:
    a.solid("ink-space", [(x0, s.bore), (x1, s.bore)], "ink")
    a.anchor("ink-space", x0 + 0.4 * (x1 - x0), 0.45 * s.bore)


def _eyedropper(a: Anatomy, p: Proportions, s: Stations) -> None:
    _ink(a, s, s.tenon, min(s.mouth + p["barrel_depth"], s.end - 1.0) - 0.2)
    barrel(a, p, s)
    _front(a, p, s)


def _bulb(a: Anatomy, p: Proportions, s: Stations) -> None:
    length = s.total - s.end
    hole, reach = 0.3 * s.bore, 0.3 * length
    stub = max(0.62 * s.tail, hole + 0.6)
    inner: list[Point] = [(s.mouth, s.bore), (s.end - 3.5, s.bore), (s.end - 1.5, hole), (s.end + reach, hole)]
    blind_cap(a, s, "blind-cap", s.tail - 1.0, length - 1.5)
    barrel(a, p, s, inner=inner, rear=[(s.end, stub), (s.end + reach, stub)])
    _ink(a, s, s.tenon, s.end - 3.5)
    _front(a, p, s)
    wall = 0.8
    start, end, big = s.end + 1.0, s.total - 0.14 * length, min(s.tail - 1.4, stub + 1.4)
    over = min(stub + wall, big)
    outer: list[Point] = [(start, over), (s.end + reach, over), (s.end + reach + 1.5, big), *dome(end - big, big, big)]
    inside: list[Point] = [(start, over - wall), (s.end + reach, over - wall), (s.end + reach + 1.5, big - wall)]
    a.shell("bulb", outer, [*inside, *dome(end - big, big - wall, big - wall)], "soft")
    a.anchor("bulb", end - big, big - 0.5 * wall)
    tube(a, p, s, s.tenon + 0.8, s.end - 6.0)


def _diaphragm(a: Anatomy, p: Proportions, s: Stations) -> None:
    length = s.total - s.end
    wide, seat = min(s.bore + 0.5, s.tail - 0.5), s.end - 10.0
    inner: list[Point] = [(s.mouth, s.bore), (seat - 1.0, s.bore), (seat, 0.78 * s.bore), (seat + 0.8, 0.78 * s.bore)]
    inner += [(seat + 1.8, wide), (s.end, wide)]
    blind_cap(a, s, "blind-cap", s.tail - 1.1, length - 1.6)
    barrel(a, p, s, inner=inner, rear=[(s.end, s.tail)])
    finger = min(9.0, 0.16 * p["barrel_length"])
    tip = seat - finger
    _ink(a, s, s.tenon, seat - 1.0)
    _front(a, p, s)
    tube(a, p, s, s.tenon + 0.8, tip - 2.5)
    neck, wall = 0.62 * s.bore, 0.6
    _plunger_unit(a, p, s, seat, (wide, neck))
    lip: list[Point] = [(seat + 2.6, wide - 0.5), (seat + 1.9, wide - 0.1), (seat + 0.9, neck + 0.2), (seat, neck)]
    back: list[Point] = [(seat + 2.8, wide - 1.0), (seat + 1.3, neck - 0.4), (seat, neck - wall)]
    a.shell(
        "diaphragm",
        [*lip, *dome(tip + neck, neck, -neck)],
        [*back, *dome(tip + neck, neck - wall, wall - neck)],
        "soft",
    )
    a.anchor("diaphragm", tip + neck + 0.5, neck - 0.5 * wall)
    pellet = min(0.9, 0.4 * neck)
    a.path("pellet", [(tip + wall + pellet * (1 + dx), pellet * dy) for dx, dy in _OCTAGON], "metal")
    a.anchor("pellet", tip + wall + pellet, 0.0)


_OCTAGON = ((1.0, 0.0), (0.7, 0.7), (0.0, 1.0), (-0.7, 0.7), (-1.0, 0.0), (-0.7, -0.7), (0.0, -1.0), (0.7, -0.7))


def _plunger_unit(a: Anatomy, p: Proportions, s: Stations, seat: float, radii: tuple[float, float]) -> None:
    """Pump body with cone, spring and plunger, between the diaphragm's seat and the blind cap."""
    wide, neck = radii
    length = s.total - s.end
    shaft = max(min(0.42 * neck, 1.4), 0.5)
    tunnel = max(0.8 * neck, shaft + 0.5)
    guide = shaft + 0.15
    x_cone, x_body, rear = seat + 1.8, seat + 4.2, s.end + 0.34 * length
    a.shell("cone", [(x_cone, tunnel + 0.5), (x_body, wide - 0.25)], [(x_cone, tunnel), (x_body, tunnel)], "cut-back")
    a.anchor("cone", x_body - 0.9, tunnel + 0.35)
    crests = threads(x_body + 0.4, s.end - 0.2, wide)
    stub = max(0.6 * s.tail, guide + 0.6)
    shape: list[Point] = [(x_body, wide - 0.3), *crests, (s.end, stub), (rear, stub)]
    a.shell("pump-body", shape, [(x_body, tunnel), (rear - 1.6, tunnel), (rear - 1.6, guide), (rear, guide)], "metal")
    a.anchor("pump-body", 0.4 * x_body + 0.6 * s.end, 0.5 * (tunnel + wide))
    end = s.end + 0.78 * length
    front = seat - min(9.0, 0.16 * p["barrel_length"]) + 0.7
    a.spring("spring", x_body + 0.5, rear - 1.8, tunnel - 0.1, 8)
    a.anchor("spring", rear - 3.0, 0.8 * tunnel)
    cup = min(neck - 0.9, shaft + 0.4)
    profile: list[Point] = [(front, cup), (front + 2.4, cup), (front + 2.4, shaft), (end - 1.0, shaft)]
    a.solid("plunger", [*profile, *dome(end - 1.0, shaft, 1.0)], "plain")
    a.anchor("plunger", 0.5 * (rear + end), 0.3 * shaft)
    a.length("stroke", end - min(p["stroke"], end - rear) if "stroke" in p.assumed else end - p["stroke"], end, 0.0)


def _vacuum(a: Anatomy, p: Proportions, s: Stations) -> None:
    unit = s.end - min(11.0, 0.18 * p["barrel_length"])
    thick = 0.8
    washer = max(unit - 1.0 - p["stroke"], s.tenon + 3.5)
    flare = min(s.bore + 0.9, s.outer - 0.6)
    neck = washer + 2.6
    inner: list[Point] = [(s.mouth, s.bore), (s.tenon, s.bore), (s.tenon, flare), (neck, flare), (neck + 2.2, s.bore)]
    rod = p.radius("rod")
    wide = min(s.bore, s.tail - 0.6)
    barrel(a, p, s, inner=[*inner, (unit, s.bore), (unit, wide), (s.end, wide)], rear=[(s.end, s.tail)])
    _front(a, p, s)
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
    for i in range(3):
        a.ring("packing", (unit + 1.6 + i * third, third), (felt, rod), "soft")
    a.anchor("packing", unit + 1.6 + 1.5 * third, 0.5 * (felt + rod))
    head = p.radius("head_diameter")
    a.ring("backing-washer", (washer + thick, 0.9), (min(0.82 * head, s.bore), rod), "metal")
    a.ring("washer", (washer, thick), (head, rod), "soft")
    a.solid("rod", [(washer - 1.6, 0.5 * head), (washer, 0.5 * head)], "metal")
    a.anchor("washer", washer + 0.5 * thick, 0.85 * head)
    a.anchor("backing-washer", washer + thick + 0.5, 0.6 * head)
    a.anchor("rod", 0.5 * (washer + unit), 0.4 * rod)
    a.length("stroke", washer + thick + 0.9, unit, 0.0)
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
    a.length("groove_width", g0, g0 + width, 0.0)
    a.length("head_length", x, x + length, 0.0)
    return x + length


def _piston(a: Anatomy, p: Proportions, s: Stations) -> None:
    back = s.end - min(14.0, 0.22 * p["barrel_length"])
    barrel(a, p, s, inner=[(s.mouth, s.bore), (s.end, s.bore)], rear=[(s.end, s.tail)])
    x = max(back - 1.0 - p["head_length"] - 0.45 * min(p["stroke"], back - s.tenon - p["head_length"]), s.tenon + 2.0)
    _ink(a, s, s.tenon, x)
    _front(a, p, s)
    rod = min(p.radius("rod"), s.bore - 1.2)
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
    rod = min(p.radius("rod"), s.bore - 1.2)
    unit = s.end - min(9.0, 0.16 * p["barrel_length"])
    barrel(a, p, s, inner=[(s.mouth, s.bore), (s.end, s.bore)], rear=[(s.end, s.tail)])
    x = max(unit - 1.0 - p["head_length"] - 0.5 * min(p["stroke"], unit - s.tenon - p["head_length"]), s.tenon + 2.0)
    _ink(a, s, s.tenon, x)
    _front(a, p, s)
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
    a.diameter("rod", 0.4 * end + 0.6 * unit, rod)


def _safety(a: Anatomy, p: Proportions, s: Stations) -> None:
    mouth = s.mouth
    throat = min(max(s.hole + 0.5, 0.72 * s.bore), s.bore)
    back = s.end - 8.0
    rod = min(p.radius("rod"), 0.5 * s.bore)
    inner: list[Point] = [(mouth, throat + 0.5), (mouth + 1.0, throat), (mouth + 3.5, throat), (mouth + 5.0, s.bore)]
    inner += [
        (back, s.bore),
        (back, s.bore - 0.3),
        (s.end - 2.5, s.bore - 0.3),
        (s.end - 2.5, rod + 0.15),
        (s.end, rod + 0.15),
    ]
    barrel(a, p, s, inner=inner, rear=[(s.end, s.tail)])
    for sign in (-1.0, 1.0):
        a.path("cap-seat", [(mouth, sign * (throat + 0.5)), (mouth + 1.0, sign * throat)], "line")
    a.anchor("cap-seat", mouth + 0.5, throat + 0.25)
    _ink(a, s, mouth + 5.0, back)
    nib_and_feed(a, s, mouth + 15.0, mouth + 13.0)
    carrier = mouth + 11.0
    tubular = s.bore - 0.35
    thin = min(0.6, 0.2 * s.bore)
    a.ring("helix", (carrier - 1.0, back - carrier - 1.0), (tubular, tubular - thin), "metal")
    turns = 4
    for i in range(turns):
        x = carrier + 5.0 + i * (back - carrier - 8.0) / turns
        lead = 0.72 * (back - carrier - 8.0) / turns
        a.path("helix", [(x, -tubular + thin), (x + lead, tubular - thin)], "line")
        a.path("helix", [(x + 1.3, -tubular + thin), (x + 1.3 + lead, tubular - thin)], "line")
    inside = tubular - thin - 0.15
    a.ring("nib-carrier", (carrier, 6.0), (max(inside, s.feed + 0.5), s.feed), "cut-back")
    a.anchor("nib-carrier", carrier + 1.6, 0.5 * (inside + s.feed))
    a.path(
        "carrier-pin",
        [
            (carrier + 4.0, inside - 0.3),
            (carrier + 5.2, inside - 0.3),
            (carrier + 5.2, tubular),
            (carrier + 4.0, tubular),
        ],
        "metal",
    )
    a.anchor("carrier-pin", carrier + 4.6, tubular - 0.4, fixed=True)
    a.anchor("helix", carrier + 0.6 * (back - carrier), tubular - 0.5 * thin)
    knob = s.end + 0.6 * (s.total - s.end)
    a.solid("spindle", [(back - 2.2, tubular), (back - 1.2, tubular), (back - 1.2, rod), (s.end + 0.3, rod)], "metal")
    blind_cap(a, s, "knob", rod, 0.6 * (s.total - s.end))
    a.solid("spindle", [(s.end, rod), (knob, rod)], "metal")
    a.ring("packing", (back + 0.2, s.end - 2.8 - back), (s.bore - 0.35, rod), "soft")
    a.anchor("packing", back + 0.5 * (s.end - 2.8 - back), 0.5 * (rod + s.bore))
    a.anchor("spindle", s.end + 0.3 * (s.total - s.end), 0.3 * rod)
    a.diameter("rod", s.end - 1.2, rod)


def _capillary(a: Anatomy, p: Proportions, s: Stations) -> None:
    vent = 0.22 * s.bore
    inner: list[Point] = [(s.mouth, s.bore), (s.end - 3.0, s.bore), (s.end - 3.0, vent), (s.end, vent)]
    barrel(a, p, s, inner=inner, rear=[*dome(s.end - 2.0, s.tail, 2.0, 0.55 * s.tail)])
    _front(a, p, s)
    x0, x1, r = s.tenon + 2.5, s.end - 7.0, 0.86 * s.bore
    a.solid("capillary-cell", [(x0, r), (x1, r)], "ink")
    a.solid("capillary-cell", [(s.tenon + 0.3, 0.7 * s.passage), (x0 + 6.0, 0.7 * s.passage)], "plain")
    layers = max(int(r / 0.55), 3)
    for i in range(-layers + 1, layers):
        y = i * r / layers
        if abs(y) > s.passage:
            a.path("capillary-cell", [(x0, y), (x1, y)], "hidden" if i % 2 else "line")
        else:
            a.path("capillary-cell", [(x0 + 6.4, y), (x1, y)], "hidden" if i % 2 else "line")
    a.anchor("capillary-cell", x0 + 0.6 * (x1 - x0), 0.5 * r)
    a.path("vent", [(s.end - 3.0, -vent), (s.end, -vent), (s.end, vent), (s.end - 3.0, vent)], "void")
    a.anchor("vent", s.end - 1.5, 0.0)


def _converter(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    nib_and_feed(a, s, s.tenon + 2.5)
    outer = p.radius("cartridge_diameter")
    section(a, p, s, nipple=True)
    start = s.tenon + 0.6
    end = min(start + p["cartridge_length"], s.mouth + p["barrel_depth"] - 1.0)
    rn = min(p.radius("nipple"), outer - 0.5)
    wall = min(0.55, 0.2 * outer)
    body = end - 0.2 * (end - start)
    inner: list[Point] = [(start, rn), (start + 5.2, rn), (start + 5.4, outer - wall), (body, outer - wall)]
    head, seal = start + 0.42 * (body - start), outer - wall
    a.solid("converter", [(start + 5.4, seal), (head, seal)], "ink")
    a.shell("converter", [(start, outer), (body, outer)], inner, "plain")
    a.anchor("converter", start + 0.26 * (end - start), outer - 0.5 * wall)
    a.solid("rod", [(head, 0.36 * seal), (body + 1.0, 0.36 * seal)], "metal")
    a.ring("head-seal", (head, 2.6), (seal, 0.36 * seal), "soft")
    a.anchor("head-seal", head + 1.3, 0.7 * seal)
    a.anchor("rod", 0.5 * (head + 2.6 + body), 0.15 * seal)
    a.ring("knob", (body, 0.4 * (end - body)), (outer, 0.4 * seal), "metal")
    a.solid("knob", [(body + 0.4 * (end - body), 0.8 * outer), (end, 0.8 * outer)], "plain")
    a.anchor("knob", body + 0.7 * (end - body), 0.4 * outer)
    a.length("cartridge_length", start, end, 0.0)
    a.diameter("cartridge_diameter", start + 0.3 * (end - start), outer)


BORE_FILLERS = {
    "eyedropper": _eyedropper,
    "bulb": _bulb,
    "diaphragm-pump": _diaphragm,
    "plunger-vacuum": _vacuum,
    "piston": _piston,
    "syringe": _syringe,
    "safety": _safety,
    "capillary": _capillary,
    "cartridge-converter": _converter,
}
"""Filling system key -> the function that draws section, barrel and mechanism."""
