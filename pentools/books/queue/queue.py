"""The queue of a bench: every pen with its state, what it waits for, what is next and by when, as of a day."""

from __future__ import annotations

import datetime as dt
import functools
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Literal

import msgspec
from msgspec.structs import replace

from pentools.books.asked import ask_bench, uncollected
from pentools.books.queue.standing import STANDING, Clock, Standing, WantedPart
from pentools.calc.books.promise import LONG_HERE_DAYS, LONG_ON_WAY_DAYS, Danger, danger_of
from pentools.numbers import in_words
from pentools.record.stages.job.ending_kinds import ENDINGS
from pentools.record.stages.job.posting_kinds import STATES as ARRIVALS

if TYPE_CHECKING:
    from concurrent.futures import Executor

    from pentools.record.bench import Bench

__all__ = ["STATE_WORDS", "Line", "State", "queue_on"]

State = Literal["bench", "owner", "part", "clock", "test", "posting", "posted", "ended", "unread"]
STATE_WORDS: dict[State, str] = {
    "bench": "on the bench",
    "test": "waiting for a test",
    "clock": "a clock runs",
    "part": "waiting for a part",
    "owner": "waiting for the owner",
    "posting": "done, to be posted or fetched",
    "posted": "posted, not yet arrived",
    "unread": "cannot be read",
    "ended": "ended",
}
"""A state -> its words, in the order in which a list shows them."""
_ORDER = {state: number for number, state in enumerate(STATE_WORDS)}
_ENDED = dict(ENDINGS)
_Place = tuple[bool, int, bool, dt.date, dt.date, str]
_SOON = 14  # days before what is answered for runs out that it is named (judged)
_DANGER: dict[Danger, str] = {
    "past": "it is past",
    "waits": "what is waited for comes later",
    "hours": "the hours left by the estimate are more than an hour a day till then (judged)",
    "days": "nothing is estimated, and less than a week is left (judged)",
}


_DOES = {"sets": "to set", "stands": "to stand", "dries": "to dry", "soaks": "to soak"}


class Line(msgspec.Struct, frozen=True, gc=False):
    """One pen in the queue.

    Parameters
    ----------
    job, pen : str
        The job, and the pen in a few words (empty where nothing was said).
    state : State
        Where it stands.
    ready : bool
        Whether something can be done about it now.
    since : date or None
        Since when it stands so; None where no day is on record.
    next : str
        What is next, as a clause; why it cannot be read for a job that cannot, how it ended for one that has.
    by : date or None
        The next day that matters: a clock's end, a part expected, a day promised, whichever comes first.
    until : str
        The end of the clock or rest that runs, as a moment; empty where none does.
    waits_for : tuple of str
        What it waits for, a clause each.
    holds : tuple of (str, str)
        Hold points that stand, and why.
    overdue : tuple of str
        What is past its day, a clause each.
    promised_by : date or None
        The day promised.
    danger : str
        Why that day is in danger; empty where it is not.
    follow_up : str
        What is due to be asked or done after the pen went home; empty where nothing is.
    days_here : int or None
        Days that a pen which is done has waited to be posted or fetched; None for others.
    parcel : str
        The job of the parcel's first pen; empty where it came alone.
    ending : str
        How it ended, in words; empty while it goes on.
    """

    job: str
    pen: str
    state: State
    ready: bool
    since: dt.date | None
    next: str
    by: dt.date | None = None
    until: str = ""
    waits_for: tuple[str, ...] = ()
    holds: tuple[tuple[str, str], ...] = ()
    overdue: tuple[str, ...] = ()
    promised_by: dt.date | None = None
    danger: str = ""
    follow_up: str = ""
    days_here: int | None = None
    parcel: str = ""
    ending: str = ""


def queue_on(bench: Bench, today: dt.date | dt.datetime, *, executor: Executor | None = None) -> tuple[Line, ...]:
    """Every job on a bench as it stands on a day: what can be worked on first, then by the next day that matters.

    Parameters
    ----------
    today : date or datetime
        The day asked about. With a moment a clock runs until that moment is past; with a day alone, what ends on that
        day counts as over.
    executor : concurrent.futures.Executor or None
        Who reads the jobs that must be read; this process by default.

    Returns
    -------
    tuple of Line
        The pens of a parcel stand together where they are in the same state. Ended jobs come last.

    Raises
    ------
    RecordError
        If the bench folder cannot be looked into; a job that cannot be read stands in nobody's way.
    """
    told = ask_bench(bench, STANDING, executor=executor)
    moment = (
        today.astimezone() if isinstance(today, dt.datetime) else dt.datetime.combine(today, dt.time.max).astimezone()
    )
    day = moment.date()
    gone_on = {one.older for one in told.answers.values() if one.older}
    with uncollected():
        lines = [_Asked(name, one, moment, day, name in gone_on).line() for name, one in told.answers.items()]
        lines += [Line(name, "", "unread", False, None, why) for name, why in told.unread.items()]
        return tuple(_in_order(lines))


def _in_order(lines: Iterable[Line]) -> list[Line]:
    """By what can be done, state, what is late, day and name; the pens of a parcel where the first of them stands."""
    placed = sorted(((_place(line), line) for line in lines), key=_first)
    firsts: dict[tuple[bool, int, str], _Place] = {}
    for place, line in placed:
        if line.parcel:
            firsts.setdefault((place[0], place[1], line.parcel), place)
    if firsts:
        placed.sort(
            key=lambda pair: (
                firsts.get((pair[0][0], pair[0][1], pair[1].parcel), pair[0]), pair[1].parcel != pair[1].job, pair[0],
            )
        )  # fmt: skip
    return [line for _, line in placed]


def _place(line: Line) -> _Place:
    last = dt.date.max
    return (
        not line.ready,
        _ORDER[line.state],
        not (line.overdue or line.danger),
        line.by or last,
        line.since or last,
        line.job,
    )


def _first(pair: tuple[_Place, Line]) -> _Place:
    return pair[0]


@functools.lru_cache(maxsize=8192)
def _day(text: str | None) -> dt.date | None:
    try:
        return dt.date.fromisoformat(text[:10]) if text else None
    except ValueError:
        return None


def _said(day: dt.date | None) -> str:
    return "" if day is None else f"{day.day} {day:%B %Y}"


class _Asked(msgspec.Struct, frozen=True, gc=False):
    """A job's standing, looked at on a day."""

    job: str
    one: Standing
    moment: dt.datetime
    today: dt.date
    gone_on: bool

    def line(self) -> Line:
        return self._open() if self.one.ending is None else self._ended()

    # a job that goes on ---------------------------------------------------------------------------------------

    def _open(self) -> Line:
        one = self.one
        wanted = [part for part in one.parts if part.arrived_on is None]
        running, over = self._clocks(one.clocks)
        rests, rested = self._clocks(one.tests)
        state, since, waits = self._state(wanted, running, rests, rested)
        days = [_day(clock.until) for clock in (*running, *rests)] + [_day(part.expected_by) for part in wanted]
        days += [_day(due) for *_, due in one.away]
        promised = _day(one.promised_by)
        danger = "" if promised is None else self._danger(promised, days)
        soaked = [clock for clock in over if clock.sort == "soaks"]
        overdue = [*self._late(wanted), *(f"{soak.what}: past its limit" for soak in soaked if soak.until)]
        if promised is not None and promised < self.today:
            overdue.append(f"promised by {_said(promised)}")
        ends = [
            clock.until for clock in (running if state == "clock" else rests if state == "test" else ()) if clock.until
        ]
        look = [clock.what for clock in rested if clock.until is not None]
        after = f"take it out: {in_words(soak.what for soak in soaked)}" if soaked else one.next
        return Line(
            self.job, one.pen or "", state, ready=(state == "bench" or (state == "test" and not rests) or bool(soaked)),
            since=_day(since), next=f"look how it stood the rest ({in_words(look)})" if look else after,
            by=min((day for day in (*days, promised) if day is not None), default=None), until=min(ends, default=""),
            waits_for=tuple(waits), holds=one.holds, overdue=tuple(overdue), promised_by=promised, danger=danger,
            parcel=one.lead or "",
        )  # fmt: skip

    def _state(
        self, wanted: Sequence[WantedPart], running: Sequence[Clock], rests: Sequence[Clock], rested: Sequence[Clock]
    ) -> tuple[State, str, list[str]]:
        """The state, since when, and what is waited for; what somebody else has to do comes first."""
        one = self.one
        found: dict[State, tuple[str, list[str]]] = {
            "owner": (min((since for _, since in one.asks), default=""), [what for what, _ in one.asks]),
            "part": (
                min([part.since for part in wanted] + [sent for _, sent, _ in one.away], default=""),
                [*(_wanted_words(part) for part in wanted), *(_away_words(*gone) for gone in one.away)],
            ),
            "clock": (one.touched, [_clock_words(clock) for clock in running]),
            "test": (
                one.touched,
                [_clock_words(clock) for clock in rests] or [f"its test: {clock.what}" for clock in rested],
            ),
        }
        for state, (since, waits) in found.items():
            if waits:
                return state, since, waits
        return ("test", one.touched, [one.next]) if one.stage == "fill test" else ("bench", one.begun, [])

    def _clocks(self, clocks: Sequence[Clock]) -> tuple[list[Clock], list[Clock]]:
        """Those that run, and of those that do not what asks for a hand: a soak that is to be ended, a test to be made."""
        running = [c for c in clocks if c.until and dt.datetime.fromisoformat(c.until) > self.moment]
        return sorted(running, key=lambda c: c.until or ""), [
            c for c in clocks if c not in running and c.sort in ("soaks", "rests", "owed")
        ]

    def _late(self, wanted: Sequence[WantedPart]) -> Iterator[str]:
        for part in wanted:
            due = _day(part.expected_by)
            if due is not None and due < self.today:
                yield f"{part.what} was expected by {_said(due)}"
        for gone, _, due_on in self.one.away:
            due = _day(due_on)
            if due is not None and due < self.today:
                yield f"the {gone} was expected back on {_said(due)}"

    def _danger(self, promised: dt.date, days: Sequence[dt.date | None]) -> str:
        waits = max((day for day in days if day is not None), default=None)
        danger = danger_of(
            (promised - self.today).days, self.one.hours_left, None if waits is None else (waits - self.today).days
        )
        return _DANGER[danger] if danger else ""

    # a job that has ended --------------------------------------------------------------------------------------

    def _ended(self) -> Line:
        one = self.one
        ended, sent = _day(one.ended_on), _day(one.sent_on)
        follow_up, day = self._follow_up()
        line = Line(
            self.job, one.pen or "", "ended", ready=False, since=ended, next=_ENDED.get(one.ending or "", ""),
            ending=_ENDED.get(one.ending or "", ""),
            by=day, holds=one.holds, follow_up=follow_up, parcel=one.lead or "",
        )  # fmt: skip
        if one.arrived in ("damaged", "lost"):
            how = dict(ARRIVALS)[one.arrived]
            return replace(
                line, state="posted", ready=True, since=sent, next=one.next, waits_for=(how,), overdue=(how,)
            )
        if one.arrived is None and one.carried is None and not self.gone_on:
            here = None if ended is None else max(0, (self.today - ended).days)
            late = (f"uncollected for {here} days",) if here is not None and here > LONG_HERE_DAYS else ()
            return replace(
                line, state="posting", ready=True, next="post it, or hand it over", days_here=here, overdue=late,
                waits_for=("posting, or to be fetched",),
            )  # fmt: skip
        if one.arrived is None and one.carried not in (None, "hand"):
            long = sent is not None and (self.today - sent).days > LONG_ON_WAY_DAYS
            return replace(
                line, state="posted", ready=long, since=sent, next="ask whether it arrived",
                waits_for=("word that it arrived",), overdue=(f"on its way since {_said(sent)}",) if long else (),
            )  # fmt: skip
        return line

    def _follow_up(self) -> tuple[str, dt.date | None]:
        """What is due after the pen went home, and its day; a pen that came back has a job of its own."""
        if self.gone_on:
            return "", None
        ask, until = _day(self.one.ask_on), _day(self.one.answered_until)
        if ask is not None and ask <= self.today:
            return f"ask after it; it was to be asked after on {_said(ask)}", ask
        if until is not None and 0 <= (until - self.today).days <= _SOON:
            return f"the work is answered for until {_said(until)}", until
        return "", None


def _wanted_words(part: WantedPart) -> str:
    ordered = "" if part.ordered_on is None else f", ordered on {_said(_day(part.ordered_on))}"
    expected = "" if part.expected_by is None else f", expected by {_said(_day(part.expected_by))}"
    return f"{part.what}{ordered}{expected}"


def _away_words(part: str, sent: str, due: str | None) -> str:
    back = "" if due is None else f", expected back on {_said(_day(due))}"
    return f"the {part}, at another workshop since {_said(_day(sent))}{back}"


def _clock_words(clock: Clock) -> str:
    what = f"{clock.what} {_DOES[clock.sort]}" if clock.sort in _DOES else clock.what
    if clock.until is None:
        return what
    until = dt.datetime.fromisoformat(clock.until)
    return f"{what} (until {until.day} {until:%B %H:%M})"
