"""The button filler: a button bows a bar that flattens the sac."""

from __future__ import annotations

from pentools.calc.weighing.families import SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel, blind_cap
from pentools.systems.profiles import Point, dome
from pentools.systems.proportions import Proportions
from pentools.systems.sac import pressure_bar, sac, sac_front, tailed

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    hole, reach = 0.34 * s.bore, 0.3 * (s.total - s.end)
    stub = max(0.68 * s.tail, hole + 0.7)
    inner: list[Point] = [(s.mouth, s.bore), (s.end - 3.5, s.bore), (s.end - 2.5, hole), (s.end + reach, hole)]
    blind_cap(a, s, "blind-cap", stub + 0.05, 0.75 * (s.total - s.end))
    barrel(a, p, s, inner=inner, rear=tailed(s, reach, stub))
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    limit = s.end - 4.2
    far = pressure_bar(a, s, s.tenon + 1.5, min(max(end + 4.0, limit), limit), body, bow=min(0.5 * body, 1.0))
    a.path("pressure-bar", [(limit, far), (limit + 0.6, 0.4 * far), (s.end - 4.6, 0.0)], "spring")
    head = s.end + reach + 0.35 * (s.total - s.end)
    stem = hole - 0.15
    profile: list[Point] = [(s.end - 4.6, stem), (head - 1.6, stem), (head - 1.6, min(1.5 * stem, stub))]
    a.solid("button", [*profile, *dome(head - 1.0, min(1.5 * stem, stub), 1.0)], "metal")
    a.anchor("button", head - 1.0, 0.5 * stem)


SYSTEM = System(
    key="button-sac",
    label="button sac filler",
    family=SAC,
    parts=(*FRONT_PARTS, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "button", "blind-cap"),
    seals_at="sac",
    works_at="button",
    end_part="blind-cap",
    typical=Typical(end_mm=11.0),
    draw=_draw,
)
