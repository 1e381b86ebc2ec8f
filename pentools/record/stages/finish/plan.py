"""The plan of a finish from the record: the progression, the steps done against it, and what comes next."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from msgspec.structs import asdict

from pentools.calc.finish.grades import Grade
from pentools.calc.finish.limits import NOT_SAID, Interval
from pentools.calc.finish.progression import rate_of
from pentools.calc.finish.reading import read_grade
from pentools.calc.finish.types import Progression, Step
from pentools.errors import InputError
from pentools.fields import Value
from pentools.record.stages.finish.facts import material_of, overruled
from pentools.record.stages.finish.kinds import PLAN, STEP
from pentools.record.stages.finish.kinds import Step as StepForm
from pentools.record.stages.finish.rates import bench_rates
from pentools.sums.base import Inputs, SumAnswer
from pentools.sums.finish.abrasives import ABRASIVES, progression_answer
from pentools.sums.finish.surface import read_surface
from pentools.tables.abrasives import catalogue
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "Progress", "StepDone", "next_step", "plan_answer", "plan_of", "plan_values",
    "progress_of", "same_grade", "steps_done", "working_plan",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class StepDone:
    """One step as it was done.

    Parameters
    ----------
    entry_id : str
        The entry it comes from.
    text : str
        The grade as typed.
    grade : Grade or None
        The grade; None where the text names none.
    zone : str
        Where it was used.
    form : kinds.Step
        All that was entered.
    planned : Step or None
        The plan's step that it carries out; None for one that is not in the plan, or a second go.
    removed_um : Interval or None
        Stock taken [µm a side], estimated: the plan's figure, else minutes times rate; None where neither is known.
    """

    entry_id: str
    text: str
    grade: Grade | None
    zone: str
    form: StepForm
    planned: Step | None
    removed_um: Interval | None

    @property
    def label(self) -> str:
        """The grade's name."""
        return self.grade.label if self.grade is not None else self.text


@dataclass(frozen=True, slots=True)
class Progress:
    """How far the finish has come.

    Parameters
    ----------
    plan : Progression
        The plan as asked.
    working : Progression
        The plan that is followed: the reduced one where the whole is over budget.
    done : tuple of StepDone
        The steps in the plan's zone, in order.
    elsewhere : tuple of StepDone
        Steps in other zones.
    next_step : Step or None
        What comes next; None where the plan is through, there is none, or it does not say where on the pen.
    removed_um : Interval
        Stock taken so far [µm a side], as far as it can be estimated from the steps.
    not_estimated : int
        Steps of which nothing can be estimated, so that they are not in it.
    """

    plan: Progression
    working: Progression
    done: tuple[StepDone, ...]
    elsewhere: tuple[StepDone, ...]
    next_step: Step | None
    removed_um: Interval
    not_estimated: int

    @property
    def estimated(self) -> int:
        """How many steps are in `removed_um`."""
        return len(self.done) - self.not_estimated

    @property
    def planned_done(self) -> int:
        """How many of the plan's steps were carried out."""
        return sum(step.planned is not None for step in self.done)


def plan_values(job: Job, given: Mapping[str, Value] | None = None) -> dict[str, Value]:
    """Everything the abrasives sum asks for: as entered, else as bench and intake say, else the sum's default.

    Parameters
    ----------
    given : mapping or None
        Values of a plan that is not saved yet; the record's by default.

    Returns
    -------
    dict
        Field name to value.
    """
    entered = asdict(job.newest(PLAN)) if given is None else given
    values = ABRASIVES.usual()
    values.update({name: value for name, value in entered.items() if name in values and value is not None})
    values["material"] = entered.get("material") or material_of(job)
    values["own"] = entered.get("own") or job.bench.strings("stock", "abrasives")
    values["stock_factor"] = 3.0 if entered.get("cautious") is True else 2.0
    return values


def plan_answer(job: Job, given: Mapping[str, Value] | None = None) -> SumAnswer | None:
    """The abrasives sum's answer for a job, with the bench's own rates.

    Parameters
    ----------
    given : mapping or None
        Values of a plan that is not saved yet; the record's by default.

    Returns
    -------
    SumAnswer or None
        None while defect or grades are missing; a material that is not named is the strictest.

    Raises
    ------
    InputError
        If something entered cannot be used, such as a grade without its scale.
    """
    if given is None and not job.log(PLAN):
        return None
    values = plan_values(job, given)
    if not (values["defect"] and values["own"]):
        return None
    material = str(values["material"] or "")
    rates = bench_rates(job.bench, read_surface(material).material.name, job)
    return progression_answer(Inputs(values), rates, **overruled(job, material))


def plan_of(job: Job) -> Progression | None:
    """The progression that the record's plan comes to; None while it is not complete or cannot be read."""
    try:
        answer = plan_answer(job)
    except InputError:
        return None
    return answer.result if answer is not None and isinstance(answer.result, Progression) else None


def working_plan(plan: Progression) -> Progression:
    """The plan that is followed: the one that only reduces the defect, where the whole is over budget."""
    return plan.reduced if plan.reduced is not None and not plan.within_budget else plan


def steps_done(job: Job, working: Progression | None = None) -> tuple[StepDone, ...]:
    """The steps in the order they were done.

    Parameters
    ----------
    working : Progression or None
        The plan they are held against; without one nothing is planned or estimated.

    Returns
    -------
    tuple of StepDone
        All of them, in every zone.
    """
    found: list[StepDone] = []
    carried_out: set[int] = set()
    for logged in job.log(STEP):
        form, text = logged.values, logged.values.grade or ""
        grade, zone = _grade(text), _zone_of(job, form.zone, working)
        planned = None
        if working is not None and grade is not None and zone == working.limits.zone.name:
            planned = next(
                (s for s in working.steps if same_grade(s.grade, grade) and s.number not in carried_out), None
            )
            grade = planned.grade if planned is not None else grade
        if planned is not None:
            carried_out.add(planned.number)
        removed = planned.removed_um if planned is not None else _by_time(grade, form.minutes, working)
        found.append(StepDone(logged.entry.id, text, grade, zone, form, planned, removed))
    return tuple(found)


def _zone_of(job: Job, typed: str | None, working: Progression | None) -> str:
    """Where a step was done: as typed; the plan's zone where nothing was typed, or the plan's place was."""
    said = job.newest(PLAN).zone
    if working is not None and typed in (None, said):
        return working.limits.zone.name
    return typed or said or NOT_SAID.name


def progress_of(job: Job) -> Progress | None:
    """How far a job's finish has come.

    Returns
    -------
    Progress or None
        None where there is no plan that can be worked out.
    """
    plan = plan_of(job)
    if plan is None:
        return None
    working = working_plan(plan)
    every = steps_done(job, working)
    done = tuple(step for step in every if step.zone == working.limits.zone.name)
    known = [step.removed_um for step in done if step.removed_um is not None]
    total = Interval(sum(r.low for r in known), sum(r.typical for r in known), sum(r.high for r in known))
    elsewhere = tuple(step for step in every if step not in done)
    coming = _next(working.steps, done) if plan.limits.zone_said else None
    return Progress(plan, working, done, elsewhere, coming, total, len(done) - len(known))


def next_step(job: Job) -> Step | None:
    """The plan's next step: the same grade again while older lines are left, else the first that is finer.

    Returns
    -------
    Step or None
        None where there is no plan, or it is through.
    """
    progress = progress_of(job)
    return progress.next_step if progress is not None else None


def _next(steps: Sequence[Step], done: Sequence[StepDone]) -> Step | None:
    if not done:
        return steps[0] if steps else None
    last = done[-1]
    if last.form.cleared is False:
        again = next((s for s in steps if last.grade is not None and same_grade(s.grade, last.grade)), None)
        if again is not None:
            return again
    reached = max((s.planned.number for s in done if s.planned is not None), default=0)
    finest = min((s.grade.finish_um for s in done if s.grade is not None), default=float("inf"))
    return next((s for s in steps if s.number > reached and s.grade.finish_um < finest), None)


def same_grade(one: Grade, other: Grade) -> bool:
    """Whether two grades are the same name on the same scale, whatever their figures."""
    return (one.scale, one.name) == (other.scale, other.name)


def _grade(text: str) -> Grade | None:
    try:
        return read_grade(text, catalogue())
    except InputError:
        return None


def _by_time(grade: Grade | None, minutes: Reading | None, working: Progression | None) -> Interval | None:
    if grade is None or working is None or minutes is None:
        return None
    rate = rate_of(grade, working.limits).rate
    return Interval(rate.low * minutes.value, rate.typical * minutes.value, rate.high * minutes.value)
