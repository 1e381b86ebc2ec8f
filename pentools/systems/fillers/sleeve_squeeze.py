"""The squeeze filler: a bar in a metal sleeve presses the sac over several strokes."""

from __future__ import annotations

from pentools.calc.weighing.families import PUMPED_SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.breather import tube
from pentools.systems.declaration import FRONT_PARTS, System
from pentools.systems.front import Stations, barrel
from pentools.systems.profiles import Point, dome
from pentools.systems.proportions import Proportions
from pentools.systems.sac import sac, sac_front

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
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


SYSTEM = System(
    key="sleeve-squeeze",
    label="squeeze filler in a metal sleeve",
    family=PUMPED_SAC,
    parts=(*FRONT_PARTS, "nipple", "barrel", "cap-threads", "sac", "sac-sleeve", "press-bar", "breather-tube"),
    seals_at="sac",
    works_at="press-bar",
    draw=_draw,
)
