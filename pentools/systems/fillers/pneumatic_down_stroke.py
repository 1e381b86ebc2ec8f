"""The down-stroke pneumatic filler: a tube presses air on the sac and lets it go through a port."""

from __future__ import annotations

from pentools.calc.weighing.families import PNEUMATIC_SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations
from pentools.systems.pneumatic import pressed_sac
from pentools.systems.proportions import Proportions
from pentools.systems.sac import sac_front

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    pressed_sac(a, p, s)
    sac_front(a, p, s)


SYSTEM = System(
    key="pneumatic-down-stroke",
    label="down-stroke pneumatic filler",
    family=PNEUMATIC_SAC,
    parts=(
        *FRONT_PARTS,
        "nipple",
        "barrel",
        "cap-threads",
        "sac",
        "sac-protector",
        "pneumatic-tube",
        "port",
        "tube-ring",
        "blind-cap",
    ),
    seals_at="tube-ring",
    works_at="pneumatic-tube",
    end_part="blind-cap",
    typical=Typical(end_mm=15.0),
    draw=_draw,
)
