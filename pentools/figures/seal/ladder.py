"""The ladder of dry trials: which sizes were tried, which failed, which one held, on a scale of sizes."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.figures.drawing import Drawing
from pentools.figures.pen.lettering import LINE_MM, text_width_mm, wrap
from pentools.figures.pen.sheet import EDGE_MM, draw_title
from pentools.figures.pen.svg import INK, JADE, OXBLOOD, PAPER, RULE, SLATE, Picture, element, number
from pentools.record.stages.seal.kinds import PLACES
from pentools.record.stages.seal.measure import bore_mm
from pentools.record.stages.seal.sealing import fit_words, measured, next_trial, place_words, trials

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.stages.seal.trials import NextTrial, TrialDone

__all__ = ["ladder_drawing"]

TEXT_COLUMN_MM = 58.0
TICKS = (0.05, 0.1, 0.2, 0.5, 1.0, 2.0)
MARK_MM = 1.7


@dataclass(frozen=True, slots=True)
class _Axis:
    """Sizes on paper."""

    low: float
    high: float
    left: float
    right: float

    def at(self, size_mm: float) -> float:
        """Place of a size on paper [mm]."""
        return self.left + (size_mm - self.low) / (self.high - self.low) * (self.right - self.left)


def ladder_drawing(job: Job, place: str, *, ahead: bool = True, width_mm: float = 160.0) -> Drawing | None:
    """The trials at a place in their order, each at its size.

    Parameters
    ----------
    place : str
        A key of `PLACES`.
    ahead : bool
        Whether the size proposed next is drawn too.
    width_mm : float
        Width on paper [mm], 120 to 220.

    Returns
    -------
    Drawing or None
        None where no trial of a measured size is there and none is proposed.

    Raises
    ------
    InputError
        If the width is out of range, or the measurements contradict each other.
    """
    if not 120.0 <= width_mm <= 220.0:
        raise InputError("width of the drawing", "120 to 220 mm", f"{width_mm:g} mm")
    done = [t for t in trials(job, place) if t.size_mm is not None]
    proposal = next_trial(job, place)
    proposed = proposal if ahead and proposal is not None and proposal.step.next_mm is not None else None
    if not done and proposed is None:
        return None
    title = fit_words(job, place) or f"The {place_words(place)}: nothing was tried yet"
    picture = Picture(width_mm, "ladder")
    top = draw_title(picture, title) + 6.0
    axis = _axis_of(job, place, done, proposal, width_mm)
    rows = [_row_words(number_, t) for number_, t in enumerate(done, 1)]
    rows += [wrap(f"next: {proposed.what}", TEXT_COLUMN_MM)] if proposed is not None else []
    heights = [max(LINE_MM * len(lines), 5.0) + 2.2 for lines in rows]
    foot = top + sum(heights)
    _bracket(picture, axis, proposal, top, foot)
    _bore_line(picture, axis, *_bore(job, place), span=(top, foot))
    y = top
    for index, (lines, height) in enumerate(zip(rows, heights, strict=True)):
        for line_number, line in enumerate(lines):
            picture.text(EDGE_MM, y + 4.2 + LINE_MM * line_number, line)
        if index < len(done):
            _mark(picture, axis, done[index], y + 3.1)
        elif proposed is not None and proposed.step.next_mm is not None:
            _mark_next(picture, axis, proposed.step.next_mm, y + 3.1)
        y += height
    bottom = _draw_axis(picture, axis, foot, proposal, place)
    return Drawing(
        picture.finish(bottom, title, _alt(title, done, proposed)), title, _alt(title, done, proposed), width_mm
    )


def _row_words(number_: int, trial: TrialDone) -> tuple[str, ...]:
    return wrap(f"{number_}. {trial.what}{'' if trial.dry else ' (not dry)'}", TEXT_COLUMN_MM)


def _alt(title: str, done: Sequence[TrialDone], proposed: NextTrial | None) -> str:
    parts = [f"{t.size_mm:.2f} mm {t.happened}{'' if t.dry else ', not dry'}" for t in done]
    ahead = f" Next to try: {proposed.step.next_mm:.2f} mm." if proposed is not None else ""
    return f"{title.rstrip('.')}. Sizes in the order they were tried: {'; '.join(parts) or 'none'}.{ahead}"


def _axis_of(job: Job, place: str, done: Sequence[TrialDone], proposal: NextTrial | None, width_mm: float) -> _Axis:
    sizes = [t.size_mm for t in done if t.size_mm is not None]
    step = None if proposal is None else proposal.step
    if step is not None and step.next_mm is not None:
        sizes.append(step.next_mm)
    mean, _ = _bore(job, place)
    if mean is not None:
        sizes.append(mean)
    low, high = min(sizes), max(sizes)
    room = max(0.12 * (high - low), 0.06)
    return _Axis(low - room, high + room, EDGE_MM + TEXT_COLUMN_MM + 6.0, width_mm - EDGE_MM - 3.0)


def _bracket(picture: Picture, axis: _Axis, proposal: NextTrial | None, top: float, foot: float) -> None:
    """Shade what is still between too small and too stiff."""
    if proposal is None or proposal.step.held_mm is not None:
        return
    step = proposal.step
    if step.too_small_mm is None and step.too_large_mm is None:
        return
    left = axis.left if step.too_small_mm is None else axis.at(step.too_small_mm)
    right = axis.right if step.too_large_mm is None else axis.at(step.too_large_mm)
    if right > left:
        picture.add(
            element(
                "rect",
                x=left,
                y=top,
                width=right - left,
                height=foot - top,
                fill=RULE,
                fill_opacity=0.55,
                data_bracket="left",
            )
        )


def _bore(job: Job, place: str) -> tuple[float | None, str]:
    """Mean of the bore's or housing's readings [mm], and which of the two it is."""
    readings = bore_mm(measured(job, place))
    return (sum(readings) / len(readings) if readings else None), "housing" if "housing" in PLACES[
        place
    ].asks else "bore"


def _bore_line(picture: Picture, axis: _Axis, mean_mm: float | None, name: str, *, span: tuple[float, float]) -> None:
    if mean_mm is None:
        return
    x, (top, foot) = axis.at(mean_mm), span
    picture.line(
        [(x, top - 1.0), (x, foot)],
        stroke=INK,
        stroke_width=0.3,
        stroke_dasharray="1.6 1",
        data_bore=f"{mean_mm:.3f}",
    )
    words = f"{name} {mean_mm:.2f} mm"
    half = 0.5 * text_width_mm(words)
    picture.text(min(max(x, axis.left + half), axis.right + 3.0 - half), top - 2.0, words, anchor="middle")


def _mark(picture: Picture, axis: _Axis, trial: TrialDone, y: float) -> None:
    assert trial.size_mm is not None
    x, r = axis.at(trial.size_mm), MARK_MM
    held = trial.happened == "pulls back"
    colour = JADE if held else OXBLOOD
    about: dict[str, str | float | None] = {
        "stroke": colour,
        "stroke_width": 0.5,
        "data_outcome": trial.happened,
        "data_size": f"{trial.size_mm:.3f}",
    }
    solid = colour if trial.dry else PAPER
    if held:
        points = [(x, y - 1.3 * r), (x + 1.3 * r, y), (x, y + 1.3 * r), (x - 1.3 * r, y)]
        picture.add(element("polygon", points=_joined(points), fill=solid, **about))
    elif trial.happened == "too stiff":
        points = [(x - r, y - r), (x + r, y - r), (x + r, y + r), (x - r, y + r)]
        picture.add(element("polygon", points=_joined(points), fill=solid, **about))
    else:
        picture.add(element("circle", cx=x, cy=y, r=r, fill=PAPER, **about))
        if trial.happened == "slides, no suction":
            picture.add(element("circle", cx=x, cy=y, r=0.5, fill=colour))
    _beside(
        picture,
        axis,
        x,
        y,
        f"{trial.size_mm:.2f} {trial.happened}{'' if trial.dry else ', not dry'}",
        bold=held,
        colour=colour,
    )


def _mark_next(picture: Picture, axis: _Axis, size_mm: float, y: float) -> None:
    x, r = axis.at(size_mm), 1.2 * MARK_MM
    picture.add(
        element(
            "circle",
            cx=x,
            cy=y,
            r=r,
            fill="none",
            stroke=INK,
            stroke_width=0.4,
            stroke_dasharray="0.9 0.7",
            data_outcome="next",
            data_size=f"{size_mm:.3f}",
        )
    )
    _beside(picture, axis, x, y, f"{size_mm:.2f} to try next", bold=False, colour=INK)


def _beside(picture: Picture, axis: _Axis, x: float, y: float, words: str, *, bold: bool, colour: str) -> None:
    """Words on the side of a mark where there is more room."""
    wide = text_width_mm(words, bold=bold)
    to_right = axis.right + 3.0 - x >= wide + 4.0 or axis.right - x > x - axis.left
    at = x + 3.6 if to_right else x - 3.6
    left = at - 0.5 if to_right else at - wide - 0.3
    picture.add(element("rect", x=left, y=y - 2.4, width=wide + 0.8, height=4.6, fill=PAPER, fill_opacity=0.85))
    picture.text(at, y + 1.1, words, anchor="start" if to_right else "end", colour=colour, bold=bold)


def _draw_axis(picture: Picture, axis: _Axis, y: float, proposal: NextTrial | None, place: str) -> float:
    picture.line([(axis.left, y), (axis.right, y)], stroke=INK, stroke_width=0.3)
    for size in () if proposal is None else proposal.sizes_mm:
        if axis.low <= size <= axis.high:
            picture.line(
                [(axis.at(size), y - 1.6), (axis.at(size), y)], stroke=SLATE, stroke_width=0.5, data_stock=f"{size:.3f}"
            )
    step = next((t for t in TICKS if (axis.high - axis.low) / t * 11.0 <= axis.right - axis.left), TICKS[-1])
    value = math.ceil(axis.low / step - 1e-9) * step
    while value <= axis.high + 1e-9:
        x = axis.at(value)
        picture.line([(x, y), (x, y + 1.2)], stroke=INK, stroke_width=0.25)
        picture.text(x, y + 4.6, f"{value:.2f}", anchor="middle")
        value += step
    what = "outside diameter in place, before squeezing" if PLACES[place].way == "ring" else "outside diameter"
    stock = (
        ""
        if proposal is None
        else "; short strokes: own rings"
        if proposal.from_stock
        else "; short strokes: sizes to choose from"
    )
    bottom = y + 9.0
    for line in wrap(f"{what}, mm{stock}", picture.width_mm - axis.left - EDGE_MM):
        picture.text(axis.left, bottom, line, colour=SLATE, italic=True)
        bottom += LINE_MM
    return bottom - LINE_MM + 2.0


def _joined(points: Sequence[tuple[float, float]]) -> str:
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)
