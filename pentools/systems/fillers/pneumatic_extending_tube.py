"""The pneumatic filler whose thin tube comes out of the nib's end, so that only the tube is dipped."""

from __future__ import annotations

from pentools.calc.weighing.families import PNEUMATIC_SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, nib_and_feed, section
from pentools.systems.pneumatic import pressed_sac
from pentools.systems.proportions import Proportions

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    end = pressed_sac(a, p, s)
    nib_and_feed(a, s, s.tenon + 4.0)
    section(a, p, s, nipple=True)
    r = min(0.55 * s.passage, 0.75)
    tip, back = 0.3 * s.nib, s.tenon + 11.0
    a.ring("filling-tube", (tip, back - tip), (r, 0.5 * r), "metal")
    a.path("filling-tube", [(tip, -r), (-7.0, -r), (-7.5, -0.5 * r), (-7.5, r), (tip, r)], "hidden")
    a.anchor("filling-tube", s.nib - 1.4, 0.0)
    a.ring("front-gasket", (s.mouth - 1.2, 1.8), (s.passage + 0.6, r), "soft")
    a.anchor("front-gasket", s.mouth - 0.3, 0.5 * (s.passage + r))
    a.spring("spring", s.tenon + 6.3, min(back + 5.0, end - 3.0), min(r + 0.7, p.radius("sac_outside") - 0.8), 8)
    a.anchor("spring", s.tenon + 12.5, r + 0.2)


SYSTEM = System(
    key="pneumatic-extending-tube",
    label="pneumatic filler with an extending tube",
    family=PNEUMATIC_SAC,
    parts=(
        *FRONT_PARTS,
        "barrel",
        "cap-threads",
        "filling-tube",
        "front-gasket",
        "spring",
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
