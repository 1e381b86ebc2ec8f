"""What each pen waits for, since when and until when; what can be worked on comes first."""

import datetime as dt

import pytest

from pentools.books.asked import Told
from pentools.books.queue.queue import STATE_WORDS, queue_on
from pentools.books.queue.standing import Clock, Standing, WantedPart
from pentools.record.came_with import start
from pentools.record.job import create_job, open_job

DAY = dt.date(2026, 11, 28)
YES = {"to": "heat; sealant", "answered_on": "2026-11-05", "channel": "letter"}
NOTHING = Standing(
    pen="a pen", system=None, next="open it", stage="open", holds=(), lead=None, older=None, begun="2026-11-02",
    touched="2026-11-20", promised_by=None, hours_left=None, asks=(), parts=(), away=(), clocks=(), tests=(), ending=None,
    ended_on="", carried=None, sent_on=None, arrived=None, ask_on=None, answered_until=None, follow_up=None,
)  # fmt: skip
HOME = {"ending": "done", "next": "", "stage": "", "carried": "hand", "ended_on": "2026-09-01"}


@pytest.fixture
def queue(bench, monkeypatch):
    """The queue of jobs that stand as is said, each by what differs from a plain pen on the bench."""

    def lines(today=DAY, **jobs):
        told = {name: Standing(**{f: getattr(NOTHING, f) for f in NOTHING.__struct_fields__} | one) for name, one in jobs.items()}  # fmt: skip
        monkeypatch.setattr("pentools.books.queue.queue.ask_bench", lambda *_, **__: Told(told, {}))
        return {line.job: line for line in queue_on(bench, today)}

    return lines


def part(**said):
    known = {"what": "a clip", "part": None, "since": "2026-11-10", "ordered_on": None, "expected_by": None, "arrived_on": None}  # fmt: skip
    return WantedPart(**known | said)


def at(text):
    return dt.datetime.fromisoformat(text).astimezone().isoformat(timespec="minutes")


def clock(sort, until):
    return Clock("shellac at the section", sort, None if until is None else at(until))


@pytest.mark.parametrize(
    ("one", "state", "ready", "since", "by"),
    [
        ({}, "bench", True, "2026-11-02", None),
        ({"stage": "fill test"}, "test", True, "2026-11-20", None),
        ({"asks": (("an answer", "2026-11-08"), ("a yes", "2026-11-06"))}, "owner", False, "2026-11-06", None),
        ({"parts": (part(expected_by="2026-12-04"),)}, "part", False, "2026-11-10", "2026-12-04"),
        ({"parts": (part(arrived_on="2026-11-27"),)}, "bench", True, "2026-11-02", None),
        ({"away": (("nib", "2026-10-30", "2026-12-24"),)}, "part", False, "2026-10-30", "2026-12-24"),
        ({"clocks": (clock("sets", "2026-11-29T10:00"),)}, "clock", False, "2026-11-20", "2026-11-29"),
        ({"clocks": (clock("sets", "2026-11-28T10:00"),)}, "bench", True, "2026-11-02", None),
        ({"clocks": (clock("soaks", None),)}, "bench", True, "2026-11-02", None),
        ({"tests": (clock("rests", "2026-11-29T10:00"),)}, "test", False, "2026-11-20", "2026-11-29"),
        ({"tests": (clock("rests", "2026-11-28T10:00"),)}, "test", True, "2026-11-20", None),
        ({"tests": (clock("owed", None),)}, "test", True, "2026-11-20", None),
        (HOME, "ended", False, "2026-09-01", None),
        (HOME | {"carried": None}, "posting", True, "2026-09-01", None),
        (HOME | {"carried": "parcel", "sent_on": "2026-11-25"}, "posted", False, "2026-11-25", None),
        (HOME | {"carried": "parcel", "sent_on": "2026-11-13"}, "posted", True, "2026-11-13", None),
        (HOME | {"carried": "parcel", "sent_on": "2026-11-25", "arrived": "whole"}, "ended", False, "2026-09-01", None),
        (HOME | {"carried": "parcel", "sent_on": "2026-11-25", "arrived": "lost"}, "posted", True, "2026-11-25", None),
    ],
)  # fmt: skip
def test_where_a_pen_stands(queue, one, state, ready, since, by):
    line = queue(pen=one)["pen"]
    assert (line.state, line.ready, str(line.since), line.by and str(line.by)) == (state, ready, since, by)


def test_a_clock_ends_at_its_moment(queue):
    runs = {"clocks": (clock("sets", "2026-11-28T14:00"), clock("dries", "2026-11-28T16:00"))}
    for moment, state, until in (("13:59", "clock", "14:00"), ("15:00", "clock", "16:00"), ("16:00", "bench", "")):
        line = queue(dt.datetime.fromisoformat(f"2026-11-28T{moment}").astimezone(), pen=runs)["pen"]
        assert (line.state, line.until[11:16]) == (state, until)
    line = queue(dt.date(2026, 11, 27), pen=runs)["pen"]
    assert line.waits_for[0] == "shellac at the section to set (until 28 November 14:00)"


def test_what_rested_is_to_be_looked_at_and_what_soaks_is_to_come_out(queue):
    found = queue(
        a={"tests": (clock("rests", "2026-11-28T10:00"),)}, b={"clocks": (clock("soaks", "2026-11-28T10:00"),)}
    )
    assert found["a"].next == "look how it stood the rest (shellac at the section)"
    assert found["b"].next == "take it out: shellac at the section"
    assert found["b"].overdue == ("shellac at the section: past its limit",)


@pytest.mark.parametrize(
    ("one", "danger", "late"),
    [
        ({"promised_by": "2026-11-27"}, "it is past", True),
        ({"promised_by": "2026-12-05"}, "", False),
        ({"promised_by": "2026-12-04"}, "nothing is estimated", False),
        ({"promised_by": "2026-11-30", "hours_left": 3.0}, "", False),
        ({"promised_by": "2026-11-30", "hours_left": 3.1}, "the hours left", False),
        ({"promised_by": "2026-12-30", "parts": (part(expected_by="2026-12-31"),)}, "what is waited for", False),
        ({"parts": (part(expected_by="2026-11-27"),)}, "", True),
        ({"away": (("nib", "2026-10-30", "2026-11-27"),)}, "", True),
    ],
)
def test_days_in_danger_and_days_that_are_past(queue, one, danger, late):
    line = queue(pen=one)["pen"]
    assert (line.danger.startswith(danger) and bool(line.danger) == bool(danger), bool(line.overdue)) == (True, late)


@pytest.mark.parametrize(("ended", "days", "late"), [("2026-10-29", 30, ()), ("2026-10-28", 31, ("uncollected for 31 days",))])  # fmt: skip
def test_a_pen_nobody_fetched_is_counted(queue, ended, days, late):
    line = queue(pen=HOME | {"carried": None, "ended_on": ended})["pen"]
    assert (line.days_here, line.overdue) == (days, late)


def test_a_pen_that_came_back_has_gone_home_before(queue):
    found = queue(old=HOME | {"carried": None, "ask_on": "2026-11-01"}, new={"older": "old"})
    assert (found["old"].state, found["old"].follow_up) == ("ended", "")


@pytest.mark.parametrize(
    ("one", "said"),
    [
        ({"ask_on": "2026-11-28"}, "ask after it"),
        ({"ask_on": "2026-11-29"}, ""),
        ({"answered_until": "2026-12-12"}, "the work is answered for until 12 December 2026"),
        ({"answered_until": "2026-12-13"}, ""),
        ({"answered_until": "2026-11-27"}, ""),
    ],
)
def test_what_is_due_after_it_went_home(queue, one, said):
    assert queue(pen=HOME | one)["pen"].follow_up.startswith(said or "\0") == bool(said)


def test_what_can_be_worked_on_comes_first_then_what_is_late_then_by_day(queue):
    found = queue(
        ended=HOME, rests={"tests": (clock("rests", "2026-12-01T10:00"),)}, young={"begun": "2026-11-27"}, old={},
        promised={"promised_by": "2026-12-20"}, late={"promised_by": "2026-11-20"}, test={"stage": "fill test"},
        owner={"asks": (("an answer", "2026-11-06"),)}, post=HOME | {"carried": None},
    )  # fmt: skip
    assert list(found) == ["late", "promised", "old", "young", "test", "post", "rests", "owner", "ended"]
    assert set(STATE_WORDS) >= {line.state for line in found.values()}


def test_the_pens_of_a_parcel_stand_together(queue):
    found = queue(a={}, b={"lead": "z"}, c={}, z={"lead": "z", "promised_by": "2026-12-01"}, w={"lead": "z"})
    assert list(found) == ["z", "b", "w", "a", "c"]
    assert found["b"].parcel == "z"


def test_from_records_to_lines(bench):
    (bench.folder / "c-torn" / "record.jsonl").unlink()
    (bench.folder / "c-torn" / "record.jsonl").mkdir()
    asked = open_job("a-first", bench=bench)
    asked.add("agree", "proposal", {"part": "seals", "proposed": "a new sac"})
    start(bench.folder, "d-third", came_with="b-second")
    done = create_job(bench, "e-done")
    done.add("release", "result", {"ending": "returned", "summary": "It goes back.", "released_on": "2026-11-20"})
    found = {line.job: line for line in queue_on(bench, DAY)}
    assert {name: line.state for name, line in found.items()} == {
        "b-second": "bench", "d-third": "bench", "e-done": "posting", "a-first": "owner", "c-torn": "unread",
    }  # fmt: skip
    assert found["a-first"].waits_for == ("an answer to the proposal",)
    assert "record.jsonl" in found["c-torn"].next
    assert (found["d-third"].parcel, found["e-done"].days_here) == ("b-second", 8)
    asked.add("agree", "yes", YES)
    assert {line.job: line for line in queue_on(bench, DAY)}["a-first"].state == "bench"


def test_hold_points_stand_with_their_reasons(bench):
    job = create_job(bench, "held")
    job.add("seal", "measure", {"place": "head", "bore": "8 mm"})
    [line] = [line for line in queue_on(bench, DAY) if line.job == "held"]
    assert ("sealant", True) in [(step, "dry fit" in why) for step, why in line.holds]


def test_the_pen_is_named_whether_it_is_here_or_home(queue):
    found = queue(here={}, home=HOME, unsaid={"pen": None})
    assert {name: line.pen for name, line in found.items()} == {"here": "a pen", "home": "a pen", "unsaid": ""}
