"""The least honest record of a pen: what has to be on record before it goes home, in the order of the work."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.record.job import Job
from pentools.record.stages.job.agree import answers_of
from pentools.record.stages.job.ending_kinds import EARLY, LIMIT, PICTURE, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER, PART_CONDITION, REQUEST
from pentools.record.stages.job.limits import limits_written
from pentools.record.stages.job.pictures import moments_of
from pentools.record.stages.job.release import ending
from pentools.record.stages.job.work_kinds import MATERIAL, WORK
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.weighing.kinds import LEAK_CHECK
from pentools.record.view import once_a_state

__all__ = ["Owed", "owed_by", "owed_findings"]

_MENDED = ("re-sac", "cork or ring", "diaphragm", "plunger", "whole")
_WORKED = (*_MENDED, "nib only", "finish only")


@dataclass(frozen=True, slots=True)
class Owed:
    """One thing that is owed.

    Parameters
    ----------
    key : str
        Its name.
    label : str
        A word or two for a button.
    words : str
        What to do, as a clause.
    stage, kind : str
        Where it is entered; an empty kind leaves the form to the stage.
    done : bool
        Whether it is on record.
    """

    key: str
    label: str
    words: str
    stage: str
    kind: str
    done: bool


@dataclass(frozen=True, slots=True)
class _Item:
    label: str
    words: str
    stage: str
    kind: str
    done: Callable[[Job], bool]
    works: tuple[str, ...] = ()
    early: bool = False


def _who(job: Job) -> bool:
    owner = job.newest(OWNER)
    return owner.owner is not None and (owner.contact or owner.address) is not None


def _pen(job: Job) -> bool:
    arrival = job.newest(ARRIVAL)
    return None not in (arrival.pen, arrival.system, arrival.material)


def _ended(job: Job) -> bool:
    result = job.newest(RESULT)
    return result.ending is not None and result.summary is not None


_ITEMS: dict[str, _Item] = {
    "who": _Item("who", "say whose pen it is and how to reach them", "intake", OWNER.key, _who, early=True),
    "pen": _Item("the pen", "say what arrived, how it fills and what it is made of", "intake", ARRIVAL.key, _pen, early=True),
    "asked": _Item("what is asked", "say what is asked, and what kind of work it is", "intake", REQUEST.key, lambda job: job.newest(REQUEST).asked is not None, early=True),
    "before": _Item("picture before", "take a picture before the work", "pictures", PICTURE.key, lambda job: "before" in moments_of(job)),
    "seen": _Item("what is seen", "look at it, and say what is wrong", "condition", PART_CONDITION.key, lambda job: bool(job.log(PART_CONDITION)), early=True),
    "yes": _Item("the yes", "get the owner’s yes, and its price", "agree", "yes", lambda job: bool(answers_of(job)), _WORKED),
    "done": _Item("what was done", "do the work; enter its minutes", "work log", WORK.key, lambda job: bool(minutes_by_activity(job)), _WORKED),
    "parts": _Item("in and out", "enter what went in and what came out", "work log", MATERIAL.key, lambda job: bool(job.log(MATERIAL)), _MENDED),
    "tested": _Item("a night filled", "let it rest filled overnight, and say whether it stayed dry", "fill test", LEAK_CHECK.key, lambda job: bool(job.log(LEAK_CHECK)), _MENDED),
    "left": _Item("what is left", "write what was left, or that nothing was", "limits", LIMIT.key, limits_written, _WORKED),
    "after": _Item("picture after", "take a picture after the work", "pictures", PICTURE.key, lambda job: "after" in moments_of(job), _WORKED),
    "ended": _Item("the end", "end the job", "release", RESULT.key, _ended, early=True),
}  # fmt: skip


@once_a_state
def owed_by(job: Job) -> tuple[Owed, ...]:
    """What a job's record owes, done or not.

    Returns
    -------
    tuple of Owed
        In the order of the work. A kind of work that was not said owes all; one that ended as stopped or returned
        owes only what was known by then.
    """
    work, early = job.newest(REQUEST).work, ending(job) in EARLY
    return tuple(
        Owed(key, item.label, item.words, item.stage, item.kind, item.done(job))
        for key, item in _ITEMS.items()
        if (item.early or not early) and (work is None or not item.works or work in item.works)
    )


def owed_findings(job: Job) -> tuple[Finding, ...]:
    """What is owed and not on record, as one finding.

    Returns
    -------
    tuple of Finding
        A warning; nothing where all of it is there.
    """
    names = [item.label for item in owed_by(job) if not item.done]
    variant = "open" if ending(job) is None else "ended"
    return (Finding("warning", f"job.owed:{variant}", names=names),) if names else ()
