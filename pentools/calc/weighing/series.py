"""Several fillings of one pen: their mean and spread, whether they still rise, and where a pump's fill stops."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from pentools.calc.base.findings import Finding
from pentools.calc.base.line import fit_line
from pentools.calc.base.uncertainty import believed_spread, decision_factor, mean_and_spread
from pentools.errors import InputError

__all__ = ["FillSeries", "StrokeSeries", "fill_series", "stroke_series"]

LOW_SLOPE_SHARE = 0.7  # of what a sound stroke brings (judged)
EARLY_SHARE = 0.75  # of what the barrel holds up to a whole tube's end (judged)


@dataclass(frozen=True, slots=True)
class FillSeries:
    """Repeated fillings from one starting state.

    Parameters
    ----------
    volumes_ml : tuple of float
        Volumes in order [mL].
    mean_ml, spread_ml : float
        Mean and standard deviation [mL].
    mean_uncertainty_ml : float
        Standard uncertainty of the mean from the scatter [mL].
    slope_ml, slope_uncertainty_ml : float
        Rise from one filling to the next [mL] with its standard uncertainty; 0 below three fillings.
    findings : tuple of Finding
        Advice.
    """

    volumes_ml: tuple[float, ...]
    mean_ml: float
    spread_ml: float
    mean_uncertainty_ml: float
    slope_ml: float
    slope_uncertainty_ml: float
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class StrokeSeries:
    """A pump's fill after each stroke.

    Parameters
    ----------
    strokes : tuple of int
        Stroke numbers.
    volumes_ml : tuple of float
        Volume in the pen after each [mL].
    per_stroke_ml : float
        What one stroke adds while the fill still rises [mL].
    plateau_stroke : int or None
        The stroke after which nothing is added; None where the fill still rises at the end.
    plateau_ml : float or None
        The volume at which it stops [mL].
    findings : tuple of Finding
        Advice.
    """

    strokes: tuple[int, ...]
    volumes_ml: tuple[float, ...]
    per_stroke_ml: float
    plateau_stroke: int | None
    plateau_ml: float | None
    findings: tuple[Finding, ...]


def fill_series(volumes_ml: Sequence[float], standard_uncertainty_ml: float) -> FillSeries:
    """Repeated fillings from one starting state, and whether they still rise.

    Parameters
    ----------
    volumes_ml : sequence of float
        Volumes in the order they were drawn [mL].
    standard_uncertainty_ml : float
        Standard uncertainty of one from weighing alone [mL], above 0.

    Returns
    -------
    FillSeries
        Mean, spread, trend and findings.

    Raises
    ------
    InputError
        If there is no volume or the uncertainty is not above 0.

    Notes
    -----
    "Still rising" is said when the slope of a straight line through the fillings is above its one-sided 95 % limit
    (`decision_factor`); with the scatter of the fillings where that is wider than weighing explains, Student's t with
    n - 2.
    """
    if not standard_uncertainty_ml > 0:
        raise InputError("standard uncertainty", "above 0 mL", standard_uncertainty_ml)
    mean, spread = mean_and_spread(volumes_ml)
    n = len(volumes_ml)
    per_mean = believed_spread(standard_uncertainty_ml, spread, n - 1)[0] / math.sqrt(n)
    slope = slope_u = 0.0
    found: tuple[Finding, ...] = ()
    if n >= 3:
        line = fit_line([float(i) for i in range(n)], volumes_ml, standard_uncertainty_ml)
        slope, slope_u = line.slope, line.slope_uncertainty
        found = (_trend(slope, decision_factor(line.degrees_of_freedom) * slope_u, n),)
    elif n == 2:
        found = (Finding("note", "weighing.two-only"),)
    return FillSeries(tuple(volumes_ml), mean, spread, per_mean, slope, slope_u, found)


def _trend(slope: float, limit: float, fills: int) -> Finding:
    if slope > limit:
        return Finding("warning", "weighing.still-rising", slope=slope)
    if slope < -limit:
        return Finding("warning", "weighing.falling", slope=-slope)
    return Finding("ok", "weighing.steady", fills=fills)


def stroke_series(
    strokes: Sequence[int],
    masses_g: Sequence[float],
    z_ml_per_g: float,
    mass_uncertainty_g: float,
    expected_ml: float | None = None,
    *,
    stroke_ml: float | None = None,
) -> StrokeSeries:
    """What each stroke of a pump filler adds, and where it stops.

    Parameters
    ----------
    strokes : sequence of int
        Stroke numbers, rising, beginning with 0 for the empty pen.
    masses_g : sequence of float
        Mass after each [g].
    z_ml_per_g : float
        Factor from balance reading to volume [mL/g].
    mass_uncertainty_g : float
        Standard uncertainty of one mass [g], drop included.
    expected_ml : float or None
        What the barrel should hold up to the breather tube's end [mL].
    stroke_ml : float or None
        What one stroke of a sound diaphragm or bulb brings [mL].

    Returns
    -------
    StrokeSeries
        Volume after each stroke, gain of a stroke, plateau and findings.

    Raises
    ------
    InputError
        If there are fewer than three weighings or the strokes do not rise.

    Notes
    -----
    A stroke adds nothing when its gain is below twice its own uncertainty (two weighings) and below a third of the
    largest gain. The level of the breather tube's end ends the fill, so an early plateau means a short tube
    (derived; common practice, no source).
    """
    if len(strokes) < 3 or len(strokes) != len(masses_g):
        raise InputError("weighings after strokes", "at least three, the empty pen being stroke 0", len(strokes))
    if any(b <= a for a, b in pairwise(strokes)):
        raise InputError("stroke numbers", "rising", ", ".join(map(str, strokes)))
    volumes = [(m - masses_g[0]) * z_ml_per_g for m in masses_g]
    gains = [(b - a) / (t - s) for a, b, s, t in zip(volumes, volumes[1:], strokes, strokes[1:], strict=False)]
    noise = 2 * math.sqrt(2) * mass_uncertainty_g * z_ml_per_g
    largest = max(gains)
    nothing = max(noise, largest / 3)
    last_rise = max((i for i, gain in enumerate(gains) if gain > nothing), default=-1)
    rising = [g for g in gains[: last_rise + 1] if g > nothing]
    per_stroke = math.fsum(rising) / len(rising) if rising else 0.0
    flat = last_rise < len(gains) - 1
    plateau_stroke = strokes[last_rise + 1] if flat and rising else None
    tail = volumes[last_rise + 1 :]
    plateau = math.fsum(tail) / len(tail) if plateau_stroke is not None else None
    found = [_stroke_finding(rising, plateau_stroke, plateau, expected_ml, strokes[-1])]
    if rising and stroke_ml is not None and per_stroke < LOW_SLOPE_SHARE * stroke_ml:
        found.append(Finding("warning", "weighing.low-slope", per_stroke=per_stroke, sound=stroke_ml))
    return StrokeSeries(tuple(strokes), tuple(volumes), per_stroke, plateau_stroke, plateau, tuple(found))


def _stroke_finding(
    rising: list[float], stroke: int | None, plateau: float | None, expected: float | None, last: int
) -> Finding:
    if not rising:
        return Finding("warning", "weighing.no-gain")
    if stroke is None or plateau is None:
        return Finding("note", "weighing.never-flat", last=last)
    if expected is not None and plateau < EARLY_SHARE * expected:
        return Finding("warning", "weighing.early-plateau", stroke=stroke, plateau=plateau, share=plateau / expected)
    share = plateau / expected if expected else None
    return Finding("ok", "weighing.plateau", stroke=stroke, plateau=plateau, share=share)
