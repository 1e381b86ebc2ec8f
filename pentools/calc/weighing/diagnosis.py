"""Why a pen draws less than it should: the share filled, what it implies, the look-alikes, and the next test."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import rounded_pair
from pentools.calc.weighing.expected import AMBIENT_KPA
from pentools.calc.weighing.volumes import head_kpa
from pentools.errors import InputError

__all__ = ["FillDiagnosis", "ImpliedPressure", "Suspect", "diagnose_fill", "implied_pressure"]

SHORT_SHARE = 0.95  # section and feed always keep a little air (judged)


@dataclass(frozen=True, slots=True)
class Suspect:
    """One thing that makes a fill short.

    Parameters
    ----------
    key : str
        Short stable name.
    name : str
        What is suspected, fit to stand in a sentence.
    why : str
        How it makes the fill short.
    next_test : str
        The test that tells it from its look-alikes.
    """

    key: str
    name: str
    why: str
    next_test: str


@dataclass(frozen=True, slots=True)
class ImpliedPressure:
    """Absolute pressure left above a plunger's washer [kPa], with its standard uncertainty, or only a bound."""

    pressure_kpa: float
    standard_uncertainty_kpa: float
    at_most_kpa: float | None


@dataclass(frozen=True, slots=True)
class FillDiagnosis:
    """What a fill says.

    Parameters
    ----------
    share_filled : float
        Drawn over expected [1].
    share_uncertainty : float
        Its standard uncertainty [1].
    implied : ImpliedPressure or None
        For a plunger filler only.
    first_suspect : str
        The first part worth a look; empty where nothing is wrong.
    findings : tuple of Finding
        Reasons and next tests.
    """

    share_filled: float
    share_uncertainty: float
    implied: ImpliedPressure | None
    first_suspect: str
    findings: tuple[Finding, ...]


def implied_pressure(
    share_filled: float,
    share_uncertainty: float,
    liquid_head_mm: float = 60.0,
    ambient_kpa: float = AMBIENT_KPA,
    coverage: float = 2.0,
) -> ImpliedPressure:
    """Absolute pressure that a plunger filler's share implies behind its washer at the moment of release.

    Parameters
    ----------
    share_filled : float
        Drawn over expected [1], 0 to 1.5.
    share_uncertainty : float
        Its standard uncertainty [1], zero or more.
    liquid_head_mm : float
        Height the liquid is lifted [mm], 0 to 200.
    ambient_kpa : float
        Air pressure [kPa].
    coverage : float
        Factor used for the bound.

    Returns
    -------
    ImpliedPressure
        Pressure [kPa] ±, or a bound where the share cannot be told from a perfect stroke.

    Raises
    ------
    InputError
        If the share is outside 0 to 1.5 or its uncertainty is negative.

    Notes
    -----
    p = (p_0 - rho g h)(1 - f), air that leaked in being the only loss; u(p) = (p_0 - rho g h) u(f). Above
    f = 1 - k u(f) only "at most" can be said of the pressure, "at least" of the vacuum. Isothermal. Every look-alike
    (short dwell, blocked feed, short stroke, wrong bore) reads as lost vacuum, and vapour, which a wet stroke always
    leaves (2.3 kPa at 20 °C), is not in it: it gives way to liquid. Derived here from the gas law.

    Examples
    --------
    >>> round(implied_pressure(0.90, 0.011).pressure_kpa, 1)
    10.1
    """
    if not 0 <= share_filled <= 1.5:
        raise InputError("share filled", "0 to 1.5", share_filled)
    if not share_uncertainty >= 0:
        raise InputError("uncertainty of the share", "zero or more", share_uncertainty)
    end = ambient_kpa - head_kpa(liquid_head_mm)
    pressure, u = end * (1 - share_filled), end * share_uncertainty
    if pressure <= coverage * u:
        return ImpliedPressure(max(pressure, 0.0), u, max(pressure, 0.0) + coverage * u)
    return ImpliedPressure(pressure, u, None)


def diagnose_fill(
    family: str,
    drawn_ml: tuple[float, float],
    expected_ml: tuple[float, float],
    holds: str,
    suspects: Sequence[Suspect] = (),
    *,
    ambient_kpa: float = AMBIENT_KPA,
    liquid_head_mm: float = 60.0,
) -> FillDiagnosis:
    """What a fill says about a pen of a filling system.

    Parameters
    ----------
    family : str
        Key of the formula's family; a plunger's share implies a pressure.
    drawn_ml, expected_ml : tuple of float
        Volume drawn and volume it should hold, each with its standard uncertainty [mL].
    holds : str
        What the expected volume is, in words.
    suspects : sequence of Suspect
        What makes this system draw too little, in the order in which it is worth a look.
    ambient_kpa : float
        Air pressure [kPa]; for a plunger filler.
    liquid_head_mm : float
        Height the liquid is lifted [mm]; for a plunger filler.

    Returns
    -------
    FillDiagnosis
        Share, first suspect, findings with reasons and next tests.

    Raises
    ------
    InputError
        If a volume is not above 0.

    Notes
    -----
    u(f) = f √((u_V/V)² + (u_E/E)²). Short means: more than two standard uncertainties below 1, and below 0.95, since
    section and feed always keep a little air (judged).
    """
    (volume, volume_u), (expected, expected_u) = drawn_ml, expected_ml
    for name, value in (("volume drawn", volume), ("expected volume", expected)):
        if not value > 0:
            raise InputError(name, "above 0 mL", f"{value:g} mL")
    share = volume / expected
    u = share * math.hypot(volume_u / volume, expected_u / expected)
    short = share < 1 - 2 * u and share < SHORT_SHARE
    found = _short_findings(suspects, share, u, holds) if short else [_share_finding(share, u, holds)]
    implied = None
    if family == "plunger" and share <= 1.5:
        implied = implied_pressure(share, u, liquid_head_mm, ambient_kpa)
        found.append(_vacuum_finding(implied, ambient_kpa))
    return FillDiagnosis(share, u, implied, suspects[0].name if short and suspects else "", tuple(found))


def _short_findings(suspects: Sequence[Suspect], share: float, u: float, holds: str) -> list[Finding]:
    if not suspects:
        return [Finding("warning", f"It draws {100 * share:.0f} % ± {200 * u:.0f} of {holds}: that is short.", "short")]
    return [
        Finding(
            "note" if place else "warning",
            f"{s.name[0].upper()}{s.name[1:]}: {s.why}. Next test: {s.next_test}.",
            f"suspect-{s.key}",
        )
        for place, s in enumerate(suspects)
    ]


def _share_finding(share: float, u: float, holds: str) -> Finding:
    if share > 1 + 2 * u and share > 2 - SHORT_SHARE:
        return Finding(
            "warning",
            f"It draws more than {holds} ({100 * share:.0f} %). A dimension is wrong, or the pen was dry and its feed took the rest.",
            "more-than-full",
        )
    if 1 - 2 * u <= SHORT_SHARE:
        return Finding(
            "note",
            f"The share of {100 * share:.0f} % is known to ± {200 * u:.0f} points only: a loss smaller than that cannot be seen. Measure the dimensions better, or weigh on a finer balance.",
            "share-uncertain",
        )
    return Finding("ok", f"It fills: {100 * share:.0f} % of {holds}, as much as can be told.", "full")


def _vacuum_finding(implied: ImpliedPressure, ambient_kpa: float) -> Finding:
    if implied.at_most_kpa is not None:
        vacuum = ambient_kpa - implied.at_most_kpa
        return Finding(
            "ok",
            f"If all of the rest were lost vacuum, at most {implied.at_most_kpa:.1f} kPa of air was left behind the washer (a vacuum of ≥ {vacuum:.0f} kPa): more than that the weighing cannot tell.",
            "vacuum-bound",
        )
    value, spread = rounded_pair(implied.pressure_kpa, 2 * implied.standard_uncertainty_kpa)
    return Finding(
        "note",
        f"If all of the rest is lost vacuum, {value} kPa ± {spread} of air was left behind the washer (outside it is {ambient_kpa:.0f} kPa). Short dwell, a blocked feed, a short stroke or a wrong bore look just the same.",
        "vacuum",
    )
