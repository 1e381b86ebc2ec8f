"""A log of heatings read back: what was measured against the limit, what moved, and when to stop."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding, gravest_first
from pentools.errors import InputError

__all__ = ["HeatLog", "HeatPass", "read_heat_log"]


@dataclass(frozen=True, slots=True)
class HeatPass:
    """One heating.

    Parameters
    ----------
    surface_c : float or None
        Highest temperature measured at the part's surface [°C]; None where it was not measured.
    moved : str
        What moved, in words; empty for nothing.
    broke : str
        What broke or changed, in words; empty for nothing.
    free : bool
        Whether the joint came free.
    """

    surface_c: float | None
    moved: str = ""
    broke: str = ""
    free: bool = False


@dataclass(frozen=True, slots=True)
class HeatLog:
    """What a log of heatings says.

    Parameters
    ----------
    passes : int
        How many heatings.
    hottest_c : float or None
        Highest temperature measured [°C]; None where none was.
    over_limit : tuple of int
        Heatings above the limit, counted from 1.
    not_measured : tuple of int
        Heatings without a measured temperature, counted from 1.
    left : int
        Heatings left before the stop count.
    stop : bool
        Whether to stop now.
    findings : tuple of Finding
        What to make of it.
    """

    passes: int
    hottest_c: float | None
    over_limit: tuple[int, ...]
    not_measured: tuple[int, ...]
    left: int
    stop: bool
    findings: tuple[Finding, ...]


def read_heat_log(
    passes: Sequence[HeatPass],
    limit_c: float | None,
    *,
    stop_after: int = 5,
    largest_step_c: float = 25.0,
    thermometer_c: float = 2.0,
    nitrate: bool = False,
) -> HeatLog:
    """What a log of heatings says.

    Parameters
    ----------
    passes : sequence of HeatPass
        The heatings in order.
    limit_c : float or None
        The body's limit at its surface [°C], 30 to 150; None where it is never warmed.
    stop_after : int
        Heatings after which to stop for this session, 1 to 50.
    largest_step_c : float
        Largest rise from one heating to the next [°C], above 0.
    thermometer_c : float
        How far the thermometer may be off [°C], 0 to 20.
    nitrate : bool
        Whether the body is cellulose nitrate, which loses plasticiser at each heating.

    Returns
    -------
    HeatLog
        Count, hottest, heatings over the limit, and findings.

    Raises
    ------
    InputError
        If a figure is out of its range.

    Notes
    -----
    A heating counts as over the limit when its reading is above it; within the thermometer's error below the
    limit it is warned of. The stop count is judged; the largest step is from a repairer's page.

    Examples
    --------
    >>> read_heat_log([HeatPass(52), HeatPass(63)], 60).over_limit
    (2,)
    """
    _check_log(limit_c, stop_after, largest_step_c, thermometer_c)
    measured = [(i, p.surface_c) for i, p in enumerate(passes, 1) if p.surface_c is not None]
    over = tuple(i for i, t in measured if limit_c is not None and t > limit_c)
    blind = tuple(i for i, p in enumerate(passes, 1) if p.surface_c is None)
    left = max(stop_after - len(passes), 0)
    near = [i for i, t in measured if limit_c is not None and limit_c - thermometer_c < t <= limit_c]
    steps = [j for (_, first), (j, then) in itertools.pairwise(measured) if then - first > largest_step_c]
    advice = list(_stops(passes, limit_c, over, left))
    if near:
        advice.append(Finding("warning", "treatment.near-limit", heatings=_listed(near), within=thermometer_c))
    if blind:
        advice.append(Finding("warning", "treatment.not-measured", heatings=_listed(blind)))
    if steps:
        advice.append(Finding("warning", "treatment.step", heatings=_listed(steps), most=largest_step_c))
    if nitrate and passes:
        advice.append(Finding("note", "treatment.plasticiser", count=len(passes)))
    hottest = max((t for _, t in measured), default=None)
    stop = any(f.level == "stop" for f in advice)
    return HeatLog(len(passes), hottest, over, blind, left, stop, gravest_first(advice))


def _stops(passes: Sequence[HeatPass], limit_c: float | None, over: Sequence[int], left: int) -> Iterator[Finding]:
    if limit_c is None and passes:
        yield Finding("stop", "treatment.no-heat")
    if over:
        yield Finding("stop", "treatment.over-limit", heatings=_listed(over), limit=limit_c)
    broke = next((p.broke for p in passes if p.broke), "")
    if broke:
        yield Finding("stop", "treatment.broke", broke=broke)
    if passes and passes[-1].free:
        yield Finding("ok", "treatment.free", heating=len(passes))
    elif left == 0:
        yield Finding("stop", "treatment.count", count=len(passes))


def _listed(numbers: Sequence[int]) -> str:
    return ", ".join(str(n) for n in numbers)


def _check_log(limit_c: float | None, stop_after: int, largest_step_c: float, thermometer_c: float) -> None:
    if limit_c is not None and not 30 <= limit_c <= 150:
        raise InputError("limit", "30 to 150 °C", limit_c)
    if not 1 <= stop_after <= 50:
        raise InputError("stop count", "1 to 50", stop_after)
    if not largest_step_c > 0:
        raise InputError("largest step", "above 0 °C", largest_step_c)
    if not 0 <= thermometer_c <= 20:
        raise InputError("thermometer error", "0 to 20 °C", thermometer_c)
