"""The safety pen: its nib winds out of the barrel that holds the ink."""

from __future__ import annotations

from pentools.calc.weighing.families import RESERVOIR
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import ink
from pentools.systems.declaration import System, Typical
from pentools.systems.front import Stations, barrel, blind_cap, nib_and_feed
from pentools.systems.profiles import Point
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    mouth, back, rod = s.mouth, s.end - 8.0, p.radius("rod")
    throat = min(max(s.hole + 0.5, 0.72 * s.bore), s.bore)
    inner: list[Point] = [(mouth, throat + 0.5), (mouth + 1.0, throat), (mouth + 3.5, throat), (mouth + 5.0, s.bore)]
    inner += [(back, s.bore), (back, s.bore - 0.3), (s.end - 2.5, s.bore - 0.3)]
    inner += [(s.end - 2.5, rod + 0.15), (s.end, rod + 0.15)]
    barrel(a, p, s, inner=inner, rear=[(s.end, s.tail)])
    for sign in (-1.0, 1.0):
        a.path("cap-seat", [(mouth, sign * (throat + 0.5)), (mouth + 1.0, sign * throat)], "line")
    a.anchor("cap-seat", mouth + 0.5, throat + 0.25)
    ink(a, s, mouth + 5.0, back)
    nib_and_feed(a, s, mouth + 15.0, mouth + 13.0)
    tubular = s.bore - 0.35
    thin = min(0.6, 0.2 * s.bore)
    _helix(a, (mouth + 11.0, back), tubular, thin)
    _carrier(a, s, mouth + 11.0, tubular, tubular - thin - 0.15)
    _spindle(a, s, back, tubular, rod)


def _helix(a: Anatomy, ends: tuple[float, float], outer: float, thin: float) -> None:
    """The turning tube with its four turns of slot, from the carrier to the spindle."""
    carrier, back = ends
    a.ring("helix", (carrier - 1.0, back - carrier - 1.0), (outer, outer - thin), "metal")
    step = (back - carrier - 8.0) / 4
    for turn in range(4):
        x, lead = carrier + 5.0 + turn * step, 0.72 * step
        a.path("helix", [(x, -outer + thin), (x + lead, outer - thin)], "line")
        a.path("helix", [(x + 1.3, -outer + thin), (x + 1.3 + lead, outer - thin)], "line")
    a.anchor("helix", carrier + 0.6 * (back - carrier), outer - 0.5 * thin)


def _carrier(a: Anatomy, s: Stations, carrier: float, outer: float, inside: float) -> None:
    """What holds nib and feed, with the pin that runs in the helix."""
    a.ring("nib-carrier", (carrier, 6.0), (max(inside, s.feed + 0.5), s.feed), "cut-back")
    a.anchor("nib-carrier", carrier + 1.6, 0.5 * (inside + s.feed))
    x0, x1, low = carrier + 4.0, carrier + 5.2, inside - 0.3
    a.path("carrier-pin", [(x0, low), (x1, low), (x1, outer), (x0, outer)], "metal")
    a.anchor("carrier-pin", carrier + 4.6, outer - 0.4, fixed=True)


def _spindle(a: Anatomy, s: Stations, back: float, outer: float, rod: float) -> None:
    """Spindle through its packing, and the knob that turns it."""
    knob = s.end + 0.6 * (s.total - s.end)
    a.solid("spindle", [(back - 2.2, outer), (back - 1.2, outer), (back - 1.2, rod), (s.end + 0.3, rod)], "metal")
    blind_cap(a, s, "knob", rod, 0.6 * (s.total - s.end))
    a.solid("spindle", [(s.end, rod), (knob, rod)], "metal")
    a.ring("packing", (back + 0.2, s.end - 2.8 - back), (s.bore - 0.35, rod), "soft")
    a.anchor("packing", back + 0.5 * (s.end - 2.8 - back), 0.5 * (rod + s.bore))
    a.anchor("spindle", s.end + 0.3 * (s.total - s.end), 0.3 * rod)
    a.diameter("rod", s.end - 1.2, rod)


SYSTEM = System(
    key="safety",
    label="retracting-nib safety pen",
    family=RESERVOIR,
    parts=(
        "nib",
        "feed",
        "cap-seat",
        "barrel",
        "cap-threads",
        "ink-space",
        "nib-carrier",
        "carrier-pin",
        "helix",
        "spindle",
        "packing",
        "knob",
    ),
    seals_at="packing",
    works_at="spindle",
    section_at="nib-carrier",
    end_part="knob",
    typical=Typical(end_mm=13.0, barrel_mm=84.0),
    draw=_draw,
)
