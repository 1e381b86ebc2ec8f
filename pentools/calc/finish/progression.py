"""An abrasive progression planned in micrometres: from the deepest scratch worth removing to the finish agreed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.finish.advice import assumed_findings, ladder_findings, set_aside, step_words
from pentools.calc.finish.budget import alternatives, budget_findings
from pentools.calc.finish.grades import Catalogue, Grade
from pentools.calc.finish.ladder import GradePaths, check_ladder, find_paths, interval_stock_um
from pentools.calc.finish.limits import Interval, zone_budget_um
from pentools.calc.finish.rate import RateEstimate, estimate_rate, rule_of_thumb_rate, time_needed
from pentools.calc.finish.types import Alternative, Drawer, PlanLimits, Progression, Step, blend_width
from pentools.errors import InputError

__all__ = ["grit_progression", "ladder_progression", "rate_of"]

_NOTHING = Interval(0.0, 0.0, 0.0)
UNNAMED = "unknown"  # what the tables call a material that nobody has named


def grit_progression(
    defect_um: float | Interval,
    finish_um: float | Interval,
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
    finish_um : float or Interval
        Finish to reach: size of the plain-backed grade that leaves it [µm], 0.01 to 100; with an interval everything
        between its ends is that finish.
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
    Start: the finest owned grade, inside the material's and the zone's limits and no finer than the finish, that clears
    the defect within the time limit; the fastest if none does. Then the ladder of
    `pentools.calc.finish.ladder.find_paths`. Stock as in `pentools.calc.finish.ladder.stock_plan_um`, on the finish size,
    because that is the scratch left behind. The upper end of the total is held against the budget. Trim is unmasked
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
    defect, finish = _defect(defect_um), _finish(finish_um)
    if not owned:
        raise InputError("owned grades", "at least one grade", "none", "Name what the bench has, like P400; film 9 um.")
    drawer = Drawer(tuple(owned), catalogue)
    usable = [grade for grade in owned if limits.allows(grade)]
    if not usable or (limits.zone_said and zone_budget_um(limits.zone, limits.wall_mm)[1] <= 0):
        return _leave_alone(defect, finish, tuple(owned), limits)
    paths = find_paths(usable, finish.typical, limits.media, judged_by=limits.judged_by)
    start = _start(paths, defect.typical, finish, limits)
    plan = _build(paths.ladder_from(start), defect, finish, limits, drawer)
    others: tuple[Alternative, ...] = ()
    reduced = None
    if limits.zone_said and not plan.within_budget:
        others, reduced_start = alternatives(plan, paths, lambda grade: rate_of(grade, limits))
        if reduced_start is not None:
            grade, depth = reduced_start
            part = Interval(min(defect.low, depth), depth, depth)
            reduced = _build(paths.ladder_from(grade), part, finish, limits, drawer)
            reduced = replace(reduced, findings=_sorted((*reduced.findings, *budget_findings(reduced, ()))))
    return replace(
        plan, set_aside=set_aside(owned, plan.steps, limits), alternatives=others, reduced=reduced,
        findings=_sorted((*plan.findings, *budget_findings(plan, others))),
    )  # fmt: skip


def ladder_progression(
    ladder: Sequence[Grade],
    defect_um: float | Interval,
    finish_um: float | Interval,
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
    finish_um : float or Interval
        Finish to reach [µm], 0.01 to 100.
    limits : PlanLimits
        Material, zone, media and the rest.
    catalogue : Catalogue or None
        All grades, to name one that is missing.

    Returns
    -------
    Progression
        The ladder as it stands; a stop for each step that goes coarser or that material or zone do not allow.

    Raises
    ------
    InputError
        If a figure is outside its range or the ladder is empty.
    """
    if not ladder:
        raise InputError("ladder", "at least one grade", "none")
    plan = _build(tuple(ladder), _defect(defect_um), _finish(finish_um), limits, Drawer(tuple(ladder), catalogue))
    findings = [*plan.findings, *budget_findings(plan, ())]
    for grade in ladder:
        if not limits.material.allows(grade.medium):
            why = limits.material.never_text or limits.material.coarsest_text
            never = Finding("stop", "finish.never:in-ladder", grade=grade.label, material=limits.material.name, why=why)
            findings.append(never)
        elif not limits.allows(grade):
            coarse = Finding(
                "stop", "finish.too-coarse", grade=grade.label, um=grade.particle_um, material=limits.material.name,
                zone=limits.zone.name, limit=limits.coarsest_um,
            )  # fmt: skip
            findings.append(coarse)
    return replace(plan, findings=_sorted(findings))


def rate_of(grade: Grade, limits: PlanLimits) -> RateEstimate:
    """The rate to plan a grade with: the bench's own, else the rule of thumb.

    Parameters
    ----------
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


def _defect(defect_um: float | Interval) -> Interval:
    defect = defect_um if isinstance(defect_um, Interval) else Interval(defect_um, defect_um, defect_um)
    if not (0 < defect.typical <= 500 and 0 <= defect.low <= defect.typical <= defect.high <= 1000):
        raise InputError("defect", "above 0, to 500 µm deep", defect.typical)
    return defect


def _finish(finish_um: float | Interval) -> Interval:
    """The finish with its ends; a figure alone holds to a fifth finer and a tenth coarser, as grades do (judged)."""
    finish = finish_um if isinstance(finish_um, Interval) else Interval(0.8 * finish_um, finish_um, 1.1 * finish_um)
    if not (0.01 <= finish.typical <= 100 and 0 < finish.low <= finish.typical <= finish.high):
        raise InputError("finish", "0.01 to 100 µm", finish.typical)
    return finish


def _start(paths: GradePaths, defect_um: float, finish: Interval, limits: PlanLimits) -> Grade:
    """The finest grade that clears the defect in time and leaves no finer finish than was asked."""
    fit = [g for g in paths.grades if g.finish_um >= finish.low * 0.999] or list(paths.grades[:1])
    for grade in reversed(fit):
        if defect_um / rate_of(grade, limits).rate.typical <= limits.time_limit_min:
            return grade
    return max(fit, key=lambda g: rate_of(g, limits).rate.typical)


def _steps(ladder: tuple[Grade, ...], defect: Interval, limits: PlanLimits) -> tuple[Step, ...]:
    stock = interval_stock_um(defect, ladder, limits.k, limits.stock_factor)
    unmask = _unmask_place(ladder, limits)
    steps: list[Step] = []
    total = _NOTHING
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
    return tuple(steps)


def _build(
    ladder: tuple[Grade, ...], defect: Interval, finish: Interval, limits: PlanLimits, drawer: Drawer
) -> Progression:
    steps = _steps(ladder, defect, limits)
    total = steps[-1].cumulative_um
    low, high = (max(0.0, end - limits.spent_um) for end in zone_budget_um(limits.zone, limits.wall_mm))
    check = check_ladder(ladder, limits.media, judged_by=limits.judged_by)
    findings = (*check.findings, *ladder_findings(steps, check, finish, limits, drawer))
    return Progression(
        limits, defect, finish, steps, total, low, high, total.high <= high + 1e-9,
        blend_width(defect.typical, limits.defect_length_mm), (), (), None, findings,
    )  # fmt: skip


def _unmask_place(ladder: Sequence[Grade], limits: PlanLimits) -> int | None:
    if limits.trim != "solid":
        return None
    first = max(0, len(ladder) - limits.last_steps_on_trim)
    return next((i for i in range(first, len(ladder)) if ladder[i].particle_um <= limits.unmask_um), None)


def _leave_alone(defect: Interval, finish: Interval, owned: tuple[Grade, ...], limits: PlanLimits) -> Progression:
    low, high = zone_budget_um(limits.zone, limits.wall_mm)
    findings = (
        _why_alone(owned, limits, high), *assumed_findings(limits), Finding("warning", "finish.caution", said=limits.material.caution),
    )  # fmt: skip
    return Progression(
        limits, defect, finish, (), _NOTHING, low, high, True,
        blend_width(defect.typical, limits.defect_length_mm), (), (), None, findings,
    )  # fmt: skip


def _why_alone(owned: tuple[Grade, ...], limits: PlanLimits, budget_um: float) -> Finding:
    """Why nothing may be taken off: the zone, the material, or nothing owned that is fine enough."""
    material, zone = limits.material, limits.zone
    why = material.never_text or material.coarsest_text
    if limits.zone_said and budget_um <= 0:
        return Finding("stop", "finish.leave-alone:zone", zone=zone.name, why=zone.text)
    if material.name == UNNAMED:
        return Finding("stop", "finish.leave-alone:unnamed", why=why)
    if limits.coarsest_um <= 0:
        return Finding("stop", "finish.leave-alone:material", material=material.name, why=why)
    fit = [grade for grade in owned if material.allows(grade.medium)]
    if not fit:
        return Finding("stop", "finish.leave-alone:bound", material=material.name, why=why, limit=limits.coarsest_um)
    finest = min(fit, key=lambda grade: grade.particle_um)
    return Finding(
        "stop", "finish.leave-alone:coarse", material=material.name, zone=zone.name, limit=limits.coarsest_um, grade=finest.label,
        um=finest.particle_um,
    )  # fmt: skip


def _sorted(findings: Sequence[Finding]) -> tuple[Finding, ...]:
    return gravest_first(findings)
