"""Turned shapes in pen coordinates, from which the section views are built up piece by piece.

x runs along the axis from the nib's tip backwards, y from the axis downwards, both in millimetres of the pen.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

__all__ = ["Anatomy", "Piece", "Point", "Span", "Style", "curve", "dome", "threads"]

Point = tuple[float, float]
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
            turn = [2.0 * math.pi * step / 16.0 for step in range(16)]
            self.path(part, [(x + radius * math.cos(a), sign * middle + radius * math.sin(a)) for a in turn], "soft")

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


def dome(x: float, radius: float, depth: float, to: float = 0.0) -> list[Point]:
    """Points of a rounded end.

    Parameters
    ----------
    x, radius : float
        Where the rounding begins [mm].
    depth : float
        How far it reaches back [mm]; negative for an end that looks forward.
    to : float
        Radius at which it stops [mm].

    Returns
    -------
    list of (float, float)
        (x, radius) from the shoulder to the end.

    Examples
    --------
    >>> dome(0.0, 4.0, 3.0)[-1]
    (3.0, 0.0)
    """
    steps = 10
    points = []
    for i in range(steps + 1):
        angle = 0.5 * math.pi * i / steps
        points.append((x + depth * math.sin(angle), to + (radius - to) * math.cos(angle)))
    points[-1] = (x + depth, to)
    return points


def curve(start: Point, first: Point, second: Point, end: Point, steps: int = 12) -> list[Point]:
    """Points of a cubic curve, the start left out.

    Parameters
    ----------
    start, first, second, end : (float, float)
        Ends and handles [mm].
    steps : int
        Number of pieces.

    Returns
    -------
    list of (float, float)
        Points.
    """
    points = []
    for i in range(1, steps + 1):
        t = i / steps
        u = 1.0 - t
        a, b, c, d = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
        points.append(
            (
                a * start[0] + b * first[0] + c * second[0] + d * end[0],
                a * start[1] + b * first[1] + c * second[1] + d * end[1],
            )
        )
    return points


def threads(x0: float, x1: float, radius: float, depth: float = 0.35, pitch: float = 0.9) -> list[Point]:
    """Points of a thread's crests and roots.

    Parameters
    ----------
    x0, x1 : float
        Ends [mm].
    radius : float
        Radius at the crests [mm].
    depth, pitch : float
        Of the thread as drawn [mm].

    Returns
    -------
    list of (float, float)
        (x, radius).
    """
    turns = max(int((x1 - x0) / pitch), 1)
    step = (x1 - x0) / turns
    points: list[Point] = []
    for turn in range(turns):
        points.append((x0 + turn * step, radius - depth))
        points.append((x0 + (turn + 0.5) * step, radius))
    points.append((x1, radius - depth))
    return points
