"""The advice that goes with a planned progression: words for each step, the budget, and other ways with their numbers."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Catalogue, Grade
from pentools.calc.finish.ladder import LadderCheck, goes_coarser, interval_stock_um
from pentools.calc.finish.limits import Interval
from pentools.calc.finish.path import GradePaths
from pentools.calc.finish.rate import RateEstimate
from pentools.calc.finish.types import Alternative, PlanLimits, Progression, SetAside, Step

__all__ = ["alternatives", "budget_findings", "ladder_findings", "missing_grade", "set_aside", "step_words"]

Rate = Callable[[Grade], RateEstimate]


def step_words(ladder: Sequence[Grade], place: int, unmask: int | None) -> tuple[str, str, str]:
    """Direction, inspection and note of one step.

    Parameters
    ----------
    ladder : sequence of Grade
        The grades in order.
    place : int
        Which of them, from 0.
    unmask : int or None
        Place at which trim is unmasked.

    Returns
    -------
    tuple of str
        Direction of the strokes, what to look for before going on, what to know.

    Notes
    -----
    One grade along, the next around, so that old lines show against new ones: common practice, no source.
    """
    grade = ladder[place]
    direction = "along the barrel" if place % 2 == 0 else "around the barrel"
    if place + 1 < len(ladder):
        inspect = "Wash the grit off, dry, and look with a 10x loupe in raking light: only lines of this direction may be left."
    else:
        inspect = "Wash, dry, and look in raking light: no line of any direction under the loupe."
    notes = []
    if place == unmask:
        notes.append("Unmask solid trim now and take it along from here.")
    if place == 0:
        notes.append("Work down to the floor of the defect and no further.")
    else:
        notes.append(f"Until the last line of {ladder[place - 1].label} is gone, then as long again.")
    if grade.soft_backed:
        notes.append(
            f"Grain {grade.particle_um:g} µm, finishes like {grade.finish_um:g} µm ({grade.finish_certainty})."
        )
    return direction, inspect, " ".join(notes)


def ladder_findings(
    steps: Sequence[Step], check: LadderCheck, finish_um: float, limits: PlanLimits, catalogue: Catalogue | None
) -> tuple[Finding, ...]:
    """What to know about a ladder: time, missing grades, finish reached, trim, water, wheel and dust.

    Parameters
    ----------
    steps : sequence of Step
        The steps, at least one.
    check : LadderCheck
        Its ratios.
    finish_um : float
        Finish wanted [µm].
    limits : PlanLimits
        What it was planned within.
    catalogue : Catalogue or None
        All grades, to name one that is missing.

    Returns
    -------
    tuple of Finding
        The findings.
    """
    found = []
    first, last = steps[0], steps[-1]
    if first.minutes.typical > limits.time_limit_min:
        text = f"{first.grade.label} needs about {first.minutes.typical:.2g} min for {first.removed_um.typical:.2g} µm; nothing faster is owned and allowed here."
        found.append(Finding("warning", text, "slow-start"))
    for step in check.steps:
        if not step.in_band and step.finish_ratio > limits.media[step.after.medium].ratio_high:
            between = missing_grade(step.before, step.after.finish_um, step.after.particle_um, catalogue)
            if between is not None:
                text = f"{between.label} ({between.finish_um:g} µm) would lie well between {step.before.label} and {step.after.label}."
                found.append(Finding("note", text, "missing-grade"))
    if last.grade.finish_um > finish_um * 1.001:
        text = f"The finest owned grade, {last.grade.label}, leaves a finish like {last.grade.finish_um:g} µm; {finish_um:g} µm was wanted."
        further = missing_grade(last.grade, max(finish_um / 1.5, last.grade.finish_um / 2.25), 0.0, catalogue)
        if further is not None:
            text += f" {further.label} could follow it."
        found.append(Finding("warning", text, "finish-not-reached"))
    found += [*_rate_findings(first, limits), *_trim_findings(steps, limits)]
    found.append(Finding("note", limits.material.wet_text, "wet-or-dry"))
    found.append(Finding("warning", limits.material.wheel_text, "wheel"))
    found.append(Finding("warning", limits.material.caution, "caution"))
    return tuple(found)


def budget_findings(plan: Progression, others: Sequence[Alternative]) -> tuple[Finding, ...]:
    """The total against the budget, in words.

    Parameters
    ----------
    plan : Progression
        The plan.
    others : sequence of Alternative
        Other ways, told with it when it is over budget.

    Returns
    -------
    tuple of Finding
        One on the budget, and one for each other way.
    """
    total, zone = plan.removed_total_um, plan.limits.zone
    amount = f"about {total.typical:.2g} µm a side ({total.low:.2g} to {total.high:.2g})"
    left = (
        f"“{zone.name}” can spare {plan.budget_low_um:g} to {plan.budget_high_um:g} µm"
        if plan.budget_low_um
        else f"“{zone.name}” can spare {plan.budget_high_um:g} µm"
    )
    if plan.limits.spent_um:
        left += f" after the {plan.limits.spent_um:g} µm already taken"
    sure = (
        f"Budgets are {zone.certainty}, no source; measure the wall."
        if plan.limits.wall_mm is None
        else "A tenth of the wall at most."
    )
    if not plan.within_budget:
        first = Finding(
            "stop", f"Over budget: the plan takes {amount}, {left}. Reduce the defect, do not remove it.", "over-budget"
        )
        return (first, *(Finding("note", other.text, other.kind.replace(" ", "-")) for other in others))
    if total.high > plan.budget_high_um:
        return (
            Finding(
                "warning",
                f"The plan takes {amount}; {left}, and the upper figure is past it. Measure as you go. {sure}",
                "budget-close",
            ),
        )
    if total.typical > plan.budget_low_um:
        return (Finding("note", f"The plan takes {amount}; {left}: the upper part of it. {sure}", "budget-upper"),)
    return (Finding("ok", f"The plan takes {amount}; {left}. {sure}", "within-budget"),)


def alternatives(
    plan: Progression, paths: GradePaths, rate: Rate
) -> tuple[tuple[Alternative, ...], tuple[Grade, float] | None]:
    """Other ways when the budget does not hold: less of the defect, a coarser start, a finer start.

    Parameters
    ----------
    plan : Progression
        The plan that is over budget.
    paths : GradePaths
        The best ladder from each owned grade.
    rate : callable
        Rate of a grade.

    Returns
    -------
    tuple
        The other ways; and start and depth [µm] of the best plan that reduces the defect, None where not even the
        finishing steps fit the budget.

    Notes
    -----
    A stage leaves scratches of k·d, and the next takes s·k·d: the coarser the start, the more the finishing steps take.
    A coarser start saves minutes, seldom stock; the numbers say which.
    """
    limits, start = plan.limits, plan.steps[0].grade
    found = []
    best = _best_reduction(plan, paths, rate)
    if best is not None:
        grade, depth = best
        total = _total(plan, paths.ladder_from(grade), Interval(depth, depth, depth))
        left = plan.defect_um.typical - depth
        text = (
            f"Reduce: starting with {grade.label}, take {depth:.2g} µm of the defect's {plan.defect_um.typical:g} µm and leave"
            f" {left:.2g} µm; with the finishing steps that is {total.typical:.2g} µm a side, inside the budget."
        )
        found.append(Alternative("reduce", grade, total, left, depth / rate(grade).rate.typical, True, text))
    place = paths.grades.index(start)
    for kind, other in (
        ("coarser start", next((g for g in reversed(paths.grades[:place]) if g.finish_um > start.finish_um), None)),
        ("finer start", next((g for g in paths.grades[place + 1 :] if g.finish_um < start.finish_um), None)),
    ):
        if other is None:
            continue
        total = _total(plan, paths.ladder_from(other), plan.defect_um)
        minutes = plan.defect_um.typical / rate(other).rate.typical
        fits = total.typical <= plan.budget_high_um + 1e-9
        change = total.typical - plan.removed_total_um.typical
        text = (
            f"A {kind}, {other.label}: {total.typical:.2g} µm a side in all, {abs(change):.2g} µm"
            f" {'more' if change >= 0 else 'less'}, first stage about {minutes:.2g} min"
            f" against {plan.steps[0].minutes.typical:.2g} min: {'inside' if fits else 'still over'} the budget."
        )
        found.append(Alternative(kind, other, total, 0.0, minutes, fits, text))
    if best is None:
        finish = _total(plan, paths.ladder_from(start), Interval(0.0, 0.0, 0.0)).typical
        text = f"Even the finishing steps alone take {finish:.2g} µm, and “{limits.zone.name}” can spare {plan.budget_high_um:g} µm: leave the defect, clean and wax only."
        found.append(Alternative("reduce", start, Interval(0.0, 0.0, 0.0), plan.defect_um.typical, 0.0, True, text))
    return tuple(found), best


def set_aside(owned: Sequence[Grade], steps: Sequence[Step], limits: PlanLimits) -> tuple[SetAside, ...]:
    """Owned grades that the plan leaves in the drawer, each with its reason.

    Parameters
    ----------
    owned : sequence of Grade
        What the bench has.
    steps : sequence of Step
        What the plan uses, at least one step.
    limits : PlanLimits
        What it was planned within.

    Returns
    -------
    tuple of SetAside
        In the order owned.
    """
    used = [step.grade for step in steps]
    return tuple(SetAside(grade, _why_not(grade, used, limits)) for grade in owned if grade not in used)


def missing_grade(
    before: Grade, down_to_finish_um: float, down_to_particle_um: float, catalogue: Catalogue | None
) -> Grade | None:
    """A grade that would bridge a gap, in the scale of the grade before or as film.

    Parameters
    ----------
    before : Grade
        The grade above the gap.
    down_to_finish_um, down_to_particle_um : float
        The sizes below the gap [µm].
    catalogue : Catalogue or None
        Where to look; None: nothing is found.

    Returns
    -------
    Grade or None
        The one nearest the middle of the gap on a logarithmic axis; film only where it lies clearly better.
    """
    if catalogue is None:
        return None
    middle = math.log(math.sqrt(before.finish_um * down_to_finish_um))
    between = [
        (abs(math.log(g.finish_um) - middle) + (0.0 if scale == before.scale else 0.2), g)
        for scale in dict.fromkeys((before.scale, "film"))
        for g in catalogue.in_scale(scale)
        if down_to_finish_um < g.finish_um < before.finish_um
        and down_to_particle_um < g.particle_um < before.particle_um
    ]
    return min(between, key=lambda pair: pair[0])[1] if between else None


def _rate_findings(first: Step, limits: PlanLimits) -> list[Finding]:
    if first.calibrated:
        return [Finding("ok", "Times are from this bench's own log.", "calibrated")]
    if limits.rates is not None and not limits.rates.calibrated:
        return [limits.rates.finding]
    text = "Times are not calibrated: a rule of thumb, good to a factor of 3. Three measured stages make them your own."
    return [Finding("note", text, "not-calibrated")]


def _trim_findings(steps: Sequence[Step], limits: PlanLimits) -> list[Finding]:
    if limits.trim == "none":
        return []
    if limits.trim == "plated":
        return [Finding("warning", "Plated trim stays masked to the end; a soft cloth at most.", "trim-masked")]
    at = next((step for step in steps if step.unmask), None)
    if at is None:
        text = f"No step is fine enough for trim ({limits.unmask_um:g} µm or finer): it stays masked to the end."
        return [Finding("note", text, "trim-masked")]
    rest = len(steps) - at.number + 1
    through = f"the last {rest}" if rest > 1 else "this last step"
    text = f"Unmask solid trim at {at.grade.label} and take it through {through}. Plated or unknown trim stays masked."
    return [Finding("note", text, "trim-unmask")]


def _total(plan: Progression, ladder: Sequence[Grade], defect: Interval) -> Interval:
    stock = interval_stock_um(defect, ladder, plan.limits.k, plan.limits.stock_factor)
    return Interval(sum(s.low for s in stock), sum(s.typical for s in stock), sum(s.high for s in stock))


def _best_reduction(plan: Progression, paths: GradePaths, rate: Rate) -> tuple[Grade, float] | None:
    best: tuple[Grade, float] | None = None
    for grade in paths.grades:
        ladder = paths.ladder_from(grade)
        if ladder[-1].finish_um > plan.steps[-1].grade.finish_um * 1.001:
            continue  # it would end duller than the plan
        later = _total(plan, ladder, Interval(0.0, 0.0, 0.0)).typical
        in_time = rate(grade).rate.typical * plan.limits.time_limit_min
        depth = min(plan.budget_high_um - later, in_time, plan.defect_um.typical)
        if depth > 0.005 and (best is None or depth > best[1] + 1e-9):
            best = (grade, depth)
    return best


def _why_not(grade: Grade, used: Sequence[Grade], limits: PlanLimits) -> str:
    if grade.particle_um > limits.coarsest_um * 1.001:
        zone_limit = limits.zone.coarsest_um
        if zone_limit is not None and zone_limit < limits.material.coarsest_um:
            return f"Too coarse for the zone “{limits.zone.name}”: {zone_limit:g} µm at most."
        why = f" ({limits.material.coarsest_text})" if limits.material.coarsest_text else ""
        return f"Too coarse for {limits.material.name}: {limits.material.coarsest_um:g} µm at most{why}."
    if grade.finish_um >= used[0].finish_um:
        return f"Coarser than needed: {used[0].label} clears the defect."
    above = [g for g in used if g.finish_um > grade.finish_um]
    stop = goes_coarser(above[-1], grade, judged_by=limits.judged_by) if above else None
    if stop is not None:
        return stop.text
    if grade.finish_um < used[-1].finish_um:
        return f"Not needed: the finish is reached with {used[-1].label}."
    return f"Not needed: it lies so near {above[-1].label} or the grade after it that it would do little."
