"""Filling mechanisms with a rubber sac: lever, button, crescent, slot and metal sleeve."""

from __future__ import annotations

import math

from pentools.figures.pen.anatomy import Anatomy, Span
from pentools.figures.pen.front import Stations, barrel, blind_cap, nib_and_feed, section
from pentools.figures.pen.profiles import Point, dome, round_points
from pentools.figures.pen.proportions import Proportions

__all__ = ["SAC_FILLERS", "sac", "sac_front", "tailed", "tube"]


def sac(a: Anatomy, p: Proportions, s: Stations) -> tuple[float, float]:
    """The sac on the nipple, with its ink.

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
    tuple of (float, float)
        Where it ends, and its outside radius [mm].
    """
    start, nipple, wall = s.tenon + 0.3, p.radius("nipple"), p["sac_wall"]
    body = p.radius("sac_outside")
    end = start + p["sac_length"]
    neck = max(nipple + wall, 0.5)
    swell, tip = start + 6.2, min(body, 0.3 * p["sac_length"])
    outer: list[Point] = [(start, neck), (start + 5.2, neck), (swell + 1.5, body)]
    outer += dome(end - tip, body, tip)
    inner: list[Point] = [(start, neck - wall), (start + 5.2, neck - wall), (swell + 1.5, body - wall)]
    inner += dome(end - tip, body - wall, tip - wall)
    a.solid("ink-space", [(start + 5.2, neck - wall), *inner[2:]], "ink")
    a.shell("sac", outer, inner, "soft")
    a.anchor("sac", start + 0.52 * p["sac_length"], body - 0.5 * wall)
    a.length("sac_length", start, end, 0.0)
    a.diameter("sac_outside", start + 0.4 * p["sac_length"], body)
    at = start + 0.6 * p["sac_length"]
    a.spans["sac_wall"] = Span((at, -body), (at, wall - body))
    return end, body


def sac_front(a: Anatomy, p: Proportions, s: Stations) -> None:
    """Nib, feed and a section with its nipple, in front of a sac.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.
    """
    nib_and_feed(a, s, s.tenon + 4.0)
    section(a, p, s, nipple=True)


def _bar(a: Anatomy, s: Stations, x0: float, x1: float, body: float, *, bow: float = 0.0) -> float:
    """A flat bar beside the sac, on the lower side; returns the height of its outer face [mm]."""
    gap = max(s.bore - body, 0.5)
    thick = min(0.75, 0.6 * gap)
    near = body + 0.15 * gap
    far = near + thick
    middle = 0.5 * (x0 + x1)
    under = [(x0, near), (middle, near - bow), (x1, near)]
    a.path("pressure-bar", [*under, (x1, far), (middle, far - bow), (x0, far)], "metal")
    a.anchor("pressure-bar", x0 + 0.2 * (x1 - x0), 0.5 * (near + far), fixed=True)
    return far


def _lever(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    length = p["lever_length"]
    x0 = s.mouth + 0.42 * p["barrel_length"]
    x1 = x0 + length + 0.7
    pivot = x0 + 0.8 * length
    floor = min(s.mouth + p["barrel_depth"], s.end - 0.3) - 2.2
    far = _bar(a, s, x0 - 0.35 * length, max(x1, min(end, floor - 3.0)), body)
    tail = max(x1, min(end, floor - 3.0))
    spring = [(tail - 2.0, far), (floor - 0.6, far), (floor, 0.6 * s.bore), (floor - 0.5, -0.2 * s.bore)]
    a.path("pressure-bar", [*spring, (floor - 2.0, -0.55 * s.bore)], "spring")
    a.path("barrel", [(x0, s.bore), (x1, s.bore), (x1, s.outer), (x0, s.outer)], "void")
    thick = min(1.3, 0.7 * (s.outer - s.bore) + 0.3)
    top = s.outer - thick
    arm = [(pivot - 0.6, top), (pivot + 0.6, far + 0.05), (pivot + 1.9, far + 0.05), (x1 - 0.4, top + 0.3)]
    nose: list[Point] = [
        (x0 + 1.4, s.outer),
        (x0 + 1.1, s.outer + 0.45),
        (x0 + 0.4, s.outer + 0.4),
        (x0 + 0.3, top + 0.2),
    ]
    a.path("lever", [*arm, (x1 - 0.4, s.outer - 0.1), *nose], "metal")
    a.path("lever-pin", round_points(pivot, s.outer - 0.5 * thick, 0.48), "void")
    a.anchor("lever", x0 + 0.35 * length, s.outer - 0.4 * thick, fixed=True)
    a.anchor("lever-pin", pivot, s.outer - 0.5 * thick, fixed=True)
    a.length("lever_length", x0 + 0.3, x1 - 0.4, s.outer)


def tailed(s: Stations, reach: float, radius: float) -> list[Point]:
    """Outside of a barrel's reduced rear end, on which a blind cap goes.

    Parameters
    ----------
    s : Stations
        Places.
    reach, radius : float
        How far it reaches behind the barrel, and its radius [mm].

    Returns
    -------
    list of (float, float)
        (x, radius) [mm].
    """
    return [(s.end, radius), (s.end + reach, radius)]


def _button(a: Anatomy, p: Proportions, s: Stations) -> None:
    hole, reach = 0.34 * s.bore, 0.3 * (s.total - s.end)
    stub = max(0.68 * s.tail, hole + 0.7)
    inner: list[Point] = [(s.mouth, s.bore), (s.end - 3.5, s.bore), (s.end - 2.5, hole), (s.end + reach, hole)]
    blind_cap(a, s, "blind-cap", stub + 0.05, 0.75 * (s.total - s.end))
    barrel(a, p, s, inner=inner, rear=tailed(s, reach, stub))
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    limit = s.end - 4.2
    far = _bar(a, s, s.tenon + 1.5, min(max(end + 4.0, limit), limit), body, bow=min(0.5 * body, 1.0))
    a.path("pressure-bar", [(limit, far), (limit + 0.6, 0.4 * far), (s.end - 4.6, 0.0)], "spring")
    head = s.end + reach + 0.35 * (s.total - s.end)
    stem = hole - 0.15
    profile: list[Point] = [(s.end - 4.6, stem), (head - 1.6, stem), (head - 1.6, min(1.5 * stem, stub))]
    a.solid("button", [*profile, *dome(head - 1.0, min(1.5 * stem, stub), 1.0)], "metal")
    a.anchor("button", head - 1.0, 0.5 * stem)


def _crescent(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    x0 = s.mouth + 0.40 * p["barrel_length"]
    span = min(20.0, 0.3 * p["barrel_length"])
    far = _bar(a, s, x0 - 0.8 * span, min(end, x0 + 1.9 * span), body)
    for x in (x0, x0 + span - 1.6):
        a.path("barrel", [(x - 0.2, s.bore), (x + 1.8, s.bore), (x + 1.8, s.outer), (x - 0.2, s.outer)], "void")
    rise = 0.36 * span
    half = 0.5 * span
    arch = [(x0 + half - dx, s.outer + dy) for dx, dy in _arc(half, rise)]
    hollow = [(x0 + half + dx, s.outer + dy) for dx, dy in _arc(half - 1.6, rise - 1.6)]
    feet = [(x0 + span, far), (x0 + span - 1.6, far), *hollow, (x0 + 1.6, far), (x0, far)]
    a.path("crescent", [*arch, *feet], "metal")
    a.anchor("crescent", x0 + 0.3 * span, s.outer + 0.8 * rise, fixed=True)
    a.anchor("barrel", x0 + 1.8 * span, -0.5 * (s.outer + s.bore), fixed=True)
    ring = x0 + 0.5 * span - 2.2
    a.ring("lock-ring", (ring, 4.4), (s.outer + 0.9, s.outer), "cut-back")
    a.anchor("lock-ring", ring + 2.2, -s.outer - 0.45, fixed=True)


def _slot(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    x0 = s.mouth + 0.42 * p["barrel_length"]
    span = min(9.0, 0.16 * p["barrel_length"])
    _bar(a, s, x0 - 1.2 * span, min(end, x0 + 2.4 * span), body)
    a.path("slot", [(x0, s.bore - 0.02), (x0 + span, s.bore - 0.02), (x0 + span, s.outer), (x0, s.outer)], "void")
    a.anchor("slot", x0 + 0.5 * span, 0.5 * (s.bore + s.outer), fixed=True)


def _sleeve(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    gap = s.bore - body
    inside = body + 0.3 * gap
    outside = body + max(0.62 * gap, 0.45)
    start = s.tenon + 0.3
    close = min(end + 1.2, s.mouth + p["barrel_depth"] - 2.0)
    outer: list[Point] = [(start, outside), *dome(close - 1.5, outside, 1.5, 0.4 * outside), (close, 0.0)]
    inner: list[Point] = [(start, inside), *dome(close - 1.9, inside, 1.4, 0.35 * inside), (close - 0.5, 0.0)]
    a.shell("sac-sleeve", outer, inner, "metal")
    x0, x1 = start + 0.22 * (close - start), start + 0.8 * (close - start)
    a.path("sac-sleeve", [(x0, inside - 0.03), (x1, inside - 0.03), (x1, outside + 0.03), (x0, outside + 0.03)], "void")
    a.path("press-bar", [(x0 + 0.6, body), (x1 - 0.6, body), (x1 - 0.6, outside), (x0 + 0.6, outside)], "metal")
    a.anchor("sac-sleeve", start + 0.88 * (close - start), -0.5 * (inside + outside), fixed=True)
    a.anchor("press-bar", x0 + 0.3 * (x1 - x0), 0.5 * (body + outside), fixed=True)
    tube(a, p, s, s.tenon + 4.0, end - 0.12 * p["sac_length"])


def tube(a: Anatomy, p: Proportions, s: Stations, start: float, end: float) -> None:
    """A breather tube from the feed's tail backwards.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.
    start, end : float
        Its ends [mm].
    """
    if "breather_length" not in p.assumed:
        end = start + p["breather_length"]
    outer = min(p.radius("breather_diameter"), 0.8 * s.bore)
    a.ring("breather-tube", (start, end - start), (outer, 0.55 * outer), "plain")
    a.anchor("breather-tube", start + 0.7 * (end - start), 0.78 * outer)
    a.length("breather_length", start, end, 0.0)
    a.diameter("breather_diameter", start + 0.8 * (end - start), outer)


def _arc(half: float, rise: float) -> list[Point]:
    """Points of an arch from its right foot to its left one, seen from its middle."""
    turn = [math.pi * step / 20.0 for step in range(21)]
    return [(half * math.cos(angle), rise * math.sin(angle)) for angle in turn]


SAC_FILLERS = {
    "lever-sac": _lever,
    "button-sac": _button,
    "crescent-sac": _crescent,
    "slot-sac": _slot,
    "sleeve-squeeze": _sleeve,
}
"""Filling system key -> the function that draws section, barrel and mechanism."""
