"""What every pen drawing has around it: title, centre line, labels with leaders, caption."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from pentools.figures.pen.labels import Placed
from pentools.figures.pen.lettering import LINE_MM, wrap
from pentools.figures.pen.marks import TAG_MM, draw_tag
from pentools.figures.pen.paint import View
from pentools.figures.pen.svg import INK, OXBLOOD, PAPER, SLATE, Picture, element, number
from pentools.systems.anatomy import Span
from pentools.systems.dimensions import dimension_words
from pentools.systems.proportions import Proportions
from pentools.systems.shape import DRAWN

__all__ = [
    "EDGE_MM",
    "RAIL_MM",
    "caption_words",
    "draw_axis",
    "draw_caption",
    "draw_side",
    "draw_title",
    "with_article",
]

EDGE_MM = 1.5
"""Margin left and right of a drawing [mm]."""
RAIL_MM = 1.4
"""Distance of the rail, where leaders begin to fan out, from the drawing [mm]."""
_TITLE_MM, _SMALL_TITLE_MM = 4.0, 3.5
# What a reader takes the picture's proportions from.
_CARRIES = frozenset({"barrel_length", "barrel_diameter", "bore", "section_length", "section_diameter", "nib_length"})


def caption_words(full: Proportions, used: Mapping[str, Span]) -> str:
    """Say how far the drawing rests on measurements.

    Parameters
    ----------
    full : Proportions
        Of the pen.
    used : mapping of str to Span
        The dimensions that can be read off the drawing, and where.

    Returns
    -------
    str
        One sentence; a second one names measurements that do not fit the rest and are not drawn as measured.

    Notes
    -----
    A measurement counts as drawn when it is within 0.1 mm.
    """
    odd = [
        dimension_words(name)
        for name, span in used.items()
        if name in full.values and name not in full.assumed and abs(span.size - full[name]) > 0.1
    ]
    note = f" They do not fit together, so not as measured: {', '.join(odd)}." if odd else ""
    return _basis(full, used) + note


def _basis(full: Proportions, used: Collection[str]) -> str:
    assumed = full.assumed & set(used) & set(DRAWN)
    if not assumed - {"open_length", "capped_length", "barrel_depth"}:
        return "Drawn to scale from measurements."
    if not assumed & _CARRIES:
        return "Drawn to scale from measurements; smaller parts not measured are typical."
    return "Drawn; proportions assumed where not measured."


def draw_title(picture: Picture, title: str) -> float:
    """Set the title.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    title : str
        The finding.

    Returns
    -------
    float
        Where the drawing may begin [mm].
    """
    y = 1.0
    size = _TITLE_MM if picture.width_mm >= 100.0 else _SMALL_TITLE_MM
    for line in wrap(title, picture.width_mm - 2.0 * EDGE_MM, size, bold=True):
        y += 5.0
        picture.text(EDGE_MM, y, line, size=size, bold=True)
    return y + 3.0


def draw_caption(picture: Picture, words: str, y: float, scale: float | None = None) -> float:
    """Set the caption.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    words : str
        What it says.
    y : float
        Foot of its first line [mm].
    scale : float or None
        Millimetres on paper for one of the pen, added in words; None for a drawing without one scale.

    Returns
    -------
    float
        Foot of its last line [mm].
    """
    if scale is not None:
        words += f" {scale:.2f}\u00a0:\u00a01 at {picture.width_mm:g}\u202fmm\u00a0wide."
    for line in wrap(words, picture.width_mm - 2.0 * EDGE_MM):
        picture.text(EDGE_MM, y, line, colour=SLATE, italic=True)
        y += LINE_MM
    return y - LINE_MM


def draw_axis(picture: Picture, view: View) -> None:
    """Draw the centre line.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    view : View
        Scale and place.
    """
    ends = [(0.4, view.axis), (picture.width_mm - 0.4, view.axis)]
    picture.line(ends, stroke_width=0.12, stroke_dasharray="5 0.8 0.8 0.8")


def draw_side(picture: Picture, view: View, placed: Sequence[Placed], rail: float, sign: float) -> None:
    """Draw the labels of one side with their leaders.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    view : View
        Scale and place; the labels' anchors count from its axis.
    placed : sequence of Placed
        Labels with places.
    rail : float
        Height of the rail [mm].
    sign : {-1.0, 1.0}
        Above or below.
    """
    for item in placed:
        label = item.label
        colour = OXBLOOD if label.strong else INK
        x, y = label.anchor[0], view.axis + label.anchor[1]
        line = [(x, y), *((px, rail + sign * distance) for px, distance in item.leader)]
        picture.line(line, stroke=PAPER, stroke_width=0.75, stroke_opacity=0.75)
        picture.line(line, stroke=colour if label.strong else SLATE, stroke_width=0.2, data_leader=label.key)
        picture.add(element("circle", cx=x, cy=y, r=0.42, fill=colour))
        _words(picture, item, rail + item.top if sign > 0 else rail - item.bottom, colour)


def _words(picture: Picture, item: Placed, top: float, colour: str) -> None:
    """The tags and the words of a label, and its box for whoever reads the drawing."""
    label = item.label
    middle = top + 0.5 * label.height_mm()
    for place, mark in enumerate(label.marks):
        draw_tag(picture, item.left + (place + 0.5) * TAG_MM, middle, mark)
    first = middle - 0.5 * LINE_MM * len(label.lines) + 3.1
    for index, words in enumerate(label.lines):
        foot = first + LINE_MM * index
        picture.text(item.middle + 0.5 * label.tags_mm, foot, words, anchor="middle", colour=colour, bold=label.strong)
    box = " ".join(number(v) for v in (item.left, top, item.right, top + label.height_mm()))
    picture.add(element("g", data_label=label.key, data_box=box))


def with_article(words: str) -> str:
    """A name with "a" or "an" before it.

    Parameters
    ----------
    words : str
        For example "eyedropper".

    Returns
    -------
    str
        For example "an eyedropper".
    """
    return f"an {words}" if words[:1] in "aeiou" else f"a {words}"
