"""The chart of the work log: minutes by activity."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.figures.chart import INK, RULE, head, new_chart, to_drawing
from pentools.record.stages.job.work_kinds import ACTIVITIES
from pentools.record.stages.job.work_log import minutes_by_activity

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["minutes_figure"]


def minutes_figure(job: Job) -> Drawing | None:
    """Minutes by activity, largest first.

    Returns
    -------
    Drawing or None
        None where no time was entered.
    """
    totals = minutes_by_activity(job)
    if not totals:
        return None
    names = dict(ACTIVITIES)
    rows = sorted(((names[key], value) for key, value in totals.items()), key=lambda row: -row[1])
    whole = sum(value for _, value in rows)
    title = f"{whole / 60:.1f} hours; the longest was {rows[0][0]}, {rows[0][1]:.0f} min"
    figure, axes = new_chart(160, 18 + 7.5 * len(rows))
    for place, (name, value) in enumerate(rows):
        axes.barh(place, value, height=0.6, color=INK if place == 0 else RULE, edgecolor=INK, linewidth=0.6)
        axes.annotate(
            f"{name}, {value:.0f} min",
            (value, place),
            xytext=(6, 0),
            textcoords="offset points",
            va="center",
            color=INK,
        )
    axes.set(xlim=(0, 1.7 * rows[0][1]), ylim=(len(rows) - 0.4, -0.6), yticks=[], xlabel="minutes")
    axes.spines["left"].set_visible(False)
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"{name} {value:.0f} min" for name, value in rows) + "."
    return to_drawing(figure, title, alt)
