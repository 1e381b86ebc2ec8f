"""An abrasive progression planned in micrometres: from the deepest scratch worth removing to the finish agreed."""

from __future__ import annotations

from collections.abc import Sequence

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.finish.advice import alternatives, budget_findings, ladder_findings, set_aside, step_words
from pentools.calc.finish.grades import Catalogue, Grade
from pentools.calc.finish.ladder import check_ladder, interval_stock_um
from pentools.calc.finish.limits import Interval, zone_budget_um
from pentools.calc.finish.path import GradePaths, find_paths
from pentools.calc.finish.rate import RateEstimate, estimate_rate, rule_of_thumb_rate, time_needed
from pentools.calc.finish.types import Alternative, PlanLimits, Progression, Step, blend_width
from pentools.errors import InputError

__all__ = ["grit_progression", "ladder_progression", "rate_of"]


def grit_progression(
    defect_um: float | Interval,
    finish_um: float,
    owned: Sequence[Grade],
    limits: PlanLimits,
    *,
    catalogue: Catalogue | None = None,
) -> Progression:
    """Plan a progression out of the grades a bench owns.

    Parameters
    ----------
    defect_um : float or Interval
        Depth of the deepest scratch worth removing [µm], above 0 to 500.
    finish_um : float
        Finish to reach: size of the plain-backed grade that leaves it [µm], 0.01 to 100.
    owned : sequence of Grade
        Grades at hand, in any order.
    limits : PlanLimits
        Material, zone, media and the rest.
    catalogue : Catalogue or None
        All grades, to name one that is missing; None: none is named.

    Returns
    -------
    Progression
        Steps with stock, time and notes; total against budget; what to do instead where the budget does not hold.

    Raises
    ------
    InputError
        If a figure is outside its range or no grade is owned.

    Notes
    -----
    Start: the finest owned grade, inside the material's and the zone's limits, that clears the defect within the time
    limit; the coarsest if none does. Then the ladder of `pentools.calc.finish.path.find_paths`. Stock as in
    `pentools.calc.finish.ladder.stock_plan_um`, on the finish size, because that is the scratch left behind. Trim is unmasked
    before the first of the last steps whose particle is fine enough for it. Good for ductile surfaces worked by hand;
    rates, bands and budgets are mostly common practice or judged, so the bench's own figures go before them.

    Examples
    --------
    >>> from pentools.calc.finish.reading import read_grades
    >>> from pentools.calc.finish.types import PlanLimits
    >>> from pentools.tables.abrasives import catalogue, materials, media, zones
    >>> limits = PlanLimits(materials()["celluloid"], zones()["plain barrel"], media())
    >>> owned = read_grades("film 3 um; P600; P1200; film 9 um", catalogue())
    >>> plan = grit_progression(20, 3, owned, limits)
    >>> [step.grade.label for step in plan.steps], round(plan.removed_total_um.typical, 1)
    (['P600', 'P1200', 'film 9 µm', 'film 3 µm'], 30.0)
    """
    defect = _interval(defect_um)
    if not 0.01 <= finish_um <= 100:
        raise InputError("finish", "0.01 to 100 µm", finish_um)
    if not owned:
        raise InputError(
            "owned grades", "at least one grade", "none", "Name what the bench has, like P400; cushioned 1500."
        )
    usable = [g for g in owned if g.particle_um <= limits.coarsest_um * 1.001]
    if not usable or zone_budget_um(limits.zone, limits.wall_mm)[1] <= 0:
        return _leave_alone(defect, finish_um, tuple(owned), limits)
    paths = find_paths(usable, finish_um, limits.media, judged_by=limits.judged_by)
    start = _start(paths, defect.typical, limits)
    plan = _build(paths.ladder_from(start), defect, finish_um, limits, catalogue)
    aside = set_aside(owned, plan.steps, limits)
    others: tuple[Alternative, ...] = ()
    reduced = None
    if not plan.within_budget:
        others, reduced_start = alternatives(plan, paths, lambda grade: rate_of(grade, limits))
        if reduced_start is not None:
            grade, depth = reduced_start
            part = Interval(min(defect.low, depth), depth, depth)
            reduced = _build(paths.ladder_from(grade), part, finish_um, limits, catalogue)
    findings = _sorted((*plan.findings, *budget_findings(plan, others)))
    return Progression(
        limits, defect, finish_um, plan.steps, plan.removed_total_um, plan.budget_low_um, plan.budget_high_um,
        plan.within_budget, plan.blend, aside, others, reduced, findings,
    )  # fmt: skip


def ladder_progression(
    ladder: Sequence[Grade],
    defect_um: float | Interval,
    finish_um: float,
    limits: PlanLimits,
    *,
    catalogue: Catalogue | None = None,
) -> Progression:
    """Judge a ladder that a person chose or edited, with the same figures as a planned one.

    Parameters
    ----------
    ladder : sequence of Grade
        The grades in the order of use.
    defect_um : float or Interval
        Depth to take out [µm], above 0 to 500.
    finish_um : float
        Finish to reach [µm], 0.01 to 100.
    limits : PlanLimits
        Material, zone, media and the rest.
    catalogue : Catalogue or None
        All grades, to name one that is missing.

    Returns
    -------
    Progression
        The ladder as it stands; a stop for each step that goes coarser or is too coarse for material or zone.

    Raises
    ------
    InputError
        If a figure is outside its range or the ladder is empty.
    """
    if not ladder:
        raise InputError("ladder", "at least one grade", "none")
    if not 0.01 <= finish_um <= 100:
        raise InputError("finish", "0.01 to 100 µm", finish_um)
    plan = _build(tuple(ladder), _interval(defect_um), finish_um, limits, catalogue)
    findings = list(plan.findings)
    for grade in ladder:
        if grade.particle_um > limits.coarsest_um * 1.001:
            text = f"{grade.label} ({grade.particle_um:g} µm) is coarser than {limits.material.name} in the zone “{limits.zone.name}” allows ({limits.coarsest_um:g} µm)."
            findings.append(Finding("stop", text, "too-coarse"))
    findings += budget_findings(plan, ())
    return Progression(
        limits, plan.defect_um, finish_um, plan.steps, plan.removed_total_um, plan.budget_low_um, plan.budget_high_um,
        plan.within_budget, plan.blend, (), (), None, _sorted(findings),
    )  # fmt: skip


def rate_of(grade: Grade, limits: PlanLimits) -> RateEstimate:
    """The rate to plan a grade with: the bench's own, else the rule of thumb.

    Parameters
    ----------
    grade : Grade
        The grade.
    limits : PlanLimits
        Holds the bench's rates, if any.

    Returns
    -------
    RateEstimate
        Rate [µm/min] with its interval.
    """
    if limits.rates is not None and limits.rates.basis == "min" and limits.rates.material == limits.material.name:
        return estimate_rate(limits.rates, grade)
    return rule_of_thumb_rate(grade, limits.media[grade.medium].cut_share)


def _interval(defect_um: float | Interval) -> Interval:
    defect = defect_um if isinstance(defect_um, Interval) else Interval(defect_um, defect_um, defect_um)
    if not (0 < defect.typical <= 500 and 0 <= defect.low <= defect.typical <= defect.high <= 1000):
        raise InputError("defect", "above 0, to 500 µm deep", defect.typical)
    return defect


def _start(paths: GradePaths, defect_um: float, limits: PlanLimits) -> Grade:
    for grade in reversed(paths.grades):
        if defect_um / rate_of(grade, limits).rate.typical <= limits.time_limit_min:
            return grade
    return max(paths.grades, key=lambda g: rate_of(g, limits).rate.typical)


def _build(
    ladder: tuple[Grade, ...], defect: Interval, finish_um: float, limits: PlanLimits, catalogue: Catalogue | None
) -> Progression:
    stock = interval_stock_um(defect, ladder, limits.k, limits.stock_factor)
    unmask = _unmask_place(ladder, limits)
    steps: list[Step] = []
    total = Interval(0.0, 0.0, 0.0)
    for place, (grade, removed) in enumerate(zip(ladder, stock, strict=True)):
        total = Interval(total.low + removed.low, total.typical + removed.typical, total.high + removed.high)
        rate = rate_of(grade, limits)
        direction, inspect, note = step_words(ladder, place, unmask)
        steps.append(
            Step(
                place + 1, grade, ladder[place - 1].finish_um / grade.finish_um if place else None, removed, total,
                time_needed(removed, rate), rate.calibrated, place == unmask, limits.material.wet, direction, inspect, note,
            )
        )  # fmt: skip
    low, high = (max(0.0, end - limits.spent_um) for end in zone_budget_um(limits.zone, limits.wall_mm))
    check = check_ladder(ladder, limits.media, judged_by=limits.judged_by)
    findings = (*check.findings, *ladder_findings(steps, check, finish_um, limits, catalogue))
    return Progression(
        limits, defect, finish_um, tuple(steps), total, low, high, total.typical <= high + 1e-9,
        blend_width(defect.typical, limits.defect_length_mm), (), (), None, findings,
    )  # fmt: skip


def _unmask_place(ladder: Sequence[Grade], limits: PlanLimits) -> int | None:
    if limits.trim != "solid":
        return None
    first = max(0, len(ladder) - limits.last_steps_on_trim)
    return next((i for i in range(first, len(ladder)) if ladder[i].particle_um <= limits.unmask_um), None)


def _leave_alone(defect: Interval, finish_um: float, owned: tuple[Grade, ...], limits: PlanLimits) -> Progression:
    low, high = zone_budget_um(limits.zone, limits.wall_mm)
    nothing = Interval(0.0, 0.0, 0.0)
    if high <= 0:
        text = f"Leave the zone “{limits.zone.name}” alone: its budget is 0 µm. {limits.zone.text[:1].upper()}{limits.zone.text[1:]}."
    elif limits.coarsest_um <= 0:
        text = f"No abrasive on {limits.material.name}: a soft cloth and water at most."
    else:
        finest = min(owned, key=lambda g: g.particle_um)
        text = f"Nothing owned is fine enough: {limits.material.name} in the zone “{limits.zone.name}” takes {limits.coarsest_um:g} µm at most, the finest owned is {finest.label} with {finest.particle_um:g} µm."
    findings = (Finding("stop", text, "leave-alone"), Finding("warning", limits.material.caution, "caution"))
    return Progression(
        limits, defect, finish_um, (), nothing, low, high, True,
        blend_width(defect.typical, limits.defect_length_mm), (), (), None, findings,
    )  # fmt: skip


def _sorted(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    return gravest_first(findings)
