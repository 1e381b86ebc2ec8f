"""A measured page: where its strokes were measured, the width along one, and how widths are spread."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from pentools.calc.nib.strokes import Stroke
from pentools.calc.nib.summary import PageLines, widths_read
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, RULE, SLATE, head, new_chart, say, to_drawing
from pentools.numbers import fixed, plain

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.sums.base import SumAnswer

__all__ = ["along_figure", "before_after_figure", "lines_figures", "page_figure", "spread_figure"]

_MOST_POINTS = 5000
_BINS = 40


def lines_figures(answer: SumAnswer) -> tuple[Drawing | None, ...]:
    """The figures of the lines sum: the page, one stroke, the spread."""
    page = answer.result
    return (page_figure(page), along_figure(page), spread_figure(page)) if isinstance(page, PageLines) else ()


def page_figure(page: PageLines) -> Drawing:
    """The page from above: every stroke where it was measured, pressed ones apart, skips marked."""
    mm = page.doubt.um_per_px / 1000
    tracks = [stroke.track for stroke in page.strokes]
    every = max(1, sum(len(track) for track in tracks) // _MOST_POINTS)
    places = np.concatenate([track[:, :2] for track in tracks]) * mm
    low, high = places.min(axis=0) - 4, places.max(axis=0) + 4
    height = min(170.0, max(50.0, 150.0 * (high[1] - low[1]) / (high[0] - low[0]) + 22))
    figure, axes = new_chart(160, height)
    limit = None if page.pressed is None or page.light is None else (page.light.width_um * page.pressed.width_um) ** 0.5
    for stroke in page.strokes:
        colour = OXBLOOD if limit is not None and stroke.p50_um > limit else INK
        axes.plot(*_broken(stroke, every, mm), color=colour, linewidth=1.6 if colour == OXBLOOD else 0.8)
    skips = [skip for stroke in page.strokes for skip in stroke.skips]
    axes.plot([s.x_px * mm for s in skips], [s.y_px * mm for s in skips], "x", color=BRASS, markersize=6)
    axes.set(xlim=(low[0], high[0]), ylim=(high[1], low[1]), xlabel="mm", ylabel="mm", aspect="equal")
    title = f"{len(page.strokes)} strokes, {plain(page.measured_mm / 1000, 2)} m of them measured"
    head(axes, title, above=16)
    legend = "lines: where the width was read" + ("; heavy: pressed" if limit is not None else "")
    legend += "; crosses: skips" if skips else ""
    axes.annotate(
        legend, (0, 1), xycoords="axes fraction", xytext=(0, 1), textcoords="offset points", color=SLATE, fontsize=9
    )
    alt = f"{title}; {len(skips)} skips. The page is {plain(high[0] - low[0])} by {plain(high[1] - low[1])} mm as far as it is written on."
    return to_drawing(figure, title, alt)


def _broken(stroke: Stroke, every: int, mm: float) -> tuple[list[float], list[float]]:
    """Points of a stroke, not a number where a stretch was not measured."""
    along = stroke.track[:, 2]
    step = float(np.median(np.diff(along)))
    at = np.union1d(np.arange(0, len(along), every), np.nonzero(np.diff(along) > 3 * step)[0])
    x, y = stroke.track[at, 0] * mm, stroke.track[at, 1] * mm
    gap = np.concatenate([[False], np.diff(along[at]) > 3 * every * step])
    place = np.nonzero(gap)[0]
    return np.insert(x, place, np.nan).tolist(), np.insert(y, place, np.nan).tolist()


def along_figure(page: PageLines) -> Drawing:
    """The width along the stroke that swells most, with its doubt as a band."""
    stroke = max(page.strokes, key=lambda one: one.ratio * min(one.measured_mm, 20.0))
    figure, axes = new_chart(160, 60)
    along, width = stroke.track[:, 2], stroke.track[:, 3] / 1000
    every = max(1, len(along) // 900)
    axes.fill_between(
        along[::every],
        (width - 2 * stroke.u_um / 1000)[::every],
        (width + 2 * stroke.u_um / 1000)[::every],
        color=JADE,
        alpha=0.2,
        linewidth=0,
    )
    axes.plot(along[::every], width[::every], color=INK, linewidth=0.9)
    for skip in stroke.skips:
        axes.axvspan(skip.at_mm, skip.at_mm + skip.length_um / 1000, color=BRASS, alpha=0.5, linewidth=0)
    low, high = stroke.p5_um / 1000, stroke.p95_um / 1000
    axes.set(xlabel="mm along the stroke", ylabel="width, mm", ylim=(0, 1.25 * float(width.max())))
    title = f"One stroke: {fixed(low, 2)} to {fixed(high, 2)} mm, a ratio of {fixed(stroke.ratio, 2)}"
    head(axes, title)
    axes.annotate("band: about 95 %", (1, 1), xycoords="axes fraction", ha="right", va="top", color=SLATE)
    return to_drawing(figure, title, f"{title}, over {plain(stroke.measured_mm)} mm; {len(stroke.skips)} skips in it.")


def spread_figure(page: PageLines) -> Drawing:
    """How much of the length is of which width; light and pressed strokes named where there are both."""
    figure, axes = new_chart(160, 60)
    _histogram(axes, page)
    title = f"Half of all line is under {fixed(page.median_width_um / 1000, 2)} mm; 5 and 95 %: {fixed(page.p5_um / 1000, 2)} and {fixed(page.p95_um / 1000, 2)} mm"
    if page.light is not None and page.pressed is not None:
        title = f"Light strokes {fixed(page.light.width_um / 1000, 2)} mm, pressed ones {fixed(page.pressed.width_um / 1000, 2)} mm"
    axes.set(xlabel="width, mm", ylabel="mm of line")
    head(axes, title)
    alt = f"{title}. Ratio {fixed(page.variation_ratio, 2)}, where even lines would show {fixed(page.ratio_floor, 2)}."
    return to_drawing(figure, title, alt)


def before_after_figure(before: PageLines, after: PageLines) -> Drawing:
    """Two pages of one pen over one another: how its widths were spread before the nib was worked on, and after."""
    from matplotlib.figure import Figure

    figure, axes = new_chart(160, 90)
    assert isinstance(figure, Figure)
    axes.remove()
    upper, lower = figure.subplots(2, 1, sharex=True)
    change = (after.median_width_um - before.median_width_um) / 1000
    known = 2 * (before.u_um**2 + after.u_um**2) ** 0.5 / 1000
    title = (
        f"It writes {fixed(abs(change), 2)} mm {'broader' if change > 0 else 'finer'} than before (± {fixed(known, 2)})"
    )
    if abs(change) <= known:
        title = f"No change of width that can be told: {fixed(change, 2)} mm ± {fixed(known, 2)}"
    for each, page, word in ((upper, before, "before"), (lower, after, "after")):
        each.spines[["top", "right"]].set_visible(False)
        each.tick_params(colors=SLATE)
        each.set_xlabel("", color=SLATE)
        _histogram(each, page)
        each.yaxis.label.set_color(SLATE)
        each.set_ylabel("mm of line")
        each.annotate(
            f"{word}: {fixed(page.median_width_um / 1000, 2)} mm, ratio {fixed(page.variation_ratio, 2)}",
            (1, 1),
            xycoords="axes fraction",
            ha="right",
            va="top",
            color=INK,
        )
    lower.set_xlabel("width, mm")
    head(upper, title)
    alt = f"{title}. Before {fixed(before.median_width_um / 1000, 3)} mm, after {fixed(after.median_width_um / 1000, 3)} mm."
    return to_drawing(figure, title, alt)


def _histogram(axes: Axes, page: PageLines) -> None:
    microns, weights = widths_read(page.strokes)
    widths = microns / 1000
    low, high = 0.9 * float(np.quantile(widths, 0.002)), 1.1 * float(np.quantile(widths, 0.998))
    axes.hist(
        np.clip(widths, low, high),
        bins=np.linspace(low, high, _BINS + 1).tolist(),
        weights=weights,
        color=INK,
        edgecolor=RULE,
        linewidth=0.3,
    )
    top = axes.get_ylim()[1]
    axes.set_ylim(0, 1.3 * top)
    for kind, word, colour in ((page.light, "light", JADE), (page.pressed, "pressed", OXBLOOD)):
        if kind is not None:
            axes.axvline(kind.width_um / 1000, color=colour, linewidth=1.2, linestyle="--")
            say(axes, f"{word}, {kind.count}", (kind.width_um / 1000, 1.12 * top), colour=colour, right=4)
