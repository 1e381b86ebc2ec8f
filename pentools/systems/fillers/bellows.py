"""The bellows filler: a plunger squashes a pleated sac lengthwise."""

from __future__ import annotations

from pentools.calc.weighing.families import PUMPED_SAC
from pentools.systems.anatomy import Anatomy
from pentools.systems.breather import tube
from pentools.systems.declaration import FRONT_PARTS, System, Typical
from pentools.systems.front import Stations, barrel, blind_cap, nib_and_feed, section
from pentools.systems.profiles import Point
from pentools.systems.proportions import Proportions
from pentools.systems.sac import tailed

__all__ = ["SYSTEM"]


def _draw(a: Anatomy, p: Proportions, s: Stations) -> None:
    hole, reach = max(0.3 * s.bore, p.radius("rod") + 0.2), 0.25 * (s.total - s.end)
    stub = max(0.68 * s.tail, hole + 0.7)
    inner: list[Point] = [(s.mouth, s.bore), (s.end - 4.0, s.bore), (s.end - 3.0, hole), (s.end + reach, hole)]
    blind_cap(a, s, "blind-cap", stub + 0.05, 0.8 * (s.total - s.end))
    barrel(a, p, s, inner=inner, rear=tailed(s, reach, stub))
    nib_and_feed(a, s, s.tenon + 4.0)
    section(a, p, s, nipple=True)
    start, wall, body = s.tenon + 0.3, p["sac_wall"], p.radius("sac_outside")
    neck = p.radius("nipple") + wall
    end = start + (p["sac_length"] if "sac_length" not in p.assumed else min(p["sac_length"], s.end - 8.0 - start))
    _pleats(a, (start, end), neck, body, wall)
    tube(a, p, s, s.tenon + 4.0, end - 0.35 * (end - start))
    _plunger(a, s, end, p.radius("rod"))


def _pleats(a: Anatomy, ends: tuple[float, float], neck: float, body: float, wall: float) -> None:
    """The pleated sac with its ink, between its two ends [mm]."""
    start, end = ends
    folds = max(int((end - start - 8.0) / 3.2), 3)
    step = (end - start - 8.0) / folds
    outer: list[Point] = [(start, neck), (start + 5.4, neck)]
    for fold in range(folds):
        x = start + 6.4 + fold * step
        outer += [(x, 0.62 * body), (x + 0.5 * step, body)]
    outer += [(end - 1.2, 0.62 * body), (end, 0.5 * body), (end, 0.0)]
    inside: list[Point] = [(x, max(r - wall, 0.0)) for x, r in outer[:-2]]
    inside += [(end - wall, 0.4 * body), (end - wall, 0.0)]
    a.solid("ink-space", [(start + 6.2, inside[1][1]), *inside[2:]], "ink")
    a.shell("bellows", outer, inside, "soft")
    a.anchor("bellows", start + 6.4 + (folds // 2 + 0.5) * step, body - wall)
    a.length("sac_length", start, end, 0.0)
    a.diameter("sac_outside", start + 6.4 + (folds // 2 + 0.5) * step, body)


def _plunger(a: Anatomy, s: Stations, end: float, rod: float) -> None:
    """The plunger from the sac's end into the blind cap."""
    head = s.end + 0.62 * (s.total - s.end)
    disc = 0.78 * s.bore
    profile: list[Point] = [
        (end, disc),
        (end + 1.2, disc),
        (end + 1.2, rod),
        (head - 1.5, rod),
        (head - 1.5, 1.5 * rod),
    ]
    a.solid("plunger", [*profile, (head, 1.5 * rod)], "metal")
    a.anchor("plunger", end + 2.5, 0.3 * rod)
    a.diameter("rod", end + 3.0, rod)


SYSTEM = System(
    key="bellows",
    label="bellows sac filler",
    family=PUMPED_SAC,
    parts=(*FRONT_PARTS, "nipple", "barrel", "cap-threads", "bellows", "breather-tube", "plunger", "blind-cap"),
    seals_at="bellows",
    works_at="plunger",
    end_part="blind-cap",
    typical=Typical(end_mm=16.0),
    draw=_draw,
)
