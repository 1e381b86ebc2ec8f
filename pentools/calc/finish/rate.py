"""How fast a bench takes stock off: learned from its own log, with an interval, and "not calibrated" until it knows."""

from __future__ import annotations

import math
import statistics
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.limits import Interval, Medium
from pentools.errors import InputError

__all__ = [
    "LogRow", "RateEstimate", "RateLine", "calibrate_rates", "estimate_rate", "rule_of_thumb_rate", "time_needed",
]  # fmt: skip

FEWEST_ROWS = 3
_PRIOR_ROWS = 2.0  # the general line weighs as much as two rows of a grade
_LEAST_SPREAD = 0.15  # two stages by hand never repeat better than about 15 percent; judged
_THUMB_PER_MIN = 1 / 12  # see rule_of_thumb_rate
_STUDENT_95 = {3: 4.30, 4: 3.18, 5: 2.78, 6: 2.57, 7: 2.45, 8: 2.36, 9: 2.31, 10: 2.26}


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
        Standard deviation of the logarithm of a single stage about its estimate.
    size_low_um, size_high_um : float
        Range of sizes it rests on [µm].
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
    size_low_um: float
    size_high_um: float
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
    the slopes between the grades' medians, held to 0-1 (published exponents lie between); 0.5 where one size only was
    used. Sizes are particle size times the medium's cut share. Only good for the hand, the medium and the pace that
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
        text = f"Not calibrated: {len(used)} of {FEWEST_ROWS} measured stages on {material} so far. Weigh or measure before and after."
        return RateLine(
            material, basis, len(used), False, 0, 0, 0, 0, 0, (), cut, Finding("note", text, "not-calibrated")
        )
    groups: dict[tuple[str, str, float], list[float]] = {}
    for row in used:
        size = row.grade.particle_um * shares[row.grade.medium]
        groups.setdefault((row.grade.scale, row.grade.name, size), []).append(math.log(row.removed_um / row.amount))
    medians = {key: statistics.median(values) for key, values in groups.items()}
    exponent = _slope([(math.log(key[2]), value) for key, value in medians.items()])
    intercept = statistics.median(y - exponent * math.log(key[2]) for key, ys in groups.items() for y in ys)
    residuals = []
    for key, values in groups.items():
        estimate = _shrunk(medians[key], len(values), intercept + exponent * math.log(key[2]))
        residuals += [value - estimate for value in values]
    spread = max(_LEAST_SPREAD, math.sqrt(sum(r * r for r in residuals) / (len(residuals) - 1)))
    sizes = [key[2] for key in groups]
    text = (
        f"Calibrated for {material} from {len(used)} measured stages: rate goes with size to the power {exponent:.1f}."
    )
    return RateLine(
        material, basis, len(used), True, math.exp(intercept), exponent, spread, min(sizes), max(sizes),
        tuple((k[0], k[1], m, len(groups[k])) for k, m in medians.items()), cut, Finding("ok", text, "calibrated"),
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
    (m·median + 2·line) / (m + 2) on the logarithm, m rows of the grade. The interval is for one more stage: Student's
    t for the rows there are, times the spread, times √(1 + 1/(m + 2)); beyond the logged sizes it widens as if the
    exponent were uncertain by 0.5.
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
    beyond = max(math.log(size / line.size_high_um), math.log(line.size_low_um / size), 0.0)
    half = _STUDENT_95.get(line.rows, 2.0) * line.spread_log * math.sqrt(1 + 1 / (count + _PRIOR_ROWS)) + 0.5 * beyond
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
    grade : Grade
        The grade.
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


def _slope(points: list[tuple[float, float]]) -> float:
    pairs = [(a, b) for i, a in enumerate(points) for b in points[i + 1 :] if abs(a[0] - b[0]) > 1e-9]
    if not pairs:
        return 0.5
    return min(1.0, max(0.0, statistics.median((b[1] - a[1]) / (b[0] - a[0]) for a, b in pairs)))
