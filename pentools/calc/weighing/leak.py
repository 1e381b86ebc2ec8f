"""Does it leak: mass against time with a limit of detection, evaporation through a gap, and decay of a vacuum."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding, Level
from pentools.calc.base.line import Line, fit_line
from pentools.calc.base.uncertainty import decision_factor
from pentools.errors import InputError

__all__ = ["LeakResult", "evaporation_mg_per_day", "leak_down", "vacuum_decay_pa_m3_s"]

LEAK_MG_PER_HOUR = 1.0  # above it a leak or an open nib, were no evaporation estimated (itself an estimate)
_LEVELS: dict[str, Level] = {
    "gain": "warning",
    "tight": "ok",
    "not-sensitive": "note",
    "evaporation": "note",
    "cannot-tell-which": "note",
    "leak": "warning",
}
ESTIMATE_FACTOR = 2.0  # within which an estimate of evaporation is good (judged: the gap itself is guessed)


@dataclass(frozen=True, slots=True)
class LeakResult:
    """Loss of mass with time.

    Parameters
    ----------
    line : Line
        Mass against time [g, h].
    loss_mg_per_h, uncertainty_mg_per_h : float
        Loss and its standard uncertainty [mg/h].
    decision_mg_per_h : float
        The loss from which on one is told from none [mg/h].
    detection_mg_per_h : float
        The smallest loss that this balance and this schedule find in 95 of 100 cases [mg/h].
    verdict : str
        In a word: ``leak``, ``evaporation``, ``cannot-tell-which``, ``tight``, ``not-sensitive`` or ``gain``.
    findings : tuple of Finding
        What it means.
    """

    line: Line
    loss_mg_per_h: float
    uncertainty_mg_per_h: float
    decision_mg_per_h: float
    detection_mg_per_h: float
    verdict: str
    findings: tuple[Finding, ...]


def leak_down(
    hours: Sequence[float],
    masses_g: Sequence[float],
    reading_uncertainty_g: float,
    blanks_g: Sequence[float | None] = (),
    *,
    evaporation_mg_day: float | None = None,
) -> LeakResult:
    """Loss of mass of a filled, resting pen.

    Parameters
    ----------
    hours : sequence of float
        Times since filling [h], two or more, unlike.
    masses_g : sequence of float
        Masses at those times [g].
    reading_uncertainty_g : float
        Standard uncertainty of one reading [g]: √(d²/12 + s²).
    blanks_g : sequence of float or None
        Masses of a dry dummy weighed each time [g]; its drift is taken off. Empty where there was none.
    evaporation_mg_day : float or None
        What may leave as vapour by `evaporation_mg_per_day`; None where it was not estimated.

    Returns
    -------
    LeakResult
        Slope, limits, verdict and findings.

    Raises
    ------
    InputError
        If there are fewer than two weighings, the times are alike, the blanks are not as many as the masses, the
        uncertainty of a reading is not above 0, or the evaporation is below 0.

    Notes
    -----
    Slope by least squares. A loss is told from none above 1.645 of its standard uncertainty, and one of 3.29 is
    found in 95 of 100 cases: ISO 11843-1, Currie (1968); Student's t with n - 2 in their place where the readings
    scatter more than the balance's own figures let chance explain. A loss is called evaporation up to what was
    estimated (the loss's own uncertainty allowed for, and never beyond twice the estimate), a leak where it is above
    twice the estimate by more than its uncertainty; without an estimate a leak from 1 mg/h up. All else cannot be told.
    """
    if not reading_uncertainty_g > 0:
        raise InputError("uncertainty of a reading", "above 0 g", reading_uncertainty_g)
    if evaporation_mg_day is not None and not evaporation_mg_day >= 0:
        raise InputError("evaporation", "zero or more", f"{evaporation_mg_day:g} mg a day")
    used, sigma = list(masses_g), reading_uncertainty_g
    if blanks_g:
        known = [b for b in blanks_g if b is not None]
        if len(known) != len(masses_g):
            raise InputError("dummy masses", "one for each weighing, or none at all", len(known))
        used = [m - (b - known[0]) for m, b in zip(masses_g, known, strict=True)]
        sigma *= math.sqrt(2)
    line = fit_line(hours, used, sigma)
    loss, u = -1000 * line.slope, 1000 * line.slope_uncertainty
    decision = decision_factor(line.degrees_of_freedom) * u
    verdict = _verdict(loss, decision, None if evaporation_mg_day is None else evaporation_mg_day / 24)
    found = _finding(verdict, loss, decision, evaporation_mg_day)
    return LeakResult(line, loss, u, decision, 2 * decision, verdict, (found,))


def _verdict(loss: float, decision: float, evaporation: float | None) -> str:
    if loss < -decision:
        return "gain"
    if loss <= decision:
        return "not-sensitive" if 2 * decision > LEAK_MG_PER_HOUR else "tight"
    if evaporation is None:
        return "leak" if loss - decision > LEAK_MG_PER_HOUR else "cannot-tell-which"
    most = ESTIMATE_FACTOR * evaporation
    if loss - decision > most:
        return "leak"
    return "evaporation" if loss <= min(evaporation + decision, most) else "cannot-tell-which"


def _finding(verdict: str, loss: float, decision: float, estimate: float | None) -> Finding:
    """What the verdict means; the ± of a rate is the one-sided 95 % that it was judged by."""
    rates = {"loss": loss, "doubt": decision, "limit": 2 * decision}
    level = _LEVELS[verdict]
    if estimate is None or verdict in ("gain", "tight", "not-sensitive"):
        return Finding(level, f"weighing.{verdict}", **rates)
    return Finding(level, f"weighing.{verdict}:estimate", estimate=estimate, **rates)


def evaporation_mg_per_day(
    area_mm2: float, length_mm: float, humidity_share: float, vapour_kpa: float, temperature_c: float
) -> float:
    """Water that leaves through a still gap by diffusion.

    Parameters
    ----------
    area_mm2 : float
        Open area of the gap [mm²].
    length_mm : float
        Way through it [mm], above 0.
    humidity_share : float
        Relative humidity outside [1].
    vapour_kpa : float
        Saturation vapour pressure at the temperature [kPa].
    temperature_c : float
        Temperature [°C].

    Returns
    -------
    float
        Loss [mg/day].

    Raises
    ------
    InputError
        If the length is not above 0, the area is negative, or the humidity is not a share.

    Notes
    -----
    J = D rho_v (1 - RH) A / L with D = 2.42e-5 m²/s (from memory, for 20 °C) and rho_v from the gas law. Good as an
    order of magnitude.

    Examples
    --------
    >>> round(evaporation_mg_per_day(1.0, 5.0, 0.5, 2.34, 20.0), 1)
    3.6
    """
    if not (length_mm > 0 and area_mm2 >= 0):
        raise InputError(
            "gap", "an area of zero or more and a length above 0 mm", f"{area_mm2:g} mm² by {length_mm:g} mm"
        )
    if not 0 <= humidity_share <= 1:
        raise InputError("relative humidity", "0 to 1 (a share)", humidity_share)
    vapour_g_m3 = vapour_kpa * 1000 * 18.01528 / (8.314462618 * (temperature_c + 273.15))
    return 2.42e-5 * vapour_g_m3 * (1 - humidity_share) * area_mm2 * 1e-6 / (length_mm * 1e-3) * 86400 * 1000


def vacuum_decay_pa_m3_s(volume_ml: float, pressure_rise_kpa: float, seconds: float) -> float:
    """Air leak of a closed volume from how its pressure rises.

    Parameters
    ----------
    volume_ml : float
        Volume [mL], above 0.
    pressure_rise_kpa : float
        Rise of pressure [kPa].
    seconds : float
        Over this time [s], above 0.

    Returns
    -------
    float
        Leak rate Q = V ΔP/Δt [Pa m³/s].

    Raises
    ------
    InputError
        If volume or time is not above 0.

    Notes
    -----
    Isothermal, fixed volume, small change; a leak of air does not turn into a leak of ink directly.

    Examples
    --------
    >>> f"{vacuum_decay_pa_m3_s(1.9, 2.0, 60.0):.2e}"
    '6.33e-05'
    """
    if not (volume_ml > 0 and seconds > 0):
        raise InputError("volume and time", "above 0", f"{volume_ml:g} mL, {seconds:g} s")
    return volume_ml * 1e-6 * pressure_rise_kpa * 1000 / seconds
