"""Charts of one filling: what is drawn against what should be held, and what the doubt is made of."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.calc.base.uncertainty import rounded_pair
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, RULE, SLATE, head, new_chart, say, texture, to_drawing
from pentools.numbers import fixed, percent

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.sums.base import SumAnswer

__all__ = ["budget_figure", "capacity_figure"]

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
    volume, spread, expected = data["volume_ml"], data["expanded_uncertainty_ml"], data["expected_ml"]
    shown, off = rounded_pair(volume, spread)
    bars = [("draws", volume, spread, f"{shown} mL ± {off}", INK)]
    title = f"It draws {shown} mL"
    if not data["gain_told"]:
        title = f"What it draws cannot be told from nothing: at most {fixed(data['at_most_ml'], 2)} mL"
    usual = None
    if expected is not None:
        doubt = 2 * data["expected_standard_uncertainty_ml"]
        should, its_off = rounded_pair(expected, doubt)
        bars.append(("should hold", expected, doubt, f"{should} mL ± {its_off}", SLATE))
        usual = (data["usual_share_low"] * expected, data["usual_share_high"] * expected)
        if data["gain_told"]:
            title += f", {percent(data['share_filled'])} of the {should} mL that it should hold"
    figure, axes = new_chart(160, 25 + 12 * len(bars) + (8 if usual else 0), bars_only=True)
    for row, (name, value, doubt, words, colour) in enumerate(bars):
        filled = {"facecolor": colour} if row == 0 else texture("slant")
        axes.barh(row, value, height=0.5, edgecolor=colour, linewidth=0.8, **filled)
        axes.errorbar(value, row, xerr=doubt, color=OXBLOOD, capsize=4, linewidth=1.2)
        say(axes, f"{name}: {words}", (value + doubt, row), colour=colour, right=8)
    top = max(value + doubt for _, value, doubt, _, _ in bars)
    if usual is not None:
        axes.plot(usual, [len(bars)] * 2, color=JADE, linewidth=3, solid_capstyle="butt")
        words = f"usual from {data['start']} ({data['usual_share_certainty']})"
        say(axes, words, (usual[1], len(bars)), colour=JADE, right=8)
        top = max(top, usual[1])
    rows = len(bars) + (0.8 if usual else 0)
    axes.set(xlim=(0, top * 1.55), ylim=(rows - 0.4, -0.6), yticks=[], xlabel="mL (bars of doubt: about 95 %)")
    axes.spines["left"].set_visible(False)
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"{name} {words}" for name, _, _, words, _ in bars) + "."
    if usual is not None:
        alt += f" From {data['start']} {fixed(usual[0], 2)} to {fixed(usual[1], 2)} mL are usual ({data['usual_share_certainty']})."
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
    title = f"{much} of the doubt comes from {kept[0][0]} ({percent(kept[0][1])})"
    figure, axes = new_chart(160, 18 + 7.5 * len(kept))
    for row, (name, share) in enumerate(kept):
        axes.barh(row, 100 * share, height=0.6, color=BRASS if row == 0 else RULE, edgecolor=BRASS, linewidth=0.6)
        say(axes, f"{name}, {percent(share)}", (100 * share, row), right=6)
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
    alt = f"{title}. " + "; ".join(f"{name} {percent(share)}" for name, share in kept) + "."
    return to_drawing(figure, title, alt)
