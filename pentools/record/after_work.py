"""What was weighed before the work and what after it: the one says how the pen came, the other what it does now."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.record.stages.job.work_kinds import MATERIAL, WORK
from pentools.record.stages.seal.kinds import SEALANT, TRIAL
from pentools.record.stages.weighing.filling import FillCycle, capacity_of, cycles
from pentools.record.stages.weighing.kinds import WEIGHING
from pentools.record.view import SPOILT, once_a_state

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer

__all__ = ["changed_at", "drawn_at_first", "filled_now", "now_ml"]

_CHANGES = ("mend", "seal", "nib", "clean")


@once_a_state
def now_ml(job: Job) -> SumAnswer | None:
    """The capacity of the last filling, unless it lies before the work; None where there is none that counts."""
    found = cycles(job)
    if not found or _before_the_work(job, found[-1]):
        return None
    return _answer(job, found[-1])


def filled_now(job: Job) -> tuple[float | None, float | None]:
    """What the last filling after the work comes to: its share of what the pen holds [1] and its volume [mL]; None where not told."""
    filled = now_ml(job)
    if filled is None or not filled.data["gain_told"]:
        return None, None
    share = filled.data["share_filled"]
    return share if isinstance(share, float) else None, filled.data["volume_ml"]


@once_a_state
def drawn_at_first(job: Job) -> SumAnswer | None:
    """The capacity of the first filling where it was weighed before the work; None where it was not."""
    found = cycles(job)
    if not found or changed_at(job) is None or not _before_the_work(job, found[0]):
        return None
    return _answer(job, found[0])


def _answer(job: Job, cycle: FillCycle) -> SumAnswer | None:
    try:
        return capacity_of(job, cycle)
    except SPOILT:
        return None


def changed_at(job: Job) -> int | None:
    """The place of the first thing done to the pen that can change how it fills."""
    done = [logged.entry for logged in job.log(MATERIAL) if logged.values.way == "added"]
    done += [logged.entry for logged in job.log(WORK) if logged.values.activity in _CHANGES]
    done += [logged.entry for logged in (*job.log(TRIAL), *job.log(SEALANT))]
    return min((job.place_of(entry) for entry in done), default=None)


def _before_the_work(job: Job, cycle: FillCycle) -> bool:
    first, named = changed_at(job), {*cycle.filled_ids, *cycle.gain_ids}
    weighed = [job.place_of(logged.entry) for logged in job.log(WEIGHING) if logged.entry.id in named]
    return first is not None and max(weighed, default=first) < first
