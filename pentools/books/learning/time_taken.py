"""What each job says of its time and money: minutes, whether they are whole, what it cost, what had been estimated."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from decimal import Decimal
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

import msgspec

from pentools.books.asked import Question
from pentools.record.spending import cost_of_parts
from pentools.record.stages.finish.kinds import STEP
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.agree_kinds import ESTIMATE, PROPOSAL
from pentools.record.stages.job.coming_back import continued_on
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, PART_CONDITION, REQUEST
from pentools.record.stages.job.release import ended_on
from pentools.record.stages.job.work_kinds import TIMER_STOP, WORK
from pentools.record.stages.job.work_log import LONGEST_SPELL_MIN, minutes_by_activity, running_timer, timed_spells
from pentools.record.stages.nib.kinds import ADJUST, SMOOTHED
from pentools.record.stages.repairs.kinds import REPAIR
from pentools.record.stages.seal.kinds import SEALANT, TRIAL
from pentools.record.stages.treatment.facts import materials_of
from pentools.systems.registry import SYSTEMS

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.units import Reading

__all__ = ["DOUBTS", "FINISHED", "TIME", "JobTime", "money_typed", "time_of"]

FINISHED = ("done", "done with limits")
DOUBTS: Mapping[str, str] = MappingProxyType({
    "none": "no minutes were entered",
    "running": "its timer still runs",
    "forgotten": "its timer ran for more than six hours at a stretch",
    "polishing": "its polishing steps alone took longer than the minutes entered",
    "late": "work was entered on a later day than the last minutes",
})  # fmt: skip
"""Why a job's minutes are plainly not whole, or too many; each as a clause."""
_WORKED: tuple[Any, ...] = (TRIAL, SEALANT, REPAIR, STEP, ADJUST, SMOOTHED)
_UNKNOWN = "unknown"


class JobTime(msgspec.Struct, frozen=True, omit_defaults=True, gc=False):
    """A job's time and money; amounts are in the bench's own currency, those in another are left out."""

    system: str = ""
    family: str = ""
    work: str = ""
    material: str = ""
    ending: str = ""
    arrived: dt.date | None = None
    ended: dt.date | None = None
    minutes: dict[str, float] = {}
    doubt: str = ""
    parts: Decimal | None = None
    price: Decimal | None = None
    hours: tuple[float | None, float | None, float | None] = (None, None, None)
    estimate: tuple[Decimal | None, Decimal | None] = (None, None)
    limit: Decimal | None = None
    grave: bool = False
    polish: bool = False
    nib: bool = False
    older: str = ""

    @property
    def whole_min(self) -> float:
        """All its minutes [min]."""
        return sum(self.minutes.values())


def time_of(job: Job) -> JobTime:
    """What a job's record says of its time and money."""
    arrival, request = job.newest(ARRIVAL), job.newest(REQUEST)
    result, estimate = job.newest(RESULT), job.newest(ESTIMATE)
    minutes = dict(minutes_by_activity(job))
    low, likely, high = (_value(getattr(estimate, f"hours_{name}")) for name in ("low", "likely", "high"))
    agreed = consents(job)
    proposed = {logged.values.part for logged in job.log(PROPOSAL)}
    system = arrival.system if arrival.system in SYSTEMS else None
    return JobTime(
        system=system or "",
        family=SYSTEMS[system].family.key if system else "",
        work=request.work or "",
        material=_material(job),
        ending=result.ending or "",
        arrived=_day(arrival.arrived_on),
        ended=ended_on(job),
        minutes=minutes,
        doubt=_doubt(job, minutes),
        parts=cost_of_parts(job),
        price=money_typed(job, result.price),
        hours=(low, likely, high),
        estimate=(money_typed(job, estimate.price_low), money_typed(job, estimate.price_high)),
        limit=money_typed(job, request.price_limit),
        grave=any((logged.values.severity or "0") >= "3" for logged in job.log(PART_CONDITION)),
        polish=agreed.get("polish") is True or minutes.get("finish", 0) > 0,
        nib=agreed.get("nib work") is True or minutes.get("nib", 0) > 0 or bool(proposed & {"nib", "feed"}),
        older=continued_on(job),
    )


TIME = Question("time taken", JobTime, time_of)


def money_typed(job: Job, typed: str | None) -> Decimal | None:
    """An amount as typed, where it is in the bench's own currency; else None."""
    money = job.money(typed)
    own = job.bench.currency
    return money.amount if money is not None and money.currency == own else None


def _material(job: Job) -> str:
    """What the barrel is made of, as the tables name it; empty where it is not known."""
    found = materials_of(job, "barrel")[0]
    return "" if found == _UNKNOWN else found


def _doubt(job: Job, minutes: Mapping[str, float]) -> str:
    """Why its minutes are not to be built on: a key of `DOUBTS`, or empty."""
    if not minutes:
        return "none"
    if running_timer(job) is not None:
        return "running"
    if any(spell.minutes > LONGEST_SPELL_MIN for spell in timed_spells(job)):
        return "forgotten"
    polished = sum(step.values.minutes.value for step in job.log(STEP) if step.values.minutes is not None)
    if polished > sum(minutes.values()):
        return "polishing"
    worked = [entry.time.date() for entry in job.entered(*_WORKED)]
    timed = [entry.time.date() for entry in job.entered(WORK, TIMER_STOP)]
    return "late" if worked and max(worked) > max(timed, default=dt.date.min) else ""


def _day(typed: str | None) -> dt.date | None:
    return None if typed is None else dt.date.fromisoformat(typed)


def _value(reading: Reading | None) -> float | None:
    return None if reading is None else reading.value
