"""The advice that goes with a ladder: words for each step, what was assumed, what is missing, what stays in the drawer."""

from __future__ import annotations

import math
from collections.abc import Sequence

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.ladder import LadderCheck, LadderStep, goes_coarser
from pentools.calc.finish.limits import Interval
from pentools.calc.finish.types import Drawer, PlanLimits, SetAside, Step
from pentools.numbers import plain

__all__ = [
    "assumed_findings",
    "ladder_findings",
    "missing_grade",
    "set_aside",
    "step_words",
]


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
            f"Grain about {plain(grade.particle_um, 2)} µm, finishes like {plain(grade.finish_um, 2)} µm ({grade.finish_certainty})."
        )
    return direction, inspect, " ".join(notes)


def ladder_findings(
    steps: Sequence[Step],
    check: LadderCheck,
    finish: Interval,
    limits: PlanLimits,
    drawer: Drawer,
) -> tuple[Finding, ...]:
    """What to know about a ladder: time, missing grades, finish reached, trim, water, wheel and dust.

    Parameters
    ----------
    steps : sequence of Step
        The steps, at least one.
    check : LadderCheck
        Its ratios.
    finish : Interval
        Finish wanted [µm].
    limits : PlanLimits
        What it was planned within.
    drawer : Drawer
        What the bench has, used or not, and all grades there are.

    Returns
    -------
    tuple of Finding
        The findings.
    """
    material = limits.material
    found = [*_slow_start(steps[0], limits, drawer.owned)]
    for step in check.steps:
        if not step.in_band and step.finish_ratio > limits.media[step.after.medium].ratio_high:
            found += _gap(step, limits, drawer)
    found += _finish_findings(steps[-1].grade, finish, limits, drawer)
    found += [*_rate_findings(steps[0], limits), *_trim_findings(steps, limits)]
    if material.never_text:
        found.append(Finding("warning", "finish.never", material=material.name, why=material.never_text))
    elif material.sanding_text:
        found.append(Finding("note", "finish.sanding", said=material.sanding_text))
    found.append(Finding("note", "finish.wet-or-dry", said=material.wet_text))
    if material.wheel_text:
        found.append(Finding("warning", "finish.wheel", said=material.wheel_text))
    found.append(Finding("warning", "finish.caution", said=material.caution))
    return tuple(found)


def assumed_findings(limits: PlanLimits) -> tuple[Finding, ...]:
    """What was not said and so was taken as the strictest, and how to say it.

    Parameters
    ----------
    limits : PlanLimits
        What a progression is planned within.

    Returns
    -------
    tuple of Finding
        A stop for a zone that is not said, a warning for trim.
    """
    found = []
    if not limits.zone_said:
        found.append(Finding("stop", "finish.zone-not-said"))
    if limits.trim == "not said":
        found.append(Finding("warning", "finish.trim-not-said"))
    return tuple(found)


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


def missing_grade(before: Grade, down_to_um: tuple[float, float], limits: PlanLimits, drawer: Drawer) -> Grade | None:
    """A grade that would bridge a gap and may be used, in the scale of the grade before or as film.

    Parameters
    ----------
    before : Grade
        The grade above the gap.
    down_to_um : tuple of float
        Finish and particle below the gap [µm].
    limits : PlanLimits
        What may be used.
    drawer : Drawer
        Where to look.

    Returns
    -------
    Grade or None
        The one nearest the middle of the gap on a logarithmic axis; film only where it lies clearly better.
    """
    if drawer.catalogue is None:
        return None
    finish_um, particle_um = down_to_um
    middle = math.log(math.sqrt(before.finish_um * finish_um))
    between = [
        (abs(math.log(g.finish_um) - middle) + (0.0 if scale == before.scale else 0.2), g)
        for scale in dict.fromkeys((before.scale, "film"))
        for g in drawer.catalogue.in_scale(scale)
        if finish_um < g.finish_um < before.finish_um
        and particle_um < g.particle_um < before.particle_um
        and limits.allows(g)
    ]
    return min(between, key=lambda pair: pair[0])[1] if between else None


def _slow_start(first: Step, limits: PlanLimits, owned: Sequence[Grade]) -> list[Finding]:
    if first.minutes.typical <= limits.time_limit_min:
        return []
    coarser = [g for g in owned if g.particle_um > first.grade.particle_um]
    allowed = [g for g in coarser if limits.allows(g)]
    found = Finding(
        "warning", "finish.slow-start", grade=first.grade.label, minutes=first.minutes.typical, depth=first.removed_um.typical,
        faster=[g.label for g in (allowed or coarser)[:3]], why="allowed" if allowed else "too coarse" if coarser else "none",
        limit=limits.coarsest_um,
    )  # fmt: skip
    return [found]


def _gap(step: LadderStep, limits: PlanLimits, drawer: Drawer) -> list[Finding]:
    grade = missing_grade(step.before, (step.after.finish_um, step.after.particle_um), limits, drawer)
    if grade is None:
        return []
    found = Finding(
        "note", "finish.missing-grade", name=grade.label, um=grade.finish_um, at_hand=drawer.holds(grade),
        before=step.before.label, after=step.after.label,
    )  # fmt: skip
    return [found]


def _finish_findings(last: Grade, finish: Interval, limits: PlanLimits, drawer: Drawer) -> list[Finding]:
    """Whether the last grade leaves the finish that was asked: neither duller nor shinier."""
    if last.finish_um > finish.high * 1.001:
        further = missing_grade(last, (max(finish.typical / 1.5, last.finish_um / 2.25), 0.0), limits, drawer)
        found = Finding(
            "warning", "finish.finish-not-reached", last=last.label, leaves=last.finish_um, wanted=finish.typical,
            name=further.label if further else None, um=further.finish_um if further else None,
            at_hand=further is not None and drawer.holds(further),
        )  # fmt: skip
        return [found]
    if last.finish_um < finish.low * 0.999:
        passed = Finding(
            "warning", "finish.finish-passed", last=last.label, leaves=last.finish_um, wanted=finish.typical
        )
        return [passed]
    return []


def _rate_findings(first: Step, limits: PlanLimits) -> list[Finding]:
    if first.calibrated:
        return [Finding("ok", "finish.calibrated")]
    if limits.rates is not None and not limits.rates.calibrated:
        return [limits.rates.finding]
    return [Finding("note", "finish.not-calibrated")]


def _trim_findings(steps: Sequence[Step], limits: PlanLimits) -> list[Finding]:
    assumed = list(assumed_findings(limits))
    if limits.trim in ("none", "not said"):
        return assumed
    if limits.trim == "plated":
        return [*assumed, Finding("warning", "finish.trim-masked:plated")]
    at = next((step for step in steps if step.unmask), None)
    if at is None:
        return [*assumed, Finding("note", "finish.trim-masked:coarse", limit=limits.unmask_um)]
    return [*assumed, Finding("note", "finish.trim-unmask", grade=at.grade.label, rest=len(steps) - at.number + 1)]


def _why_not(grade: Grade, used: Sequence[Grade], limits: PlanLimits) -> str:
    if not limits.allows(grade):
        return _not_allowed(grade, limits)
    if grade.finish_um >= used[0].finish_um:
        return f"Coarser than needed: {used[0].label} clears the defect."
    above = [g for g in used if g.finish_um > grade.finish_um]
    stop = goes_coarser(above[-1], grade, judged_by=limits.judged_by) if above else None
    if stop is not None:
        return stop.text
    if grade.finish_um < used[-1].finish_um:
        return f"Not needed: the finish is reached with {used[-1].label}."
    return f"Not needed: it lies so near {above[-1].label} or the grade after it that it would do little."


def _not_allowed(grade: Grade, limits: PlanLimits) -> str:
    material, zone_limit = limits.material, limits.zone.coarsest_um
    if not material.allows(grade.medium):
        return f"Never on {material.name}: {material.never_text}."
    if zone_limit is not None and zone_limit < material.coarsest_um:
        return f"Too coarse for the zone “{limits.zone.name}”: {plain(zone_limit, 2)} µm at most."
    why = f" ({material.coarsest_text})" if material.coarsest_text else ""
    return f"Too coarse for {material.name}: {plain(material.coarsest_um, 2)} µm at most{why}."
