"""The chart of a pump filler weighed after each stroke, one line a run."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.calc.weighing.series import StrokeSeries
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, head, new_chart, to_drawing
from pentools.record.stages.weighing.strokes import Z_TYPICAL_ML_PER_G, stroke_runs, stroke_uncertainty_g

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["strokes_figure"]


def strokes_figure(job: Job) -> Drawing | None:
    """The fill after each stroke, one line for each run, and the level at which it stops.

    Returns
    -------
    Drawing or None
        None where the pen was not weighed after single strokes.
    """
    runs = stroke_runs(job)
    if not runs:
        return None
    series = runs[-1]
    title = _strokes_title(series, runs[0] if len(runs) > 1 else None)
    doubt = 2 * math.sqrt(2) * stroke_uncertainty_g(job) * Z_TYPICAL_ML_PER_G
    figure, axes = new_chart(160, 65)
    for place, run in enumerate(runs, 1):
        newest = place == len(runs)
        when = "" if len(runs) == 1 else ", last time" if newest else ", first time" if place == 1 else ""
        _draw_run(axes, run, doubt, when, newest=newest)
    most = max(max(run.strokes) for run in runs)
    axes.set(
        xlim=(-0.2, most * 1.28),
        ylim=(0, 1.2 * max(max(run.volumes_ml) for run in runs)),
        xticks=range(most + 1),
        xlabel="stroke (bars of doubt: about 95 %)",
        ylabel="mL in the pen",
    )
    head(axes, title)
    told = []
    for place, run in enumerate(runs, 1):
        name = f"Run {place}, " if len(runs) > 1 else ""
        steps = "; ".join(f"stroke {n}: {v:.2f} mL" for n, v in zip(run.strokes, run.volumes_ml, strict=True))
        told.append(f"{name}{steps}.")
    return to_drawing(figure, title, f"{title}. " + " ".join(told))


def _strokes_title(series: StrokeSeries, before: StrokeSeries | None) -> str:
    if series.plateau_stroke is None or series.plateau_ml is None:
        now = f"After stroke {series.strokes[-1]} it still rises"
    else:
        now = f"It stops rising after stroke {series.plateau_stroke}, at {series.plateau_ml:.2f} mL"
    if before is None or before.plateau_stroke is None or before.plateau_ml is None:
        return now
    return f"{now} (first after {before.plateau_stroke}, at {before.plateau_ml:.2f} mL)"


def _draw_run(axes: Axes, run: StrokeSeries, doubt_ml: float, when: str, *, newest: bool) -> None:
    """One run: the newest in ink with circles, older ones in brass with squares, and where it stops."""
    colour = INK if newest else BRASS
    axes.errorbar(
        run.strokes,
        run.volumes_ml,
        yerr=[0.0, *[doubt_ml] * (len(run.strokes) - 1)],
        fmt="o" if newest else "s",
        linestyle="-" if newest else "--",
        color=colour,
        capsize=3,
        linewidth=1,
        markersize=4,
    )
    end = (run.strokes[-1], run.volumes_ml[-1])
    words = f"{end[1]:.2f} mL{when}"
    axes.annotate(words, end, xytext=(9, 0), textcoords="offset points", va="center", color=colour)
    if run.plateau_stroke is not None and run.plateau_ml is not None:
        early = run.findings[0].topic == "early-plateau"
        stop = (run.plateau_stroke, run.plateau_ml)
        words = f"no more after stroke {run.plateau_stroke}"
        axes.annotate(words, stop, xytext=(0, -19), textcoords="offset points", color=OXBLOOD if early else JADE)
