"""The pen in section, to scale, with its parts named: for panels, condition surveys and pages."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from pentools.errors import InputError
from pentools.figures.drawing import Drawing
from pentools.figures.pen.dimensions import draw_lengths, spans_to_show
from pentools.figures.pen.labels import Label, place_row
from pentools.figures.pen.lettering import format_length
from pentools.figures.pen.marks import Mark, draw_mark_list, mark_of
from pentools.figures.pen.paint import View, paint_pieces
from pentools.figures.pen.sheet import (
    EDGE_MM,
    RAIL_MM,
    caption_words,
    draw_axis,
    draw_caption,
    draw_side,
    draw_title,
    with_article,
)
from pentools.figures.pen.svg import OXBLOOD, Picture, element, number
from pentools.systems.anatomy import Anatomy, Span
from pentools.systems.assembly import anatomy_of
from pentools.systems.dimensions import dimension_words
from pentools.systems.parts import CAP_PARTS, drawn_part, part_name, parts_of
from pentools.systems.profiles import Point
from pentools.systems.proportions import Proportions
from pentools.systems.registry import system_named
from pentools.systems.shape import DRAWN, PenShape
from pentools.systems.typical import proportions_of

__all__ = ["PenOptions", "draw_pen"]

_PLAIN_PARTS = (*CAP_PARTS, "nib", "feed", "section", "section-joint", "cap-threads", "ink-space")


@dataclass(frozen=True, slots=True)
class PenOptions:
    """What is shown of a pen, and how.

    Parameters
    ----------
    title : str or None
        The finding, as a sentence; None for "The parts of a …".
    highlight : sequence of str
        Parts to draw in oxblood with a heavier line.
    highlight_word : str
        Word set under the names of highlighted parts.
    dimensions : sequence of str
        Names of dimensions to show with arrows and figures (of `pentools.systems.shape.DRAWN`).
    marks : sequence of (str, str, str)
        For a condition survey: part (or a general word that `pentools.systems.parts.drawn_part` knows), what is
        wrong, severity; each becomes a numbered tag before the part's name and a line of text.
    capped : bool
        Whether the cap is on; a highlighted or marked part of the cap puts it on anyway.
    labels : sequence of str or None
        Parts to name; None for all of them, or, where dimensions are shown, for those of the mechanism.
    show_title : bool
        Whether the title is set in the picture too.
    decimal_sign : {".", ","}
        Sign in the figures.
    width_mm : float
        Width on paper [mm]; 60 to 400.

    Raises
    ------
    InputError
        When the width is out of range.
    """

    title: str | None = None
    highlight: Sequence[str] = ()
    highlight_word: str = "look here"
    dimensions: Sequence[str] = ()
    marks: Sequence[tuple[str, str, str]] = ()
    capped: bool = False
    labels: Sequence[str] | None = None
    show_title: bool = True
    decimal_sign: str = "."
    width_mm: float = 160.0

    def __post_init__(self) -> None:
        if not 60.0 <= self.width_mm <= 400.0:
            raise InputError("width of the drawing", "60 to 400 mm", f"{self.width_mm:g} mm")


def draw_pen(shape: PenShape, options: PenOptions | None = None) -> Drawing:
    """Draw a pen in section with nib, feed, section, barrel and filling mechanism.

    Parameters
    ----------
    shape : PenShape
        Its filling system and dimensions; None where not measured.
    options : PenOptions or None
        What is shown; None for its parts, each named.

    Returns
    -------
    Drawing
        SVG, title, alternative text, width [mm].

    Raises
    ------
    InputError
        When a part or dimension is not one this pen has.

    Notes
    -----
    One scale along and across. Dimensions that were not measured are typical proportions: the caption in the
    picture says so, and a dimension shown on such a length reads "not measured".

    Examples
    --------
    >>> draw_pen(PenShape("piston", bore_mm=8.4)).title
    'The parts of a piston filler, in section.'
    """
    shown = options or PenOptions()
    seen = _seen(shape, shown)
    finding = shown.title or f"The parts of {with_article(system_named(shape.system).label)}, in section."
    picture = Picture(shown.width_mm)
    scale = (shown.width_mm - 2.0 * EDGE_MM) / (seen.back - seen.front)
    left = EDGE_MM - seen.front * scale
    lengths = {name: span for name, span in seen.spans.items() if span.along}
    up, down = _sides(_labels(seen, shown, View(scale, left, 0.0)), seen.anatomy, bool(lengths))
    above, high = place_row(up, EDGE_MM, shown.width_mm - EDGE_MM)
    below, deep = place_row(down, EDGE_MM, shown.width_mm - EDGE_MM)
    heights = [scale * y for piece in seen.anatomy.pieces for _, y in piece.points]
    head = draw_title(picture, finding) if shown.show_title else 1.0
    view = View(scale, left, head + high + (RAIL_MM if above else 0.0) - min(heights) + 0.6)
    foot = view.axis + max(heights)
    paint_pieces(picture, view, seen.anatomy.pieces, lambda part: part in shown.highlight)
    draw_axis(picture, view)
    _diameter_arrows(picture, view, seen.spans)
    draw_side(picture, view, above, view.axis + min(heights) - RAIL_MM, -1.0)
    draw_side(picture, view, below, foot + RAIL_MM, 1.0)
    y = foot + (deep + RAIL_MM if below else 0.0) + 1.2
    y = draw_lengths(picture, view, lengths, y=y, foot=foot, full=seen.full, decimal_sign=shown.decimal_sign)
    y = draw_mark_list(picture, seen.marks, y + 1.0) + 3.6
    y = draw_caption(picture, caption_words(seen.full, seen.anatomy.spans), y, scale)
    alt = _alt(finding, shape, seen.marks)
    return Drawing(picture.finish(y + 1.2, finding, alt), finding, alt, shown.width_mm)


@dataclass(frozen=True, slots=True)
class _Seen:
    """A pen put together for drawing: its pieces and how far they reach, what is marked, named and measured."""

    full: Proportions
    anatomy: Anatomy
    front: float
    back: float
    marks: tuple[Mark, ...]
    named: tuple[str, ...]
    spans: dict[str, Span]


def _seen(shape: PenShape, shown: PenOptions) -> _Seen:
    noted = tuple(
        mark_of(number_, drawn_part(shape.system, part), text, severity)
        for number_, (part, text, severity) in enumerate(shown.marks, start=1)
    )
    named = (*shown.highlight, *(shown.labels or ()), *(mark.part for mark in noted))
    _check_parts(shape.system, named)
    capped = shown.capped or any(part in CAP_PARTS for part in named)
    full = proportions_of(shape)
    anatomy, front, back = anatomy_of(shape.system, full, capped=capped)
    spans = spans_to_show(anatomy, shown.dimensions)
    chosen = _named(shape.system, shown.labels, named, bool(spans))
    wanted = tuple(part for part in parts_of(shape.system, cap=capped) if part in chosen)
    return _Seen(full, anatomy, front, back, noted, wanted, spans)


def _check_parts(system: str, named: Sequence[str]) -> None:
    known = parts_of(system)
    for part in named:
        if part not in known:
            raise InputError("part", f"a part of {with_article(system_named(system).label)} ({', '.join(known)})", part)


def _named(system: str, labels: Sequence[str] | None, named: Sequence[str], dimensioned: bool) -> set[str]:
    if labels is not None:
        return {*labels, *named}
    return {part for part in parts_of(system) if not dimensioned or part not in _PLAIN_PARTS} | set(named)


def _labels(seen: _Seen, shown: PenOptions, view: View) -> list[Label]:
    found = []
    for part in seen.named:
        strong = part in shown.highlight
        lines = (part_name(part), shown.highlight_word) if strong and shown.highlight_word else (part_name(part),)
        marks = tuple(mark for mark in seen.marks if mark.part == part)
        found.append(Label(part, lines, view.to_paper(seen.anatomy.anchors[part]), strong, marks))
    across = {name: span for name, span in seen.spans.items() if not span.along}
    return found + [_diameter_label(name, span, view, seen.full, shown.decimal_sign) for name, span in across.items()]


def _sides(words: Sequence[Label], anatomy: Anatomy, keep_below_free: bool) -> tuple[list[Label], list[Label]]:
    """Share the labels out above and below: parts with a side of their own first, then to the emptier side."""
    if keep_below_free:
        return list(words), []
    up: list[Label] = []
    down: list[Label] = []
    for label in words:
        if label.key in anatomy.fixed:
            (up if label.anchor[1] < 0.0 else down).append(label)
    free = sorted((label for label in words if label.key not in anatomy.fixed), key=lambda label: label.anchor[0])
    for label in free:
        load_up, load_down = _load(up, label), _load(down, label)
        side, sign = (up, -1.0) if load_up <= load_down else (down, 1.0)
        side.append(replace(label, anchor=(label.anchor[0], sign * abs(label.anchor[1]))))
    return up, down


def _load(side: Sequence[Label], label: Label) -> float:
    crowd = sum(other.width_mm() / (4.0 + abs(other.anchor[0] - label.anchor[0])) for other in side)
    return crowd + 0.01 * sum(other.width_mm() for other in side)


def _diameter_label(name: str, span: Span, view: View, full: Proportions, sign: str) -> Label:
    start: Point = span.start
    value = "not\u00a0measured" if name in full.assumed else f"⌀\u00a0{format_length(full[name], sign)}"
    return Label(f"dimension {name}", (dimension_words(name), value), view.to_paper(start), False)


def _diameter_arrows(picture: Picture, view: View, spans: Mapping[str, Span]) -> None:
    for name, span in spans.items():
        if not span.along:
            _diameter_arrow(picture, view, name, span)


def _diameter_arrow(picture: Picture, view: View, name: str, span: Span) -> None:
    (x, y0), (_, y1) = view.to_paper(span.start), view.to_paper(span.end)
    picture.line([(x, y0), (x, y1)], stroke=OXBLOOD, stroke_width=0.28, data_dimension=name)
    for y, sign in ((y0, 1.0), (y1, -1.0)):
        points = f"{number(x)},{number(y)} {number(x - 0.5)},{number(y + sign * 1.6)} {number(x + 0.5)},{number(y + sign * 1.6)}"
        picture.add(element("polygon", points=points, fill=OXBLOOD))


def _alt(finding: str, shape: PenShape, marks: Sequence[Mark]) -> str:
    figures = [
        f"{dimension_words(name)} {format_length(value)}"
        for name in DRAWN
        if (value := shape.measured(name)) is not None
    ]
    parts = [
        finding.rstrip(".") + ".",
        f"A drawing in section of {with_article(system_named(shape.system).label)}, nib to the left.",
    ]
    parts.append("Measured: " + "; ".join(figures) + "." if figures else "No dimension was measured.")
    parts += [f"Tag {mark.number}, {part_name(mark.part)}: {mark.text} ({mark.severity})." for mark in marks]
    return " ".join(parts)
