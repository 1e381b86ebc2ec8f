"""The pen for cartridges, or for a converter in a cartridge's place."""

from __future__ import annotations

from pentools.calc.weighing.families import CARTRIDGE
from pentools.systems.anatomy import Anatomy
from pentools.systems.declaration import FRONT_PARTS, System
from pentools.systems.front import Stations, barrel, nib_and_feed, section
from pentools.systems.profiles import Point
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    nib_and_feed(a, s, s.tenon + 2.5)
    outer = p.radius("cartridge_diameter")
    section(a, p, s, nipple=True)
    start = s.tenon + 0.6
    end = start + p["cartridge_length"]
    rn = min(p.radius("nipple"), outer - 0.5)
    wall = min(0.55, 0.2 * outer)
    body = end - 0.2 * (end - start)
    inner: list[Point] = [(start, rn), (start + 5.2, rn), (start + 5.4, outer - wall), (body, outer - wall)]
    head, seal = start + 0.42 * (body - start), outer - wall
    a.solid("converter", [(start + 5.4, seal), (head, seal)], "ink")
    a.shell("converter", [(start, outer), (body, outer)], inner, "plain")
    a.anchor("converter", start + 0.26 * (end - start), outer - 0.5 * wall)
    a.solid("rod", [(head, 0.36 * seal), (body + 1.0, 0.36 * seal)], "metal")
    a.ring("head-seal", (head, 2.6), (seal, 0.36 * seal), "soft")
    a.anchor("head-seal", head + 1.3, 0.7 * seal)
    a.anchor("rod", 0.5 * (head + 2.6 + body), 0.15 * seal)
    a.ring("knob", (body, 0.4 * (end - body)), (outer, 0.4 * seal), "metal")
    a.solid("knob", [(body + 0.4 * (end - body), 0.8 * outer), (end, 0.8 * outer)], "plain")
    a.anchor("knob", body + 0.7 * (end - body), 0.4 * outer)
    a.length("cartridge_length", start, end, 0.0)
    a.diameter("cartridge_diameter", start + 0.3 * (end - start), outer)


SYSTEM = System(
    key="cartridge-converter",
    label="cartridge or converter",
    family=CARTRIDGE,
    parts=(*FRONT_PARTS, "nipple", "barrel", "cap-threads", "converter", "head-seal", "rod", "knob"),
    seals_at="head-seal",
    works_at="converter",
    length="cartridge_length",
    draw=_draw,
)
