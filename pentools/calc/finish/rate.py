"""How fast a bench takes stock off: learned from its own log, with an interval, and "not calibrated" until it knows."""

from __future__ import annotations

import math
import statistics
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import Component, combine
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.limits import Interval, Medium
from pentools.errors import InputError

__all__ = [
    "LogRow", "RateEstimate", "RateLine", "calibrate_rates", "estimate_rate", "rule_of_thumb_rate", "time_needed",
]  # fmt: skip

FEWEST_ROWS = 3
_ROWS_FOR_A_SLOPE = 5
_PRIOR_ROWS = 2.0  # the general line weighs as much as two rows of a grade
_LEAST_SPREAD = 0.05  # two stages by hand never repeat better than about 5 percent; judged
_EXPONENT = 0.5  # the middle of the published ones while none is fitted; its standard uncertainty is 1/√12
_THUMB_PER_MIN = 1 / 12  # see rule_of_thumb_rate


@dataclass(frozen=True, slots=True)
class LogRow:
    """One logged stage whose removal was measured.

    Parameters
    ----------
    material : str
        What was worked.
    grade : Grade
        With what.
    removed_um : float
        Stock removed a side [µm], above 0.
    amount : float
        Minutes or strokes, above 0.
    basis : {"min", "stroke"}
        Which of the two.
    wet, fresh : bool or None
        Wet or dry, fresh or used abrasive; None where it was not said.
    """

    material: str
    grade: Grade
    removed_um: float
    amount: float
    basis: str = "min"
    wet: bool | None = None
    fresh: bool | None = None


@dataclass(frozen=True, slots=True)
class RateLine:
    """What a bench's log says about one material.

    Parameters
    ----------
    material, basis : str
        What, and per minute or per stroke.
    rows : int
        How many logged stages it rests on.
    calibrated : bool
        Whether there are enough rows (three).
    coefficient, exponent : float
        Rate = coefficient · size^exponent [µm per minute or stroke, size in µm as in `estimate_rate`].
    spread_log : float
        Standard deviation of the logarithm of a single stage about the line.
    degrees_of_freedom : int
        Rows less what was fitted: two for a line, one for its height alone.
    exponent_u : float
        Standard uncertainty of the exponent.
    middle_log : float
        Mean logarithm of the sizes [µm] it rests on.
    grade_medians : tuple of (scale, name, log rate, rows)
        What each grade did.
    cut_shares : tuple of (medium, share)
        How each medium cuts against paper.
    finding : Finding
        Calibrated or not, in words.
    """

    material: str
    basis: str
    rows: int
    calibrated: bool
    coefficient: float
    exponent: float
    spread_log: float
    degrees_of_freedom: int
    exponent_u: float
    middle_log: float
    grade_medians: tuple[tuple[str, str, float, int], ...]
    cut_shares: tuple[tuple[str, float], ...]
    finding: Finding


@dataclass(frozen=True, slots=True)
class RateEstimate:
    """A rate to plan with.

    Parameters
    ----------
    rate : Interval
        Rate of the next single stage [µm per minute or stroke]: about 95 percent interval.
    calibrated : bool
        Whether it rests on the bench's own log.
    rows : int
        Rows of this very grade behind it.
    text : str
        How sure, in words.
    """

    rate: Interval
    calibrated: bool
    rows: int
    text: str


def calibrate_rates(
    rows: Sequence[LogRow], material: str, media: Mapping[str, Medium], *, basis: str = "min", wet: bool | None = None
) -> RateLine:
    """Learn the bench's rates for one material from its own log.

    Parameters
    ----------
    rows : sequence of LogRow
        The log; rows of other materials or another basis are passed over.
    material : str
        The material asked about.
    media : mapping of str to Medium
        How each medium cuts against paper.
    basis : {"min", "stroke"}
        Rate per minute or per stroke.
    wet : bool or None
        Only rows worked so; None for all.

    Returns
    -------
    RateLine
        A general line over size, and a median for each grade. Under three rows ``calibrated`` is False and the line
        holds no figures (0).

    Raises
    ------
    InputError
        If `basis` is something else, or a row that counts has a removal or an amount that is not above 0.

    Notes
    -----
    dh/dt = C dⁿ, after Preston's dh/dt = K p v with pressure and speed of the hand left in C. n is the median of
    the slopes between the grades' medians, held to 0-1 (published exponents lie between); 0.5, as uncertain as anything
    between 0 and 1, while there are fewer than five rows or one size only. Sizes are particle size times the medium's cut share. Only good for the hand, the medium and the pace that
    were logged.
    """
    if basis not in ("min", "stroke"):
        raise InputError("basis", "min or stroke", basis)
    shares = {name: medium.cut_share for name, medium in media.items()}
    used = [r for r in rows if r.material == material and r.basis == basis and (wet is None or r.wet is wet)]
    for row in used:
        if not (row.removed_um > 0 and row.amount > 0):
            raise InputError("logged stage", "a removal and a time above 0", (row.removed_um, row.amount))
    cut = tuple(shares.items())
    if len(used) < FEWEST_ROWS:
        few = Finding("note", "finish.not-calibrated:few", stages=len(used), needed=FEWEST_ROWS, material=material)
        return RateLine(material, basis, len(used), False, 0, 0, 0, 0, 0, 0, (), cut, few)
    groups: dict[tuple[str, str, float], list[float]] = {}
    for row in used:
        size = row.grade.particle_um * shares[row.grade.medium]
        groups.setdefault((row.grade.scale, row.grade.name, size), []).append(math.log(row.removed_um / row.amount))
    return _fitted(groups, (material, basis), cut)


def _fitted(
    groups: Mapping[tuple[str, str, float], list[float]], what: tuple[str, str], cut: tuple[tuple[str, float], ...]
) -> RateLine:
    """The line through the logarithms of the rates, its spread with the degrees of freedom it really has."""
    medians = {key: statistics.median(values) for key, values in groups.items()}
    points = [(math.log(key[2]), y) for key, values in groups.items() for y in values]
    slope = _slope([(math.log(key[2]), value) for key, value in medians.items()])
    sloped = slope is not None and len(points) >= _ROWS_FOR_A_SLOPE
    exponent = slope if slope is not None and sloped else _EXPONENT
    intercept = statistics.median(y - exponent * x for x, y in points)
    free = len(points) - (2 if sloped else 1)
    residual = math.fsum((y - intercept - exponent * x) ** 2 for x, y in points)
    spread = max(_LEAST_SPREAD, math.sqrt(residual / free))
    middle = statistics.fmean(x for x, _ in points)
    across = math.fsum((x - middle) ** 2 for x, _ in points)
    learned = Finding("ok", "finish.calibrated:line", material=what[0], stages=len(points), exponent=exponent)
    return RateLine(
        *what, len(points), True, math.exp(intercept), exponent, spread, free,
        spread / math.sqrt(across) if sloped else 1 / math.sqrt(12), middle,
        tuple((k[0], k[1], m, len(groups[k])) for k, m in medians.items()), cut, learned,
    )  # fmt: skip


def estimate_rate(line: RateLine, grade: Grade) -> RateEstimate:
    """The rate to expect of a grade: its median pulled towards the general line.

    Parameters
    ----------
    line : RateLine
        What the log says.
    grade : Grade
        The grade to plan with; it need not be in the log.

    Returns
    -------
    RateEstimate
        Rate with its interval; the rule of thumb, marked as such, where the line is not calibrated.

    Notes
    -----
    (m·median + 2·line) / (m + 2) on the logarithm, m rows of the grade. The interval is for one more stage: its own
    spread, that of the line's height over √rows, and the exponent's uncertainty times the distance from the middle of
    the logged sizes, put together as JCGM 100 does, with Student's t for the degrees of freedom there are. Simulated:
    93 to 99 percent of next stages lie inside, for 3 to 16 rows (`tests/calc/finish/test_rate.py`).
    """
    share = dict(line.cut_shares)[grade.medium]
    if not line.calibrated:
        return rule_of_thumb_rate(grade, share)
    size = grade.particle_um * share
    on_line = math.log(line.coefficient) + line.exponent * math.log(size)
    median, count = next(
        ((m, n) for scale, name, m, n in line.grade_medians if (scale, name) == (grade.scale, grade.name)), (on_line, 0)
    )
    centre = _shrunk(median, count, on_line)
    away, free = line.exponent_u * abs(math.log(size) - line.middle_log), line.degrees_of_freedom
    stage = line.spread_log * math.sqrt(1 + 1 / line.rows)
    parts = [Component("one more stage, and the line's height", stage, 1.0, free), Component("the exponent", away)]
    if free == line.rows - 2:  # a fitted exponent is as unsure as the same scatter makes it
        parts = [Component("one more stage, on a fitted line", math.hypot(stage, away), 1.0, free)]
    half = combine(parts).expanded_uncertainty
    text = (
        f"from {count} stages with this grade and {line.rows} in all"
        if count
        else f"from the general line of {line.rows} stages"
    )
    return RateEstimate(Interval(math.exp(centre - half), math.exp(centre), math.exp(centre + half)), True, count, text)


def rule_of_thumb_rate(grade: Grade, cut_share: float) -> RateEstimate:
    """A rate to start with when the log says nothing yet.

    Parameters
    ----------
    cut_share : float
        How its medium cuts against paper of the same particle, above 0 to 2.

    Returns
    -------
    RateEstimate
        A twelfth of the particle size a minute, with a factor of 3 either way; ``calibrated`` is False.

    Raises
    ------
    InputError
        If the cut share is outside its range.

    Notes
    -----
    Judged, not measured: no rate by hand on celluloid, casein or hard rubber was found anywhere. The figure is chosen so
    that a quarter of an hour clears what common practice gives a grade: gouges of 30 to 45 µm with P400 to P600, deep
    scratches with P800 to P1200, light ones from P1500.
    """
    if not 0 < cut_share <= 2:
        raise InputError("cut share", "above 0, to 2", cut_share)
    rate = _THUMB_PER_MIN * grade.particle_um * cut_share
    return RateEstimate(Interval(rate / 3, rate, rate * 3), False, 0, "rule of thumb, not calibrated")


def time_needed(depth_um: Interval, estimate: RateEstimate) -> Interval:
    """Time to take a depth off.

    Parameters
    ----------
    depth_um : Interval
        Depth a side [µm], 0 or more.
    estimate : RateEstimate
        The rate.

    Returns
    -------
    Interval
        Minutes, or strokes where the rate is per stroke.

    Raises
    ------
    InputError
        If the depth is below 0.
    """
    if depth_um.low < 0:
        raise InputError("depth", "0 µm or more", depth_um.low)
    rate = estimate.rate
    return Interval(depth_um.low / rate.high, depth_um.typical / rate.typical, depth_um.high / rate.low)


def _shrunk(median: float, rows: int, on_line: float) -> float:
    return (rows * median + _PRIOR_ROWS * on_line) / (rows + _PRIOR_ROWS)


def _slope(points: list[tuple[float, float]]) -> float | None:
    pairs = [(a, b) for i, a in enumerate(points) for b in points[i + 1 :] if abs(a[0] - b[0]) > 1e-9]
    if not pairs:
        return None
    return min(1.0, max(0.0, statistics.median((b[1] - a[1]) / (b[0] - a[0]) for a, b in pairs)))
