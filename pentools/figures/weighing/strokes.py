"""The chart of a pump filler weighed after each stroke, one line a run, and the series behind it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.calc.weighing.series import StrokeSeries, stroke_series
from pentools.errors import InputError
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, head, new_chart, to_drawing
from pentools.record.stages.weighing.filling import capacity_of, setup_values
from pentools.units import Reading

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["reading_uncertainty_g", "stroke_runs", "strokes_figure", "strokes_of"]

_EMPTY = ("dry", "drained")
_Z_TYPICAL_ML_PER_G = 1.003


def reading_uncertainty_g(job: Job, *, drop: bool) -> float:
    """Standard uncertainty of one weighing, from the job's setup.

    Parameters
    ----------
    job : Job
        The job.
    drop : bool
        Whether a drop may hang at the nib.

    Returns
    -------
    float
        √(d²/12 + s² + drop²/3) [g].
    """
    values = setup_values(job)

    def number(name: str, otherwise: float) -> float:
        reading = values.get(name)
        return reading.value if isinstance(reading, Reading) else otherwise

    readability = number("readability", 0.01)
    scatter = max(number("repeatability", readability), readability / math.sqrt(12))
    hanging = number("drop", 0.02) / math.sqrt(3) if drop else 0.0
    return math.hypot(readability / math.sqrt(12), scatter, hanging)


def stroke_runs(job: Job) -> tuple[StrokeSeries, ...]:
    """Every run of weighings after single strokes, each begun from the empty pen before it.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of StrokeSeries
        In the order they were taken, such as before and after a repair; a run with fewer than two strokes, or with
        stroke numbers that do not rise, is left out.
    """
    answer = capacity_of(job)
    z = answer.data["z_ml_per_g"] if answer else _Z_TYPICAL_ML_PER_G
    expected = answer.data["expected_ml"] if answer else None
    doubt = reading_uncertainty_g(job, drop=True)
    found = []
    for points in _stroke_points(job):
        try:
            found.append(stroke_series([n for n, _ in points], [g for _, g in points], z, doubt, expected))
        except InputError:
            continue
    return tuple(found)


def strokes_of(job: Job) -> StrokeSeries | None:
    """What each stroke of a pump filler adds as the pen is now: the last run of `stroke_runs`.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    StrokeSeries or None
        None where the pen was not weighed after single strokes, or too few times.
    """
    runs = stroke_runs(job)
    return runs[-1] if runs else None


def strokes_figure(job: Job) -> Drawing | None:
    """The fill after each stroke, one line for each run, and the level at which it stops.

    Parameters
    ----------
    job : Job
        The job.

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
    doubt = 2 * math.sqrt(2) * reading_uncertainty_g(job, drop=True) * _Z_TYPICAL_ML_PER_G
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


def _stroke_points(job: Job) -> list[list[tuple[int, float]]]:
    """Runs of (stroke, mass [g]); an empty weighing, or a number that does not rise, begins a new one."""
    runs: list[list[tuple[int, float]]] = []
    empty: list[float] = []
    fresh = True
    for _, values in job.log("fill test", "weighing"):
        state, mass = str(values["state"]), values["mass"]
        assert isinstance(mass, Reading)
        if state in _EMPTY:
            empty = [mass.value] if fresh else [*empty, mass.value]
            fresh = False
            continue
        fresh = True
        if state != "stroke":
            empty = []
            continue
        given = values["strokes"]
        number = int(str(given)) if given is not None else (runs[-1][-1][0] + 1 if runs and not empty else 1)
        if empty:
            runs.append([(0, math.fsum(empty) / len(empty))])
            empty = []
        elif not runs or number <= runs[-1][-1][0]:
            continue
        runs[-1].append((number, mass.value))
    return [run for run in runs if len(run) > 1]


def _strokes_title(series: StrokeSeries, before: StrokeSeries | None) -> str:
    if series.plateau_stroke is None or series.plateau_ml is None:
        now = f"After stroke {series.strokes[-1]} it still rises"
    else:
        now = f"It stops rising after stroke {series.plateau_stroke}, at {series.plateau_ml:.2f} mL"
    if before is None or before.plateau_stroke is None or before.plateau_ml is None:
        return now
    return f"{now}; the first time after stroke {before.plateau_stroke}, at {before.plateau_ml:.2f} mL"


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
