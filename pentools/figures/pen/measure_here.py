"""Small drawings that show where a measurement is taken and with what: jaws, depth rod, or the balance."""

from __future__ import annotations

from pentools.errors import InputError
from pentools.figures.drawing import Drawing
from pentools.figures.pen.dimensions import arrow
from pentools.figures.pen.lettering import LINE_MM, wrap
from pentools.figures.pen.paint import View, paint_pieces
from pentools.figures.pen.sheet import EDGE_MM, caption_words, draw_caption, draw_title
from pentools.figures.pen.svg import OXBLOOD, PAPER, SLATE, Picture, element, number
from pentools.systems.anatomy import Piece, Span
from pentools.systems.assembly import anatomy_of
from pentools.systems.dimensions import DIMENSIONS, Dimension, Taken, dimension_named
from pentools.systems.proportions import Proportions
from pentools.systems.registry import system_named
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of

__all__ = ["measurable", "measure_here"]

_WITH_CAP = {"capped_length", "cap_length", "cap_diameter"}


def measurable(system: str) -> tuple[str, ...]:
    """The dimensions that can be shown for a filling system.

    Parameters
    ----------
    system : str
        Filling system key.

    Returns
    -------
    tuple of str
        Names for `measure_here`.

    Raises
    ------
    InputError
        When the system is unknown.
    """
    anatomy, _, _ = anatomy_of(system, proportions_of(PenShape(system)), capped=True)
    return tuple(name for name, known in DIMENSIONS.items() if known.taken is not None and name in anatomy.spans)


def measure_here(
    system: str, dimension: str, *, shape: PenShape | None = None, show_title: bool = True, width_mm: float = 80.0
) -> Drawing:
    """Show where a dimension is measured, and with what.

    Parameters
    ----------
    system : str
        Filling system key.
    dimension : str
        Name of the dimension, with or without ``_mm``, hyphens allowed.
    shape : PenShape or None
        The pen, if some of it is known; None for typical proportions.
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
        When this filling system has no such dimension, or the width is out of range.

    Examples
    --------
    >>> measure_here("piston", "bore").title
    'Measure the bore here.'
    """
    if not 60.0 <= width_mm <= 200.0:
        raise InputError("width of the drawing", "60 to 200 mm", f"{width_mm:g} mm")
    full = proportions_of(shape or PenShape(system))
    known, taken, span, pieces = _found(system, dimension, full)
    title = f"Measure the {known.words} here."
    picture = Picture(width_mm, "measure")
    top = draw_title(picture, title) if show_title else 2.0
    view, head, foot = _window(pieces, span, width_mm, top, taken.tool)
    clip = f"{picture.prefix}-window"
    window = element("rect", x=0.5, y=head - 0.3, width=width_mm - 1.0, height=foot - head + 0.6)
    picture.add(element("clipPath", window, id=clip), f'<g clip-path="url(#{clip})">')
    paint_pieces(picture, view, pieces)
    picture.add("</g>")
    _jaws(picture, view, span, taken.tool, head)
    _value_arrow(picture, view, span, known.words)
    y = foot + (8.5 if taken.tool in {"outside", "blade", "depth"} else 5.0)
    for line in wrap(taken.how, width_mm - 2.0 * EDGE_MM):
        picture.text(EDGE_MM, y, line)
        y += LINE_MM
    basis = "Drawn, not to scale with your pen." if shape is None else caption_words(full, {known.name: span})
    y = draw_caption(picture, basis, y + 0.6)
    parts = " and ".join(sorted({piece.part.replace("-", " ") for piece in pieces}))
    alt = f"{title} {taken.how} A drawing of {parts} of a {system_named(system).label}."
    return Drawing(picture.finish(y + 1.4, title, alt), title, alt, width_mm)


def _found(system: str, dimension: str, full: Proportions) -> tuple[Dimension, Taken, Span, list[Piece]]:
    """The dimension, how it is taken, where it is read, and what is drawn with it."""
    name = dimension_named(dimension, length=system_named(system).length)
    anatomy, _, _ = anatomy_of(system, full, capped=name in _WITH_CAP)
    if name == "depth" and name not in anatomy.spans:
        name = "barrel_depth"
    known, span = DIMENSIONS.get(name), anatomy.spans.get(name)
    if known is None or known.taken is None or span is None:
        raise InputError("dimension to measure", "one of " + ", ".join(measurable(system)), dimension)
    taken = known.taken
    return known, taken, span, [piece for piece in anatomy.pieces if not taken.parts or piece.part in taken.parts]


def _window(pieces: list[Piece], span: Span, width_mm: float, top: float, tool: str) -> tuple[View, float, float]:
    """Choose scale and place so that the span and what surrounds it fill the picture; returns its upper and lower edge."""
    size = max(abs(span.end[0] - span.start[0]), abs(span.end[1] - span.start[1]))
    extents = [(min(x for x, _ in piece.points), max(x for x, _ in piece.points), piece) for piece in pieces]
    x0, x1 = min(low for low, _, _ in extents), max(high for _, high, _ in extents)
    middle = 0.5 * (span.start[0] + span.end[0])
    shown = size * 1.3 + 4.0 if span.along else max(3.6 * size, 9.0)
    low, high = max(middle - 0.5 * shown, x0 - 1.5), min(middle + 0.5 * shown, x1 + 1.5)
    seen = [piece for left, right, piece in extents if left < high and right > low]
    half = max(abs(y) for piece in seen for _, y in piece.points)
    centre = 0.0
    if not span.along and span.start[1] * span.end[1] > 0.0:
        half, centre = 3.5 * size, 0.5 * (span.start[1] + span.end[1])
        low, high = middle - 4.5, middle + 4.5
    scale = min((width_mm - 14.0) / (high - low), 17.0 / half)
    head = top + (4.5 if span.along or tool in {"outside", "blade"} else 0.5)
    left = 0.5 * width_mm - 0.5 * (low + high) * scale
    return View(scale, left, head + (half - centre) * scale), head, head + 2.0 * half * scale


def _jaws(picture: Picture, view: View, span: Span, tool: str, head: float) -> None:
    """Draw the jaws of a caliper, or its depth rod, touching the two points of a span."""
    (x0, y0), (x1, y1) = view.to_paper(span.start), view.to_paper(span.end)
    if tool == "depth":
        _steel(picture, [(0.5, y0 - 1.0), (x1, y0 - 1.0), (x1, y0 + 1.0), (0.5, y0 + 1.0)])
        reach = y0 - head + 3.0
        _steel(picture, [(x0 - 3.5, y0 - reach), (x0, y0 - reach), (x0, y0 + reach), (x0 - 3.5, y0 + reach)])
    elif tool == "blade":
        for y, end in ((y0, head - 4.0), (y1, 2.0 * view.axis - head + 4.0)):
            _steel(picture, [(x0 - 0.8, y), (x0 + 0.8, y), (x0 + 0.8, end), (x0 - 0.8, end)])
    elif tool != "step" and span.along:
        outward, tip, end = (1.0, 3.0, head - 3.8) if tool == "outside" else (-1.0, 0.5, head - 3.8)
        wide = 2.6 if tool == "outside" else min(2.6, 0.3 * (x1 - x0))
        for x, sign in ((x0, -1.0), (x1, 1.0)):
            back = x + sign * outward * wide
            _steel(picture, [(x, y0 + tip), (x, end), (back, end), (back, y0 + tip - min(5.0, 0.4 * (y0 + tip - end)))])
    elif tool != "step":
        outward = 1.0 if tool == "outside" else -1.0
        for y, sign in ((y0, -1.0), (y1, 1.0)):
            far = y + sign * outward * 2.6
            _steel(picture, [(x0 - 1.6, y), (x0 + 9.0, y), (x0 + 9.0, far), (x0 - 0.6, far)])


def _steel(picture: Picture, points: list[tuple[float, float]]) -> None:
    joined = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    picture.add(
        element(
            "polygon", points=joined, fill=PAPER, fill_opacity=0.9, stroke=SLATE, stroke_width=0.4, data_tool="caliper"
        )
    )


def _value_arrow(picture: Picture, view: View, span: Span, words: str) -> None:
    (x0, y0), (x1, y1) = view.to_paper(span.start), view.to_paper(span.end)
    picture.line([(x0, y0), (x1, y1)], stroke=OXBLOOD, stroke_width=0.45, data_dimension=words)
    length = max(abs(x1 - x0), abs(y1 - y0))
    ux, uy = (x1 - x0) / length, (y1 - y0) / length
    if length > 4.5:
        arrow(picture, (x0, y0), (ux, uy), OXBLOOD)
        arrow(picture, (x1, y1), (-ux, -uy), OXBLOOD)
