"""Charts of the fill test: what is drawn against what should be held, the budget of the doubt, and the leak."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.calc.base.uncertainty import rounded_pair
from pentools.calc.weighing.leak import LeakResult, leak_down
from pentools.errors import InputError
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, RULE, SLATE, head, new_chart, say, to_drawing
from pentools.figures.weighing.series import fill_series_figure
from pentools.figures.weighing.strokes import reading_uncertainty_g, strokes_of
from pentools.record.stages.weighing.filling import leak_points

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer

__all__ = ["budget_figure", "capacity_figure", "fill_series_figure", "leak_figure", "leak_result", "strokes_of"]

SHARES_SHOWN = 6


def capacity_figure(answer: SumAnswer) -> Drawing | None:
    """What the pen draws, with its uncertainty, against what it should hold.

    Parameters
    ----------
    answer : SumAnswer
        The capacity sum's answer.

    Returns
    -------
    Drawing or None
        Bars from zero with 95 % bars of doubt.
    """
    data = answer.data
    volume, spread = data["volume_ml"], data["expanded_uncertainty_ml"]
    shown, off = rounded_pair(volume, spread)
    bars = [("draws", volume, spread, f"{shown} mL ± {off}", INK)]
    title = f"It draws {shown} mL"
    expected = data["expected_ml"]
    if expected is not None:
        doubt = 2 * data["expected_standard_uncertainty_ml"]
        should, its_off = rounded_pair(expected, doubt)
        bars.append(("should hold", expected, doubt, f"{should} mL ± {its_off}", SLATE))
        title += f", {100 * data['share_filled']:.0f} % of the {should} mL that it should hold"
    figure, axes = new_chart(160, 22 + 12 * len(bars))
    for row, (name, value, doubt, words, colour) in enumerate(bars):
        fill, hatch = (colour, None) if row == 0 else ("none", "////")
        axes.barh(row, value, height=0.5, color=fill, hatch=hatch, edgecolor=colour, linewidth=0.8)
        axes.errorbar(value, row, xerr=doubt, color=OXBLOOD, capsize=4, linewidth=1.2)
        say(axes, f"{name}: {words}", (value + doubt, row), colour=colour, right=8)
    top = max(value + doubt for _, value, doubt, _, _ in bars)
    axes.set(xlim=(0, top * 1.45), ylim=(len(bars) - 0.4, -0.6), yticks=[], xlabel="mL (bars of doubt: about 95 %)")
    axes.spines["left"].set_visible(False)
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"{name} {words}" for name, _, _, words, _ in bars) + "."
    return to_drawing(figure, title, alt)


def budget_figure(answer: SumAnswer) -> Drawing | None:
    """How much each source gives to the uncertainty.

    Parameters
    ----------
    answer : SumAnswer
        The capacity sum's answer.

    Returns
    -------
    Drawing or None
        Shares of the variance as bars, largest first.
    """
    rows = sorted(answer.data["budget"], key=lambda row: -row["share"])
    if not rows or not rows[0]["share"]:
        return None
    kept = [(str(row["source"]), float(row["share"])) for row in rows[:SHARES_SHOWN]]
    rest = math.fsum(row["share"] for row in rows[SHARES_SHOWN:])
    if rest > 0.005:
        kept.append(("all the rest", rest))
    much = "Most" if kept[0][1] > 0.5 else "The largest part"
    title = f"{much} of the doubt comes from {kept[0][0]} ({100 * kept[0][1]:.0f} %)"
    figure, axes = new_chart(160, 18 + 7.5 * len(kept))
    for row, (name, share) in enumerate(kept):
        axes.barh(row, 100 * share, height=0.6, color=BRASS if row == 0 else RULE, edgecolor=BRASS, linewidth=0.6)
        say(axes, f"{name}, {100 * share:.0f} %", (100 * share, row), right=6)
    right = max(100 * kept[0][1] * 1.9, 40)
    step = 20 if right > 60 else 10
    axes.set(
        xlim=(0, right),
        ylim=(len(kept) - 0.4, -0.6),
        yticks=[],
        xticks=range(0, 101 if right > 100 else int(right) + 1, step),
        xlabel="share of the variance, %",
    )
    axes.spines["left"].set_visible(False)
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"{name} {100 * share:.0f} %" for name, share in kept) + "."
    return to_drawing(figure, title, alt)


def leak_result(job: Job) -> LeakResult | None:
    """The leak by weighing, from the record; None below two weighings at unlike times."""
    hours, masses, blanks = leak_points(job)
    usable = blanks if blanks and all(b is not None for b in blanks) else ()
    try:
        return leak_down(hours, masses, reading_uncertainty_g(job, drop=False), usable)
    except InputError:
        return None


def leak_figure(job: Job) -> Drawing | None:
    """Mass of the filled pen against time, with the line and its doubt.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    Drawing or None
        None below two weighings.
    """
    result = leak_result(job)
    if result is None:
        return None
    hours, masses, _ = leak_points(job)
    start = masses[0]
    lost = [1000 * (m - start) for m in masses]
    title = _leak_title(result)
    figure, axes = new_chart(160, 60)
    _draw_line_with_band(axes, result, hours, start)
    axes.errorbar(
        hours,
        lost,
        yerr=2000 * reading_uncertainty_g(job, drop=False),
        fmt="o",
        color=INK,
        capsize=3,
        linewidth=1,
        markersize=4,
    )
    axes.axhline(0, color=SLATE, linewidth=0.5, linestyle=":")
    axes.set(xlabel="hours since it was filled", ylabel="change of mass, mg")
    axes.annotate("bars and band: about 95 %", (1, 1), xycoords="axes fraction", ha="right", va="top", color=SLATE)
    head(axes, title)
    points = "; ".join(f"{h:g} h: {_signed(m)} mg" for h, m in zip(hours, lost, strict=True))
    alt = f"{title}. {points}. The smallest loss that can be told is {_rate(result.detection_mg_per_h)}."
    return to_drawing(figure, title, alt)


def _leak_title(result: LeakResult) -> str:
    topic = result.findings[0].topic
    if topic not in ("leak", "evaporation"):
        return {
            "tight": "No leak that this balance can tell",
            "not-sensitive": "No leak seen, but the test is too short for this balance",
        }[topic]
    hour = topic == "leak"
    scale = 1 if hour else 24
    loss, doubt = rounded_pair(scale * result.loss_mg_per_h, scale * 2 * result.uncertainty_mg_per_h)
    if hour:
        return f"It leaks: {loss} mg ± {doubt} an hour"
    return f"It loses {loss} mg ± {doubt} a day, as evaporation does"


def _draw_line_with_band(axes: Axes, result: LeakResult, hours: list[float], start_g: float) -> None:
    """The fitted line in mg from the first weighing, and where it lies with about 95 %."""
    low, high = min(hours), max(hours)
    mean = math.fsum(hours) / len(hours)
    spread = math.fsum((h - mean) ** 2 for h in hours)
    sigma = result.line.slope_uncertainty * math.sqrt(spread)
    steps = [low + (high - low) * i / 20 for i in range(21)]
    line = [1000 * (result.line.intercept + result.line.slope * h - start_g) for h in steps]
    band = [2000 * sigma * math.sqrt(1 / len(hours) + (h - mean) ** 2 / spread) for h in steps]
    axes.fill_between(
        steps,
        [y - b for y, b in zip(line, band, strict=True)],
        [y + b for y, b in zip(line, band, strict=True)],
        color=JADE,
        alpha=0.15,
        linewidth=0,
    )
    axes.plot(steps, line, color=JADE, linewidth=1)


def _signed(value: float) -> str:
    whole = round(value)
    return "0" if whole == 0 else f"{'+' if whole > 0 else '−'}{abs(whole)}"


def _rate(mg_per_h: float) -> str:
    return f"{mg_per_h:.2g} mg an hour" if mg_per_h >= 1 else f"{24 * mg_per_h:.2g} mg a day"
