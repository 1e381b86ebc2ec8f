"""Hatching as plain lines, cut off at the outline they fill: sharp on any screen, and small in a printed file.

A printer's driver turns an SVG pattern into a picture of dots, half a megabyte a part; lines stay lines.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from pentools.figures.pen.svg import BRASS, INK, JADE, OXBLOOD, SLATE, element, number

__all__ = ["TEXTURES", "Texture", "hatch_path", "hatched"]

Point = tuple[float, float]
Stretch = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Rows:
    """Straight lines side by side: a x + b y = start + k step, for every whole k.

    Parameters
    ----------
    a, b : float
        Across the lines.
    step, start : float
        How far apart, and where the first lies [mm, along (a, b) as it stands].
    every : float
        Length after which a broken line repeats [mm]; 0 for an unbroken one.
    drawn : tuple of (float, float)
        From where to where it is drawn in each length [mm].
    """

    a: float
    b: float
    step: float
    start: float = 0.0
    every: float = 0.0
    drawn: tuple[Stretch, ...] = ()


@dataclass(frozen=True, slots=True)
class Texture:
    """What fills an outline.

    Parameters
    ----------
    rows : tuple of Rows
        Its lines.
    width : float
        Of a line [mm].
    colour : str
        Of its lines, and of its ground.
    ground : float
        How densely the ground under the lines is tinted; 0 for not at all.
    round_ends : bool
        Whether short lines are dots.
    wave : float
        Half the height of a wave that lies on each line, as long as two steps [mm]; 0 for straight ones.
    """

    rows: tuple[Rows, ...]
    width: float
    colour: str
    ground: float = 0.0
    round_ends: bool = False
    wave: float = 0.0


_RISING, _FALLING = Rows(1.0, 1.0, 1.2), Rows(1.0, -1.0, 1.2)
TEXTURES: dict[str, Texture] = {
    "cut": Texture((_RISING,), 0.13, INK),
    "cut-back": Texture((_FALLING,), 0.13, INK),
    "cut-soft": Texture((_RISING, _FALLING, Rows(0.0, 1.0, 1.2)), 0.14, JADE),
    "ink": Texture(
        (Rows(0.0, 1.0, 1.6, 0.4, 3.0, ((0.3, 1.6),)), Rows(0.0, 1.0, 1.6, 1.2, 3.0, ((1.8, 2.9),))), 0.1, INK, 0.09
    ),
    "dots": Texture(
        (Rows(0.0, 1.0, 2.0, 0.5, 2.0, ((0.5, 0.51),)), Rows(0.0, 1.0, 2.0, 1.5, 2.0, ((1.5, 1.51),))),
        0.4,
        BRASS,
        round_ends=True,
    ),
    "bars": Texture((Rows(1.0, 0.0, 2.0, 0.6),), 0.35, OXBLOOD),
    "cross": Texture((Rows(0.0, 1.0, 2.0, 1.0), Rows(1.0, 0.0, 2.0, 1.0)), 0.22, OXBLOOD),
    "slant": Texture((Rows(1.0, 1.0, 2.0),), 0.25, JADE),
    "waves": Texture((Rows(0.0, 1.0, 2.0, 1.0),), 0.25, SLATE, wave=0.4),
    "saltire": Texture((Rows(1.0, 1.0, 1.8), Rows(1.0, -1.0, 1.8)), 0.22, OXBLOOD),
    "fine-dots": Texture(
        (Rows(0.0, 1.0, 1.2, 0.3, 1.2, ((0.3, 0.31),)), Rows(0.0, 1.0, 1.2, 0.9, 1.2, ((0.9, 0.91),))),
        0.4,
        BRASS,
        round_ends=True,
    ),
}
"""Name -> what it looks like, in millimetres on paper."""


def hatched(corners: Sequence[Point], name: str) -> str:
    """The ground and the lines of a texture inside an outline.

    Parameters
    ----------
    corners : sequence of (float, float)
        The outline [mm on paper]; it is closed from its last corner to its first.
    name : str
        Key of `TEXTURES`.

    Returns
    -------
    str
        SVG elements without an outline; empty where nothing of the texture falls inside.
    """
    texture = TEXTURES[name]
    drawn = hatch_path(corners, texture)
    under = ""
    if texture.ground:
        outline = "M" + "L".join(f"{number(x)} {number(y)}" for x, y in corners) + "Z"
        under = element("path", d=outline, fill=texture.colour, fill_opacity=texture.ground)
    if not drawn:
        return under
    return under + element(
        "path",
        d=drawn,
        fill="none",
        stroke=texture.colour,
        stroke_width=texture.width,
        stroke_linecap="round" if texture.round_ends else None,
        data_hatch=name,
    )


def hatch_path(corners: Sequence[Point], texture: Texture, scale: float = 1.0) -> str:
    """The lines of a texture inside an outline, as the ``d`` of a path.

    Parameters
    ----------
    corners : sequence of (float, float)
        The outline, in units of the picture.
    texture : Texture
        What to fill it with.
    scale : float
        Units of the picture for a millimetre on paper; 1 where they are the same.

    Returns
    -------
    str
        Empty where no line falls inside.

    Notes
    -----
    What is inside is told as a filled outline tells it: where the outline goes round a point at least once (nonzero
    winding).
    """
    outline = [(x / scale, y / scale) for x, y in corners]
    lines: Iterable[Sequence[Point]]
    if texture.wave:
        lines = _waves(outline, texture)
    else:
        lines = (line for rows in texture.rows for line in _straight(outline, rows))
    if texture.round_ends:  # a dot is drawn whole or not at all
        lines = (line for line in lines if _distance(line[0], outline) >= 0.5 * texture.width)
    return "".join(
        "M" + "L".join(f"{number(scale * x)} {number(scale * y)}" for x, y in line)
        for line in lines
        if texture.round_ends or math.dist(line[0], line[-1]) > 0.05
    )


def _straight(outline: Sequence[Point], rows: Rows) -> Iterator[tuple[Point, Point]]:
    length = math.hypot(rows.a, rows.b)
    for across, stretches in sorted(_inside(outline, rows).items()):
        at = (rows.start + across * rows.step) / length
        for start, end in stretches:
            for first, last in _broken(start, end, rows):
                yield _place(rows, at, first), _place(rows, at, last)


def _place(rows: Rows, across: float, along: float) -> Point:
    """A point so far across and so far along the lines [mm]."""
    length = math.hypot(rows.a, rows.b)
    nx, ny = rows.a / length, rows.b / length
    return across * nx + along * ny, across * ny - along * nx


def _inside(outline: Sequence[Point], rows: Rows) -> dict[int, list[Stretch]]:
    """Number of each line -> the stretches of it that lie inside, measured along it."""
    length = math.hypot(rows.a, rows.b)
    nx, ny = rows.a / length, rows.b / length
    step, start = rows.step / length, rows.start / length
    crossings: dict[int, list[tuple[float, int]]] = defaultdict(list)
    for (xa, ya), (xb, yb) in zip(outline, (*outline[1:], outline[0]), strict=True):
        sa, sb = nx * xa + ny * ya, nx * xb + ny * yb
        ta, tb = ny * xa - nx * ya, ny * xb - nx * yb
        low, high = min(sa, sb), max(sa, sb)
        # a corner that lies on a line counts for one of its two edges only
        for k in range(math.ceil((low - start) / step), math.ceil((high - start) / step)):
            share = (start + k * step - sa) / (sb - sa)
            crossings[k].append((ta + share * (tb - ta), 1 if sb > sa else -1))
    return {k: list(_stretches(found)) for k, found in crossings.items()}


def _stretches(crossings: list[tuple[float, int]]) -> Iterator[Stretch]:
    turns, begun = 0, 0.0
    for along, sign in sorted(crossings):
        if turns == 0:
            begun = along
        turns += sign
        if turns == 0:
            yield begun, along


def _broken(start: float, end: float, rows: Rows) -> Iterator[Stretch]:
    """The pieces of a stretch that a broken line draws."""
    if not rows.every:
        yield start, end
        return
    for k in range(math.floor(start / rows.every), math.floor(end / rows.every) + 1):
        for first, last in rows.drawn:
            low, high = max(start, k * rows.every + first), min(end, k * rows.every + last)
            if high > low:
                yield low, high


def _waves(outline: Sequence[Point], texture: Texture) -> Iterator[list[Point]]:
    """Lying waves, cut off where they leave the outline."""
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    for rows in texture.rows:
        span, fine = 2.0 * texture.wave, rows.step / 8.0
        for k in range(math.floor((min(ys) - span) / rows.step), math.ceil((max(ys) + span) / rows.step) + 1):
            level = rows.start + k * rows.step
            points = [
                (x, level - texture.wave * math.sin(math.pi * x))
                for i in range(math.floor(min(xs) / fine), math.ceil(max(xs) / fine) + 1)
                for x in (i * fine,)
            ]
            run: list[Point] = []
            for point in points:
                if _holds(outline, point):
                    run.append(point)
                elif run:
                    yield run
                    run = []
            if run:
                yield run


def _holds(outline: Sequence[Point], point: Point) -> bool:
    """Whether a point lies inside."""
    x, y = point
    turns = 0
    for (xa, ya), (xb, yb) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if (ya <= y) != (yb <= y) and x < xa + (y - ya) / (yb - ya) * (xb - xa):
            turns += 1 if yb > ya else -1
    return turns != 0


def _distance(point: Point, outline: Sequence[Point]) -> float:
    """How far a point lies from the nearest edge."""
    return min(_to_edge(point, a, b) for a, b in zip(outline, (*outline[1:], outline[0]), strict=True))


def _to_edge(point: Point, a: Point, b: Point) -> float:
    square = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2
    if square == 0.0:
        return math.dist(point, a)
    share = ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / square
    share = min(1.0, max(0.0, share))
    return math.dist(point, (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
