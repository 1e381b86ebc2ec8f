"""Points of the outlines that turned parts are made of: rounded ends, curves, threads, circles."""

from __future__ import annotations

import math

__all__ = ["Point", "curve", "dome", "round_points", "threads"]

Point = tuple[float, float]


def round_points(x: float, y: float, radius: float, flat: float = 1.0) -> list[Point]:
    """Points of a circle, or of an ellipse lying along x.

    Parameters
    ----------
    x, y, radius : float
        Middle and radius along x [mm].
    flat : float
        Radius along y over radius along x.

    Returns
    -------
    list of (float, float)
        Sixteen points.
    """
    return [(x + radius * cos, y + flat * radius * sin) for cos, sin in _CIRCLE]


_CIRCLE = tuple((math.cos(math.pi * step / 8.0), math.sin(math.pi * step / 8.0)) for step in range(16))


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
