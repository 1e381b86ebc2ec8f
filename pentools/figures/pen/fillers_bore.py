"""Filling mechanisms that use the bore itself: eyedropper, bulb, diaphragm pump, safety pen, capillary and cartridge."""

from __future__ import annotations

from pentools.figures.pen.anatomy import Anatomy
from pentools.figures.pen.fillers_sac import tube
from pentools.figures.pen.front import Stations, barrel, blind_cap, nib_and_feed, section
from pentools.figures.pen.profiles import Point, dome, round_points, threads
from pentools.figures.pen.proportions import Proportions

__all__ = ["BORE_FILLERS", "bore_front", "ink"]


def bore_front(a: Anatomy, p: Proportions, s: Stations) -> float:
    """Nib, feed and a threaded section in front of a bore that holds the ink.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.

    Returns
    -------
    float
        Where the section ends inside the barrel [mm].
    """
    nib_and_feed(a, s, s.tenon + 0.8)
    return section(a, p, s, nipple=False)


def ink(a: Anatomy, s: Stations, x0: float, x1: float) -> None:
    """The ink in the bore.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    s : Stations
        Places.
    x0, x1 : float
        Ends [mm].
    """
    a.solid("ink-space", [(x0, s.bore), (x1, s.bore)], "ink")
    a.length("depth", x0, x1, 0.0)
    a.anchor("ink-space", x0 + 0.4 * (x1 - x0), 0.45 * s.bore)


def _eyedropper(a: Anatomy, p: Proportions, s: Stations) -> None:
    ink(a, s, s.tenon, min(s.mouth + p["barrel_depth"], s.end - 1.0) - 0.2)
    barrel(a, p, s)
    bore_front(a, p, s)


def _bulb(a: Anatomy, p: Proportions, s: Stations) -> None:
    length = s.total - s.end
    hole, reach = 0.3 * s.bore, 0.3 * length
    stub = max(0.62 * s.tail, hole + 0.6)
    inner: list[Point] = [(s.mouth, s.bore), (s.end - 3.5, s.bore), (s.end - 1.5, hole), (s.end + reach, hole)]
    blind_cap(a, s, "blind-cap", s.tail - 1.0, length - 1.5)
    barrel(a, p, s, inner=inner, rear=[(s.end, stub), (s.end + reach, stub)])
    ink(a, s, s.tenon, s.end - 3.5)
    bore_front(a, p, s)
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
    ink(a, s, s.tenon, seat - 1.0)
    bore_front(a, p, s)
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
    a.path("pellet", round_points(tip + wall + pellet, 0.0, pellet), "metal")
    a.anchor("pellet", tip + wall + pellet, 0.0)


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


def _safety(a: Anatomy, p: Proportions, s: Stations) -> None:
    mouth = s.mouth
    throat = min(max(s.hole + 0.5, 0.72 * s.bore), s.bore)
    back = s.end - 8.0
    rod = p.radius("rod")
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
    ink(a, s, mouth + 5.0, back)
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
    bore_front(a, p, s)
    x0, x1, r = s.tenon + 2.5, s.end - 7.0, 0.86 * s.bore
    a.solid("capillary-cell", [(x0, r), (x1, r)], "ink")
    a.path("capillary-cell", [(x0, -r), (x1, -r), (x1, r), (x0, r), (x0, -r)], "line")
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
    end = start + p["cartridge_length"]
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
    "safety": _safety,
    "capillary": _capillary,
    "cartridge-converter": _converter,
}
"""Filling system key -> the function that draws section, barrel and mechanism."""
