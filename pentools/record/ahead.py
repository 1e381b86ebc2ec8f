"""What lies ahead of a job: the stages on its sheet, what comes next, and what waits and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pentools.record.holds import HOLDS, held, state_of
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.owed import owed_by
from pentools.record.registry import all_stages, find_stage
from pentools.record.stages.job.intake_kinds import REQUEST
from pentools.record.stages.job.release import ending
from pentools.record.stages.job.works import STAGES_AT_ONCE
from pentools.record.view import once_a_state

__all__ = ["Ahead", "ahead_of", "further_stages", "sheet_stages"]

_NEXT: Mapping[str, str] = {
    "identify": "note what is stamped on it",
    "open": "open it",
    "clean": "clean it",
    "repairs": "mend the parts that the survey names",
    "seal": "measure for the seal",
    "closing": "put it back together, by its order",
    "fill test": "weigh it empty, then filled",
    "nib": "look at the nib under the loupe",
    "finish": "plan the finish",
}
"""What is next where a stage of work has not been begun; the stages of the frame are owed by the record itself."""
_BEFORE: Mapping[str, str] = {"identify": "yes", "agree": "done"}
"""The thing owed that a stage's own step comes before; other stages stand before what was done."""
_HOLDS_OF: Mapping[str, tuple[str, ...]] = {
    "open": ("heat",),
    "clean": ("soak",),
    "seal": ("sealant",),
    "nib": ("nib work",),
    "closing": ("close",),
    "finish": ("polish",),
    "work log": ("spend",),
    "release": ("release",),
}


@dataclass(frozen=True, slots=True)
class Ahead:
    """What lies ahead.

    Parameters
    ----------
    stage : str
        The stage of the next step; empty where the job has ended.
    kind : str
        The form of the next step; empty where the stage itself decides.
    words : str
        The next step, as a clause.
    then : str
        The one after it; empty where there is none.
    waits : tuple of (str, str)
        What is held now, and why.
    """

    stage: str
    kind: str
    words: str
    then: str
    waits: tuple[tuple[str, str], ...]


@once_a_state
def sheet_stages(job: Job) -> tuple[Stage, ...]:
    """The stages that stand on the sheet at once: those of the kind of work, and those that hold entries."""
    work = job.newest(REQUEST).work
    wanted = STAGES_AT_ONCE.get(work or "")
    more = ("posting",) if ending(job) is not None else ()
    return tuple(
        stage for stage in all_stages() if wanted is None or stage.key in (*wanted, *more) or job.record.live(stage.key)
    )


def further_stages(job: Job) -> tuple[Stage, ...]:
    """The stages folded under "further"."""
    at_once = sheet_stages(job)
    return tuple(stage for stage in all_stages() if stage not in at_once)


@once_a_state
def ahead_of(job: Job) -> Ahead:
    """What comes next in a job, and what waits and why."""
    if ending(job) is not None:
        posted = state_of(job, find_stage("posting"))
        if posted.word == "open":
            where = posted.reason[:1].lower() + posted.reason[1:]
            return Ahead("posting", "arrived", f"say how it arrived ({where})", "", ())
        return Ahead("", "", "nothing; the job has ended", "", ())
    coming = [(stage, state) for stage in sheet_stages(job) if (state := state_of(job, stage)).word != "done"]
    steps = _steps(job, coming)
    begun = {stage.key for stage, state in coming if state.word in ("open", "held")} | {steps[0][0]}
    last = len(steps) == 1
    waits = tuple(
        (HOLDS[key].step, reason)
        for stage, _ in coming
        if stage.key in begun and (stage.key != "release" or last)
        for key in _HOLDS_OF.get(stage.key, ())
        if (reason := held(job, key))
    )
    return Ahead(*steps[0], "" if last else steps[1][2], waits)


def _steps(job: Job, coming: list[tuple[Stage, StageState]]) -> list[tuple[str, str, str]]:
    """What is owed and not done, with the steps of the work where they belong: stage, kind and words; the end is the last."""
    by_stage = job.newest(REQUEST).work in (None, "whole")  # of other work, what was done may be all that is said
    steps: list[tuple[str, str, str]] = []
    waiting = [(stage.key, "", words) for stage, state in coming if (words := _words(stage, state, by_stage))]
    for owed in owed_by(job):
        here = [step for step in waiting if _BEFORE.get(step[0], "done") == owed.key]
        steps += here
        waiting = [step for step in waiting if step not in here]
        if owed.key == "ended":
            steps += waiting  # what is owed by none: a job that only looks may be opened all the same
        if not owed.done or owed.key == "ended":
            steps.append((owed.stage, owed.kind, owed.words))
    return steps


def _words(stage: Stage, state: StageState, by_stage: bool) -> str:
    if state.word == "open" and state.reason and (stage.key in _NEXT or stage.key in _BEFORE):
        return state.reason
    return _NEXT.get(stage.key, "") if state.word in ("open", "held") or by_stage else ""
