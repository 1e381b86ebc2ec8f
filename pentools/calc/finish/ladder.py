"""A ladder of grades judged step by step, and the time and stock that its ratios cost."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.limits import Interval, Medium
from pentools.errors import InputError

__all__ = [
    "LadderCheck",
    "LadderStep",
    "check_ladder",
    "goes_coarser",
    "interval_stock_um",
    "optimal_ratio",
    "stock_plan_um",
    "time_penalty",
]

JUDGED_BY = ("both", "particle", "finish")


@dataclass(frozen=True, slots=True)
class LadderStep:
    """One step down a ladder.

    Parameters
    ----------
    before, after : Grade
        The two grades.
    particle_ratio, finish_ratio : float
        Size before over size after.
    coarser : bool
        Whether the step does not go finer.
    in_band : bool
        Whether the finish ratio is inside the band of the grade stepped to.
    """

    before: Grade
    after: Grade
    particle_ratio: float
    finish_ratio: float
    coarser: bool
    in_band: bool


@dataclass(frozen=True, slots=True)
class LadderCheck:
    """What a ladder is worth.

    Parameters
    ----------
    steps : tuple of LadderStep
        One for each pair of neighbours whose sizes are both known.
    monotonic : bool
        Whether every step goes finer.
    largest_particle_ratio, largest_finish_ratio : float or None
        The largest ratio among the steps; None for fewer than two known grades.
    findings : tuple of Finding
        A stop for each step that goes coarser, a warning or note for each outside its band.
    """

    steps: tuple[LadderStep, ...]
    monotonic: bool
    largest_particle_ratio: float | None
    largest_finish_ratio: float | None
    findings: tuple[Finding, ...]


def goes_coarser(before: Grade, after: Grade, *, judged_by: str = "both") -> Finding | None:
    """Whether a step fails to go finer, and why that matters.

    Parameters
    ----------
    before, after : Grade
        The grade just used and the one to use next.
    judged_by : {"both", "particle", "finish"}
        Which size must get smaller.

    Returns
    -------
    Finding or None
        A stop with the two sizes and, for cushioned cloth, what the trade does; None where the step goes finer.

    Raises
    ------
    InputError
        If `judged_by` is something else.
    """
    if judged_by not in JUDGED_BY:
        raise InputError("judged by", "one of " + ", ".join(JUDGED_BY), judged_by)
    by_particle = after.particle_um >= before.particle_um
    by_finish = after.finish_um >= before.finish_um
    if not ((by_particle and judged_by != "finish") or (by_finish and judged_by != "particle")):
        return None
    size = "particle" if by_particle and judged_by != "finish" else "finish"
    first, second = (getattr(grade, f"{size}_um") for grade in (before, after))
    word = "does not go finer" if first == second else "goes coarser"
    text = f"{before.label} to {after.label} {word} by {size}: {first:g} µm to {second:g} µm."
    if by_particle and not by_finish and before.soft_backed and not after.soft_backed:
        text += (
            f" By the scratch it leaves it is finer, {before.finish_um:g} µm to {after.finish_um:g} µm, if the cloth's finish"
            " figure holds; on a hard backing the same grain cuts deeper, so try it where it does not show."
        )
    elif by_particle and not by_finish and after.soft_backed:
        text += (
            f" By the scratch it leaves it is finer, {before.finish_um:g} µm to {after.finish_um:g} µm, because a soft"
            " backing lets the grain sink in. The trade steps from plain paper to such cloth all the same and works it"
            " until the paper's lines are gone; a single grain pressed hard can still cut deeper than the paper did. Start"
            " the cloth at a grade with the smaller grain, or judge this ladder by finish if your cloth has proved it."
        )
    elif by_finish and not by_particle:
        text += (
            f" The grain is finer, {before.particle_um:g} µm to {after.particle_um:g} µm, but the scratch left is not."
        )
    else:
        text += " It puts scratches back that the step before took out."
    return Finding("stop", text, "goes-coarser")


def check_ladder(
    grades: Sequence[Grade | None], media: Mapping[str, Medium], *, judged_by: str = "both"
) -> LadderCheck:
    """Judge a published or an edited ladder.

    Parameters
    ----------
    grades : sequence of Grade or None
        The grades in the order of use; None for a step of unknown size, which is passed over.
    media : mapping of str to Medium
        Bands of the ratio, by medium.
    judged_by : {"both", "particle", "finish"}
        Which size must get smaller at each step.

    Returns
    -------
    LadderCheck
        Steps, ratios and findings.

    Raises
    ------
    InputError
        If `judged_by` is something else.

    Notes
    -----
    A ratio needs two neighbours of known size; whether the ladder goes finer is asked across unknown steps too.
    """
    steps, findings = [], []
    monotonic = True
    known: Grade | None = None
    for place, after in enumerate(grades):
        if after is None:
            continue
        if known is not None:
            stop = goes_coarser(known, after, judged_by=judged_by)
            monotonic = monotonic and stop is None
            band = media[after.medium]
            finish_ratio = known.finish_um / after.finish_um
            step = LadderStep(
                known, after, known.particle_um / after.particle_um, finish_ratio, stop is not None,
                band.ratio_low <= finish_ratio <= band.ratio_high,
            )  # fmt: skip
            findings += [stop] if stop else _band_findings(step, band)
            if grades[place - 1] is not None:
                steps.append(step)
        known = after
    return LadderCheck(
        tuple(steps), monotonic, max((s.particle_ratio for s in steps), default=None),
        max((s.finish_ratio for s in steps), default=None), tuple(findings),
    )  # fmt: skip


def stock_plan_um(
    defect_um: float, sizes_um: Sequence[float], *, scratch_share: float, stock_factor: float = 2.0
) -> tuple[float, ...]:
    """Stock to take at each stage of a ladder.

    Parameters
    ----------
    defect_um : float
        Depth to take out with the first grade [µm], 0 to 1000.
    sizes_um : sequence of float
        Finish size of each grade in order of use [µm], above 0.
    scratch_share : float
        k: depth of a grade's scratch over its size, 0.001 to 5.
    stock_factor : float
        s: how many times the scratch depth of the stage before is taken, 1 to 5.

    Returns
    -------
    tuple of float
        One figure for each grade [µm a side]: the defect, then s·k·d of the grade before.

    Raises
    ------
    InputError
        If a figure is outside its range or there is no grade.

    Notes
    -----
    h_1 = defect; h_i = s k d_(i-1). Good for ductile surfaces (k near 0.05 in metal, 0.10 to 0.15 in plastics and
    hard rubber, the latter uncertain); for brittle matter k is 2 to 3 and the sum is of no use on a pen.

    Examples
    --------
    >>> [round(h, 2) for h in stock_plan_um(20, [25.8, 15.3, 9, 5, 3, 2], scratch_share=0.10)]
    [20.0, 5.16, 3.06, 1.8, 1.0, 0.6]
    """
    if not 0 <= defect_um <= 1000:
        raise InputError("defect", "0 to 1000 µm deep", defect_um)
    if not 0.001 <= scratch_share <= 5:
        raise InputError("scratch share", "0.001 to 5", scratch_share)
    if not 1 <= stock_factor <= 5:
        raise InputError("stock factor", "1 to 5", stock_factor)
    if not sizes_um or min(sizes_um) <= 0:
        raise InputError("grade sizes", "at least one, above 0 µm", list(sizes_um))
    return (float(defect_um), *(stock_factor * scratch_share * size for size in sizes_um[:-1]))


def optimal_ratio(changeover: float = 0.0) -> float:
    """The step ratio that makes a whole ladder quickest.

    Parameters
    ----------
    changeover : float
        What changing grades costs (washing, looking), in units of a stage at ratio 1; 0 to 100.

    Returns
    -------
    float
        The ratio; e = 2.718 where changing costs nothing.

    Raises
    ------
    InputError
        If the cost is outside 0 to 100.

    Notes
    -----
    A stage takes time in proportion to d_before / d_after, and ln D / ln r stages are needed, so (r + c) / ln r is
    least where ln r = 1 + c / r. Good where the rate goes with the grain; derived here. Smaller ratios buy safety.

    Examples
    --------
    >>> round(optimal_ratio(), 3), round(optimal_ratio(1), 3)
    (2.718, 3.591)
    """
    if not 0 <= changeover <= 100:
        raise InputError("change-over cost", "0 to 100 stage units", changeover)
    ratio = math.e
    for _ in range(60):
        slope = 1 / ratio + changeover / ratio**2
        ratio -= (math.log(ratio) - 1 - changeover / ratio) / slope
    return ratio


def time_penalty(ratio: float, changeover: float = 0.0) -> float:
    """How much longer a ladder of one ratio takes than the quickest one.

    Parameters
    ----------
    ratio : float
        Step ratio, above 1 to 100.
    changeover : float
        As in `optimal_ratio`.

    Returns
    -------
    float
        Time over the least time; 1 at the optimum.

    Raises
    ------
    InputError
        If the ratio is not above 1 or above 100.

    Notes
    -----
    ((r + c) / ln r) over its least value; the model of `optimal_ratio`.

    Examples
    --------
    >>> round(time_penalty(1.65), 3)
    1.212
    """
    if not 1 < ratio <= 100:
        raise InputError("step ratio", "above 1, to 100", ratio)
    best = optimal_ratio(changeover)
    return (ratio + changeover) / math.log(ratio) / ((best + changeover) / math.log(best))


def _band_findings(step: LadderStep, band: Medium) -> list[Finding]:
    pair = f"{step.before.label} to {step.after.label}"
    if step.in_band:
        return []
    if step.finish_ratio > band.ratio_high:
        text = (
            f"{pair} is a step of {step.finish_ratio:.2g} times; {band.name} is trusted to {band.ratio_high:g}."
            " The old scratches take long to go and are easily left: put a grade between, or work it much longer."
        )
        return [Finding("warning", text, "step-too-large")]
    text = f"{pair} is a step of only {step.finish_ratio:.2f} times: it does little that the next grade would not do."
    return [Finding("note", text, "step-small")]


def interval_stock_um(
    defect_um: Interval, grades: Sequence[Grade], scratch_share: Interval, stock_factor: float
) -> tuple[Interval, ...]:
    """Stock at each stage with the interval of defect, scratch share and grade size carried along.

    Parameters
    ----------
    defect_um : Interval
        Depth of the defect [µm].
    grades : sequence of Grade
        The ladder in order of use.
    scratch_share : Interval
        k with its interval.
    stock_factor : float
        s, 1 to 5.

    Returns
    -------
    tuple of Interval
        One for each grade [µm a side].
    """
    low, typical, high = (
        stock_plan_um(
            getattr(defect_um, end),
            [getattr(grade, size) for grade in grades],
            scratch_share=getattr(scratch_share, end),
            stock_factor=stock_factor,
        )
        for end, size in (("low", "finish_low_um"), ("typical", "finish_um"), ("high", "finish_high_um"))
    )
    return tuple(Interval(*three) for three in zip(low, typical, high, strict=True))
