"""The chart of a filled pen at rest: its mass against time, with the line and its doubt."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.calc.base.line import Line
from pentools.calc.weighing.leak import LeakResult
from pentools.figures.chart import INK, JADE, SLATE, head, new_chart, to_drawing
from pentools.numbers import plain
from pentools.words.weighing import mg_rate

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.sums.base import SumAnswer

__all__ = ["leak_figure"]


def leak_figure(answer: SumAnswer) -> Drawing | None:
    """Mass of the filled pen against time, with the line and its doubt.

    Parameters
    ----------
    answer : SumAnswer
        The leak sum's answer.

    Returns
    -------
    Drawing or None
        None where the answer has no line.
    """
    result = answer.result
    if not isinstance(result, LeakResult):
        return None
    hours, masses = answer.data["times_h"], answer.data["masses_g"]
    start = masses[0]
    lost = [1000 * (m - start) for m in masses]
    title = _title(result)
    figure, axes = new_chart(160, 60)
    _line_with_band(axes, result.line, hours, start)
    doubt = 2000 * answer.data["reading_uncertainty_g"]
    axes.errorbar(hours, lost, yerr=doubt, fmt="o", color=INK, capsize=3, linewidth=1, markersize=4)
    axes.axhline(0, color=SLATE, linewidth=0.5, linestyle=":")
    low, high = axes.get_ylim()
    axes.set(xlabel="hours since it was filled", ylabel="change of mass, mg", ylim=(low, high + 0.14 * (high - low)))
    axes.annotate("bars and band: about 95 %", (1, 1), xycoords="axes fraction", ha="right", va="top", color=SLATE)
    head(axes, title)
    points = "; ".join(f"{plain(h)} h: {_signed(m)} mg" for h, m in zip(hours, lost, strict=True))
    alt = f"{title}. {points}. A loss of {mg_rate(result.detection_mg_per_h)} would have shown."
    return to_drawing(figure, title, alt)


def _title(result: LeakResult) -> str:
    loss = mg_rate(abs(result.loss_mg_per_h))
    return {
        "leak": f"It leaks: {loss}",
        "evaporation": f"It loses {loss}, no more than evaporation may take",
        "cannot-tell-which": f"It loses {loss}: evaporation or a slow leak",
        "tight": f"No leak of {mg_rate(result.detection_mg_per_h)} or more",
        "not-sensitive": "No leak seen, but the test is too short for this balance",
        "gain": f"It gains {loss}: the balance drifts, or it takes up damp",
    }[result.verdict]


def _line_with_band(axes: Axes, line: Line, hours: Sequence[float], start_g: float) -> None:
    """The fitted line in mg from the first weighing, and where it lies with about 95 %."""
    low, high = min(hours), max(hours)
    mean = math.fsum(hours) / len(hours)
    spread = math.fsum((h - mean) ** 2 for h in hours)
    off = 1000 * line.coverage() * line.slope_uncertainty * math.sqrt(spread)
    steps = [low + (high - low) * i / 20 for i in range(21)]
    middle = [1000 * (line.intercept + line.slope * h - start_g) for h in steps]
    band = [off * math.sqrt(1 / len(hours) + (h - mean) ** 2 / spread) for h in steps]
    under, over = ([m + sign * b for m, b in zip(middle, band, strict=True)] for sign in (-1, 1))
    axes.fill_between(steps, under, over, color=JADE, alpha=0.15, linewidth=0)
    axes.plot(steps, middle, color=JADE, linewidth=1)


def _signed(value: float) -> str:
    whole = round(value)
    return "0" if whole == 0 else f"{'+' if whole > 0 else '−'}{abs(whole)}"
