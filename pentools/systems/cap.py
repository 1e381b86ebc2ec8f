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
    hole = r - max(min(r - s.outer - 0.05, 1.6), 0.25)
    front = max(min(top + 4.5, -2.6), top + 0.6)
    a.shell(
        "cap",
        [(mouth, r), *dome(front + 1.0, 0.95 * r, top - front - 1.0, 0.5 * r), (top, 0.0)],
        [(mouth, hole), (s.mouth - 1.0, hole), (front + 1.0, 0.95 * hole), (front + 1.0, 0.0)],
        "cut",
    )
    a.anchor("cap", top + 0.5 * (mouth - top), 0.5 * (r + hole))
    _inner_cap(a, s, front, 0.95 * hole - 0.05, section_radius)
    _band_and_clip(a, p, (top, mouth), front, r)
    a.length("cap_length", top, mouth, 0.0)
    a.length("capped_length", top, s.total, 0.0)
    return top


def _inner_cap(a: Anatomy, s: Stations, front: float, seal: float, section_radius: float) -> None:
    """The liner that seals on the section's face."""
    inside = max(min(section_radius - 0.3, seal - 0.5), 0.6 * seal)
    ceiling = max(min(front + 2.2, -0.5), front + 1.3)
    a.shell(
        "inner-cap",
        [(s.nib - 0.05, seal), (front + 1.1, seal), (front + 1.1, 0.0)],
        [(s.nib - 0.05, inside), (ceiling + 1.0, inside), (ceiling, 0.6 * inside), (ceiling, 0.0)],
        "cut-back",
    )
    a.anchor("inner-cap", ceiling + 0.25 * (s.nib - ceiling), 0.5 * (seal + inside))


def _band_and_clip(a: Anatomy, p: Proportions, ends: tuple[float, float], front: float, r: float) -> None:
    """One plain band near the lip, and a plain strap of a clip along the top."""
    top, mouth = ends
    band = mouth - 0.14 * p["cap_length"]
    a.ring("cap-band", (band, 0.09 * p["cap_length"]), (r + 0.18, r - 0.22), "metal")
    a.anchor("cap-band", band + 0.045 * p["cap_length"], r)
    a.diameter("cap_diameter", band - 1.5, r)
    root, tip = front + 2.5, top + 0.72 * p["cap_length"]
    outside = [
        (root - 1.2, -r),
        (root - 1.2, -r - 1.7),
        (root + 2.0, -r - 2.3),
        (tip, -r - 0.95),
        (tip + 0.9, -r - 0.15),
    ]
    inside = [(tip - 0.8, -r - 0.15), (tip - 1.6, -r - 0.5), (root + 2.0, -r - 1.55), (root, -r)]
    a.path("clip", [*outside, *inside], "metal")
    a.anchor("clip", root + 0.35 * (tip - root), -r - 1.6, fixed=True)
