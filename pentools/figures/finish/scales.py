"""All scales of abrasives on one logarithmic axis of micrometres."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from pentools.calc.finish.grades import SCALES, Grade
from pentools.calc.finish.reading import meanings_of
from pentools.figures.chart import INK, OXBLOOD, RULE, head, new_chart, say, to_drawing
from pentools.numbers import plain
from pentools.tables.abrasives import catalogue

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing

__all__ = ["scales_chart"]

_Rows = list[tuple[str, list[tuple[float, Grade]]]]
_COARSEST_UM, _FINEST_UM = 140.0, 0.2


def scales_chart(grade: Grade | None = None) -> Drawing:
    """All scales of abrasives on one logarithmic axis, coarse to fine.

    Parameters
    ----------
    grade : Grade or None
        A grade to bring out, with a line through all scales at the finish that it leaves.

    Returns
    -------
    Drawing
        A dot for each grade from 140 to 0.2 µm; names where there is room; cushioned cloth twice, by grain and by finish.
    """
    rows = _rows()
    title = _scales_title() if grade is None else _grade_title(grade)
    figure, axes = new_chart(190, 26 + 10.5 * len(rows))
    axes.set_xscale("log")
    axes.set_xlim(_COARSEST_UM * 1.1, _FINEST_UM / 1.15)
    for place, (_, sizes) in enumerate(rows):
        axes.axhline(place, color=RULE, linewidth=0.8, zorder=0)
        axes.plot([size for size, _ in sizes], [place] * len(sizes), "o", color=INK, markersize=3.4)
        for size, text in _with_room(sizes, grade):
            say(axes, text, (size, place), up=5)
    if grade is not None:
        _bring_out(axes, rows, grade)
    axes.set_yticks(range(len(rows)), [name for name, _ in rows])
    ticks = [100, 50, 30, 20, 10, 5, 3, 2, 1, 0.5, 0.25]
    axes.set_xticks(ticks, [f"{t:g}" for t in ticks])
    axes.set_xticks([], minor=True)
    words = "µm (median grain; for cushioned cloth also the plain grade that finishes alike)"
    axes.set(ylim=(len(rows) - 0.6, -0.9), xlabel=words)
    axes.tick_params(axis="y", length=0)
    axes.spines["left"].set_visible(False)
    head(axes, title)
    spans = "; ".join(
        f"{name}: {sizes[0][1].name} at {plain(sizes[0][0], 3)} µm to {sizes[-1][1].name} at {plain(sizes[-1][0], 3)} µm"
        for name, sizes in rows
    )
    return to_drawing(figure, title, f"{title}. {spans}.", 190.0)


def _rows() -> _Rows:
    """The grades of each scale with their sizes; a soft-backed scale twice, by grain and by finish."""
    known = catalogue()
    rows: _Rows = []
    for scale in SCALES:
        members = [g for g in known.in_scale(scale) if _FINEST_UM <= g.particle_um <= _COARSEST_UM]
        if any(g.soft_backed for g in members):
            rows.append((f"{scale}, grain", [(g.particle_um, g) for g in members]))
            rows.append((f"{scale}, finish", [(g.finish_um, g) for g in members]))
        elif members:
            rows.append((scale, [(g.particle_um, g) for g in members]))
    return rows


def _bring_out(axes: Axes, rows: _Rows, grade: Grade) -> None:
    axes.axvline(grade.finish_um, color=OXBLOOD, linewidth=1.0, linestyle="--")
    if grade.soft_backed:
        axes.axvline(grade.particle_um, color=OXBLOOD, linewidth=1.0, linestyle=":")
    for place, (name, sizes) in enumerate(rows):
        if sizes[0][1].scale == grade.scale:  # a cloth or a film need not be among the points that are drawn
            size = grade.finish_um if name.endswith(", finish") else grade.particle_um
            axes.plot([size], [place], "D", color=OXBLOOD, markersize=6)


def _scales_title() -> str:
    meanings = meanings_of("400", catalogue())
    return f"The same number, another grain: a bare 400 runs from {plain(meanings[-1].particle_um, 3)} to {plain(meanings[0].particle_um, 3)} µm"


def _grade_title(grade: Grade) -> str:
    finish = f" and finishes like {plain(grade.finish_um, 3)} µm" if grade.soft_backed else ""
    return f"{grade.label} has a grain of {plain(grade.particle_um, 3)} µm{finish}"


def _with_room(members: Sequence[tuple[float, Grade]], grade: Grade | None) -> Iterator[tuple[float, str]]:
    """Names that run into no other and into no line: the asked one first, then from coarse to fine."""
    span_mm = 150.0 / math.log(_COARSEST_UM / _FINEST_UM)
    lines = () if grade is None else (grade.finish_um, grade.particle_um)
    taken = [(-math.log(line) * span_mm - 0.4, -math.log(line) * span_mm + 0.4) for line in lines]
    for size, member in sorted(members, key=lambda pair: (pair[1] != grade, -pair[0])):
        centre, half = -math.log(size) * span_mm, 1.05 * len(member.name) + 0.9
        if member == grade or all(centre + half < low or centre - half > high for low, high in taken):
            taken.append((centre - half, centre + half))
            yield size, member.name
