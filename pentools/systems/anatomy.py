"""Turned shapes in pen coordinates, from which the section views are built up piece by piece.

x runs along the axis from the nib's tip backwards, y from the axis downwards, both in millimetres of the pen.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from pentools.systems.profiles import Point, round_points

__all__ = ["Anatomy", "Piece", "Point", "Span", "Style"]

Style = Literal["cut", "cut-back", "soft", "metal", "plain", "ink", "void", "line", "hidden", "spring"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One outline of a part.

    Parameters
    ----------
    part : str
        Part key.
    points : tuple of (float, float)
        Corners [mm of the pen].
    style : str
        How it is painted: cut material two ways, soft (rubber, cork), metal, plain, ink, void, or a bare line.
    """

    part: str
    points: tuple[Point, ...]
    style: Style


@dataclass(frozen=True, slots=True)
class Span:
    """Where a dimension is read: between two points of the pen.

    Parameters
    ----------
    start, end : (float, float)
        The points [mm of the pen]; same y for a length, same x for a diameter.
    """

    start: Point
    end: Point

    @property
    def along(self) -> bool:
        """Whether it runs along the axis."""
        return abs(self.start[1] - self.end[1]) < abs(self.start[0] - self.end[0])

    @property
    def size(self) -> float:
        """Distance between the two points [mm]."""
        return math.dist(self.start, self.end)


@dataclass(slots=True)
class Anatomy:
    """Pieces in painting order, one anchor a part for its label, and where each dimension is read.

    Parameters
    ----------
    pieces : list of Piece
        Painted in this order.
    anchors : dict of str to (float, float)
        Part -> the point its leader ends at [mm of the pen].
    fixed : set of str
        Parts whose anchor must not be mirrored to the other side of the axis.
    spans : dict of str to Span
        Dimension name -> where it is read.
    """

    pieces: list[Piece] = field(default_factory=list)
    anchors: dict[str, Point] = field(default_factory=dict)
    fixed: set[str] = field(default_factory=set)
    spans: dict[str, Span] = field(default_factory=dict)

    def path(self, part: str, points: Sequence[Point], style: Style) -> None:
        """An outline as it is given.

        Parameters
        ----------
        part : str
            Part key.
        points : sequence of (float, float)
            Corners [mm].
        style : str
            As in `Piece`.
        """
        self.pieces.append(Piece(part, tuple(points), style))

    def solid(self, part: str, profile: Sequence[Point], style: Style) -> None:
        """A turned body, mirrored on the axis.

        Parameters
        ----------
        part : str
            Part key.
        profile : sequence of (float, float)
            (x, radius) from front to back [mm].
        style : str
            As in `Piece`.
        """
        upper = [(x, -r) for x, r in profile]
        lower = [(x, r) for x, r in reversed(profile)]
        self.path(part, upper + lower, style)

    def shell(self, part: str, outer: Sequence[Point], inner: Sequence[Point], style: Style) -> None:
        """A hollow turned body in section: two mirrored walls, or one piece where it closes on the axis at its last points.

        Parameters
        ----------
        part : str
            Part key.
        outer, inner : sequence of (float, float)
            (x, radius) of the outside and of the hole, from the open end [mm].
        style : str
            As in `Piece`.
        """
        up = [(x, -r) for x, r in outer]
        if outer[-1][1] <= 0.0:
            down = [(x, r) for x, r in reversed(outer)]
            hole = [*inner, *((x, -r) for x, r in reversed(inner))]
            self.path(part, [*up, *down, *hole], style)
            return
        wall = [*outer, *reversed(inner)]
        self.path(part, [(x, -r) for x, r in wall], style)
        self.path(part, wall, style)

    def ring(self, part: str, along: tuple[float, float], radii: tuple[float, float], style: Style) -> None:
        """A ring of rectangular section.

        Parameters
        ----------
        part : str
            Part key.
        along : (float, float)
            Front face and width [mm].
        radii : (float, float)
            Outside and hole [mm].
        style : str
            As in `Piece`.
        """
        (x, width), (outer, inner) = along, radii
        self.shell(part, [(x, outer), (x + width, outer)], [(x, inner), (x + width, inner)], style)

    def o_ring(self, part: str, x: float, outer: float, inner: float) -> None:
        """A ring of round section, cut on both sides of the axis.

        Parameters
        ----------
        part : str
            Part key.
        x : float
            Its middle [mm].
        outer, inner : float
            Radii [mm].
        """
        middle, radius = 0.5 * (outer + inner), 0.5 * (outer - inner)
        for sign in (-1.0, 1.0):
            self.path(part, round_points(x, sign * middle, radius), "soft")

    def spring(self, part: str, x0: float, x1: float, radius: float, coils: int = 9) -> None:
        """A coil spring as a zigzag.

        Parameters
        ----------
        part : str
            Part key.
        x0, x1 : float
            Ends [mm].
        radius : float
            Outside radius [mm].
        coils : int
            Number of zigzags.
        """
        step = (x1 - x0) / (2 * coils)
        self.path(part, [(x0 + i * step, radius if i % 2 else -radius) for i in range(2 * coils + 1)], "spring")

    def anchor(self, part: str, x: float, y: float, *, fixed: bool = False) -> None:
        """Say where a part's leader ends.

        Parameters
        ----------
        part : str
            Part key.
        x, y : float
            Point [mm]; unless fixed, its mirror image does as well.
        fixed : bool
            Whether only this side will do.
        """
        self.anchors[part] = (x, y)
        if fixed:
            self.fixed.add(part)

    def length(self, name: str, x0: float, x1: float, y: float) -> None:
        """Say where a length is read.

        Parameters
        ----------
        name : str
            Dimension name.
        x0, x1, y : float
            Ends and height [mm].
        """
        self.spans[name] = Span((x0, y), (x1, y))

    def diameter(self, name: str, x: float, radius: float) -> None:
        """Say where a diameter is read.

        Parameters
        ----------
        name : str
            Dimension name.
        x, radius : float
            Place and half the diameter [mm].
        """
        self.spans[name] = Span((x, -radius), (x, radius))
