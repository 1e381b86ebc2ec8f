"""The syringe filler: a rod is pulled by hand."""

from __future__ import annotations

from pentools.calc.weighing.families import PISTON
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import bore_front, ink
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel, blind_cap
from pentools.systems.head import piston_head
from pentools.systems.profiles import Point, threads
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    rod = p.radius("rod")
    unit = s.end - min(9.0, 0.16 * p["barrel_length"])
    barrel(a, p, s, inner=[(s.mouth, s.bore), (s.end, s.bore)], rear=[(s.end, s.tail)])
    x = max(unit - 1.0 - p["head_length"] - 0.5 * min(p["stroke"], unit - s.tenon - p["head_length"]), s.tenon + 2.0)
    ink(a, s, s.tenon, x)
    bore_front(a, p, s)
    felt = min(rod + 1.4, s.bore - 0.5)
    crests = threads(unit + 0.4, s.end - 0.3, s.bore)
    hollow: list[Point] = [(unit, felt), (s.end - 3.0, felt), (s.end - 3.0, rod + 0.12), (s.end, rod + 0.12)]
    a.shell("gland", [(unit, s.bore - 0.35), *crests, (s.end, s.bore - 0.35)], hollow, "cut-back")
    a.ring("packing", (unit + 0.3, s.end - 3.3 - unit), (felt, rod), "soft")
    a.anchor("packing", unit + 0.4 * (s.end - 3.0 - unit), 0.5 * (felt + rod))
    a.anchor("gland", s.end - 1.4, 0.5 * (rod + s.bore))
    end = piston_head(a, p, x, s.bore)
    blind_cap(a, s, "end-cap", rod + 0.05, 0.6 * (s.total - s.end))
    a.solid("rod", [(end, rod), (s.end + 0.55 * (s.total - s.end), rod)], "metal")
    a.anchor("rod", 0.5 * (end + unit), 0.4 * rod)
    front = unit - 1.0 - p["head_length"] - p["stroke"]
    a.length("stroke", max(front, s.tenon) if "stroke" in p.assumed else front, unit - 1.0 - p["head_length"], 0.0)
    a.diameter("housing", unit + 0.4 * (s.end - 3.0 - unit), felt)
    a.diameter("rod", 0.4 * end + 0.6 * unit, rod)


SYSTEM = System(
    key="syringe",
    label="syringe filler",
    family=PISTON,
    parts=(
        *FRONT_PARTS,
        "section-joint",
        "barrel",
        "cap-threads",
        "ink-space",
        "piston-head",
        "head-seal",
        "rod",
        "packing",
        "gland",
        "end-cap",
    ),
    seals_at="head-seal",
    works_at="rod",
    end_part="end-cap",
    typical=Typical(end_mm=13.0, bore_share=0.70),
    draw=_draw,
)
