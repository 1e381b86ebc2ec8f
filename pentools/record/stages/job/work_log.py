"""The work log: minutes by activity, parts and materials in and out, departures from what was agreed."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from pentools.calc.base.findings import Finding
from pentools.record.forms import Logged
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.work_kinds import (
    ACTIVITIES,
    DEPARTURE,
    MATERIAL,
    NOTE,
    TIMER_START,
    TIMER_STOP,
    TOOL,
    WANTED,
    WORK,
    TimerStart,
)
from pentools.record.view import once_a_state

__all__ = ["LONGEST_SPELL_MIN", "WORK_LOG", "Spell", "minutes_by_activity", "running_timer", "timed_spells"]

LONGEST_SPELL_MIN = 360.0
"""A timer that ran longer at a stretch was forgotten; judged."""


@dataclass(frozen=True, slots=True)
class Spell:
    """A spell of work that the timer measured.

    Parameters
    ----------
    activity : str
        A key of `ACTIVITIES`.
    minutes : float
        How long [min]; 0 where the clock went back.
    done : str
        What was done; empty where nothing was said.
    begun : datetime
        When the timer was started.
    """

    activity: str
    minutes: float
    done: str
    begun: dt.datetime


def running_timer(job: Job) -> Logged[TimerStart] | None:
    """The timer start that has no stop yet; None where no timer runs."""
    return _timed(job)[1]


def timed_spells(job: Job) -> tuple[Spell, ...]:
    """The spells the timer measured, in the order of the record."""
    return _timed(job)[0]


@once_a_state
def _timed(job: Job) -> tuple[tuple[Spell, ...], Logged[TimerStart] | None]:
    begun = {id(logged.entry): logged for logged in job.log(TIMER_START)}  # not by their ids: a spoilt line has none
    over = {id(logged.entry): logged for logged in job.log(TIMER_STOP)}
    spells, start = [], None
    for entry in job.record.live("work log"):
        if id(entry) in begun:
            start = begun[id(entry)]
        elif id(entry) in over and start is not None:
            minutes = max(0.0, (entry.time - start.entry.time).total_seconds() / 60)
            done = over[id(entry)].values.done or ""
            spells.append(Spell(start.values.activity or "other", minutes, done, start.entry.time))
            start = None
    return tuple(spells), start


@once_a_state
def minutes_by_activity(job: Job) -> Mapping[str, float]:
    """Minutes of work by activity key, from typed minutes and from the timer.

    Returns
    -------
    mapping
        Activity key to minutes [min], in the order of `ACTIVITIES`, without those that took none.
    """
    totals = {key: 0.0 for key, _ in ACTIVITIES}
    for logged in job.log(WORK):
        if logged.values.minutes is not None:
            totals[logged.values.activity or "other"] += logged.values.minutes.value
    for spell in timed_spells(job):
        totals[spell.activity] += spell.minutes
    return MappingProxyType({key: value for key, value in totals.items() if value > 0})


def _state(job: Job) -> StageState:
    if running_timer(job) is not None:
        return StageState("open", "the timer is running")
    return StageState("open" if job.record.live("work log") else "not begun")


def _checks(job: Job) -> tuple[Finding, ...]:
    found = [Finding("warning", "job.timer-running")] if running_timer(job) is not None else []
    found += [
        Finding("warning", "job.timer-long", hours=spell.minutes / 60)
        for spell in timed_spells(job)
        if spell.minutes > LONGEST_SPELL_MIN
    ]
    return tuple(found)


WORK_LOG = Stage(
    "work log",
    "Work log",
    "Minutes by activity, what went in and came out, and where the work departed from what was agreed.",
    (WORK, TIMER_START, TIMER_STOP, MATERIAL, WANTED, DEPARTURE, TOOL, NOTE),
    panel="pentools.panels.stages.job.work_log:WorkLogPanel",
    section="pentools.writeup.sections.job.work_log:section",
    state=_state,
    checks=_checks,
)
