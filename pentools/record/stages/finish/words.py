"""What the finish comes to, in words: one sentence, the findings, and what was left and why."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.treatment.materials import UNKNOWN
from pentools.errors import InputError
from pentools.numbers import plain
from pentools.record.stages.finish.facts import material_of
from pentools.record.stages.finish.kinds import PLAN, ZONE, Zone
from pentools.record.stages.finish.plan import Progress, plan_answer, progress_of, same_grade, steps_done
from pentools.record.stages.finish.rates import bench_log, bench_rates
from pentools.record.stages.finish.removal import RemovedSoFar, removed_so_far
from pentools.record.stages.treatment.facts import materials_of
from pentools.sums.finish.surface import read_surface
from pentools.tables.abrasives import zones

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Left", "finish_findings", "finish_sentence", "left_and_why", "zone_stretch"]

_RATES_WORTH_SAYING = 1


@dataclass(frozen=True, slots=True)
class Left:
    """One thing that was left, and why."""

    what: str
    why: str


def finish_sentence(job: Job, *, ahead: bool = True) -> str:
    """Where the finish stands, as one sentence a restorer would say.

    Parameters
    ----------
    ahead : bool
        Whether to say what comes next: yes at the bench, no on a page.

    Returns
    -------
    str
        What is done, what it took of what the zone can spare, and what comes next.
    """
    progress = progress_of(job)
    if progress is None:
        return _unplanned(job)
    if not progress.working.steps:
        return progress.plan.findings[0].text
    if not progress.plan.limits.zone_said and not progress.done:
        answer = plan_answer(job)
        return answer.sentence if answer else _unplanned(job)
    if not progress.done:
        answer = plan_answer(job)
        first, words = progress.working.steps[0], answer.sentence if answer else ""
        return f"{words} It begins with {first.grade.label}, {_wet(first.wet)}." if ahead else f"Planned: {words}"
    return _under_way(job, progress, ahead)


def _unplanned(job: Job) -> str:
    done = dict.fromkeys(step.label for step in steps_done(job))
    if done:
        return f"Worked with {', '.join(done)}, without a plan: what that took off is not known."
    return "Nothing is planned yet: say how deep the worst scratch worth removing is, and what finish is wanted."


def _under_way(job: Job, progress: Progress, ahead: bool) -> str:
    taken, last, coming = _taken(progress, removed_so_far(job, progress)), progress.done[-1], progress.next_step
    if coming is None:
        finish = f", a finish like {plain(last.grade.finish_um, 3)} µm" if last.grade is not None else ""
        return f"Finished with {last.label}{finish}, in {_count(len(progress.done), 'step')}: {taken}."
    total = len(progress.working.steps)
    so_far = f"{progress.planned_done} of {total} steps done, the last with {last.label}: {taken}."
    if not ahead:
        return so_far
    same = last.grade is not None and same_grade(last.grade, coming.grade)
    again = " once more, until the older lines are gone" if same else ""
    return f"{so_far} Next: {coming.grade.label}{again}, {_wet(coming.wet)}, {coming.direction}."


def finish_findings(job: Job) -> tuple[Finding, ...]:
    """Everything worth knowing about a job's finish, gravest first.

    Returns
    -------
    tuple of Finding
        On the plan, the zones, the steps, the removal and the bench's rates.
    """
    found: list[Finding] = []
    try:
        plan_answer(job)
    except InputError as error:
        found.append(Finding("stop", "finish.plan-unreadable", why=str(error)))
    progress = progress_of(job)
    if progress is not None:
        found += progress.plan.findings
        found += removed_so_far(job, progress).findings
    elif job.log(PLAN):
        found.append(Finding("warning", "finish.plan-incomplete"))
    found += [*_zone_findings(job), *_step_findings(job, progress), *_material_findings(job), *_rate_findings(job)]
    return gravest_first(found)


def left_and_why(job: Job) -> tuple[Left, ...]:
    """What was left, and why: the rest of a defect, zones that can spare nothing, a finish stopped short.

    Returns
    -------
    tuple of Left
        In the order: defect, zones, finish.
    """
    found: list[Left] = []
    progress = progress_of(job)
    if progress is not None and progress.plan.reduced is not None:
        plan, working = progress.plan, progress.working
        rest = plan.defect_um.typical - working.defect_um.typical
        why = f"all of it would have cost about {plain(plan.removed_total_um.typical, 2)} µm a side, and “{plan.limits.zone.name}” can spare {plain(plan.budget_high_um, 3)} µm"
        found.append(Left(f"About {plain(rest, 2)} µm of the defect’s {plain(plan.defect_um.typical, 3)} µm", why))
    elif progress is not None and not progress.working.steps:
        found.append(Left("The surface as it was", progress.plan.findings[0].text.rstrip(".")))
    budgets = zones()
    for logged in job.log(ZONE):
        zone = budgets.get(logged.values.zone or "")
        if zone is None or zone.budget_high_um > 0.5:
            continue
        found.append(Left(f"{_zone_name(logged.values)}, with the scratches in it", zone.text))
    if progress is not None and progress.done and progress.next_step is not None:
        last, wanted = progress.done[-1], progress.working.finish_um
        if last.grade is not None and last.grade.finish_um > wanted * 1.001:
            found.append(
                Left(
                    f"A finish like {plain(last.grade.finish_um, 3)} µm where {plain(wanted, 3)} µm was planned",
                    f"{_count(len(progress.working.steps) - progress.planned_done, 'step')} of the plan not done",
                )
            )
    return tuple(found)


def zone_stretch(zone: Zone) -> str:
    """From where to where a zone runs, in words; empty for the whole part."""
    if zone.start_mm is None and zone.end_mm is None:
        return ""
    begin = "0" if zone.start_mm is None else f"{zone.start_mm.value:g}"
    return f"from {begin} mm" if zone.end_mm is None else f"{begin} to {zone.end_mm.value:g} mm"


def _zone_name(values: Zone) -> str:
    part, stretch = (values.part or "").replace("-", " "), zone_stretch(values)
    part = "end of the barrel" if part == "end" else part
    zone = values.zone or ""
    name = {
        "plain barrel": f"The plain {part}", "near an imprint": f"The {part} near the imprint",
        "imprint": f"The imprint on the {part}", "threads": "The cap threads" if "threads" in part else f"The threads of the {part}",
        "seat": f"The seat on the {part}", "plating": f"The plating of the {part}", "gold-filled": f"The gold-filled {part}",
        "solid gold nib": "The gold nib",
    }.get(zone, f"The {zone} of the {part}")  # fmt: skip
    return f"{name} ({stretch})" if stretch else name


def _taken(progress: Progress, removed: RemovedSoFar) -> str:
    surest, planned, spare = removed.surest, removed.by_plan_um, f"{plain(progress.plan.budget_high_um, 3)} µm"
    if surest is not None and surest.removed_um >= 2 * surest.u_um:
        return f"{surest.shown} µm a side taken, by {surest.way}, of the {spare} that can be spared"
    if planned is None:
        return f"what it took is not known; {spare} can be spared"
    low, typical, high = (plain(value, 2) for value in (planned.low, planned.typical, planned.high))
    ends = "" if low == high else f" ({low} to {high})"
    beside = f", {_count(progress.not_estimated, 'step')} not counted" if progress.not_estimated else ""
    return f"about {typical} µm a side taken, by the plan{ends}{beside}, of the {spare} that can be spared"


def _zone_findings(job: Job) -> list[Finding]:
    found = []
    budgets = zones()
    for logged in job.log(ZONE):
        zone = budgets.get(logged.values.zone or "")
        if zone is not None and zone.budget_high_um <= 0.5 and logged.values.masked is not True:
            found.append(Finding("warning", "finish.not-masked", zone=_zone_name(logged.values)))
    return found


def _step_findings(job: Job, progress: Progress | None) -> list[Finding]:
    found = []
    budgets = zones()
    before = None
    for step in steps_done(job, progress.working if progress else None):
        zone = budgets.get(step.zone)
        if zone is not None and zone.budget_high_um <= 0:
            found.append(Finding("stop", "finish.forbidden-zone", grade=step.label, zone=zone.name, why=zone.text))
        if step.grade is None:
            found.append(Finding("warning", "finish.unknown-grade", typed=step.text))
            continue
        same_zone = before is not None and before[0] == step.zone
        if same_zone and before is not None and step.grade.finish_um > before[1].finish_um * 1.001:
            worse = Finding(
                "warning", "finish.went-coarser", after=step.label, second=step.grade.finish_um, before=before[1].label,
                first=before[1].finish_um,
            )  # fmt: skip
            found.append(worse)
        before = (step.zone, step.grade)
    return found


def _material_findings(job: Job) -> list[Finding]:
    planned = job.newest(PLAN).material
    if planned is None:
        return []
    named = {name for part in ("cap", "barrel") for name in materials_of(job, part)} - {UNKNOWN}
    if named and read_surface(planned).material.name not in named:
        return [Finding("warning", "finish.material-differs", planned=planned, named=sorted(named))]
    return []


def _rate_findings(job: Job) -> list[Finding]:
    material = material_of(job)
    if material is None:
        return []
    log = [stage for stage in bench_log(job.bench, job) if stage.row.material == material]
    found = [bench_rates(job.bench, material, job).finding]
    small = sum(not stage.usable for stage in log)
    if small >= _RATES_WORTH_SAYING:
        found.append(Finding("note", "finish.too-small", stages=small, material=material))
    return found


def _wet(wet: bool) -> str:
    return "wet" if wet else "dry"


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"
