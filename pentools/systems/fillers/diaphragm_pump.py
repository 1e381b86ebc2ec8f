"""The diaphragm pump filler: a plunger flexes a diaphragm, and a breather tube lets the barrel fill."""

from __future__ import annotations

from pentools.calc.weighing.families import BREATHER
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import bore_front, ink
from pentools.systems.breather import tube
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel, blind_cap
from pentools.systems.profiles import Point, dome, round_points, threads
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
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


SYSTEM = System(
    key="diaphragm-pump",
    label="diaphragm pump filler",
    family=BREATHER,
    parts=(
        *FRONT_PARTS,
        "section-joint",
        "barrel",
        "cap-threads",
        "ink-space",
        "breather-tube",
        "diaphragm",
        "pellet",
        "cone",
        "pump-body",
        "spring",
        "plunger",
        "blind-cap",
    ),
    seals_at="diaphragm",
    works_at="plunger",
    end_part="blind-cap",
    length="breather_length",
    typical=Typical(end_mm=20.0, barrel_mm=60.0),
    draw=_draw,
)
