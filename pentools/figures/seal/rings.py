"""A ring in its groove, to scale, at least and at most squeeze."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.seal.fit import Candidate
from pentools.calc.seal.formulas import flattened_width_mm
from pentools.calc.seal.gland import Gland, GlandState
from pentools.errors import InputError
from pentools.figures.drawing import Drawing
from pentools.figures.hatching import hatched
from pentools.figures.pen.dimensions import arrow
from pentools.figures.pen.lettering import LINE_MM, wrap
from pentools.figures.pen.sheet import EDGE_MM, draw_title
from pentools.figures.pen.svg import INK, JADE, OXBLOOD, PAPER, SLATE, Picture, element, number
from pentools.figures.seal.ladder import ladder_drawing
from pentools.numbers import capital

__all__ = ["ladder_drawing", "ring_drawing"]

SCALES = (30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2, 1)
WALL_MM = 0.8
ROOM_MM = (48.0, 40.0)
DIMENSION_MM = 25.0
ASSUMED_SHARE = 0.88


@dataclass(frozen=True, slots=True)
class _Place:
    """Where one case is drawn: scale, left edge of the cut, its width, and the foot of the groove on paper."""

    scale: float
    left: float
    wide: float
    floor: float

    @property
    def middle(self) -> float:
        """Middle of the groove on paper."""
        return self.left + 0.5 * self.wide


def ring_drawing(candidate: Candidate, *, width_mm: float = 160.0, show_title: bool = True) -> Drawing:
    """A ring in its groove at least and at most squeeze, to one scale.

    Parameters
    ----------
    candidate : Candidate
        The ring with its worst cases.
    width_mm : float
        Width on paper [mm], 150 to 220.
    show_title : bool
        Whether the title is set in the picture too.

    Returns
    -------
    Drawing
        SVG, title, alternative text, width [mm].

    Raises
    ------
    InputError
        If the width is out of range.
    """
    if not 150.0 <= width_mm <= 220.0:
        raise InputError("width of the drawing", "150 to 220 mm", f"{width_mm:g} mm")
    fit = candidate.fit
    gland, wide = fit.gland, _groove_width(candidate)
    shares = (fit.least.squeeze_share, fit.nominal.squeeze_share, fit.most.squeeze_share)
    least, nominal, most = (f"{100 * share:.1f}".replace("-", "−") for share in shares)
    title = f"{_name(candidate)} in its groove: squeeze {nominal}\u202f%, at worst {least} to {most}\u202f%"
    picture = Picture(width_mm, "ring")
    top = (draw_title(picture, title) if show_title else 2.0) + 1.0
    tall = max(fit.least.depth_mm, fit.least.section_mm)
    scale = float(
        next(
            (s for s in SCALES if s * (wide + 2 * WALL_MM) <= ROOM_MM[0] and s * (tall + 2 * WALL_MM) <= ROOM_MM[1]), 1
        )
    )
    floor = top + 6.0 + scale * (WALL_MM + tall)
    cases = (("least", "At least squeeze", fit.least), ("most", "At most squeeze", fit.most))
    for number_, (key, words, state) in enumerate(cases):
        left = EDGE_MM + number_ * 0.5 * width_mm
        place = _Place(scale, left + scale * WALL_MM, scale * wide, floor)
        picture.text(left, top + 2.0, f"{words}: {_touch_words(state)}", bold=True)
        _draw_case(picture, key, place, gland, state)
    foot = _groove_dimension(picture, _Place(scale, EDGE_MM + scale * WALL_MM, scale * wide, floor), gland, wide)
    y = foot + 6.0
    for line in wrap(_caption(candidate, scale, width_mm), width_mm - 2 * EDGE_MM):
        picture.text(EDGE_MM, y, line, colour=SLATE, italic=True)
        y += LINE_MM
    alt = f"{title}. {_case_words('least', fit.least)} {_case_words('most', fit.most)} Drawn {scale:g} to 1."
    return Drawing(picture.finish(y - LINE_MM + 2.0, title, alt), title, alt, width_mm)


def _name(candidate: Candidate) -> str:
    """The ring's name for a heading: a number gets its word before it, words stand as they are."""
    name = candidate.designation
    if name.startswith("own "):
        return f"Own ring {name.removeprefix('own ')}"
    return capital(name) if name[0].isalpha() else f"Ring {name}"


def _groove_width(candidate: Candidate) -> float:
    fit = candidate.fit
    return fit.gland.width_mm if fit.gland.width_mm is not None else 1.5 * fit.ring.section_mm


def _touch_words(state: GlandState) -> str:
    if state.squeeze_share <= 0:
        return f"no touch, a gap of {state.depth_mm - state.section_mm:.2f} mm"
    return f"{100 * state.squeeze_share:.1f}\u202f%, pressed by {state.section_mm - state.depth_mm:.2f} mm"


def _case_words(name: str, state: GlandState) -> str:
    return f"At {name} squeeze the section of {state.section_mm:.2f} mm has {state.depth_mm:.2f} mm of room: {_touch_words(state)}."


def _caption(candidate: Candidate, scale: float, width_mm: float) -> str:
    gland = candidate.fit.gland
    words = f"Drawn to scale, {scale:g}\u00a0:\u00a01 at {width_mm:g}\u202fmm wide; the squeezed shape keeps the section's area. Dashed: the section before it is squeezed."
    if gland.width_mm is None:
        words += " The groove's width was not measured and is assumed."
    if gland.guide_mm is None:
        words += f" The {'head' if gland.kind == 'piston' else 'guide hole'} was not measured: the gap beside the groove is assumed."
    return words


def _draw_case(picture: Picture, key: str, place: _Place, gland: Gland, state: GlandState) -> None:
    scale = place.scale
    roof = place.floor - scale * state.depth_mm
    inner, outer = ("cut-back", "cut") if gland.kind == "piston" else ("cut", "cut-back")
    gap = gland.clearance_mm
    clear = scale * ((1 - ASSUMED_SHARE) * state.depth_mm if gap is None else gap)
    lip = clear if gland.kind == "piston" else scale * state.depth_mm - clear
    left, right, wall = place.left, place.left + place.wide, scale * WALL_MM
    # the wall that slides is a plain bar; the other holds the groove
    edge = roof + lip
    seat = [(left - wall, edge), (left, edge), (left, place.floor)]
    seat += [(right, place.floor), (right, edge), (right + wall, edge)]
    bar = [(left - wall, roof), (right + wall, roof)]
    below, above = place.floor + wall, roof - wall
    if gland.kind == "packing":
        bar = [(left - wall, place.floor), (right + wall, place.floor)]
        seat = [(left - wall, edge), (left, edge), (left, roof), (right, roof), (right, edge), (right + wall, edge)]
        below, above = above, below
    _solid(picture, f"{'head' if gland.kind == 'piston' else 'housing'}", inner, seat, below)
    _solid(picture, f"{'bore' if gland.kind == 'piston' else 'rod'}", outer, bar, above)
    _ring(picture, key, place, state)
    _dimensions(picture, place, gland, state, roof)


def _solid(picture: Picture, part: str, texture: str, line: list[tuple[float, float]], edge: float) -> None:
    corners = [*line, (line[-1][0], edge), (line[0][0], edge)]
    joined = " ".join(f"{number(x)},{number(y)}" for x, y in corners)
    picture.add(
        element("polygon", points=joined, fill=PAPER, data_part=part),
        hatched(corners, texture),
    )
    picture.line(line, stroke=INK, stroke_width=0.35)


def _ring(picture: Picture, key: str, place: _Place, state: GlandState) -> None:
    """The ring as it lies in its room, and dashed the section it has when it is free."""
    height = min(state.section_mm, state.depth_mm)
    radius = 0.5 * place.scale * height
    flat = 0.5 * place.scale * (flattened_width_mm(state.section_mm, height) - height)
    path = _stadium(place.middle, place.floor, radius, flat)
    told: dict[str, str | float] = {
        "data_height": 2 * radius,
        "data_width": 2 * (radius + flat),
        "data_scale": place.scale,
    }
    squeezed: dict[str, str | float] = {"fill": "none", "stroke": JADE, "stroke_width": 0.5}
    picture.add(
        element("path", d=path, fill=PAPER), hatched(_round_ended(place.middle, place.floor, radius, flat), "cut-soft")
    )
    picture.add(element("path", d=path, **squeezed, data_part="ring", data_state=key, **told))
    free = 0.5 * place.scale * state.section_mm
    dashed: dict[str, str | float] = {
        "fill": "none",
        "stroke": OXBLOOD,
        "stroke_width": 0.3,
        "stroke_dasharray": "1.1 0.8",
    }
    middle: dict[str, str | float] = {"cx": place.middle, "cy": place.floor - free, "r": free}
    picture.add(element("circle", **middle, **dashed, data_part="section", data_state=key))


def _stadium(x: float, floor: float, radius: float, flat: float) -> str:
    """Path of a round section pressed flat: two half circles with straight pieces between, standing on the floor."""
    left, right, top, foot = number(x - flat), number(x + flat), number(floor - 2 * radius), number(floor)
    arc = f"A{number(radius)} {number(radius)} 0 0 1"
    return f"M{left} {top}L{right} {top}{arc} {right} {foot}L{left} {foot}{arc} {left} {top}Z"


def _round_ended(x: float, floor: float, radius: float, flat: float) -> list[tuple[float, float]]:
    """Corners along the outline of `_stadium`, close enough for hatching."""
    turns = [math.pi * (i / 24.0 - 0.5) for i in range(25)]
    right = [(x + flat + radius * math.cos(t), floor - radius + radius * math.sin(t)) for t in turns]
    return right + [(2 * x - px, 2 * (floor - radius) - py) for px, py in right]


def _dimensions(picture: Picture, place: _Place, gland: Gland, state: GlandState, roof: float) -> None:
    """Room and section, to the right of the cut."""
    edge = place.left + place.wide + place.scale * WALL_MM
    names = ("groove to bore" if gland.kind == "piston" else "rod to housing", "section")
    # the two feet are set apart so that the words of one never lie on those of the other
    for offset, name, head, value, foot in (
        (2.4, names[0], roof, state.depth_mm, place.floor - 1.0),
        (4.6, names[1], place.floor - place.scale * state.section_mm, state.section_mm, place.floor - 13.5),
    ):
        x = edge + offset
        colour = INK if name != "section" else OXBLOOD
        for y in (head, place.floor):
            picture.line(
                [(edge - 0.5 if y != head or name != "section" else place.middle, y), (x + 0.8, y)],
                stroke_width=0.14,
                stroke=colour,
                stroke_dasharray=None if name != "section" else "0.8 0.6",
            )
        picture.line([(x, head), (x, place.floor)], stroke=colour, stroke_width=0.22, data_dimension=name)
        arrow(picture, (x, head), (0.0, 1.0), colour)
        arrow(picture, (x, place.floor), (0.0, -1.0), colour)
        picture.text(edge + 6.2, foot - LINE_MM, name, colour=colour)
        picture.text(edge + 6.2, foot, f"{value:.2f} mm", colour=colour)


def _groove_dimension(picture: Picture, place: _Place, gland: Gland, wide: float) -> float:
    y = place.floor + place.scale * WALL_MM + 4.6
    left, right = place.left, place.left + place.wide
    for x in (left, right):
        picture.line([(x, place.floor + 0.5), (x, y + 0.9)], stroke_width=0.14)
    picture.line([(left, y), (right, y)], stroke=INK, stroke_width=0.22, data_dimension="groove width")
    arrow(picture, (left, y), (1.0, 0.0))
    arrow(picture, (right, y), (-1.0, 0.0))
    words = f"groove {wide:.2f} mm" + ("" if gland.width_mm is not None else ", assumed")
    picture.text(0.5 * (left + right), y + 4.0, words, anchor="middle")
    return y + 4.0
