"""The lever filler: a lever presses a bar on a sac."""

from __future__ import annotations

from pentools.calc.weighing.families import SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.declaration import FRONT_PARTS, System
from pentools.systems.front import Stations, barrel
from pentools.systems.profiles import Point, round_points
from pentools.systems.proportions import Proportions
from pentools.systems.sac import pressure_bar, sac, sac_front

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    length = p["lever_length"]
    x0 = s.mouth + 0.42 * p["barrel_length"]
    x1 = x0 + length + 0.7
    pivot = x0 + 0.8 * length
    floor = min(s.mouth + p["barrel_depth"], s.end - 0.3) - 2.2
    far = pressure_bar(a, s, x0 - 0.35 * length, max(x1, min(end, floor - 3.0)), body)
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


SYSTEM = System(
    key="lever-sac",
    label="lever sac filler",
    family=SAC,
    parts=(*FRONT_PARTS, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "lever", "lever-pin"),
    seals_at="sac",
    works_at="lever",
    outside=("lever",),
    draw=_draw,
)
