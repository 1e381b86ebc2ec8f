"""The total of a progression against what the zone can spare, and other ways with their numbers where it may not hold."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.ladder import GradePaths, interval_stock_um
from pentools.calc.finish.limits import Interval
from pentools.calc.finish.rate import RateEstimate
from pentools.calc.finish.types import Alternative, Progression
from pentools.numbers import plain

__all__ = ["alternatives", "budget_findings"]

Rate = Callable[[Grade], RateEstimate]


def budget_findings(plan: Progression, others: Sequence[Alternative]) -> tuple[Finding, ...]:
    """The upper end of the total against the budget, in words.

    Parameters
    ----------
    others : sequence of Alternative
        Other ways, told with it when it may go over the budget.

    Returns
    -------
    tuple of Finding
        One on the budget, and one for each other way.
    """
    total, zone, limits = plan.removed_total_um, plan.limits.zone, plan.limits
    if not limits.zone_said:
        return ()
    over, upper = total.typical > plan.budget_high_um + 1e-9, total.high > plan.budget_low_um
    first = Finding(
        "stop" if over else "warning" if not plan.within_budget else "note" if upper else "ok",
        "finish.over-budget" if over else "finish.budget-close" if not plan.within_budget
        else "finish.budget-upper" if upper else "finish.within-budget",
        typical=total.typical, low=total.low, high=total.high, zone=zone.name, least=plan.budget_low_um,
        most=plan.budget_high_um, spent=limits.spent_um, wall=limits.wall_mm, certainty=zone.certainty,
    )  # fmt: skip
    return (first, *(_told(other) for other in others))


def _told(other: Alternative) -> Finding:
    if other.kind == "reduce":
        return Finding("note", "finish.reduce", said=other.text)
    return Finding(
        "note", "finish.coarser-start" if other.kind == "coarser start" else "finish.finer-start", said=other.text
    )


def alternatives(
    plan: Progression, paths: GradePaths, rate: Rate
) -> tuple[tuple[Alternative, ...], tuple[Grade, float] | None]:
    """Other ways when the budget does not hold: less of the defect, a coarser start, a finer start.

    Parameters
    ----------
    plan : Progression
        The plan whose upper end is over budget.
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
    A coarser start saves minutes, seldom stock; the numbers say which. Every total is held against the budget by its
    upper end.
    """
    start = plan.steps[0].grade
    best = _best_reduction(plan, paths, rate)
    found = [_reduction(plan, paths, rate, best)] if best is not None else []
    place = paths.grades.index(start)
    for kind, other in (
        ("coarser start", next((g for g in reversed(paths.grades[:place]) if g.finish_um > start.finish_um), None)),
        ("finer start", next((g for g in paths.grades[place + 1 :] if g.finish_um < start.finish_um), None)),
    ):
        if other is not None and (kind == "coarser start" or other.finish_um >= plan.finish.low):
            found.append(_other_start(kind, other, plan, paths, rate))
    if best is None:
        ladder = paths.ladder_from(start)
        finish = _total(plan, ladder, Interval(0.0, 0.0, 0.0)).high
        text = f"Even the finishing steps alone can take {plain(finish, 2)} µm, and “{plan.limits.zone.name}” can spare {plain(plan.budget_high_um, 2)} µm: leave the defect, clean and wax only."
        if len(ladder) == 1:
            text = f"Nothing of the defect can be taken out within {plain(plan.budget_high_um, 2)} µm: leave it, clean and wax only."
        found.append(Alternative("reduce", start, Interval(0.0, 0.0, 0.0), plan.defect_um.typical, 0.0, True, text))
    return tuple(found), best


def _total(plan: Progression, ladder: Sequence[Grade], defect: Interval) -> Interval:
    stock = interval_stock_um(defect, ladder, plan.limits.k, plan.limits.stock_factor)
    return Interval(sum(s.low for s in stock), sum(s.typical for s in stock), sum(s.high for s in stock))


def _best_reduction(plan: Progression, paths: GradePaths, rate: Rate) -> tuple[Grade, float] | None:
    best: tuple[Grade, float] | None = None
    for grade in paths.grades:
        ladder = paths.ladder_from(grade)
        if ladder[-1] != plan.steps[-1].grade:
            continue  # it would end duller or shinier than the plan
        later = _total(plan, ladder, Interval(0.0, 0.0, 0.0)).high
        in_time = rate(grade).rate.typical * plan.limits.time_limit_min
        depth = min(plan.budget_high_um - later, in_time, plan.defect_um.typical)
        if depth > 0.005 and (best is None or depth > best[1] + 1e-9):
            best = (grade, depth)
    return best


def _reduction(plan: Progression, paths: GradePaths, rate: Rate, best: tuple[Grade, float]) -> Alternative:
    grade, depth = best
    total = _total(plan, paths.ladder_from(grade), Interval(depth, depth, depth))
    left = plan.defect_um.typical - depth
    text = (
        f"Reduce: starting with {grade.label}, take {plain(depth, 2)} µm of the defect's {plain(plan.defect_um.typical, 3)} µm and leave"
        f" {plain(left, 2)} µm; with the finishing steps that is {plain(total.typical, 2)} µm a side ({plain(total.low, 2)} to"
        f" {plain(total.high, 2)}), inside the budget by its upper end."
    )
    return Alternative("reduce", grade, total, left, depth / rate(grade).rate.typical, True, text)


def _other_start(kind: str, other: Grade, plan: Progression, paths: GradePaths, rate: Rate) -> Alternative:
    total = _total(plan, paths.ladder_from(other), plan.defect_um)
    minutes = plan.defect_um.typical / rate(other).rate.typical
    fits = total.high <= plan.budget_high_um + 1e-9
    change = total.typical - plan.removed_total_um.typical
    text = (
        f"A {kind}, {other.label}: {plain(total.typical, 2)} µm a side in all (up to {plain(total.high, 2)}), {plain(abs(change), 2)} µm"
        f" {'more' if change >= 0 else 'less'}, first stage about {plain(minutes, 2)} min"
        f" against {plain(plan.steps[0].minutes.typical, 2)} min: {'inside' if fits else 'still over'} the budget."
    )
    return Alternative(kind, other, total, 0.0, minutes, fits, text)
