"""The breather tube of pens that fill over several strokes."""

from __future__ import annotations

from pentools.systems.anatomy import Anatomy
from pentools.systems.front import Stations
from pentools.systems.proportions import Proportions

__all__ = ["tube"]


def tube(a: Anatomy, p: Proportions, s: Stations, start: float, end: float) -> None:
    """A breather tube from the feed's tail backwards.

    Parameters
    ----------
    a : Anatomy
        Drawn into.
    p : Proportions
        Complete dimensions.
    s : Stations
        Places.
    start, end : float
        Its ends [mm].
    """
    if "breather_length" not in p.assumed:
        end = start + p["breather_length"]
    outer = min(p.radius("breather_diameter"), 0.8 * s.bore)
    a.ring("breather-tube", (start, end - start), (outer, 0.55 * outer), "plain")
    a.anchor("breather-tube", start + 0.7 * (end - start), 0.78 * outer)
    a.length("breather_length", start, end, 0.0)
    a.diameter("breather_diameter", start + 0.8 * (end - start), outer)
