"""The bulb filler: an open rubber bulb pumps the barrel full through a breather tube."""

from __future__ import annotations

from pentools.calc.weighing.families import BREATHER
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import bore_front, ink
from pentools.systems.breather import tube
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel, blind_cap
from pentools.systems.profiles import Point, dome
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
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


SYSTEM = System(
    key="bulb",
    label="bulb filler",
    family=BREATHER,
    parts=(*FRONT_PARTS, "section-joint", "barrel", "cap-threads", "ink-space", "breather-tube", "bulb", "blind-cap"),
    seals_at="bulb",
    works_at="bulb",
    end_part="blind-cap",
    length="breather_length",
    typical=Typical(end_mm=24.0, barrel_mm=52.0),
    draw=_draw,
)
