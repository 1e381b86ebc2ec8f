"""The piston filler: a knob winds a piston along the bore."""

from __future__ import annotations

from pentools.calc.weighing.families import PISTON
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import bore_front, ink
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel, blind_cap
from pentools.systems.head import piston_head
from pentools.systems.profiles import threads
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    back = s.end - min(14.0, 0.22 * p["barrel_length"])
    barrel(a, p, s, inner=[(s.mouth, s.bore), (s.end, s.bore)], rear=[(s.end, s.tail)])
    x = max(back - 1.0 - p["head_length"] - 0.45 * min(p["stroke"], back - s.tenon - p["head_length"]), s.tenon + 2.0)
    ink(a, s, s.tenon, x)
    bore_front(a, p, s)
    rod = p.radius("rod")
    sleeve = min(rod + 0.15, s.bore - 0.6)
    a.shell(
        "screw-sleeve", [(back, s.bore - 0.06), (s.end, s.bore - 0.06)], [(back, sleeve), (s.end, sleeve)], "cut-back"
    )
    a.anchor("screw-sleeve", back + 2.2, 0.5 * (sleeve + s.bore))
    end = piston_head(a, p, x, s.bore)
    a.solid("rod", [(end, rod), (back + 4.0, rod)], "plain")
    _spindle(a, s, back, rod)
    a.anchor("rod", 0.6 * end + 0.4 * back, 0.4 * rod)
    front = (
        max(back - 1.0 - p["head_length"] - p["stroke"], s.tenon)
        if "stroke" in p.assumed
        else back - 1.0 - p["head_length"] - p["stroke"]
    )
    a.length("stroke", front, back - 1.0 - p["head_length"], 0.0)
    a.diameter("rod", 0.5 * (end + back), rod)


def _spindle(a: Anatomy, s: Stations, back: float, rod: float) -> None:
    """The threaded spindle behind the rod, and the knob that turns it."""
    core = 0.8 * rod
    knob = s.end + 0.65 * (s.total - s.end)
    a.solid(
        "spindle",
        [(back + 4.0, core), *threads(back + 4.0, s.end + 0.5, rod, 0.25, 1.2), (s.end + 0.5, core), (knob, core)],
        "metal",
    )
    blind_cap(a, s, "knob", core + 0.02, 0.66 * (s.total - s.end))
    a.solid("spindle", [(s.end + 0.2, core), (knob, core)], "metal")
    for i in range(5):
        xk = s.end + (0.28 + 0.1 * i) * (s.total - s.end)
        a.path("knob", [(xk, -0.97 * s.tail), (xk, -0.8 * s.tail)], "line")
        a.path("knob", [(xk, 0.8 * s.tail), (xk, 0.97 * s.tail)], "line")
    a.anchor("spindle", s.end - 2.5, 0.3 * core)


SYSTEM = System(
    key="piston",
    label="piston filler",
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
        "spindle",
        "screw-sleeve",
        "knob",
    ),
    seals_at="head-seal",
    works_at="rod",
    end_part="knob",
    typical=Typical(end_mm=15.0, bore_share=0.70),
    draw=_draw,
)
