"""The cap in section: inner cap, clip and band, screwed on over the nib."""

from __future__ import annotations

from pentools.systems.anatomy import Anatomy
from pentools.systems.front import Stations
from pentools.systems.profiles import dome
from pentools.systems.proportions import Proportions

__all__ = ["cap"]


def cap(a: Anatomy, p: Proportions, s: Stations, *, section_radius: float) -> float:
    """The cap in section with inner cap, clip and band, screwed on.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.
    section_radius : float
        Radius of the face the inner cap seals on [mm].

    Returns
    -------
    float
        Where the cap's top is [mm]; negative, in front of the nib.
    """
    mouth = s.mouth + 2.2 + p["thread_length"]
    top = mouth - p["cap_length"]
    if "capped_length" not in p.assumed:
        top = s.total - p["capped_length"]
    top = min(top, -2.5)
    mouth = max(top + p["cap_length"], s.nib + 2.0)
    r = p.radius("cap_diameter")
    wall = max(min(r - s.outer - 0.05, 1.6), 0.25)
    hole = r - wall
    front = max(min(top + 4.5, -2.6), top + 0.6)
    a.shell(
        "cap",
        [(mouth, r), *dome(front + 1.0, 0.95 * r, top - front - 1.0, 0.5 * r), (top, 0.0)],
        [(mouth, hole), (s.mouth - 1.0, hole), (front + 1.0, 0.95 * hole), (front + 1.0, 0.0)],
        "cut",
    )
    seal = 0.95 * hole - 0.05
    inside = max(min(section_radius - 0.3, seal - 0.5), 0.6 * seal)
    ceiling = max(min(front + 2.2, -0.5), front + 1.3)
    a.shell(
        "inner-cap",
        [(s.nib - 0.05, seal), (front + 1.1, seal), (front + 1.1, 0.0)],
        [(s.nib - 0.05, inside), (ceiling + 1.0, inside), (ceiling, 0.6 * inside), (ceiling, 0.0)],
        "cut-back",
    )
    band = mouth - 0.14 * p["cap_length"]
    a.ring("cap-band", (band, 0.09 * p["cap_length"]), (r + 0.18, r - 0.22), "metal")
    foot, ball = front + 2.5, top + 0.72 * p["cap_length"]
    shape = [
        (foot - 1.2, -r),
        (foot - 1.2, -r - 1.7),
        (foot + 2.0, -r - 2.3),
        (ball, -r - 0.95),
        (ball + 0.9, -r - 0.15),
    ]
    a.path(
        "clip", [*shape, (ball - 0.8, -r - 0.15), (ball - 1.6, -r - 0.5), (foot + 2.0, -r - 1.55), (foot, -r)], "metal"
    )
    a.anchor("cap", top + 0.5 * (mouth - top), r - 0.5 * wall)
    a.anchor("inner-cap", ceiling + 0.25 * (s.nib - ceiling), 0.5 * (seal + inside))
    a.anchor("cap-band", band + 0.045 * p["cap_length"], r)
    a.anchor("clip", foot + 0.35 * (ball - foot), -r - 1.6, fixed=True)
    a.length("cap_length", top, mouth, 0.0)
    a.length("capped_length", top, s.total, 0.0)
    a.diameter("cap_diameter", band - 1.5, r)
    return top
