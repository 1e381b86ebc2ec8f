"""Filling mechanisms that press a sac without a bar: bellows, down-stroke pneumatic, extending tube."""

from __future__ import annotations

from pentools.figures.pen.anatomy import Anatomy
from pentools.figures.pen.fillers_sac import sac, sac_front, tailed, tube
from pentools.figures.pen.front import Stations, barrel, blind_cap, nib_and_feed, section
from pentools.figures.pen.profiles import Point, dome
from pentools.figures.pen.proportions import Proportions

__all__ = ["PNEUMATIC_FILLERS"]


def _bellows(a: Anatomy, p: Proportions, s: Stations) -> None:
    hole, reach = max(0.3 * s.bore, p.radius("rod") + 0.2), 0.25 * (s.total - s.end)
    stub = max(0.68 * s.tail, hole + 0.7)
    inner: list[Point] = [(s.mouth, s.bore), (s.end - 4.0, s.bore), (s.end - 3.0, hole), (s.end + reach, hole)]
    blind_cap(a, s, "blind-cap", stub + 0.05, 0.8 * (s.total - s.end))
    barrel(a, p, s, inner=inner, rear=tailed(s, reach, stub))
    nib_and_feed(a, s, s.tenon + 4.0)
    section(a, p, s, nipple=True)
    start, wall, body = s.tenon + 0.3, p["sac_wall"], p.radius("sac_outside")
    neck = p.radius("nipple") + wall
    end = start + (p["sac_length"] if "sac_length" not in p.assumed else min(p["sac_length"], s.end - 8.0 - start))
    folds = max(int((end - start - 8.0) / 3.2), 3)
    step = (end - start - 8.0) / folds
    outer: list[Point] = [(start, neck), (start + 5.4, neck)]
    for fold in range(folds):
        x = start + 6.4 + fold * step
        outer += [(x, 0.62 * body), (x + 0.5 * step, body)]
    outer += [(end - 1.2, 0.62 * body), (end, 0.5 * body), (end, 0.0)]
    inside: list[Point] = [(x, max(r - wall, 0.0)) for x, r in outer[:-2]]
    inside += [(end - wall, 0.4 * body), (end - wall, 0.0)]
    a.solid("ink-space", [(start + 6.2, inside[1][1]), *inside[2:]], "ink")
    a.shell("bellows", outer, inside, "soft")
    a.anchor("bellows", start + 6.4 + (folds // 2 + 0.5) * step, body - wall)
    a.length("sac_length", start, end, 0.0)
    a.diameter("sac_outside", start + 6.4 + (folds // 2 + 0.5) * step, body)
    tube(a, p, s, s.tenon + 4.0, end - 0.35 * (end - start))
    head = s.end + 0.62 * (s.total - s.end)
    rod = p.radius("rod")
    disc = 0.78 * s.bore
    profile: list[Point] = [
        (end, disc),
        (end + 1.2, disc),
        (end + 1.2, rod),
        (head - 1.5, rod),
        (head - 1.5, 1.5 * rod),
    ]
    a.solid("plunger", [*profile, (head, 1.5 * rod)], "metal")
    a.anchor("plunger", end + 2.5, 0.3 * rod)
    a.diameter("rod", end + 3.0, rod)


def _pneumatic(a: Anatomy, p: Proportions, s: Stations) -> None:
    _pressed(a, p, s)
    sac_front(a, p, s)


def _pressed(a: Anatomy, p: Proportions, s: Stations) -> float:
    """Barrel, sac in its protector, and the tube that slides over it; returns the sac's end [mm]."""
    outer = p.radius("tube_diameter")
    wall = min(0.45, 0.12 * outer)
    ring = min(0.55 * (s.outer - outer) + 0.3, 1.8)
    seat = s.end - 4.5
    bore, land = s.bore, min(outer + 0.12, s.bore)
    groove = min(outer + ring, s.tail - 0.35)
    inner: list[Point] = [(s.mouth, bore), (seat - 2.0, bore), (seat - 1.5, land), (seat, land), (seat, groove)]
    inner += [(seat + ring + 0.3, groove), (seat + ring + 0.3, land), (s.end, land)]
    barrel(a, p, s, inner=inner, rear=[(s.end, s.tail)])
    end, body = sac(a, p, s)
    a.o_ring("tube-ring", seat + 0.15 + 0.5 * ring, groove, outer)
    a.anchor("tube-ring", seat + 0.15 + 0.5 * ring, 0.5 * (groove + outer))
    back = s.end + 0.55 * (s.total - s.end)
    front = s.tenon + 7.5
    shape: list[Point] = [(front, outer), (back, outer), (back, 0.0)]
    hollow: list[Point] = [(front, outer - wall), (back - 1.0, outer - wall), (back - 1.0, 0.0)]
    blind_cap(a, s, "blind-cap", outer, 0.55 * (s.total - s.end))
    a.shell("pneumatic-tube", shape, hollow, "metal")
    port = seat - 7.0
    a.path(
        "port",
        [(port, outer - wall - 0.02), (port + 1.6, outer - wall - 0.02), (port + 1.6, outer), (port, outer)],
        "void",
    )
    a.anchor("port", port + 0.8, outer - 0.5 * wall, fixed=True)
    room = outer - wall - body
    skin = body + 0.35 * max(room, 0.3)
    thick = min(0.4, 0.45 * max(room, 0.3))
    stop = min(end + 1.5, back - 2.5)
    case: list[Point] = [(s.tenon + 0.2, skin + thick), *dome(stop - 2.0, skin + thick, 2.0, 0.35 * skin)]
    lining: list[Point] = [(s.tenon + 0.2, skin), *dome(stop - 2.3, skin, 1.9, 0.3 * skin)]
    a.shell("sac-protector", case, lining, "plain")
    a.anchor("sac-protector", s.tenon + 0.78 * (stop - s.tenon), skin + 0.5 * thick)
    a.anchor("pneumatic-tube", front + 0.18 * (back - front), outer - 0.5 * wall)
    a.diameter("tube_diameter", front + 0.3 * (back - front), outer)
    return end


def _extending(a: Anatomy, p: Proportions, s: Stations) -> None:
    end = _pressed(a, p, s)
    nib_and_feed(a, s, s.tenon + 4.0)
    section(a, p, s, nipple=True)
    r = min(0.55 * s.passage, 0.75)
    tip, back = 0.3 * s.nib, s.tenon + 11.0
    a.ring("filling-tube", (tip, back - tip), (r, 0.5 * r), "metal")
    a.path("filling-tube", [(tip, -r), (-7.0, -r), (-7.5, -0.5 * r), (-7.5, r), (tip, r)], "hidden")
    a.anchor("filling-tube", s.nib - 1.4, 0.0)
    a.ring("front-gasket", (s.mouth - 1.2, 1.8), (s.passage + 0.6, r), "soft")
    a.anchor("front-gasket", s.mouth - 0.3, 0.5 * (s.passage + r))
    a.spring("spring", s.tenon + 6.3, min(back + 5.0, end - 3.0), min(r + 0.7, p.radius("sac_outside") - 0.8), 8)
    a.anchor("spring", s.tenon + 12.5, r + 0.2)


PNEUMATIC_FILLERS = {
    "bellows": _bellows,
    "pneumatic-down-stroke": _pneumatic,
    "pneumatic-extending-tube": _extending,
}
"""Filling system key -> the function that draws section, barrel and mechanism."""
