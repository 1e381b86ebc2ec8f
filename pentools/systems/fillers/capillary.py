"""The capillary filler: an open cell soaks the ink up."""

from __future__ import annotations

from pentools.calc.weighing.families import CELL
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import bore_front
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel
from pentools.systems.profiles import Point, dome
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
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


SYSTEM = System(
    key="capillary",
    label="capillary filler",
    family=CELL,
    parts=(*FRONT_PARTS, "barrel", "cap-threads", "capillary-cell", "vent"),
    seals_at="barrel",
    works_at="capillary-cell",
    typical=Typical(barrel_mm=76.0),
    draw=_draw,
)
