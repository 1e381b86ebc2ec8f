"""The outline of a pen with zones shaded by what is allowed there: for masks before polishing.

Pattern and word say it; colour only helps.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pentools.errors import InputError
from pentools.figures.drawing import Drawing
from pentools.figures.hatching import hatched
from pentools.figures.pen.labels import Label, place_row
from pentools.figures.pen.outline import Outline, outline_of
from pentools.figures.pen.paint import View, paint_pieces
from pentools.figures.pen.sheet import caption_words, draw_caption, draw_side, draw_title
from pentools.figures.pen.svg import INK, PAPER, Picture, element, number
from pentools.systems.anatomy import Anatomy
from pentools.systems.parts import part_name
from pentools.systems.registry import system_named
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of

__all__ = ["ZONE_KINDS", "Zone", "draw_zones"]

_LIES_ON = {"cap": ("cap-band",), "barrel": ("cap-threads",)}

ZONE_KINDS: dict[str, tuple[str, str, str]] = {
    "plain": ("plain", "may be worked", "slant"),
    "near-imprint": ("near the imprint", "last grades only", "dots"),
    "imprint": ("imprint", "no abrasive", "bars"),
    "threads": ("cap threads", "no abrasive", "bars"),
    "plating": ("plating", "no abrasive", "cross"),
    "gold-filled": ("gold-filled", "wipe only: the layer is thin", "cross"),
    "silver": ("silver", "wipe only: each cleaning takes silver", "cross"),
    "lacquer": ("lacquer", "wipe only: the coat is thin", "cross"),
    "overlay": ("metal overlay", "no abrasive", "cross"),
    "aluminium": ("aluminium", "no abrasive", "cross"),
    "bare-metal": ("bare metal", "fine grades, wet", "slant"),
    "masked": ("masked", "leave the mask on", "waves"),
}
"""Zone kind -> (its name, what is allowed there, pattern). What is allowed is common practice, no source."""


@dataclass(frozen=True, slots=True)
class Zone:
    """A stretch of one part and what it is.

    Parameters
    ----------
    kind : str
        Key of `ZONE_KINDS`.
    part : str
        Part key of the outline: "cap", "clip", "cap-band", "barrel", "section", "cap-threads", or the end piece.
    start_mm, end_mm : float or None
        Stretch along the part, from its front end [mm]; None for its front end and its rear end.
    words : str
        What is allowed there, in place of the usual words.

    Raises
    ------
    InputError
        When the kind is unknown or the stretch runs backwards.
    """

    kind: str
    part: str
    start_mm: float | None = None
    end_mm: float | None = None
    words: str = ""

    def __post_init__(self) -> None:
        if self.kind not in ZONE_KINDS:
            raise InputError("zone", "one of " + ", ".join(ZONE_KINDS), self.kind)
        if (self.start_mm or 0.0) < 0.0 or (self.end_mm is not None and self.end_mm <= (self.start_mm or 0.0)):
            got = f"{self.start_mm} to {self.end_mm}"
            raise InputError("stretch of a zone", "a start from 0 mm and an end beyond it", got)


def draw_zones(
    shape: PenShape,
    zones: Sequence[Zone],
    *,
    title: str | None = None,
    capped: bool = True,
    show_title: bool = True,
    width_mm: float = 160.0,
) -> Drawing:
    """Draw the outside of a pen with its zones.

    Parameters
    ----------
    shape : PenShape
        Its dimensions.
    zones : sequence of Zone
        Painted in this order, so a small zone goes after the large one it lies in.
    title : str or None
        The finding, as a sentence; None for one that counts the zones left alone.
    capped : bool
        Whether the cap is on; without it section and threads are seen.
    show_title : bool
        Whether the title is set in the picture too.
    width_mm : float
        Width on paper [mm]; 60 to 400.

    Returns
    -------
    Drawing
        SVG, title, alternative text, width [mm].

    Raises
    ------
    InputError
        When a zone lies on a part that is not seen, or the width is out of range.

    Examples
    --------
    >>> pen = PenShape("lever-sac")
    >>> draw_zones(pen, [Zone("plain", "barrel"), Zone("imprint", "barrel", 12.0, 34.0)]).title
    '1 of 2 zones is kept from any abrasive.'
    """
    if not 60.0 <= width_mm <= 400.0:
        raise InputError("width of the drawing", "60 to 400 mm", f"{width_mm:g} mm")
    full = proportions_of(shape)
    outline = outline_of(shape.system, full, capped=capped)
    finding = title or _finding(zones)
    picture = Picture(width_mm, "zones")
    scale = (width_mm - 3.0) / (outline.back - outline.front)
    view = View(scale, 1.5 - outline.front * scale, 0.0)
    up, down = _labels(outline, zones, view)
    above, high = place_row(up, 1.5, width_mm - 1.5)
    below, deep = place_row(down, 1.5, width_mm - 1.5)
    heights = [scale * y for piece in outline.anatomy.pieces for _, y in piece.points]
    top = draw_title(picture, finding) if show_title else 1.0
    axis = top + high + 2.0 - min(heights)
    view = View(scale, view.left, axis)
    paint_pieces(picture, view, outline.anatomy.pieces)
    for index, zone in enumerate(zones, start=1):
        _shade(picture, view, outline, zone, index)
    paint_pieces(picture, view, outline.over)
    draw_side(picture, view, above, axis + min(heights) - 1.4, -1.0)
    draw_side(picture, view, below, axis + max(heights) + 1.4, 1.0)
    y = axis + max(heights) + deep + 6.4
    y = draw_caption(picture, caption_words(full, outline.spans), y, scale)
    alt = f"{finding} {_described(shape, zones)}"
    return Drawing(picture.finish(y + 1.2, finding, alt), finding, alt, width_mm)


def _finding(zones: Sequence[Zone]) -> str:
    kept = sum(zone.kind not in {"plain", "near-imprint", "bare-metal"} for zone in zones)
    verb = "is" if kept == 1 else "are"
    return f"{kept} of {len(zones)} zones {verb} kept from any abrasive."


def _described(shape: PenShape, zones: Sequence[Zone]) -> str:
    words = [f"The outside of a pen ({system_named(shape.system).label}), nib end to the left."]
    for zone in zones:
        name, allowed, _ = ZONE_KINDS[zone.kind]
        stretch = ""
        if zone.start_mm is not None or zone.end_mm is not None:
            end = "its end" if zone.end_mm is None else f"{zone.end_mm:g} mm"
            stretch = f" from {zone.start_mm or 0.0:g} mm to {end}"
        words.append(f"{zone.part.replace('-', ' ')}{stretch}: {name}, {zone.words or allowed}.")
    return " ".join(words)


def _labels(outline: Outline, zones: Sequence[Zone], view: View) -> tuple[list[Label], list[Label]]:
    sides: tuple[list[Label], list[Label]] = ([], [])
    for index, zone in enumerate(zones, start=1):
        name, allowed, _ = ZONE_KINDS[zone.kind]
        x = _open_middle(outline, zone, zones[index:])
        upper = zone.part == "clip" or len(sides[0]) <= len(sides[1])
        share = 1.0 if zone.part == "clip" else 0.6
        y = outline.height(zone.part, x) * (-share if upper else share)
        name = f"{part_name(zone.part)}: {name}" if name != part_name(zone.part) else name
        label = Label(f"zone {index}", (name, zone.words or allowed), view.to_paper((x, y)))
        sides[0 if upper else 1].append(label)
    return sides


def _open_middle(outline: Outline, zone: Zone, later: Sequence[Zone]) -> float:
    """Middle of the longest stretch of a zone that no later zone covers [mm]."""
    whole = outline.stretch(zone.part, zone.start_mm, zone.end_mm)
    gaps = [(whole[0][0], whole[-1][0])]
    for other in later:
        if other.part not in {zone.part, *_LIES_ON.get(zone.part, ())}:
            continue
        over = outline.stretch(other.part, other.start_mm, other.end_mm)
        x0, x1 = over[0][0], over[-1][0]
        cut = [pair for a, b in gaps for pair in ((a, min(b, x0)), (max(a, x1), b)) if pair[1] > pair[0]]
        gaps = cut or gaps
    longest = max(gaps, key=lambda gap: gap[1] - gap[0])
    return 0.5 * (longest[0] + longest[1])


def _shade(picture: Picture, view: View, outline: Outline, zone: Zone, index: int) -> None:
    probe = Anatomy()
    if zone.part == "clip":
        probe.path("clip", outline.clip, "void")
    else:
        probe.solid(zone.part, outline.stretch(zone.part, zone.start_mm, zone.end_mm), "void")
    corners = [view.to_paper(point) for point in probe.pieces[0].points]
    joined = "L".join(f"{number(x)} {number(y)}" for x, y in corners)
    picture.add(element("path", d=f"M{joined}Z", fill=PAPER), hatched(corners, ZONE_KINDS[zone.kind][2]))
    edge = {"stroke": INK, "stroke_width": "0.22", "stroke_linejoin": "round"}
    picture.add(element("path", d=f"M{joined}Z", fill="none", data_zone=f"{index} {zone.kind}", **edge))
