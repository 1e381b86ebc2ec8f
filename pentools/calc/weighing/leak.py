"""Does it leak: mass against time with a limit of detection, evaporation through a gap, and decay of a vacuum."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.base.line import Line, fit_line
from pentools.errors import InputError

__all__ = ["LeakResult", "evaporation_mg_per_day", "leak_down", "vacuum_decay_pa_m3_s"]

DETECTION = 3.29
LEAK_MG_PER_HOUR = 1.0


@dataclass(frozen=True, slots=True)
class LeakResult:
    """Loss of mass with time.

    Parameters
    ----------
    line : Line
        Mass against time [g, h].
    loss_mg_per_h, uncertainty_mg_per_h : float
        Loss and its standard uncertainty [mg/h].
    detection_mg_per_h : float
        The smallest loss that this balance and this schedule can tell from none [mg/h].
    findings : tuple of Finding
        What it means.
    """

    line: Line
    loss_mg_per_h: float
    uncertainty_mg_per_h: float
    detection_mg_per_h: float
    findings: tuple[Finding, ...]


def leak_down(
    hours: Sequence[float],
    masses_g: Sequence[float],
    reading_uncertainty_g: float,
    blanks_g: Sequence[float | None] = (),
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

    Returns
    -------
    LeakResult
        Slope, limit of detection and findings.

    Raises
    ------
    InputError
        If there are fewer than two weighings, the times are alike, the blanks are not as many as the masses, or the
        uncertainty of a reading is not above 0.

    Notes
    -----
    Slope by least squares, the larger of the known and the found scatter taken; a loss is called real above 3.29 of its standard uncertainty (false alarm and miss at 5 %
    each; Currie 1968 form). "Milligrams an hour are a leak, milligrams a day are evaporation" is an estimate from
    `evaporation_mg_per_day`, not a measured rule.
    """
    if not reading_uncertainty_g > 0:
        raise InputError("uncertainty of a reading", "above 0 g", reading_uncertainty_g)
    used, sigma = list(masses_g), reading_uncertainty_g
    if blanks_g:
        if len(blanks_g) != len(masses_g) or any(b is None for b in blanks_g):
            raise InputError(
                "dummy masses", "one for each weighing, or none at all", len([b for b in blanks_g if b is not None])
            )
        first = blanks_g[0]
        assert first is not None
        used = [m - ((b or 0.0) - first) for m, b in zip(masses_g, blanks_g, strict=True)]
        sigma *= math.sqrt(2)
    line = fit_line(hours, used, sigma)
    loss, u = -1000 * line.slope, 1000 * line.slope_uncertainty
    limit = DETECTION * u
    return LeakResult(line, loss, u, limit, _leak_findings(loss, limit))


def _leak_findings(loss: float, limit: float) -> tuple[Finding, ...]:
    if loss < -limit:
        return (
            Finding(
                "warning",
                f"It gains {_rate(-loss)}: the balance drifts, or the pen takes up damp or ink from outside. Weigh a dry dummy each time and begin again.",
                "gain",
            ),
        )
    bound = f"The smallest loss that this balance and schedule can tell is {_rate(limit)}."
    if loss <= limit:
        if limit > LEAK_MG_PER_HOUR:
            return (
                Finding(
                    "note",
                    f"No loss is seen, but {bound[0].lower()}{bound[1:]} Weigh longer or on a finer balance before it is called tight.",
                    "not-sensitive",
                ),
            )
        return (Finding("ok", f"No leak: the loss is below what can be told. {bound}", "tight"),)
    if loss >= LEAK_MG_PER_HOUR:
        return (
            Finding(
                "warning",
                f"It loses {_rate(loss)}: milligrams an hour are a leak or an open nib (an estimate). {bound}",
                "leak",
            ),
        )
    return (
        Finding(
            "note",
            f"It loses {_rate(loss)}: milligrams a day are evaporation through the cap's seat (an estimate). {bound}",
            "evaporation",
        ),
    )


def _rate(mg_per_h: float) -> str:
    return f"{mg_per_h:.2g} mg/h" if mg_per_h >= LEAK_MG_PER_HOUR else f"{24 * mg_per_h:.2g} mg/day"


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
