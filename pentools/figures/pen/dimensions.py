"""Dimension lines with arrows and figures, stacked under a drawing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pentools.errors import InputError
from pentools.figures.pen.lettering import format_length, text_width_mm
from pentools.figures.pen.paint import View
from pentools.figures.pen.svg import INK, PAPER, Picture, element, number
from pentools.systems.anatomy import Anatomy, Span
from pentools.systems.dimensions import dimension_words
from pentools.systems.proportions import Proportions
from pentools.systems.shape import DRAWN

__all__ = ["arrow", "draw_lengths", "length_words", "spans_to_show"]

_ROW = 6.2


def spans_to_show(anatomy: Anatomy, names: Sequence[str]) -> dict[str, Span]:
    """Where the wanted dimensions are read on this pen.

    Parameters
    ----------
    anatomy : Anatomy
        Of the pen.
    names : sequence of str
        Dimension names.

    Returns
    -------
    dict of str to Span
        In the order asked for.

    Raises
    ------
    InputError
        When this pen has no such dimension.
    """
    for name in names:
        if name not in anatomy.spans or name not in DRAWN:
            known = ", ".join(key for key in anatomy.spans if key in DRAWN)
            raise InputError("dimension to show", f"one of {known}", name)
    return {name: anatomy.spans[name] for name in names}


def length_words(name: str, full: Proportions, decimal_sign: str) -> str:
    """A dimension's name and figure.

    Parameters
    ----------
    name : str
        Dimension name.
    full : Proportions
        Of the pen.
    decimal_sign : {".", ","}
        Sign shown.

    Returns
    -------
    str
        For example "stroke 31.00 mm (1.220 in)", or "stroke, not measured".
    """
    if name in full.assumed:
        return f"{dimension_words(name)}, not measured"
    return f"{dimension_words(name)} {format_length(full[name], decimal_sign)}"


def arrow(picture: Picture, tip: tuple[float, float], towards: tuple[float, float], colour: str = INK) -> None:
    """A slim arrow head.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    tip : (float, float)
        Its point [mm].
    towards : (float, float)
        Unit vector from the tip to its tail.
    colour : str
        Fill.
    """
    (x, y), (dx, dy) = tip, towards
    corners = [
        (x, y),
        (x + 1.9 * dx - 0.5 * dy, y + 1.9 * dy + 0.5 * dx),
        (x + 1.9 * dx + 0.5 * dy, y + 1.9 * dy - 0.5 * dx),
    ]
    picture.add(element("polygon", points=" ".join(f"{number(a)},{number(b)}" for a, b in corners), fill=colour))


def draw_lengths(
    picture: Picture,
    view: View,
    spans: Mapping[str, Span],
    *,
    y: float,
    foot: float,
    full: Proportions,
    decimal_sign: str = ".",
) -> float:
    """Draw lengths along the axis, the shortest nearest the pen, one a row.

    Parameters
    ----------
    picture : Picture
        Drawn on.
    view : View
        Scale and place.
    spans : mapping of str to Span
        Dimension name -> where it is read.
    y, foot : float
        Top of the first row, and where the extension lines begin [mm].
    full : Proportions
        For the figures.
    decimal_sign : {".", ","}
        Sign shown.

    Returns
    -------
    float
        Where the rows end [mm].
    """
    for name, span in sorted(spans.items(), key=lambda item: abs(item[1].end[0] - item[1].start[0])):
        x0, x1 = sorted((view.to_paper(span.start)[0], view.to_paper(span.end)[0]))
        line_y = y + 4.6
        for x in (x0, x1):
            picture.line([(x, foot + 0.6), (x, line_y + 0.9)], stroke_width=0.14)
        words = length_words(name, full, decimal_sign)
        width = text_width_mm(words)
        short = x1 - x0 < 6.0
        ends = (x0 - 3.5, x1 + 3.5) if short else (x0, x1)
        picture.line([(ends[0], line_y), (ends[1], line_y)], stroke=INK, stroke_width=0.22, data_dimension=name)
        arrow(picture, (x0, line_y), (-1.0, 0.0) if short else (1.0, 0.0))
        arrow(picture, (x1, line_y), (1.0, 0.0) if short else (-1.0, 0.0))
        middle = min(max(0.5 * (x0 + x1), 0.5 * width + 1.0), picture.width_mm - 0.5 * width - 1.0)
        box = [middle - 0.5 * width - 0.4, line_y - 4.2, width + 0.8, 3.7]
        picture.add(element("rect", x=box[0], y=box[1], width=box[2], height=box[3], fill=PAPER, fill_opacity=0.9))
        picture.text(middle, line_y - 1.0, words, anchor="middle")
        shown = " ".join(number(v) for v in (box[0], box[1], box[0] + box[2], box[1] + box[3]))
        picture.add(element("g", data_label=f"dimension {name}", data_box=shown))
        y += _ROW
    return y + (1.0 if spans else 0.0)
