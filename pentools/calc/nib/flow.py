"""Ink laid down on a metre of line: from two masses of the pen and the length written between them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding, Level
from pentools.calc.base.uncertainty import COVERAGE, believed_spread, format_value, mean_and_spread
from pentools.errors import InputError

__all__ = ["Flow", "Span", "Weighed", "flow_change", "ink_flow", "weighed"]

NUMBER_UP_TO, ABOUT_UP_TO = 0.2, 0.5  # share of the flow that its ± may be (judged)
WRITING_M_MIN = 4.5  # 75 mm/s, the speed of ball-pen test machines, where the minutes were not counted
_LEVELS: dict[str, Level] = {"number": "ok", "about": "note", "bound": "warning"}


@dataclass(frozen=True, slots=True)
class Weighed:
    """A mass and its doubt.

    Parameters
    ----------
    mass_g, uncertainty_g : float
        Mean of the readings and its standard uncertainty [g].
    """

    mass_g: float
    uncertainty_g: float


@dataclass(frozen=True, slots=True)
class Span:
    """What pens are known to lay down.

    Parameters
    ----------
    low_mg_m, typical_mg_m, high_mg_m : float
        Ends and middle of what is known of fountain pens [mg/m].
    ceiling_mg_m_mm : float
        What no fountain pen lays down, for each millimetre of width [mg/m/mm].
    """

    low_mg_m: float
    typical_mg_m: float
    high_mg_m: float
    ceiling_mg_m_mm: float


@dataclass(frozen=True, slots=True)
class Flow:
    """What a metre of line takes.

    Parameters
    ----------
    lost_mg, lost_uncertainty_mg : float
        Ink that left the pen, drying taken off, and its standard uncertainty [mg].
    dried_mg : float
        What was taken off for drying [mg].
    length_m : float
        Line written [m].
    mg_per_m, uncertainty_mg_per_m : float
        Flow and its standard uncertainty [mg/m].
    expanded_mg_per_m : float
        Twice that: about 95 %.
    bound_mg_per_m : float
        The most that the flow can be [mg/m].
    verdict : {"number", "about", "bound"}
        What may be said: a number with its ±, a round number with its ends, or the bound alone.
    m_per_ml, m_per_ml_low, m_per_ml_high : float or None
        Metres from a millilitre [m/mL]; None where there is only a bound, the upper end too where it has none.
    needed_m : float
        Length after which this balance gives a number [m].
    findings : tuple of Finding
        The result in words first, then what to doubt.
    """

    lost_mg: float
    lost_uncertainty_mg: float
    dried_mg: float
    length_m: float
    mg_per_m: float
    uncertainty_mg_per_m: float
    expanded_mg_per_m: float
    bound_mg_per_m: float
    verdict: str
    m_per_ml: float | None
    m_per_ml_low: float | None
    m_per_ml_high: float | None
    needed_m: float
    findings: tuple[Finding, ...]


def weighed(masses_g: Sequence[float], rounding_g: float, repeatability_g: float) -> Weighed:
    """The mean of some weighings of one thing.

    Parameters
    ----------
    masses_g : sequence of float
        One or more readings [g].
    rounding_g : float
        Standard uncertainty of one rounding [g], 0 or more; it is shared by all readings.
    repeatability_g : float
        Standard deviation of one reading [g], 0 or more.

    Returns
    -------
    Weighed
        u² = rounding² + s²/n, s the scatter found where chance does not let it be so wide.

    Raises
    ------
    InputError
        If there is no reading.

    Examples
    --------
    >>> round(2000 * math.sqrt(2) * weighed([23.5], 0.01 / math.sqrt(12), 0).uncertainty_g, 1)
    8.2
    """
    mean, scatter = mean_and_spread(masses_g)
    spread, _ = believed_spread(repeatability_g, scatter, len(masses_g) - 1)
    return Weighed(mean, math.hypot(rounding_g, spread / math.sqrt(len(masses_g))))


def ink_flow(
    before: Weighed,
    after: Weighed,
    length_m: float,
    length_share: float,
    span: Span,
    *,
    density_g_ml: float,
    dried: Weighed,
    width_mm: float | None = None,
) -> Flow:
    """Ink on a metre of line.

    Parameters
    ----------
    before, after : Weighed
        The pen, capped, before and after the line [g].
    length_m : float
        Line written [m], above 0.
    length_share : float
        Standard uncertainty of the length as a share of it [1], 0 or more.
    span : Span
        What pens are known to lay down.
    density_g_ml : float
        Density of the ink [g/mL], above 0: a mass is no volume.
    dried : Weighed
        What the open pen would have lost without writing [g].
    width_mm : float or None
        Width of the line [mm], above 0; None where it was not measured, and then the ceiling is not asked.

    Returns
    -------
    Flow
        A number, a round number, or a bound.

    Raises
    ------
    InputError
        If length, density or width is not above 0, or the pen gained by more than its doubt.

    Notes
    -----
    m' = Δm/L; u² = (u(Δm)/L)² + (m' u(L)/L)²; U = 2 u. A ± up to a fifth of the value is a number, up to half of it
    "about", above that there is only (Δm + U)/L (judged). Weigh the pen and not the paper: that dries while you look.

    Examples
    --------
    >>> span, none = Span(2.4, 5, 14, 16), Weighed(0, 0)
    >>> u = 0.01 / math.sqrt(12)
    >>> flow = ink_flow(Weighed(23.189, u), Weighed(23.0, u), 37.8, 0, span, density_g_ml=1, dried=none)
    >>> round(flow.mg_per_m, 2), round(flow.expanded_mg_per_m / flow.mg_per_m, 2), flow.verdict
    (5.0, 0.04, 'number')
    """
    if not (length_m > 0 and density_g_ml > 0 and length_share >= 0 and (width_mm is None or width_mm > 0)):
        raise InputError(
            "length, density and width", "above 0",
            f"{length_m:g} m, {density_g_ml:g} g/mL" + ("" if width_mm is None else f", {width_mm:g} mm"),
        )  # fmt: skip
    lost = 1000 * (before.mass_g - after.mass_g - dried.mass_g)
    lost_u = 1000 * math.hypot(before.uncertainty_g, after.uncertainty_g, dried.uncertainty_g)
    if lost < -COVERAGE * lost_u:
        raise InputError(
            "mass after writing", "no more than before it", f"{-lost:.3g} mg more",
            "Were the two masses typed in each other's place, or was the pen filled between them?",
        )  # fmt: skip
    flow = lost / length_m
    u = math.hypot(lost_u / length_m, flow * length_share)
    wide = COVERAGE * u
    verdict = _verdict(flow, wide)
    told = verdict != "bound"
    bound = max(flow, 0.0) + wide
    needed = COVERAGE * lost_u / (NUMBER_UP_TO * (flow if told else span.typical_mg_m))
    ml = 1000 * density_g_ml
    said = format_value(flow, wide, "mg/m") if told else ""
    values = {"flow": flow, "low": max(flow - wide, 0.0), "high": bound, "needed": needed, "length": length_m}
    found = [Finding(_LEVELS[verdict], f"nib.flow:{verdict}", said=said, metres=ml / flow if told else None, **values)]
    found += _doubts(flow, wide, span, width_mm) if told else []
    return Flow(
        lost, lost_u, 1000 * dried.mass_g, length_m, flow, u, wide, bound, verdict,
        ml / flow if told else None, ml / bound if told else None,
        ml / (flow - wide) if told and flow > wide else None, needed, tuple(found),
    )  # fmt: skip


def _verdict(flow: float, wide: float) -> str:
    if flow <= 0 or wide > ABOUT_UP_TO * flow:
        return "bound"
    return "number" if wide <= NUMBER_UP_TO * flow else "about"


def _doubts(flow: float, wide: float, span: Span, width_mm: float | None) -> list[Finding]:
    """A result that no pen gives is a slip of length, mass or width, before it is anything else."""
    if width_mm is not None and flow - wide > span.ceiling_mg_m_mm * width_mm:
        most = span.ceiling_mg_m_mm * width_mm
        return [Finding("stop", "nib.flow-ceiling", flow=flow, most=most, width=width_mm)]
    if flow - wide > span.high_mg_m or flow + wide < span.low_mg_m:
        return [Finding("warning", "nib.flow-span", flow=flow, low=span.low_mg_m, high=span.high_mg_m)]
    return []


def flow_change(first: Flow, last: Flow) -> Finding | None:
    """Whether two flows of one pen differ.

    Parameters
    ----------
    first, last : Flow
        Before and after the work.

    Returns
    -------
    Finding or None
        Wetter, drier, or not to be told apart; None where one of the two is only a bound.

    Notes
    -----
    They differ where the difference is above twice its own standard uncertainty.
    """
    if "bound" in (first.verdict, last.verdict):
        return None
    step = last.mg_per_m - first.mg_per_m
    wide = COVERAGE * math.hypot(first.uncertainty_mg_per_m, last.uncertainty_mg_per_m)
    told = "same" if abs(step) <= wide else "wetter" if step > 0 else "drier"
    return Finding("note", f"nib.flow-change:{told}", before=first.mg_per_m, after=last.mg_per_m, wide=wide)
