"""The chart of a pen filled dip after dip on a tared balance."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.uncertainty import rounded_pair
from pentools.figures.chart import INK, OXBLOOD, head, new_chart, to_drawing

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.sums.base import SumAnswer

__all__ = ["dips_figure"]


def dips_figure(answer: SumAnswer) -> Drawing | None:
    """How the fill rose from dip to dip.

    Parameters
    ----------
    answer : SumAnswer
        The capacity sum's answer.

    Returns
    -------
    Drawing or None
        Volumes from zero, with 95 % bars of doubt of a step; None below two dips.
    """
    data = answer.data
    volumes, doubt = data["dips_ml"] or [], 2 * (data["dip_standard_uncertainty_ml"] or 0.0)
    if len(volumes) < 2:
        return None
    said = {f.topic for f in answer.findings}
    shown = [rounded_pair(max(volume, 0.0), doubt)[0] for volume in volumes]
    if "dip-rising" in said:
        title = f"After dip {len(volumes)}, {shown[-1]} mL, and it still rose"
    elif "dip-fell" in said:
        title = f"The fill fell between dips: {shown[-1]} mL after dip {len(volumes)}"
    else:
        title = f"Full at {shown[-1]} mL: dip {len(volumes)} added nothing"
    figure, axes = new_chart(160, 60)
    dips = range(len(volumes) + 1)
    axes.errorbar(
        dips, [0.0, *volumes], yerr=[0.0, *[doubt] * len(volumes)], fmt="o-", color=INK, ecolor=OXBLOOD, capsize=3,
        linewidth=1, markersize=4,
    )  # fmt: skip
    for dip, (volume, words) in enumerate(zip(volumes, shown, strict=True), 1):
        axes.annotate(f"{words} mL", (dip, volume), xytext=(7, -3), textcoords="offset points", va="top", color=INK)
    axes.set(
        xlim=(-0.2, len(volumes) + 0.8),
        ylim=(min(0.0, *volumes), 1.2 * max(*volumes, doubt)),
        xticks=dips,
        xlabel="dip, not emptied between (bars of doubt: about 95 % of a step)",
        ylabel="mL in the pen",
    )
    head(axes, title)
    told = "; ".join(f"dip {dip}: {words} mL" for dip, words in enumerate(shown, 1))
    return to_drawing(figure, title, f"{title}. {told.replace('d', 'D', 1)}.")
