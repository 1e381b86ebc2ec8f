"""How much a pen draws where the empty pen was tared away and the balance shows the gain, dip after dip."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import Component, decision_factor, from_half_width
from pentools.calc.weighing.capacity import CapacityResult, volume_of_gain
from pentools.calc.weighing.setting import Setting
from pentools.errors import InputError

__all__ = ["MOST_G", "DippedResult", "capacity_from_gain"]

MOST_G = 20.0


@dataclass(frozen=True, slots=True)
class DippedResult:
    """What the pen draws, and how it filled from dip to dip.

    Parameters
    ----------
    drawn : CapacityResult
        What it holds after the last dip.
    volumes_ml : tuple of float
        Volume in the pen after each dip [mL].
    step_uncertainty_ml : float
        Standard uncertainty of what one dip adds [mL].
    """

    drawn: CapacityResult
    volumes_ml: tuple[float, ...]
    step_uncertainty_ml: float


def capacity_from_gain(gains_g: Sequence[float], setting: Setting) -> DippedResult:
    """Volume drawn, from the gains that a balance shows after each dip, tared with the empty pen on it.

    Parameters
    ----------
    gains_g : sequence of float
        What the balance shows after the first dip, the second, and so on, the pen not emptied between [g], 0 to 20.
    setting : Setting
        Balance, room, liquid, handling, and the pen before the first dip.

    Returns
    -------
    DippedResult
        Volume after the last dip [mL] with its budget, the volumes on the way, and findings.

    Raises
    ------
    InputError
        If there is no gain or one is out of range.

    Notes
    -----
    One gain carries two roundings, the tare's and the reading's, d/√12 each, where two masses carry four; the pen lies
    on the pan twice, so repeatability, linearity and eccentric loading count twice as they do for two masses. A dip
    is said to have added something when its step is above its one-sided 95 % limit (`decision_factor`); a step has
    two roundings, two placings and two drops, and nothing of linearity, which its two loads share. Sources: JCGM
    100:2008; the drop as in `Handling`.

    Examples
    --------
    >>> dipped = capacity_from_gain([0.18, 0.31, 1.20], Setting())
    >>> round(dipped.drawn.volume_ml, 3), [round(v, 2) for v in dipped.volumes_ml]
    (1.19, [0.17, 0.3, 1.19])
    """
    if not gains_g:
        raise InputError("gain", "one or more readings", "", "Type it like 0.18 g; 0.31 g; 1.20 g.")
    for gain in gains_g:
        if not 0 <= gain <= MOST_G:
            raise InputError("gain", f"0 to {MOST_G:g} g", f"{gain:g} g", "Was the balance tared with the pen on it?")
    balance = setting.balance
    placed = math.sqrt(2)
    drawn = volume_of_gain(
        gains_g[-1],
        (
            Component("readability, the tare and the reading", placed * balance.rounding_g, kind="instrument limit"),
            Component("repeatability, tared and read", placed * balance.spread_g, kind="instrument limit"),
            Component(
                "linearity, counted twice", placed * from_half_width(balance.linearity_g), kind="instrument limit"
            ),
            Component(
                "eccentric loading, two weighings",
                placed * from_half_width(balance.eccentricity_g),
                kind="instrument limit",
            ),
        ),
        setting,
    )
    z = drawn.z_ml_per_g
    step = placed * math.hypot(balance.rounding_g, balance.spread_g, setting.handling.drop()[1]) * z
    volumes = tuple((gain + drawn.correction_g) * z for gain in gains_g)
    findings = (*drawn.findings, _dips(volumes, decision_factor(math.inf) * step))
    return DippedResult(replace(drawn, findings=findings), volumes, step)


def _dips(volumes_ml: Sequence[float], told_ml: float) -> Finding:
    """Whether the last dip still added something."""
    dips = len(volumes_ml)
    if dips == 1:
        return Finding("note", "weighing.one-dip")
    fallen = next((n for n in range(1, dips) if volumes_ml[n - 1] - volumes_ml[n] > told_ml), None)
    if fallen is not None:
        return Finding("warning", "weighing.dip-fell", dip=fallen + 1, lost=volumes_ml[fallen - 1] - volumes_ml[fallen])
    added = volumes_ml[-1] - volumes_ml[-2]
    if added > told_ml:
        return Finding("warning", "weighing.dip-rising", dips=dips, added=added)
    return Finding("ok", "weighing.dip-full", dips=dips, told=told_ml)
