"""Builds a pen for the tests beside this file, and reads where its parts lie."""

from __future__ import annotations

from pentools.systems.assembly import anatomy_of
from pentools.systems.front import stations_of
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of


def built(system, *, capped=False, **dimensions):
    """Anatomy, proportions and stations of a pen; dimensions [mm] without the unit in their names."""
    full = proportions_of(PenShape(system, **{f"{name}_mm": value for name, value in dimensions.items()}))
    return anatomy_of(system, full, capped=capped)[0], full, stations_of(full)


def box(anatomy, part, style=None):
    """x0, y0, x1, y1 of what is drawn of a part [mm of the pen]."""
    found = [
        point
        for piece in anatomy.pieces
        if piece.part == part and style in (None, piece.style)
        for point in piece.points
    ]
    assert found, part
    return min(x for x, _ in found), min(y for _, y in found), max(x for x, _ in found), max(y for _, y in found)


def size(anatomy, part):
    """Length and height of what is drawn of a part [mm]."""
    x0, y0, x1, y1 = box(anatomy, part)
    return x1 - x0, y1 - y0
