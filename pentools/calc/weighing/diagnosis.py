"""Why a pen draws less than is usual: the share filled, what it implies, the look-alikes, and the next test."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.weighing.expected import AMBIENT_KPA, ExpectedVolume
from pentools.calc.weighing.volumes import head_kpa
from pentools.errors import InputError
from pentools.words import Said

__all__ = [
    "FEED_KEEPS_ML",
    "Drawn",
    "FillDiagnosis",
    "ImpliedPressure",
    "Suspect",
    "UsualShare",
    "diagnose_fill",
    "implied_pressure",
]

FEED_KEEPS_ML = (0.0, 0.32)
"""What section and feed keep when a pen is drained [mL]: 0.25 to 0.32 in the three pens of one wiki that were
weighed; from nothing up to that is allowed, since a plain old feed keeps less."""


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
class UsualShare:
    """What a sound pen of a filling system draws, as a share of what its dimensions hold [1].

    Parameters
    ----------
    low, typical, high : float
        The ends of what is usual, and its middle.
    certainty : str
        How sure: "judged", or "measured here" once a bench has weighed its own.
    """

    low: float
    typical: float
    high: float
    certainty: str = "judged"


@dataclass(frozen=True, slots=True)
class Drawn:
    """What was drawn, and from which start.

    Parameters
    ----------
    volume_ml, standard_uncertainty_ml : float
        Volume and its standard uncertainty [mL].
    coverage : float
        Factor to the ± that is stated.
    start : str
        "dry" or "drained".
    told : bool
        Whether the gain can be told from nothing.
    """

    volume_ml: float
    standard_uncertainty_ml: float
    coverage: float = 2.0
    start: str = "dry"
    told: bool = True


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
    usual : UsualShare
        What is usual from this start [1]: what the feed keeps widens it.
    verdict : str
        ``short``, ``cannot tell``, ``as usual`` or ``more than full``.
    implied : ImpliedPressure or None
        For a plunger filler only, and only where something can be said.
    first_suspect : str
        The first part worth a look; empty unless the fill is short.
    findings : tuple of Finding
        Reasons and next tests.
    """

    share_filled: float
    share_uncertainty: float
    usual: UsualShare
    verdict: str
    implied: ImpliedPressure | None
    first_suspect: str
    findings: tuple[Finding, ...]


def implied_pressure(
    share_filled: float,
    share_uncertainty: float,
    liquid_head_mm: float = 60.0,
    ambient_kpa: float = AMBIENT_KPA,
    coverage: float = 2.0,
) -> ImpliedPressure | None:
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
        Factor used for the bounds.

    Returns
    -------
    ImpliedPressure or None
        Pressure [kPa] ±, or a bound where the share cannot be told from a perfect stroke; None where it cannot be told
        from no stroke at all.

    Raises
    ------
    InputError
        If the share is outside 0 to 1.5 or its uncertainty is negative.

    Notes
    -----
    p = (p_0 - rho g h)(1 - f), air that leaked in being the only loss; u(p) = (p_0 - rho g h) u(f). Above
    f = 1 - k u(f) only "at most" can be said of the pressure, "at least" of the vacuum; below f = k u(f) the pressure
    would reach the room's, and nothing is said. Isothermal. Every look-alike (short dwell, blocked feed, short stroke,
    wrong bore) reads as lost vacuum, and vapour, which a wet stroke always leaves (2.3 kPa at 20 °C), is not in it: it
    gives way to liquid. Derived here from the gas law.

    Examples
    --------
    >>> round(implied_pressure(0.90, 0.011).pressure_kpa, 1)
    10.1
    """
    if not 0 <= share_filled <= 1.5:
        raise InputError("share filled", "0 to 1.5", share_filled)
    if not share_uncertainty >= 0:
        raise InputError("uncertainty of the share", "zero or more", share_uncertainty)
    if share_filled <= coverage * share_uncertainty:
        return None
    end = ambient_kpa - head_kpa(liquid_head_mm)
    pressure, u = end * max(1 - share_filled, 0.0), end * share_uncertainty
    if pressure > coverage * u:
        return ImpliedPressure(pressure, u, None)
    at_most = pressure + coverage * u
    return ImpliedPressure(pressure, u, at_most) if at_most < end else None


def diagnose_fill(
    family: str,
    drawn: Drawn,
    expected: ExpectedVolume,
    usual: UsualShare,
    *,
    suspects: Sequence[Suspect] = (),
    kept_ml: tuple[float, float] | None = None,
    ambient_kpa: float = AMBIENT_KPA,
    liquid_head_mm: float = 60.0,
) -> FillDiagnosis:
    """What a fill says about a pen of a filling system.

    Parameters
    ----------
    family : str
        Key of the formula's family; a plunger's share implies a pressure.
    drawn : Drawn
        Volume drawn, and from which start.
    expected : ExpectedVolume
        What its dimensions hold.
    usual : UsualShare
        What a sound one draws of it.
    suspects : sequence of Suspect
        What makes this system draw too little, in the order in which it is worth a look.
    kept_ml : tuple of float or None
        Least and most that section and feed of this pen keep when drained [mL]; `FEED_KEEPS_ML` where not measured.
    ambient_kpa, liquid_head_mm : float
        Air pressure [kPa] and height the liquid is lifted [mm]; for a plunger filler.

    Returns
    -------
    FillDiagnosis
        Share, verdict, first suspect, findings with reasons and next tests.

    Raises
    ------
    InputError
        If the expected volume is not above 0, or the start is neither dry nor drained.

    Notes
    -----
    u(f) = √((u_V/E)² + (f u_E/E)²). From dry the feed takes its part besides, so up to that much more is usual; from
    drained it was full already, so up to that much less may be. "Short" is said only where f lies below the lower end
    so widened by more than k u(f), k being the factor of the stated ±; between that and the lower end of what is usual
    it cannot be told, and the next test is named.
    """
    holds, held = expected.holds, expected.volume_ml
    if not held > 0:
        raise InputError("expected volume", "above 0 mL", f"{held:g} mL")
    if drawn.start not in ("dry", "drained"):
        raise InputError("state before filling", "dry or drained", drawn.start)
    share = drawn.volume_ml / held
    u = math.hypot(drawn.standard_uncertainty_ml, share * expected.budget.standard_uncertainty) / held
    kept = (FEED_KEEPS_ML if kept_ml is None else kept_ml)[1] / held
    low, high = usual.low, max(usual.high, 1.0)
    low, high = (low, high + kept) if drawn.start == "dry" else (max(low - kept, 0.0), high)
    off = drawn.coverage * u
    verdict = _verdict(share, off, low, usual.low, high)
    unsure = off > usual.typical - usual.low
    said: dict[str, Said] = {"share": share, "points": 100 * off, "holds": holds, "least": low}
    said |= {"low": usual.low, "high": usual.high, "certainty": usual.certainty}
    feed = drawn.start == "drained" and kept_ml is None
    found = _findings(verdict, suspects, said, start=drawn.start, feed=feed)
    if unsure and verdict == "as usual":
        found.append(Finding("note", "weighing.share-uncertain", **said))
    implied = None
    if family == "plunger" and drawn.told and share <= 1.5:
        implied = implied_pressure(share, u, liquid_head_mm, ambient_kpa, drawn.coverage)
        if implied is not None:
            found.append(_vacuum_finding(implied, ambient_kpa, drawn.coverage))
    first = suspects[0].name if verdict == "short" and suspects else ""
    widened = UsualShare(low, usual.typical, high, usual.certainty)
    return FillDiagnosis(share, u, widened, verdict, implied, first, tuple(found))


def _verdict(share: float, off: float, least: float, low: float, high: float) -> str:
    if share + off < least:
        return "short"
    if share - off > high:
        return "more than full"
    return "cannot tell" if share < low else "as usual"


def _findings(
    verdict: str, suspects: Sequence[Suspect], said: Mapping[str, Said], *, start: str, feed: bool
) -> list[Finding]:
    match verdict:
        case "short":
            told = [
                Finding(
                    "note" if place else "warning",
                    f"weighing.suspect-{s.key}",
                    name=s.name,
                    why=s.why,
                    test=s.next_test,
                )
                for place, s in enumerate(suspects)
            ]
            return [Finding("warning", "weighing.short", **said), *told]
        case "more than full":
            return [Finding("warning", "weighing.more-than-full", start=start, **said)]
        case "cannot tell":
            return [Finding("note", "weighing.share-cannot-tell", feed=feed, **said)]
    return [Finding("ok", "weighing.full", **said)]


def _vacuum_finding(implied: ImpliedPressure, ambient_kpa: float, coverage: float) -> Finding:
    if implied.at_most_kpa is not None:
        return Finding(
            "ok", "weighing.vacuum-bound", at_most=implied.at_most_kpa, vacuum=ambient_kpa - implied.at_most_kpa
        )
    off = coverage * implied.standard_uncertainty_kpa
    return Finding("note", "weighing.vacuum", pressure=implied.pressure_kpa, doubt=off, ambient=ambient_kpa)
