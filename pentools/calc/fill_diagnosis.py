"""Why a pen draws less than it should: the share filled, what it implies, the look-alikes, and the next test."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.findings import Finding
from pentools.calc.geometry import SYSTEMS
from pentools.calc.uncertainty import rounded_pair
from pentools.errors import InputError

__all__ = ["AMBIENT_KPA", "FillDiagnosis", "ImpliedPressure", "SUSPECTS", "diagnose_fill", "implied_pressure", "plunger_fill_share"]

AMBIENT_KPA = 101.325
GRAVITY = 9.80665

# family -> (suspect, why, the test that separates it) in the order in which they are worth a look;
# common practice, no source, apart from what is derived in the notes of the functions below
SUSPECTS: dict[str, tuple[tuple[str, str, str], ...]] = {
    "piston": (
        ("the head seal", "a seal that does not touch all round draws air past itself", "turn it half down with the nib under water and let go: a sound seal holds the level; look for liquid behind the head"),
        ("a short stroke", "the piston stops before its end", "measure the way of the head against the window or the knob's turns"),
        ("air kept in section and feed", "the first stroke only swaps that air", "empty it and fill again without taking the nib out: the second filling is larger"),
        ("a blocked feed or a nib not deep enough", "the pen draws air at the section", "fill with the section under the surface to the barrel, and wait ten seconds"),
    ),
    "plunger": (
        ("the head seal", "air leaks past the washer on the down stroke", "push it half way and let go: a sound seal pushes itself back"),
        ("the packing at the rod", "air comes in along the rod", "watch the rod under water during the stroke: bubbles at the shaft mean the packing"),
        ("too short a dwell", "the liquid was still rising when the nib came out", "fill again and wait ten seconds: a growing fill means dwell, the same fill means seal or geometry"),
        ("a short stroke or a wrong bore", "the washer was not released, or the bore was measured at the flare", "measure bore and stroke again"),
        ("a blocked feed", "the vacuum lasts but liquid comes slowly", "fill without nib and feed"),
    ),
    "sac": (
        ("the pressure bar", "a short, bent or missing bar leaves part of the sac unpressed", "count the bubbles of a full press under water and look along the barrel with a light"),
        ("the sac's size", "a sac too small holds little, one too large folds or binds under the bar", "compare its outside diameter and length with bore and barrel"),
        ("a hole or a loose nipple", "air comes in as the sac springs back", "press under water and hold: a sound sac gives bubbles only while it is pressed"),
        ("a stiff or perished sac", "it does not spring back fully", "wait a minute after the press and weigh again"),
    ),
    "breather": (
        ("the breather tube", "a short, broken or cracked tube ends the fill early", "weigh after each stroke: the fill stops rising after few strokes"),
        ("the diaphragm or bulb", "hard or torn rubber moves little air a stroke", "weigh after each stroke: every step is small"),
        ("an air leak at its seat", "air comes in at the back", "weigh after each stroke: it never stops rising and never gets full"),
        ("too few strokes", "it was not pumped until the bubbles stopped", "go on until nothing more comes"),
    ),
    "reservoir": (
        ("air left at the top", "it was not filled to the rim", "fill nib down with a dropper to the thread and weigh again"),
        ("the measured depth", "the calliper met the section's tail", "measure the depth with the section in place"),
    ),
    "cell": (
        ("dried ink in the cell", "it no longer soaks", "soak and drain until the water stays clear, dry, and weigh again"),
    ),
    "cartridge": (
        ("the converter's seal or its seat on the nipple", "air comes in beside the liquid", "draw water with the converter alone, out of the pen"),
    ),
}  # fmt: skip
SUSPECTS["pumped sac"] = SUSPECTS["breather"][:1] + SUSPECTS["sac"]


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


def plunger_fill_share(swept_ml: float, behind_ml: float, ahead_ml: float, liquid_head_mm: float, temperature_c: float, vapour_kpa: float) -> float:
    """Share of its swept volume that a sound plunger filler draws.

    Parameters
    ----------
    swept_ml : float
        Swept annulus [mL], above 0.
    behind_ml, ahead_ml : float
        Dead volumes behind the seal at the start and in front of it at the end [mL], zero or more.
    liquid_head_mm : float
        Height the liquid is lifted [mm].
    temperature_c : float
        Temperature [°C], for the reader only: the vapour pressure must belong to it.
    vapour_kpa : float
        Vapour pressure of the liquid [kPa].

    Returns
    -------
    float
        Share [1]; a little below 1, above 1 where much air stood ahead of the seal.

    Raises
    ------
    InputError
        If the swept volume is not above 0.

    Notes
    -----
    The air behind the seal, at ambient pressure before the stroke, ends at p_e - p_v with p_e = p_0 - rho g h:
    V_ink = V_d + V_s + V_f - V_d p_0/(p_e - p_v). Isothermal, no bubble lost, dwell long enough. Derived here.
    """
    if not swept_ml > 0:
        raise InputError("swept volume", "above 0 mL", swept_ml)
    if not -10 < temperature_c < 60:
        raise InputError("temperature", "-10 to 60 °C", temperature_c)
    end = AMBIENT_KPA - 998 * GRAVITY * liquid_head_mm / 1e6
    gas = behind_ml * AMBIENT_KPA / (end - vapour_kpa)
    # the air that stood ahead of the seal leaves through the nib and is no loss
    return (behind_ml + swept_ml + ahead_ml - gas - ahead_ml) / swept_ml


def implied_pressure(share_filled: float, share_uncertainty: float, liquid_head_mm: float = 60.0, coverage: float = 2.0) -> ImpliedPressure:
    """Absolute pressure that a plunger filler's share implies above its washer at the moment of release.

    Parameters
    ----------
    share_filled : float
        Drawn over swept [1], 0 to 1.5.
    share_uncertainty : float
        Its standard uncertainty [1].
    liquid_head_mm : float
        Height the liquid is lifted [mm].
    coverage : float
        Factor used for the bound.

    Returns
    -------
    ImpliedPressure
        Pressure [kPa] ±, or a bound where the share cannot be told from a perfect stroke.

    Raises
    ------
    InputError
        If the share is outside 0 to 1.5.

    Notes
    -----
    p = (p_0 - rho g h)(1 - f). Above f = 1 - k u(f) only "at most" can be said. Isothermal; every look-alike (short
    dwell, blocked feed, short stroke, wrong bore) reads as lost vacuum. Derived here.
    """
    if not 0 <= share_filled <= 1.5:
        raise InputError("share filled", "0 to 1.5", share_filled)
    end = AMBIENT_KPA - 998 * GRAVITY * liquid_head_mm / 1e6
    pressure, u = end * (1 - share_filled), end * share_uncertainty
    if pressure <= coverage * u:
        return ImpliedPressure(max(pressure, 0.0), u, max(pressure, 0.0) + coverage * u)
    return ImpliedPressure(pressure, u, None)


def diagnose_fill(system: str, volume_ml: float, volume_uncertainty_ml: float, expected_ml: float, expected_uncertainty_ml: float, holds: str) -> FillDiagnosis:
    """What a fill says about a pen of a filling system.

    Parameters
    ----------
    system : str
        A key of `pentools.calc.geometry.SYSTEMS`.
    volume_ml, volume_uncertainty_ml : float
        Volume drawn and its standard uncertainty [mL].
    expected_ml, expected_uncertainty_ml : float
        What it should hold and its standard uncertainty [mL].
    holds : str
        What the expected volume is, in words.

    Returns
    -------
    FillDiagnosis
        Share, first suspect, findings with reasons and next tests.

    Raises
    ------
    InputError
        If the system is not known or the expected volume is not above 0.

    Notes
    -----
    u(f) = f √((u_V/V)² + (u_E/E)²). Short means: more than two standard uncertainties below 1, and below 0.95, since
    section and feed always keep a little air (judged).
    """
    if system not in SYSTEMS:
        raise InputError("filling system", "one of " + ", ".join(SYSTEMS), system)
    if not expected_ml > 0:
        raise InputError("expected volume", "above 0 mL", expected_ml)
    family = SYSTEMS[system]
    share = volume_ml / expected_ml
    u = share * math.hypot(volume_uncertainty_ml / volume_ml if volume_ml else 0, expected_uncertainty_ml / expected_ml)
    found: list[Finding] = []
    suspect = ""
    if share > 1 + 2 * u and share > 1.05:
        found.append(Finding("warning", f"It draws more than {holds} ({100 * share:.0f} %). A dimension is wrong, or the pen was dry and its feed took the rest.", "more-than-full"))
    elif share < 1 - 2 * u and share < 0.95:
        suspects = SUSPECTS[family]
        suspect = suspects[0][0]
        found += [
            Finding("warning" if i == 0 else "note", f"{name[0].upper()}{name[1:]}: {why}. Next test: {test}.", f"suspect-{i + 1}")
            for i, (name, why, test) in enumerate(suspects)
        ]
    elif 1 - 2 * u <= 0.95:
        found.append(Finding("note", f"The share of {100 * share:.0f} % is known to ± {200 * u:.0f} points only: a loss smaller than that cannot be seen. Measure the dimensions better.", "share-uncertain"))
    else:
        found.append(Finding("ok", f"It fills: {100 * share:.0f} % of {holds}, as much as can be told.", "full"))
    implied = None
    if family == "plunger" and share <= 1.5:
        implied = implied_pressure(share, u)
        found.append(_vacuum_finding(implied))
    return FillDiagnosis(share, u, implied, suspect, tuple(found))


def _vacuum_finding(implied: ImpliedPressure) -> Finding:
    if implied.at_most_kpa is not None:
        return Finding("ok", f"If all of the rest were lost vacuum, it left at most {implied.at_most_kpa:.1f} kPa behind the washer: that cannot be told from a perfect stroke.", "vacuum-bound")
    value, spread = rounded_pair(implied.pressure_kpa, 2 * implied.standard_uncertainty_kpa)
    return Finding("note", f"If all of the rest is lost vacuum, {value} kPa ± {spread} of air was left behind the washer (ambient is 101 kPa). Short dwell, a blocked feed, a short stroke or a wrong bore look just the same.", "vacuum")
