"""Where a job stands, as far as its record alone says: what is next, what it waits for, and every clock with its end."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

import msgspec

from pentools.books.asked import Question
from pentools.record.ahead import ahead_of
from pentools.record.came_with import lead_of
from pentools.record.entries import as_if_at
from pentools.record.stages.closing.proofs import owed_now
from pentools.record.stages.closing.work import clocks_of, closing_of
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import answers_of, departures_without_yes
from pentools.record.stages.job.agree_kinds import ESTIMATE, PROPOSAL
from pentools.record.stages.job.coming_back import continued_on
from pentools.record.stages.job.ending_kinds import FOLLOWED_UP, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL, REQUEST
from pentools.record.stages.job.posting_kinds import ARRIVED, PARCEL
from pentools.record.stages.job.release import ended_on
from pentools.record.stages.job.work_kinds import DEPARTURE, WANTED
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.repairs.work import away, curing
from pentools.record.stages.seal.kinds import SEALANTS
from pentools.record.stages.seal.proof import earliest_next_step
from pentools.record.stages.treatment.baths import drying_of, running_soaks

if TYPE_CHECKING:
    from collections.abc import Iterator

    from pentools.record.job import Job

__all__ = ["STANDING", "Clock", "Standing", "WantedPart", "parts_waited_for"]

_LONG_AGO = dt.datetime(1970, 1, 2, tzinfo=dt.UTC)
_AT_LAST = dt.datetime(2199, 12, 30, tzinfo=dt.UTC)
_NAMES = dict(PARTS)


class Clock(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """Something that ends by itself: what, of which sort, when; a soak without a limit has no end."""

    what: str
    sort: str
    until: str | None


class WantedPart(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """A part that the job waits for or waited for; days as year-month-day."""

    what: str
    part: str | None
    since: str
    ordered_on: str | None
    expected_by: str | None
    arrived_on: str | None


class Standing(msgspec.Struct, frozen=True, array_like=True, gc=False):
    """Where a job stands; days as year-month-day, moments with their zone.

    Parameters
    ----------
    pen, system : str or None
        What it is.
    next, stage : str
        The next step as a clause, once every clock has run out, and its stage; empty where nothing is next.
    holds : tuple of (str, str)
        Hold points that stand, and why.
    lead, older : str or None
        The parcel's first job, and the job that this one goes on from.
    begun, touched : str
        The day it arrived, else of its first entry; the day of its newest entry. Empty where there is none.
    promised_by : str or None
        The day promised.
    hours_left : float or None
        Likely hours by the estimate less those worked, 0 or more [h]; None where nothing was estimated.
    asks : tuple of (str, str)
        What the owner is asked for, and since when.
    parts : tuple of WantedPart
        Every part that was ever waited for.
    away : tuple of (str, str, str or None)
        Parts at another workshop: which, sent when, due when.
    clocks : tuple of Clock
        Sealants, mends, baths and drying.
    tests : tuple of Clock
        Tests that are owed: without an end where no rest has begun.
    ending : str or None
        How it ended, a key of the endings.
    ended_on : str
        The day it was released, else of the entry that ended it.
    carried, sent_on, arrived : str or None
        How and when it went, and how it arrived.
    ask_on, answered_until : str or None
        The day on which it is asked after, and until when the work is answered for.
    follow_up : str or None
        What was promised to be watched.
    """

    pen: str | None
    system: str | None
    next: str
    stage: str
    holds: tuple[tuple[str, str], ...]
    lead: str | None
    older: str | None
    begun: str
    touched: str
    promised_by: str | None
    hours_left: float | None
    asks: tuple[tuple[str, str], ...]
    parts: tuple[WantedPart, ...]
    away: tuple[tuple[str, str, str | None], ...]
    clocks: tuple[Clock, ...]
    tests: tuple[Clock, ...]
    ending: str | None
    ended_on: str
    carried: str | None
    sent_on: str | None
    arrived: str | None
    ask_on: str | None
    answered_until: str | None
    follow_up: str | None


def _standing_of(job: Job) -> Standing:
    arrival, result, parcel = job.newest(ARRIVAL), job.newest(RESULT), job.newest(PARCEL)
    entries = job.record.live()
    open_ = result.ending is None
    with as_if_at(_AT_LAST):  # nothing that only sets or dries stands in the way: it has a clock of its own below
        ahead = ahead_of(job)
    return Standing(
        pen=arrival.pen,
        system=arrival.system,
        next=ahead.words if ahead.stage else "",
        stage=ahead.stage,
        holds=ahead.waits,
        lead=lead_of(job),
        older=continued_on(job) or None,
        begun=arrival.arrived_on or (entries[0].at[:10] if entries else ""),
        touched=max((entry.at[:10] for entry in entries), default=""),
        promised_by=job.newest(REQUEST).promised_by,
        hours_left=_hours_left(job),
        asks=tuple(_asks(job)) if open_ else (),
        parts=parts_waited_for(job),
        away=tuple((_NAMES.get(part, part), out.sent_on or "", out.due_on) for part, out in away(job).items()),
        clocks=tuple(_clocks(job)) if open_ else (),
        tests=tuple(_tests(job, ahead.stage)) if open_ else (),
        ending=result.ending,
        ended_on=ended.isoformat() if (ended := ended_on(job)) else "",
        carried=parcel.carried,
        sent_on=parcel.sent_on,
        arrived=job.newest(ARRIVED).state,
        ask_on=_ask_on(job),
        answered_until=result.promise_until,
        follow_up=result.follow_up,
    )


def _hours_left(job: Job) -> float | None:
    likely = job.newest(ESTIMATE).hours_likely
    if likely is None:
        return None
    return max(0.0, likely.value - sum(minutes_by_activity(job).values()) / 60)


def _asks(job: Job) -> Iterator[tuple[str, str]]:
    proposed = job.log(PROPOSAL)
    if proposed and not answers_of(job):
        yield "an answer to the proposal", proposed[-1].entry.at[:10]
    since = {logged.values.what: logged.entry.at[:10] for logged in job.log(DEPARTURE)}
    for what, refused in departures_without_yes(job):
        if not refused:
            yield f"a yes to what was done otherwise ({what.rstrip('.')})", since.get(what, "")


def parts_waited_for(job: Job) -> tuple[WantedPart, ...]:
    """Every part that a job waits for or waited for: the newest word on each, in the order first wanted."""
    found: dict[str, WantedPart] = {}
    for logged in job.log(WANTED):
        new, key = logged.values, " ".join((logged.values.what or "").casefold().split())
        old = found.get(key)
        found[key] = WantedPart(
            new.what or "",
            new.part or (old.part if old else None),
            old.since if old else job.first(logged.entry).at[:10],
            new.ordered_on or (old.ordered_on if old else None),
            new.expected_by or (old.expected_by if old else None),
            new.arrived_on,
        )
    return tuple(found.values())


def _clocks(job: Job) -> Iterator[Clock]:
    order = closing_of(job)
    for clock in clocks_of(job, _LONG_AGO):
        tested = order is not None and order.step(clock.row.key).state == "done"
        until = clock.ink_at if tested else clock.test_at
        yield Clock(f"{dict(SEALANTS).get(clock.sealant, clock.sealant)} at the {clock.row.part}", "sets", _iso(until))
    step = earliest_next_step(job)
    if step is not None:
        yield Clock(f"{step.sealant} at the {step.place}", "sets", _iso(step.at))
    for one in curing(job, _LONG_AGO):
        if one.stands is not None:
            yield Clock(one.words, "stands", _iso(one.stands.usual))
    for dry in drying_of(job, _LONG_AGO):
        yield Clock(_NAMES[dry.part], "dries", _iso(dry.until))
    for soak in running_soaks(job):
        end = None if soak.limit_min is None else soak.started + dt.timedelta(minutes=soak.limit_min)
        yield Clock(soak.label, "soaks", None if end is None else _iso(end))


def _tests(job: Job, stage: str) -> Iterator[Clock]:
    """Rests that have begun; and, where the job has come so far, the tests that wait to be made."""
    for proof in owed_now(job, _LONG_AGO):
        if proof.until is not None:
            yield Clock(proof.row.label, "rests", _iso(proof.until))
        elif proof.state == "owed" and stage in ("fill test", "release", "limits"):
            yield Clock(proof.row.label, "owed", None)


def _ask_on(job: Job) -> str | None:
    asked = job.log(FOLLOWED_UP)
    return asked[-1].values.again_on if asked else job.newest(RESULT).follow_up_on


def _iso(moment: dt.datetime) -> str:
    return moment.isoformat(timespec="minutes")


STANDING = Question("standing", Standing, _standing_of)
