"""Charts of the fill test: drawn against held, the budget, repeated fills and strokes, and the leak."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from pentools.calc.fill_series import StrokeSeries, fill_series, stroke_series
from pentools.calc.leak import LeakResult, leak_down
from pentools.calc.uncertainty import rounded_pair
from pentools.errors import InputError
from pentools.figures.chart import BRASS, INK, JADE, OXBLOOD, RULE, SLATE, head, new_chart, to_drawing
from pentools.record.stages.fill_test import capacity_of, cycles, leak_points, setup_values, stroke_masses
from pentools.units import Reading

if TYPE_CHECKING:
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
        title += f" of the {should} mL that it should hold"
    figure, axes = new_chart(160, 22 + 12 * len(bars))
    for row, (name, value, doubt, words, colour) in enumerate(bars):
        axes.barh(row, value, height=0.5, color=colour if row == 0 else "none", edgecolor=colour, hatch=None if row == 0 else "////", linewidth=0.8)
        axes.errorbar(value, row, xerr=doubt, color=OXBLOOD, capsize=4, linewidth=1.2)
        axes.annotate(f"{name}: {words}", (value + doubt, row), xytext=(8, 0), textcoords="offset points", va="center", color=colour)
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
    title = f"Most of the doubt comes from {kept[0][0]} ({100 * kept[0][1]:.0f} %)"
    figure, axes = new_chart(160, 18 + 7.5 * len(kept))
    for row, (name, share) in enumerate(kept):
        axes.barh(row, 100 * share, height=0.6, color=BRASS if row == 0 else RULE, edgecolor=BRASS, linewidth=0.6)
        axes.annotate(f"{name}, {100 * share:.0f} %", (100 * share, row), xytext=(6, 0), textcoords="offset points", va="center")
    axes.set(xlim=(0, max(100 * kept[0][1] * 1.9, 40)), ylim=(len(kept) - 0.4, -0.6), yticks=[], xlabel="share of the variance, %")
    axes.spines["left"].set_visible(False)
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"{name} {100 * share:.0f} %" for name, share in kept) + "."
    return to_drawing(figure, title, alt)


def _reading_uncertainty_g(job: Job, *, drop: bool) -> float:
    values = setup_values(job)

    def number(name: str, otherwise: float) -> float:
        reading = values.get(name)
        return reading.value if isinstance(reading, Reading) else otherwise

    readability = number("readability", 0.01)
    scatter = max(number("repeatability", readability), readability / math.sqrt(12))
    hanging = number("drop", 0.02) / math.sqrt(3) if drop else 0.0
    return math.hypot(readability / math.sqrt(12), scatter, hanging)


def strokes_of(job: Job) -> StrokeSeries | None:
    """What each stroke of a pump filler added, from the record.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    StrokeSeries or None
        None where the pen was not weighed after single strokes, or too few times.
    """
    points = stroke_masses(job)
    answer = capacity_of(job)
    z = answer.data["z_ml_per_g"] if answer else 1.003
    expected = answer.data["expected_ml"] if answer else None
    try:
        return stroke_series([n for n, _ in points], [g for _, g in points], z, _reading_uncertainty_g(job, drop=True), expected)
    except InputError:
        return None


def fill_series_figure(job: Job) -> Drawing | None:
    """Repeated fills, from dry and from drained apart; or the fill after each stroke.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    Drawing or None
        None where there is only one fill and no weighing after single strokes.
    """
    strokes = strokes_of(job)
    if strokes is not None:
        return _strokes_figure(strokes)
    all_cycles = cycles(job)
    if len(all_cycles) < 2:
        return None
    answers = [(cycle.start, capacity_of(job, cycle)) for cycle in all_cycles]
    volumes = [(start, a.data["volume_ml"], a.data["expanded_uncertainty_ml"]) for start, a in answers if a is not None]
    drained = [v for start, v, _ in volumes if start == "drained"]
    first, last = volumes[0], volumes[-1]
    title = f"From {first[1]:.2f} mL at first to {last[1]:.2f} mL at last, in {len(volumes)} fillings"
    if len(drained) >= 3:
        answer = answers[-1][1]
        assert answer is not None
        topic = fill_series(drained, answer.data["standard_uncertainty_ml"]).findings[-1].topic
        title += {"steady": "; the refills agree", "still-rising": "; still rising", "falling": "; falling"}.get(topic, "")
    figure, axes = new_chart(160, 60)
    for number, (start, value, doubt) in enumerate(volumes, 1):
        mark, colour = ("s", BRASS) if start == "dry" else ("o", INK)
        axes.errorbar(number, value, yerr=doubt, fmt=mark, color=colour, capsize=3, linewidth=1, markersize=6)
        axes.annotate(f"{value:.2f}\nfrom {start}", (number, value), xytext=(8, 0), textcoords="offset points", va="center", fontsize=9, color=colour)
    axes.set(xlim=(0.5, len(volumes) + 0.9), ylim=(0, 1.25 * max(v + d for _, v, d in volumes)), xticks=range(1, len(volumes) + 1), xlabel="filling (square: from dry, circle: from drained)", ylabel="mL")
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"filling {n} from {start}: {v:.2f} mL" for n, (start, v, _) in enumerate(volumes, 1)) + "."
    return to_drawing(figure, title, alt)


def _strokes_figure(series: StrokeSeries) -> Drawing:
    if series.plateau_stroke is not None and series.plateau_ml is not None:
        title = f"It stops rising after stroke {series.plateau_stroke}, at {series.plateau_ml:.2f} mL"
    else:
        title = f"After stroke {series.strokes[-1]} it still rises"
    figure, axes = new_chart(160, 60)
    axes.plot(series.strokes, series.volumes_ml, "o-", color=INK, linewidth=1, markersize=5)
    for stroke, volume in zip(series.strokes, series.volumes_ml, strict=True):
        axes.annotate(f"{volume:.2f}", (stroke, volume), xytext=(0, 7), textcoords="offset points", ha="center", fontsize=9)
    if series.plateau_ml is not None:
        axes.axhline(series.plateau_ml, color=OXBLOOD, linewidth=0.8, linestyle="--")
    axes.set(ylim=(0, 1.3 * max(series.volumes_ml)), xticks=series.strokes, xlabel="stroke", ylabel="mL in the pen")
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"stroke {n}: {v:.2f} mL" for n, v in zip(series.strokes, series.volumes_ml, strict=True)) + "."
    return to_drawing(figure, title, alt)


def leak_result(job: Job) -> LeakResult | None:
    """The leak by weighing, from the record; None below two weighings at unlike times."""
    hours, masses, blanks = leak_points(job)
    usable = blanks if blanks and all(b is not None for b in blanks) else ()
    try:
        return leak_down(hours, masses, _reading_uncertainty_g(job, drop=False), usable)
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
    sigma = _reading_uncertainty_g(job, drop=False)
    start = masses[0]
    lost = [1000 * (m - start) for m in masses]
    per_day = 24 * result.loss_mg_per_h
    title = {
        "leak": f"It leaks: {result.loss_mg_per_h:.2g} mg an hour",
        "evaporation": f"It loses {per_day:.2g} mg a day, as evaporation does",
        "tight": "No leak that this balance can tell",
        "not-sensitive": "No leak seen, but the test is too short for this balance",
    }[result.findings[0].topic]
    figure, axes = new_chart(160, 60)
    ends = [min(hours), max(hours)]
    line = [1000 * (result.line.intercept + result.line.slope * h - start) for h in ends]
    axes.plot(ends, line, color=JADE, linewidth=1)
    axes.errorbar(hours, lost, yerr=2000 * sigma, fmt="o", color=INK, capsize=3, linewidth=1, markersize=5)
    axes.axhline(0, color=SLATE, linewidth=0.5, linestyle=":")
    axes.set(xlabel="hours since it was filled", ylabel="change of mass, mg (bars: 2 u)")
    head(axes, title)
    alt = f"{title}. " + "; ".join(f"{h:g} h: {m:+.0f} mg" for h, m in zip(hours, lost, strict=True)) + f". The smallest loss that can be told is {result.detection_mg_per_h:.2g} mg an hour."
    return to_drawing(figure, title, alt)
