"""Does the seal hold: readings of a vacuum's decay and of the half-stroke test, each with what it can tell."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.base.findings import Finding, Level
from pentools.calc.seal.friction import ATMOSPHERE_KPA, suction_force_n
from pentools.calc.weighing.leak import vacuum_decay_pa_m3_s
from pentools.errors import InputError

__all__ = ["SpringBack", "VacuumDecay", "spring_back", "vacuum_decay"]

TIGHT_MINUTES = 10.0
LEAK_MINUTES = 1.0
RETURNED, NOT_RETURNED = 0.8, 0.1
_LEVELS: dict[str, Level] = {"returns": "ok", "part": "note", "none": "warning"}


@dataclass(frozen=True, slots=True)
class VacuumDecay:
    """How fast a vacuum is lost.

    Parameters
    ----------
    leak_pa_m3_s : float
        Leak Q = V dP/dt [Pa m³/s].
    leak_uncertainty_pa_m3_s : float
        Its standard uncertainty from the gauge's readings [Pa m³/s].
    leak_ml_per_min : float
        The same as air at room pressure [mL/min].
    half_life_min : float or None
        Time in which half the vacuum is lost [min]; None where no loss is seen.
    verdict : {"holds", "slow", "decays", "not told"}
        In a word.
    findings : tuple of Finding
        What it means.
    """

    leak_pa_m3_s: float
    leak_uncertainty_pa_m3_s: float
    leak_ml_per_min: float
    half_life_min: float | None
    verdict: str
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class SpringBack:
    """What a half-stroke test says.

    Parameters
    ----------
    share : float
        Part of the pushed way that came back [1].
    can_return : bool or None
        Whether this drag lets a tight seal come back; None where the drag was not given.
    verdict : {"returns", "part", "none"}
        In a word.
    findings : tuple of Finding
        What it means.
    """

    share: float
    can_return: bool | None
    verdict: str
    findings: tuple[Finding, ...]


def vacuum_decay(
    volume_ml: float, start_kpa: float, end_kpa: float, seconds: float, *, gauge_kpa: float = 1.0
) -> VacuumDecay:
    """Judge a vacuum that was drawn and watched.

    Parameters
    ----------
    volume_ml : float
        Volume of pen, hose and gauge together [mL], above 0.
    start_kpa, end_kpa : float
        Vacuum at the start and at the end, below room pressure [kPa]: 0 to 101, the start above 0.
    seconds : float
        Time between [s], above 0.
    gauge_kpa : float
        Standard uncertainty of one reading of the gauge [kPa], above 0.

    Returns
    -------
    VacuumDecay
        Leak with its uncertainty, half-life, verdict.

    Raises
    ------
    InputError
        If a value is out of range or the vacuum grew by more than the gauge can be wrong.

    Notes
    -----
    Q = V dP/dt (fixed volume, even temperature, small change). Half-life from an exponential between the two
    readings. "Holds" above 10 minutes and "decays" below 1 minute of half-life are judged. A loss within twice its
    uncertainty is not called a leak. A leak of air is not a leak of ink.

    Examples
    --------
    >>> f"{vacuum_decay(1.9, 30.0, 28.0, 60.0, gauge_kpa=0.2).leak_pa_m3_s:.2e}"
    '6.33e-05'
    """
    for name, value in (("vacuum at the start", start_kpa), ("vacuum at the end", end_kpa)):
        if not 0 <= value <= ATMOSPHERE_KPA:
            raise InputError(name, "0 to 101 kPa below room pressure", f"{value:g} kPa")
    if not start_kpa > 0 or not gauge_kpa > 0:
        raise InputError("vacuum at the start and gauge", "above 0 kPa", f"{start_kpa:g} and {gauge_kpa:g} kPa")
    loss = start_kpa - end_kpa
    u_loss = math.sqrt(2) * gauge_kpa
    if loss < -2 * u_loss:
        raise InputError(
            "vacuum at the end",
            f"at most {start_kpa:g} kPa, as at the start",
            f"{end_kpa:g} kPa",
            "Were the two mixed up?",
        )
    leak = vacuum_decay_pa_m3_s(volume_ml, loss, seconds)
    u = vacuum_decay_pa_m3_s(volume_ml, u_loss, seconds)
    half = None
    if loss > 0:
        half = (
            math.inf if end_kpa >= start_kpa else math.log(2) * seconds / 60 / math.log(start_kpa / max(end_kpa, 1e-6))
        )
    verdict, finding = _decay_verdict(loss, u_loss, start_kpa, seconds, half)
    ml_per_min = leak / (ATMOSPHERE_KPA * 1000) * 1e6 * 60
    return VacuumDecay(leak, u, ml_per_min, half, verdict, (finding,))


def _decay_verdict(loss: float, u_loss: float, start: float, seconds: float, half: float | None) -> tuple[str, Finding]:
    if loss <= 2 * u_loss or half is None:
        slowest = math.log(2) * seconds / 60 / -math.log(max(1 - 2 * u_loss / start, 1e-9))
        if slowest < TIGHT_MINUTES:
            return "not told", Finding("note", "seal.not-told:wait", slowest=slowest)
        return "holds", Finding("ok", "seal.holds:none", slowest=slowest)
    if half >= TIGHT_MINUTES:
        return "holds", Finding("ok", "seal.holds:long", half=half)
    if half >= LEAK_MINUTES:
        return "slow", Finding("note", "seal.slow", half=half)
    return "decays", Finding("warning", "seal.decays", seconds=60 * half)


def spring_back(
    pushed_mm: float,
    returned_mm: float,
    *,
    bore_mm: float | None = None,
    drag_n: float | None = None,
    rod_mm: float = 0.0,
) -> SpringBack:
    """Judge a plunger that was pushed part of its way with the nib free, and let go.

    Parameters
    ----------
    pushed_mm : float
        Way it was pushed [mm], 2 to 80.
    returned_mm : float
        Way it came back by itself [mm], 0 to the way pushed.
    bore_mm : float or None
        Bore [mm], for what drag allows.
    drag_n : float or None
        Running friction measured or estimated [N].
    rod_mm : float
        Rod [mm], which the room's pressure does not push on.

    Returns
    -------
    SpringBack
        Share returned, verdict.

    Raises
    ------
    InputError
        If a length is out of range.

    Notes
    -----
    A good seal pushes the rod back (a page on plunger fillers): the space behind the head grows from nearly nothing,
    so it is nearly empty, and the room's air in front pushes the head back with p0 (A - a), A the bore and a the rod.
    Where the drag is above that it cannot come back at all; where it is below, it comes back until what little air is
    behind the head is pressed together. "Returns" from 80 %, "none" below 10 %: judged. Head and packing are tested
    together.

    Examples
    --------
    >>> spring_back(30, 28).verdict
    'returns'
    """
    if not 2 <= pushed_mm <= 80:
        raise InputError("way pushed", "2 to 80 mm", f"{pushed_mm:g} mm")
    if not 0 <= returned_mm <= pushed_mm:
        raise InputError("way returned", f"0 to {pushed_mm:g} mm", f"{returned_mm:g} mm")
    share = returned_mm / pushed_mm
    verdict = "returns" if share >= RETURNED else "none" if share < NOT_RETURNED else "part"
    can_return = None
    findings = []
    if bore_mm is not None and drag_n is not None:
        pull = suction_force_n(bore_mm, rod_mm=rod_mm)
        can_return = drag_n < pull
        if not can_return:
            findings.append(Finding("note", "seal.stiff", drag=drag_n, pull=pull))
    level = _LEVELS[verdict]
    return SpringBack(
        share, can_return, verdict, (Finding(level, f"seal.spring-back:{verdict}", share=share), *findings)
    )
