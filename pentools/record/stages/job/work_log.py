"""The work log: minutes by activity, parts and materials in and out, departures from what was agreed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.record.kinds import Stage, StageState
from pentools.record.spending import spending_of
from pentools.record.stages.job.work_kinds import ACTIVITIES, DEPARTURE, MATERIAL, TIMER_START, TIMER_STOP, WORK
from pentools.units import Reading

if TYPE_CHECKING:
    import datetime as dt

    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = ["ACTIVITIES", "WORK_LOG", "minutes_by_activity", "running_timer"]


def running_timer(job: Job) -> Entry | None:
    """The timer start that has no stop yet; None where no timer runs."""
    last = None
    for entry in job.record.live("work log"):
        if entry.kind == TIMER_START.key:
            last = entry
        elif entry.kind == TIMER_STOP.key:
            last = None
    return last


def timed_spells(job: Job) -> list[tuple[str, float, str, dt.datetime]]:
    """The spells the timer measured: activity, minutes, what was done, when begun."""
    spells, start = [], None
    for entry in job.record.live("work log"):
        if entry.kind == TIMER_START.key:
            start = entry
        elif entry.kind == TIMER_STOP.key and start is not None:
            minutes = (entry.time - start.time).total_seconds() / 60
            spells.append((str(start.data.get("activity")), minutes, str(entry.data.get("done", "")), start.time))
            start = None
    return spells


def minutes_by_activity(job: Job) -> dict[str, float]:
    """Minutes of work by activity key, from typed minutes and from the timer.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    dict
        Activity key to minutes [min], in the order of `ACTIVITIES`, without those that took none.
    """
    totals = {key: 0.0 for key, _ in ACTIVITIES}
    for _, values in job.log("work log", "work"):
        minutes = values["minutes"]
        assert isinstance(minutes, Reading)
        totals[str(values["activity"])] += minutes.value
    for activity, minutes_run, _, _ in timed_spells(job):
        totals[activity] += minutes_run
    return {key: value for key, value in totals.items() if value > 0}


def _state(job: Job) -> StageState:
    if running_timer(job) is not None:
        return StageState("open", "the timer is running")
    return StageState("open" if job.record.live("work log") else "not begun")


def _checks(job: Job) -> tuple[Finding, ...]:
    found = []
    if running_timer(job) is not None:
        found.append(Finding("warning", "job.timer-running"))
    found += [
        Finding("warning", "job.timer-long", hours=minutes / 60)
        for _, minutes, _, _ in timed_spells(job)
        if minutes > 6 * 60
    ]
    money = spending_of(job)
    if job.held("spend"):
        found.append(Finding("warning", "job.ceiling", what=job.held("spend")))
    found += [
        Finding("note", "job.cost", text=text, currency=money.currency)
        for text in (money.not_counted if money.ceiling is not None else ())
    ]
    return tuple(found)


WORK_LOG = Stage(
    "work log",
    "Work log",
    "Minutes by activity, what went in and came out, and where the work departed from what was agreed.",
    (WORK, TIMER_START, TIMER_STOP, MATERIAL, DEPARTURE),
    panel="pentools.panels.stages.job.work_log:WorkLogPanel",
    section="pentools.writeup.sections.job.work_log:section",
    state=_state,
    checks=_checks,
)
