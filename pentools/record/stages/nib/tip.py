"""The tip from the record: what the loupe showed, the plan of its smoothing, and the strokes against that plan."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.finish.grades import Grade
from pentools.calc.finish.reading import read_grade
from pentools.calc.nib.smoothing import SmoothingPlan, nib_smoothing_plan
from pentools.errors import InputError
from pentools.record.stages.finish.kinds import NIB_PLAN, PLAN
from pentools.record.stages.nib.kinds import LOUPE, SMOOTHED, SMOOTHING_PLAN, TIPPED, Loupe
from pentools.record.stages.nib.paper import newest
from pentools.record.view import once_a_state
from pentools.sums.finish.abrasives import read_owned
from pentools.tables.abrasives import catalogue, media
from pentools.tables.nib import figure, habits

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "Strokes",
    "aligned",
    "loupe",
    "loupe_findings",
    "nib_plan_of",
    "smoothing_findings",
    "strokes_done",
    "tipped",
]

OUT_OF_STEP_MM = 0.025  # 5 % of a tip of 0.5 mm


@dataclass(frozen=True, slots=True)
class Strokes:
    """What one grade has taken.

    Parameters
    ----------
    label : str
        The grade.
    strokes : int
        All strokes with it.
    unseen : int
        The most that were made between two looks.
    most : int or None
        The plan's end; None for a grade that is not in it.
    """

    label: str
    strokes: int
    unseen: int
    most: int | None


def loupe(job: Job, when: str = "") -> Loupe | None:
    """The newest look at the nib.

    Parameters
    ----------
    when : str
        "found" or "after"; empty for either.

    Returns
    -------
    Loupe or None
        None where nobody has looked.
    """
    return newest(job, LOUPE, when)


def aligned(job: Job) -> bool | None:
    """Whether the tines are level, by the newest look; as a plan of the finish had it, where there was none."""
    seen = loupe(job)
    return job.newest(NIB_PLAN).aligned if seen is None else seen.tines == "level"


def tipped(job: Job) -> bool | None:
    """Whether there is hard tipping to smooth, by the newest look; chipped, cracked or gone counts as none."""
    seen = loupe(job)
    return job.newest(NIB_PLAN).tipped if seen is None else TIPPED.get(seen.tipping or "")


def loupe_findings(job: Job) -> tuple[Finding, ...]:
    """What the newest look asks for."""
    seen = loupe(job)
    if seen is None:
        return ()
    found = []
    if seen.tines != "level":
        found.append(Finding("warning", "nib.align-first:now"))
    elif seen.step is not None and seen.step.value > OUT_OF_STEP_MM:
        found.append(Finding("warning", "nib.step-out", step=1000 * seen.step.value, limit=1000 * OUT_OF_STEP_MM))
    if seen.cracks not in (None, "none"):
        found.append(Finding("stop", "nib.cracked", where=LOUPE.field("cracks").shown(seen.cracks)))
    if seen.slit == "opening":
        found.append(Finding("warning", "nib.slit-opens"))
    if seen.gap is not None and seen.gap.value > 2 * (figure("gap-firm").typical or 0.0) + (
        figure("gap-doubt").typical or 0.0
    ):
        found.append(Finding("note", "nib.gap-wide", gap=seen.gap.value))
    if seen.tipping in ("cracked", "gone", "chipped"):
        found.append(Finding("warning", "nib.tip-lost"))
    return gravest_first(found)


@once_a_state
def nib_plan_of(job: Job) -> SmoothingPlan | None:
    """The short plan for the nib's tip: what was seen under the loupe and what is owned are not asked again.

    Returns
    -------
    SmoothingPlan or None
        None where it was not asked for, or no grade is named that could be used.
    """
    feel = job.newest(SMOOTHING_PLAN).feel or job.newest(NIB_PLAN).feel
    own = job.bench.strings("stock", "abrasives") or job.newest(PLAN).own
    if feel is None or not own:
        return None
    try:
        return nib_smoothing_plan(feel, habits(), read_owned(own), media(), aligned=aligned(job), tipped=tipped(job))
    except InputError:
        return None


@once_a_state
def strokes_done(job: Job) -> tuple[Strokes, ...]:
    """The strokes so far, grade by grade, in the order the grades were first used."""
    plan = nib_plan_of(job)
    most = {} if plan is None else {_key(step.grade): step.most_strokes for step in plan.steps}
    found: dict[str, list[int]] = {}
    labels: dict[str, str] = {}
    open_run = 0
    for logged in job.log(SMOOTHED):
        said = logged.values
        grade = _grade(said.grade or "")
        key = _key(grade) if grade is not None else (said.grade or "")
        labels.setdefault(key, grade.label if grade is not None else said.grade or "")
        run = found.setdefault(key, [0, 0])
        run[0] += said.strokes or 0
        open_run += said.strokes or 0
        run[1] = max(run[1], open_run)
        open_run = 0 if said.looked is True else open_run
    return tuple(Strokes(labels[key], total, unseen, most.get(key)) for key, (total, unseen) in found.items())


def smoothing_findings(job: Job) -> tuple[Finding, ...]:
    """Strokes past the plan, strokes without a look, and what the clean starts say."""
    found = []
    plan = nib_plan_of(job)
    every = plan.steps[0].check_every if plan is not None and plan.steps else habits()[0].check_every
    for one in strokes_done(job):
        if one.most is not None and one.strokes > one.most:
            found.append(Finding("stop", "nib.strokes-past", grade=one.label, strokes=one.strokes, most=one.most))
        elif one.most is None and plan is not None and plan.steps:
            found.append(Finding("warning", "nib.strokes-unplanned", grade=one.label))
        if one.unseen > every:
            found.append(Finding("warning", "nib.strokes-unseen", grade=one.label, strokes=one.unseen, every=every))
    starts = [logged.values.starts for logged in job.log(SMOOTHED) if logged.values.starts is not None]
    if starts and starts[-1] == 10:
        found.append(Finding("ok", "nib.starts-clean"))
    elif len(starts) > 1 and starts[-1] < max(starts[:-1]):
        found.append(Finding("warning", "nib.starts-worse", now=starts[-1], before=max(starts[:-1])))
    return gravest_first(found)


def _key(grade: Grade) -> str:
    return f"{grade.scale} {grade.name}"


def _grade(text: str) -> Grade | None:
    try:
        return read_grade(text, catalogue())
    except InputError:
        return None
