"""A ladder of grades: judged step by step, found among the owned ones, and the stock that its steps take."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.limits import Interval, Medium
from pentools.errors import InputError

__all__ = [
    "GradePaths",
    "LadderCheck",
    "LadderStep",
    "check_ladder",
    "find_paths",
    "goes_coarser",
    "interval_stock_um",
    "stock_plan_um",
]

JUDGED_BY = ("both", "particle", "finish")
_Cost = tuple[float, float, float, float]
_NOTHING: _Cost = (0.0, 0.0, 0.0, 0.0)


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


@dataclass(frozen=True, slots=True)
class GradePaths:
    """The best ladder from every owned grade.

    Parameters
    ----------
    grades : tuple of Grade
        The owned grades, coarsest finish first.
    following : tuple of int or None
        Place of the grade that follows each in its best ladder; None where the ladder ends.
    """

    grades: tuple[Grade, ...]
    following: tuple[int | None, ...]

    def ladder_from(self, start: Grade) -> tuple[Grade, ...]:
        """The best ladder that begins with one of the grades."""
        place: int | None = self.grades.index(start)
        ladder = []
        while place is not None:
            ladder.append(self.grades[place])
            place = self.following[place]
        return tuple(ladder)


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
    why = "puts back"
    if by_particle and not by_finish and before.soft_backed and not after.soft_backed:
        why = "off the cloth"
    elif by_particle and not by_finish and after.soft_backed:
        why = "onto the cloth"
    elif by_finish and not by_particle:
        why = "grain finer"
    first, second = (getattr(grade, f"{size}_um") for grade in (before, after))
    return Finding(
        "stop", "finish.goes-coarser", before=before.label, after=after.label, by=size, first=first, second=second, why=why,
        finish_before=before.finish_um, finish_after=after.finish_um, grain_before=before.particle_um,
        grain_after=after.particle_um,
    )  # fmt: skip


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


def find_paths(
    owned: Sequence[Grade], finish_um: float, media: Mapping[str, Medium], *, judged_by: str = "both"
) -> GradePaths:
    """Find the best ladder from each owned grade down to a finish.

    Parameters
    ----------
    owned : sequence of Grade
        What the bench has.
    finish_um : float
        Finish-equivalent size to reach [µm], above 0.
    media : mapping of str to Medium
        Bands of the ratio.
    judged_by : {"both", "particle", "finish"}
        Which size must get smaller at every step.

    Returns
    -------
    GradePaths
        For each grade the one that follows it.

    Notes
    -----
    Among all ladders whose every step goes finer, the best one, in this order: comes nearest the finish wanted, from
    either side (a satin that ends at a gloss is not the satin that was agreed);
    exceeds the bands least; wastes least on steps below them; has the most even and smallest steps (least sum of
    ln² of the ratios). Steps inside the band cost no stock that larger ones would save the time for: small ones buy
    safety, and the bands' lower ends keep out those that do nothing.
    """
    grades = tuple(sorted(owned, key=lambda g: (-g.finish_um, -g.particle_um)))
    sizes = [(g.particle_um, g.finish_um, math.log(g.finish_um)) for g in grades]
    bands = [(math.log(media[g.medium].ratio_low), math.log(media[g.medium].ratio_high)) for g in grades]
    target = math.log(finish_um)
    by_particle, by_finish = judged_by != "finish", judged_by != "particle"
    best: list[_Cost] = [_NOTHING] * len(grades)
    following: list[int | None] = [None] * len(grades)
    for here in range(len(grades) - 1, -1, -1):
        particle, finish, log_here = sizes[here]
        best[here] = (abs(log_here - target), 0.0, 0.0, 0.0)
        if log_here <= target + 1e-9:
            continue
        for there in range(here + 1, len(grades)):
            other_particle, other_finish, log_there = sizes[there]
            if (by_particle and other_particle >= particle) or (by_finish and other_finish >= finish):
                continue
            ratio, (low, high), rest = log_here - log_there, bands[there], best[there]
            over, under = max(0.0, ratio - high - 1e-9), max(0.0, low - ratio - 1e-9)
            cost = (rest[0], rest[1] + over, rest[2] + under, rest[3] + ratio * ratio)
            if cost < best[here]:
                best[here], following[here] = cost, there
    return GradePaths(grades, tuple(following))


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


def _band_findings(step: LadderStep, band: Medium) -> list[Finding]:
    if step.in_band:
        return []
    before, after, ratio = step.before.label, step.after.label, step.finish_ratio
    if ratio > band.ratio_high:
        limit = band.ratio_high
        return [
            Finding(
                "warning",
                "finish.step-too-large",
                before=before,
                after=after,
                ratio=ratio,
                medium=band.name,
                limit=limit,
            )
        ]
    return [Finding("note", "finish.step-small", before=before, after=after, ratio=ratio)]


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
