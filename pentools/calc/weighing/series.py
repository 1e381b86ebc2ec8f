"""Several fillings of one pen: their mean and spread, whether they still rise, and where a pump's fill stops."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from pentools.calc.base.findings import Finding
from pentools.calc.base.line import fit_line
from pentools.calc.base.uncertainty import mean_and_spread
from pentools.errors import InputError

__all__ = ["FillSeries", "FillsByStart", "StrokeSeries", "fill_series", "fills_by_start", "stroke_series"]


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
class FillsByStart:
    """Fillings from dry and from drained, never mixed.

    Parameters
    ----------
    dry, drained : FillSeries or None
        Each kind by itself; None where there is none.
    kept_ml, kept_uncertainty_ml : float or None
        What section and feed keep when the pen is drained: mean from dry less mean from drained, with its standard
        uncertainty [mL]; None where one kind is missing.
    """

    dry: FillSeries | None
    drained: FillSeries | None
    kept_ml: float | None
    kept_uncertainty_ml: float | None


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
    "Still rising" is said when the slope of a straight line through the fillings is above its 95 % limit (one
    side of Student's t taken two-sided at 90 %).
    """
    if not standard_uncertainty_ml > 0:
        raise InputError("standard uncertainty", "above 0 mL", standard_uncertainty_ml)
    mean, spread = mean_and_spread(volumes_ml)
    n = len(volumes_ml)
    per_mean = max(spread, standard_uncertainty_ml) / math.sqrt(n)
    slope = slope_u = 0.0
    found: list[Finding] = []
    if n >= 3:
        line = fit_line([float(i) for i in range(n)], volumes_ml, standard_uncertainty_ml)
        slope, slope_u = line.slope, line.slope_uncertainty
        limit = line.coverage(0.90) * slope_u
        if slope > limit:
            found.append(
                Finding(
                    "warning",
                    f"Still rising by {slope:.2f} mL a filling: fill again until it settles. A growing fill means the pen stayed too short a time in the liquid, or a dry seal that is waking up.",
                    "still-rising",
                )
            )
        elif slope < -limit:
            found.append(
                Finding(
                    "warning", f"Falling by {-slope:.2f} mL a filling: a seal that slips more each time.", "falling"
                )
            )
        else:
            found.append(Finding("ok", f"{n} fillings agree: no trend beyond what weighing can tell.", "steady"))
    elif n == 2:
        found.append(Finding("note", "Two fillings show no trend; a third would.", "two-only"))
    return FillSeries(tuple(volumes_ml), mean, spread, per_mean, slope, slope_u, tuple(found))


def fills_by_start(fills: Sequence[tuple[str, float]], standard_uncertainty_ml: float) -> FillsByStart:
    """Fillings of one pen, those from dry and those from drained apart.

    Parameters
    ----------
    fills : sequence of (str, float)
        Start ("dry" or "drained") and volume [mL], in the order they were drawn.
    standard_uncertainty_ml : float
        Standard uncertainty of one from weighing alone [mL], above 0.

    Returns
    -------
    FillsByStart
        A series of each kind, and what the feed keeps.

    Raises
    ------
    InputError
        If there is no filling, a start is neither, or the uncertainty is not above 0.

    Notes
    -----
    A filling from dry holds more than a refill by what section and feed keep, so a mean over both means nothing.
    """
    if not fills:
        raise InputError("fillings", "at least one", "none")
    for start, _ in fills:
        if start not in ("dry", "drained"):
            raise InputError("state before filling", "dry or drained", start)
    found: dict[str, FillSeries | None] = {}
    for kind in ("dry", "drained"):
        volumes = [volume for start, volume in fills if start == kind]
        found[kind] = fill_series(volumes, standard_uncertainty_ml) if volumes else None
    dry, drained = found["dry"], found["drained"]
    if dry is None or drained is None:
        return FillsByStart(dry, drained, None, None)
    doubt = math.hypot(dry.mean_uncertainty_ml, drained.mean_uncertainty_ml)
    return FillsByStart(dry, drained, dry.mean_ml - drained.mean_ml, doubt)


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
    found = _stroke_findings(rising, plateau_stroke, plateau, expected_ml, strokes[-1])
    if rising and stroke_ml is not None and per_stroke < LOW_SLOPE_SHARE * stroke_ml:
        found += (
            Finding(
                "warning",
                f"Each stroke brings {per_stroke:.2f} mL, where a sound one brings {stroke_ml:.2f} mL: the rubber is hard or torn, or air comes in at its seat.",
                "low-slope",
            ),
        )
    return StrokeSeries(tuple(strokes), tuple(volumes), per_stroke, plateau_stroke, plateau, found)


def _stroke_findings(
    rising: list[float], stroke: int | None, plateau: float | None, expected: float | None, last: int
) -> tuple[Finding, ...]:
    if not rising:
        return (
            Finding(
                "warning",
                "No stroke adds anything: the diaphragm is torn, its old rubber blocks it, or the breather tube is closed.",
                "no-gain",
            ),
        )
    if stroke is None or plateau is None:
        return (
            Finding(
                "note",
                f"After stroke {last} it still rises: go on until it stops. If it never stops, air comes in somewhere.",
                "never-flat",
            ),
        )
    if expected is not None and plateau < EARLY_SHARE * expected:
        return (
            Finding(
                "warning",
                f"It stops rising after stroke {stroke} at {plateau:.2f} mL, {100 * plateau / expected:.0f} % of what the barrel holds up to a whole breather tube's end. The liquid has reached the tube's end early: the tube is short, broken or cracked. Look at its end before anything else.",
                "early-plateau",
            ),
        )
    share = f", {100 * plateau / expected:.0f} % of what it should hold" if expected else ""
    return (Finding("ok", f"It stops rising after stroke {stroke} at {plateau:.2f} mL{share}.", "plateau"),)
