"""The pen on the balance, empty and filled: the drawing beside the two weighings."""

from __future__ import annotations

from pentools.errors import InputError
from pentools.figures.drawing import Drawing
from pentools.figures.pen.lettering import LINE_MM, wrap
from pentools.figures.pen.outline import outline_of
from pentools.figures.pen.paint import View, paint_pieces
from pentools.figures.pen.sheet import EDGE_MM, draw_caption, draw_title
from pentools.figures.pen.svg import INK, PAPER, SLATE, Picture, element, number
from pentools.systems.registry import system_named
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of

__all__ = ["weigh_here"]

_STEPS = (
    ("Empty", "Drained and wiped dry, the same parts on it each time; read when the display rests."),
    ("Filled", "Filled, nib and section wiped; weigh at once, then again a minute later."),
)


def weigh_here(
    system: str,
    *,
    readings: tuple[str, str] = ("", ""),
    shape: PenShape | None = None,
    show_title: bool = True,
    width_mm: float = 80.0,
) -> Drawing:
    """Show the two weighings that a fill is told from.

    Parameters
    ----------
    system : str
        Filling system key.
    readings : (str, str)
        What the display shows empty and filled, as typed; blank for dashes.
    shape : PenShape or None
        The pen, if some of it is known.
    show_title : bool
        Whether the title is set in the picture too.
    width_mm : float
        Width on paper [mm]; 60 to 200.

    Returns
    -------
    Drawing
        SVG, title, alternative text, width [mm].

    Raises
    ------
    InputError
        When the system is unknown or the width out of range.

    Examples
    --------
    >>> weigh_here("piston").title
    'Weigh it empty, then filled.'
    """
    if not 60.0 <= width_mm <= 200.0:
        raise InputError("width of the drawing", "60 to 200 mm", f"{width_mm:g} mm")
    full = proportions_of(shape or PenShape(system))
    outline = outline_of(system, full, capped=False)
    title = "Weigh it empty, then filled."
    picture = Picture(width_mm, "weigh")
    top = draw_title(picture, title) if show_title else 2.0
    column = 0.5 * width_mm
    scale = (column - 6.0) / (outline.back - outline.front)
    high = -min(y for piece in outline.anatomy.pieces for _, y in piece.points) * scale
    plate = top + 2.0 * high + 1.0
    foot = plate
    for index, reading in enumerate(readings):
        view = View(scale, index * column + 3.0 - outline.front * scale, plate - high)
        paint_pieces(picture, view, (*outline.anatomy.pieces, *outline.over))
        _balance(picture, index * column, plate, column, reading)
        foot = max(foot, _step_words(picture, index, column, plate + 20.0))
    foot = draw_caption(picture, "Drawn; the balance is not to scale.", foot + LINE_MM + 0.8)
    shown = [f"{name}: {reading or 'not weighed yet'}." for (name, _), reading in zip(_STEPS, readings, strict=True)]
    alt = f"{title} A drawing of a pen ({system_named(system).label}) on a balance, twice. {' '.join(shown)}"
    return Drawing(picture.finish(foot + 1.4, title, alt), title, alt, width_mm)


def _step_words(picture: Picture, index: int, column: float, y: float) -> float:
    """What is done in a step, under its balance; returns the foot of the last line [mm]."""
    (name, how), left = _STEPS[index], index * column + EDGE_MM
    picture.text(left, y, f"{index + 1}  {name}", bold=True)
    for line in wrap(how, column - 2.5 * EDGE_MM):
        y += LINE_MM
        picture.text(left, y, line)
    return y


def _balance(picture: Picture, left: float, plate: float, column: float, reading: str) -> None:
    middle = left + 0.5 * column
    _trapezium(picture, (middle, plate), (0.5 * column - 5.0, 0.5 * column - 6.5), 1.4)
    _trapezium(picture, (middle, plate + 3.6), (9.0, 13.0), 10.4)
    picture.line([(middle, plate + 1.4), (middle, plate + 3.6)], stroke_width=1.2)
    box = {"x": middle - 9.0, "y": plate + 7.0, "width": 18.0, "height": 5.0, "rx": 0.6}
    picture.add(element("rect", **box, fill="#ffffff", stroke=SLATE, stroke_width=0.25))
    picture.text(middle, plate + 10.7, reading or "– – –", anchor="middle", colour=INK)


def _trapezium(picture: Picture, top: tuple[float, float], halves: tuple[float, float], height: float) -> None:
    """Pan or body, by the middle of its top and its half widths above and below [mm]."""
    (x, y), (above, below) = top, halves
    corners = [(x - above, y), (x + above, y), (x + below, y + height), (x - below, y + height)]
    joined = " ".join(f"{number(cx)},{number(cy)}" for cx, cy in corners)
    picture.add(element("polygon", points=joined, fill=PAPER, stroke=SLATE, stroke_width=0.35, stroke_linejoin="round"))
