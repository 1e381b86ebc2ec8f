"""The sac filler that is pressed through a slot, or blown flat through a hole."""

from __future__ import annotations

from pentools.calc.weighing.families import SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.declaration import FRONT_PARTS, System
from pentools.systems.front import Stations, barrel
from pentools.systems.proportions import Proportions
from pentools.systems.sac import pressure_bar, sac, sac_front

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    barrel(a, p, s)
    end, body = sac(a, p, s)
    sac_front(a, p, s)
    x0 = s.mouth + 0.42 * p["barrel_length"]
    span = min(9.0, 0.16 * p["barrel_length"])
    pressure_bar(a, s, x0 - 1.2 * span, min(end, x0 + 2.4 * span), body)
    a.path("slot", [(x0, s.bore - 0.02), (x0 + span, s.bore - 0.02), (x0 + span, s.outer), (x0, s.outer)], "void")
    a.anchor("slot", x0 + 0.5 * span, 0.5 * (s.bore + s.outer), fixed=True)


SYSTEM = System(
    key="slot-sac",
    label="sac filler with a slot or hole (match, coin, blow, sleeve)",
    family=SAC,
    parts=(*FRONT_PARTS, "nipple", "barrel", "cap-threads", "sac", "pressure-bar", "slot"),
    seals_at="sac",
    works_at="slot",
    draw=_draw,
)
