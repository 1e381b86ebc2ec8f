"""One pen of any filling system, put together piece by piece in its own proportions."""

from __future__ import annotations

from pentools.systems.anatomy import Anatomy
from pentools.systems.cap import cap
from pentools.systems.front import stations_of
from pentools.systems.proportions import Proportions
from pentools.systems.registry import system_named

__all__ = ["anatomy_of"]


def anatomy_of(system: str, p: Proportions, *, capped: bool = False) -> tuple[Anatomy, float, float]:
    """Build the section view of a pen.

    Parameters
    ----------
    system : str
        Filling system key.
    p : Proportions
        Complete dimensions.
    capped : bool
        Whether the cap is on.

    Returns
    -------
    tuple of (Anatomy, float, float)
        The pieces, and the foremost and rearmost x [mm].
    """
    anatomy, stations = Anatomy(), stations_of(p)
    declared = system_named(system)
    declared.draw(anatomy, p, stations)
    front = 0.0
    if capped:
        face = p.radius("section_diameter") if declared.has_section else 0.5 * (stations.bore + stations.outer)
        anatomy.pieces = [piece for piece in anatomy.pieces if (piece.part, piece.style) != ("filling-tube", "hidden")]
        front = cap(anatomy, p, stations, section_radius=face)
    xs = [x for piece in anatomy.pieces for x, _ in piece.points]
    return anatomy, min(front, *xs), max(stations.total, *xs)
