"""What lies ahead of a job: the stages on its sheet, what comes next, and what waits and why."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pentools.record.holds import HOLDS, held, state_of
from pentools.record.job import Job
from pentools.record.kinds import Stage
from pentools.record.registry import all_stages
from pentools.record.stages.job.intake_kinds import REQUEST
from pentools.record.stages.job.release import ending
from pentools.record.stages.job.works import STAGES_AT_ONCE
from pentools.record.view import once_a_state

__all__ = ["Ahead", "ahead_of", "further_stages", "sheet_stages"]

_NEXT: Mapping[str, str] = {
    "intake": "say whose pen it is, what arrived and what is asked",
    "identify": "note what is stamped on it",
    "condition": "look at it part by part",
    "agree": "get the owner’s yes, and its price",
    "open": "open it",
    "clean": "clean it",
    "work log": "enter the minutes, and what went in and came out",
    "seal": "measure for the seal",
    "fill test": "weigh it empty, then filled",
    "finish": "plan the finish",
    "limits": "write what was left, or that nothing was",
    "pictures": "take a picture before the work",
    "release": "end the job",
}
_HOLDS_OF: Mapping[str, tuple[str, ...]] = {
    "open": ("heat",),
    "clean": ("soak",),
    "seal": ("sealant",),
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
    words : str
        The next step, as a clause.
    then : str
        The one after it; empty where there is none.
    waits : tuple of (str, str)
        What is held now, and why.
    """

    stage: str
    words: str
    then: str
    waits: tuple[tuple[str, str], ...]


@once_a_state
def sheet_stages(job: Job) -> tuple[Stage, ...]:
    """The stages that stand on the sheet at once: those of the kind of work, and those that hold entries."""
    work = job.newest(REQUEST).work
    wanted = STAGES_AT_ONCE.get(work or "")
    return tuple(stage for stage in all_stages() if wanted is None or stage.key in wanted or job.record.live(stage.key))


def further_stages(job: Job) -> tuple[Stage, ...]:
    """The stages folded under "further"."""
    at_once = sheet_stages(job)
    return tuple(stage for stage in all_stages() if stage not in at_once)


@once_a_state
def ahead_of(job: Job) -> Ahead:
    """What comes next in a job, and what waits and why."""
    if ending(job) is not None:
        return Ahead("", "nothing; the job has ended", "", ())
    coming = [(stage, state) for stage in sheet_stages(job) if (state := state_of(job, stage)).word != "done"]
    steps = [
        (stage.key, state.reason if state.word == "open" and state.reason else _NEXT[stage.key])
        for stage, state in coming
        if not (stage.key == "release" and len(coming) > 1)
    ]
    begun = {stage.key for stage, state in coming if state.word in ("open", "held")} | {steps[0][0]}
    waits = tuple(
        (HOLDS[key].step, reason)
        for stage, _ in coming
        if stage.key in begun and (stage.key != "release" or len(coming) == 1)
        for key in _HOLDS_OF.get(stage.key, ())
        if (reason := held(job, key))
    )
    return Ahead(steps[0][0], steps[0][1], steps[1][1] if len(steps) > 1 else "", waits)
