"""How a mended pen fills beside the others of its filling system that this bench mended: counts and intervals alone."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

import msgspec

from pentools.books.asked import Question, ask_bench
from pentools.books.learning.time_taken import FINISHED
from pentools.calc.books.median import Median, median_of
from pentools.errors import RecordError
from pentools.numbers import fixed, percent
from pentools.record.after_work import filled_now
from pentools.record.job import jobs_on
from pentools.record.stages.job.coming_back import continued_on
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.release import ended_on, ending

if TYPE_CHECKING:
    from collections.abc import Callable

    from pentools.record.job import Job

__all__ = ["ENOUGH_OTHERS", "FILL", "JobFill", "beside_others", "fill_of"]

ENOUGH_OTHERS = 6
"""From six others on their middle has an interval of 95 % that rests on no shape of their scatter."""


class JobFill(msgspec.Struct, frozen=True, omit_defaults=True, gc=False):
    """How a job's pen fills after the work: `share` of what it holds [1], `ml` [mL]; None where it was not measured."""

    system: str = ""
    ended: dt.date | None = None
    share: float | None = None
    ml: float | None = None
    older: str = ""


def fill_of(job: Job) -> JobFill:
    """What a job's record says of how its pen fills; nothing for one that was not mended or not weighed after the work."""
    system, older = job.newest(ARRIVAL).system, continued_on(job)
    if ending(job) not in FINISHED or not system:
        return JobFill(older=older)
    return JobFill(system, ended_on(job), *filled_now(job), older)


FILL = Question("fill", JobFill, fill_of)


def beside_others(job: Job) -> str:
    """How it fills beside the bench's other pens of its system, as a sentence that an owner may read.

    Returns
    -------
    str
        The number of others, their middle and its interval; empty where the pen was not weighed after the work, or fewer
        than six others were. No other job is named, and none that ended later counts, so that the page stays as it was.
    """
    mine = fill_of(job)
    if mine.ml is None:
        return ""
    try:
        if len(jobs_on(job.bench)) <= ENOUGH_OTHERS:
            return ""
        told = ask_bench(job.bench, FILL).answers
    except RecordError:
        return ""
    others = [one for name, one in told.items() if name not in (job.name, mine.older) and _counts(one, mine, job.name)]
    shares = [one.share for one in others if one.share is not None]
    if mine.share is not None and len(shares) >= ENOUGH_OTHERS:
        return _said(len(shares), median_of(shares), percent, "fills to {} of what it holds")
    drawn = [one.ml for one in others if one.ml is not None]
    return (
        _said(len(drawn), median_of(drawn), lambda ml: f"{fixed(ml, 2)}\u202fmL", "draws {}")
        if len(drawn) >= ENOUGH_OTHERS
        else ""
    )


def _counts(one: JobFill, mine: JobFill, name: str) -> bool:
    """Whether it is another pen of the system, and ended no later."""
    earlier = one.ended is not None and mine.ended is not None and one.ended <= mine.ended
    return one.system == mine.system and one.older != name and earlier


def _said(n: int, middle: Median | None, shown: Callable[[float], str], verb: str) -> str:
    if middle is None:
        return ""
    low, high = shown(middle.low).rstrip("\u202f%mL"), shown(middle.high)
    what = verb.format(f"{shown(middle.median)} ({low} to {high})")
    return f"Compared with this bench’s other pens: of {n} others with this filling system the middle one {what}."
