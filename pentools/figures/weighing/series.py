"""The chart of several fillings of one pen, from dry and from drained apart, with the trend of the refills."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.line import fit_line
from pentools.calc.base.uncertainty import rounded_pair
from pentools.calc.weighing.series import FillSeries, fill_series
from pentools.figures.chart import BRASS, INK, JADE, SLATE, head, new_chart, say, to_drawing
from pentools.figures.weighing.strokes import strokes_figure
from pentools.record.stages.weighing.filling import capacity_of, cycles

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["fill_series_figure", "fillings_figure"]


def fill_series_figure(job: Job) -> Drawing | None:
    """The fill after each stroke where the pen was weighed so; else the repeated fillings.

    Returns
    -------
    Drawing or None
        None where there is only one filling and no weighing after single strokes.
    """
    return strokes_figure(job) or fillings_figure(job)


def fillings_figure(job: Job) -> Drawing | None:
    """Every filling with its doubt, from dry and from drained apart, and the trend of the refills.

    Returns
    -------
    Drawing or None
        None below two fillings.
    """
    answers = [(cycle.start, answer.data) for cycle in cycles(job) if (answer := capacity_of(job, cycle)) is not None]
    volumes = [(start, data["volume_ml"], data["expanded_uncertainty_ml"]) for start, data in answers]
    if len(volumes) < 2:
        return None
    last = answers[-1][1]
    refills = [(number, v) for number, (start, v, _) in enumerate(volumes, 1) if start == "drained"]
    series = fill_series([v for _, v in refills], last["standard_uncertainty_ml"]) if refills else None
    expected = last["expected_ml"]
    figure, axes = new_chart(160, 60)
    _draw_fillings(axes, volumes)
    if series is not None and len(refills) > 1:
        _draw_trend(axes, refills)
    top = 1.25 * max(v + d for _, v, d in volumes)
    if expected is not None:
        top = max(top, 1.2 * expected)
        _draw_expected(axes, expected, len(volumes))
    axes.set(
        xlim=(0.4, len(volumes) + 0.6 + (0.0 if expected is None else 0.16 * len(volumes))),
        ylim=(0, top),
        xticks=range(1, len(volumes) + 1),
        xlabel="filling (square: from dry, circle: from drained; bars of doubt: about 95 %)",
        ylabel="mL",
    )
    title = _fillings_title(volumes, series)
    head(axes, title)
    return to_drawing(figure, title, f"{title}. {_told(volumes)}.{_held(expected)}")


def _draw_fillings(axes: Axes, volumes: list[tuple[str, float, float]]) -> None:
    for number, (start, value, doubt) in enumerate(volumes, 1):
        mark, colour = ("s", BRASS) if start == "dry" else ("o", INK)
        axes.errorbar(number, value, yerr=doubt, fmt=mark, color=colour, capsize=4, linewidth=1, markersize=4)
        say(axes, f"{value:.2f}\nfrom {start}", (number, value - doubt), colour=colour, up=-4)


def _draw_expected(axes: Axes, expected: float, fillings: int) -> None:
    """The line of what it should hold, its words to the right of every filling."""
    right = fillings + 0.5
    axes.plot([0.4, right], [expected, expected], color=SLATE, linewidth=0.8, linestyle="--")
    axes.annotate(
        f"it should\nhold {expected:.2f}",
        (right, expected),
        xytext=(4, 0),
        textcoords="offset points",
        va="center",
        fontsize=9,
        color=SLATE,
    )


def _told(volumes: list[tuple[str, float, float]]) -> str:
    told = [
        f"filling {n} from {start}: {' mL ± '.join(rounded_pair(v, d))}" for n, (start, v, d) in enumerate(volumes, 1)
    ]
    return "; ".join(told).replace("f", "F", 1)


def _held(expected: float | None) -> str:
    return f" It should hold {expected:.2f} mL." if expected is not None else ""


def _fillings_title(volumes: list[tuple[str, float, float]], series: FillSeries | None) -> str:
    first, last = volumes[0], volumes[-1]
    topic = series.findings[-1].topic if series is not None and len(series.volumes_ml) >= 3 else ""
    if series is None or topic not in ("steady", "still-rising", "falling"):
        return f"From {first[1]:.2f} mL to {last[1]:.2f} mL in {len(volumes)} fillings"
    if topic == "still-rising":
        return f"Still rising, by {series.slope_ml:.2f} mL a filling: now {last[1]:.2f} mL"
    if topic == "falling":
        return f"Falling, by {-series.slope_ml:.2f} mL a filling: now {last[1]:.2f} mL"
    agreed = f"{len(series.volumes_ml)} refills agree at {series.mean_ml:.2f} mL"
    return f"From {first[1]:.2f} mL at first, {agreed}" if first[1] < 0.85 * series.mean_ml else agreed


def _draw_trend(axes: Axes, refills: list[tuple[int, float]]) -> None:
    line = fit_line([float(n) for n, _ in refills], [v for _, v in refills])
    ends = [refills[0][0] - 0.2, refills[-1][0] + 0.2]
    axes.plot(ends, [line.intercept + line.slope * x for x in ends], color=JADE, linewidth=1)
