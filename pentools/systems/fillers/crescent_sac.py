"""The crescent filler: an arc that stands out of the barrel presses the bar."""

from __future__ import annotations

import math

from pentools.calc.weighing.families import SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.declaration import FRONT_PARTS, System
from pentools.systems.front import Stations, barrel
from pentools.systems.profiles import Point
from pentools.systems.proportions import Proportions
from pentools.systems.sac import pressure_bar, sac, sac_front

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    x0 = s.mouth + 0.40 * p["barrel_length"]
    span = min(20.0, 0.3 * p["barrel_length"])
    far = pressure_bar(a, s, x0 - 0.8 * span, min(end, x0 + 1.9 * span), body)
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


def _arc(half: float, rise: float) -> list[Point]:
    """Points of an arch from its right foot to its left one, seen from its middle."""
    turn = [math.pi * step / 20.0 for step in range(21)]
    return [(half * math.cos(angle), rise * math.sin(angle)) for angle in turn]


SYSTEM = System(
    key="crescent-sac",
    label="crescent sac filler",
    family=SAC,
    parts=(*FRONT_PARTS, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "crescent", "lock-ring"),
    seals_at="sac",
    works_at="crescent",
    outside=("crescent",),
    draw=_draw,
)
