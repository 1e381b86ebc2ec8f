"""The eyedropper: the barrel is filled with a dropper."""

from __future__ import annotations

from pentools.calc.weighing.families import RESERVOIR
from pentools.systems.anatomy import Anatomy
from pentools.systems.bore import bore_front, ink
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    ink(a, s, s.tenon, min(s.mouth + p["barrel_depth"], s.end - 1.0) - 0.2)
    barrel(a, p, s)
    bore_front(a, p, s)


SYSTEM = System(
    key="eyedropper",
    label="eyedropper",
    family=RESERVOIR,
    parts=(*FRONT_PARTS, "section-joint", "barrel", "cap-threads", "ink-space"),
    seals_at="section-joint",
    works_at="section-joint",
    typical=Typical(barrel_mm=78.0),
    draw=_draw,
)
