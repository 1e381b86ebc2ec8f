"""The advice that goes with a ladder: words for each step, what was assumed, what is missing, what stays in the drawer."""

from __future__ import annotations

import math
from collections.abc import Sequence

from pentools.calc.base.findings import Finding
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.ladder import LadderCheck, goes_coarser
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
            text = _bridge(step.before, (step.after.finish_um, step.after.particle_um), limits, drawer)
            if text:
                found.append(
                    Finding(
                        "note",
                        f"{text} would lie well between {step.before.label} and {step.after.label}.",
                        "missing-grade",
                    )
                )
    found += _finish_findings(steps[-1].grade, finish, limits, drawer)
    found += [*_rate_findings(steps[0], limits), *_trim_findings(steps, limits)]
    if material.never_text:
        found.append(
            Finding(
                "warning",
                f"No paper, film or cloth on {material.name}: {material.never_text}. Paste by hand only, and seldom.",
                "never",
            )
        )
    elif material.sanding_text:
        found.append(Finding("note", material.sanding_text, "sanding"))
    found.append(Finding("note", material.wet_text, "wet-or-dry"))
    if material.wheel_text:
        found.append(Finding("warning", material.wheel_text, "wheel"))
    found.append(Finding("warning", material.caution, "caution"))
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
        text = (
            "Where on the pen is not said, so it is taken as the strictest: an imprint, threads and seats can spare nothing."
            " Name the zone before anything is taken off."
        )
        found.append(Finding("stop", text, "zone-not-said"))
    if limits.trim == "not said":
        text = "Trim is not said, so it is taken as plated and stays masked to the end. Say solid, or none, if you know it."
        found.append(Finding("warning", text, "trim-not-said"))
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
    text = f"{first.grade.label} needs about {plain(first.minutes.typical, 2)} min for {plain(first.removed_um.typical, 2)} µm."
    coarser = [g for g in owned if g.particle_um > first.grade.particle_um]
    allowed = [g for g in coarser if limits.allows(g)]
    if allowed:
        text += f" {allowed[0].label} is at hand and allowed, and faster."
    elif coarser:
        text += f" {_listed(coarser)} would be faster, but {'is' if len(coarser) == 1 else 'are'} too coarse here ({plain(limits.coarsest_um, 2)} µm at most)."
    else:
        text += " Nothing faster is at hand."
    return [Finding("warning", text, "slow-start")]


def _finish_findings(last: Grade, finish: Interval, limits: PlanLimits, drawer: Drawer) -> list[Finding]:
    """Whether the last grade leaves the finish that was asked: neither duller nor shinier."""
    leaves = f"{last.label}, the last that this ladder can use, leaves a finish like {plain(last.finish_um, 3)} µm"
    if last.finish_um > finish.high * 1.001:
        text = f"{leaves}; {plain(finish.typical, 3)} µm was wanted."
        further = _bridge(last, (max(finish.typical / 1.5, last.finish_um / 2.25), 0.0), limits, drawer)
        return [Finding("warning", f"{text} {further} could follow it." if further else text, "finish-not-reached")]
    if last.finish_um < finish.low * 0.999:
        text = f"{leaves}: shinier than the {plain(finish.typical, 3)} µm that was asked. Nothing at hand that may be used leaves that finish."
        return [Finding("warning", text, "finish-passed")]
    return []


def _bridge(before: Grade, down_to_um: tuple[float, float], limits: PlanLimits, drawer: Drawer) -> str:
    """A grade for a gap, by name and size, and whether it lies in the drawer already; empty where none would do."""
    grade = missing_grade(before, down_to_um, limits, drawer)
    if grade is None:
        return ""
    at_hand = any((g.scale, g.name) == (grade.scale, grade.name) for g in drawer.owned)
    return f"{grade.label} ({plain(grade.finish_um, 3)} µm{', which is at hand' if at_hand else ', not at hand'})"


def _listed(grades: Sequence[Grade]) -> str:
    names = [grade.label for grade in grades[:3]]
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]


def _rate_findings(first: Step, limits: PlanLimits) -> list[Finding]:
    if first.calibrated:
        return [Finding("ok", "Times are from this bench's own log.", "calibrated")]
    if limits.rates is not None and not limits.rates.calibrated:
        return [limits.rates.finding]
    text = "Times are not calibrated: a rule of thumb, good to a factor of 3. Three measured stages make them your own."
    return [Finding("note", text, "not-calibrated")]


def _trim_findings(steps: Sequence[Step], limits: PlanLimits) -> list[Finding]:
    assumed = list(assumed_findings(limits))
    if limits.trim in ("none", "not said"):
        return assumed
    if limits.trim == "plated":
        return [
            *assumed,
            Finding("warning", "Plated trim stays masked to the end; a soft cloth at most.", "trim-masked"),
        ]
    at = next((step for step in steps if step.unmask), None)
    if at is None:
        text = (
            f"No step is fine enough for trim ({plain(limits.unmask_um, 2)} µm or finer): it stays masked to the end."
        )
        return [*assumed, Finding("note", text, "trim-masked")]
    rest = len(steps) - at.number + 1
    through = f"the last {rest}" if rest > 1 else "this last step"
    text = f"Unmask solid trim at {at.grade.label} and take it through {through}. Plated or unknown trim stays masked."
    return [*assumed, Finding("note", text, "trim-unmask")]


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
