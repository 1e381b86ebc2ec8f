"""Where a job stands is what its record says, whatever the clock shows."""

import datetime as dt

import pytest

from pentools.books.queue.standing import STANDING, _tests, parts_waited_for
from pentools.record import entries
from pentools.record.ahead import ahead_of
from pentools.record.entries import as_if_at, now
from pentools.record.job import create_job, open_job
from pentools.record.stages.closing.proofs import owed_now
from pentools.record.stages.closing.work import clocks_of
from pentools.sums.closing.work import closing_rows

YES = {"to": "heat; sealant; mend", "answered_on": "2026-11-05", "channel": "letter"}


@pytest.fixture
def job(bench):
    return create_job(bench, "pen")


def of(job):
    return STANDING.of(open_job(job.name, bench=job.bench))


def test_nothing_hangs_on_the_clock(job, monkeypatch):
    """A weld that sets holds the polish by the clock; the question is put as if it had set, and tells when."""
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": "celluloid"})
    job.add("agree", "yes", YES | {"to": "polish; mend"})
    job.add("finish", "masks on", {"masks": "yes"})
    job.add("repairs", "repair", {"part": "barrel", "method": "barrel-weld", "stands": "72 h"})
    first = of(job)
    assert [clock.sort for clock in first.clocks] == ["stands"]
    assert any("weld" in why for _, why in ahead_of(job).waits), "as the clock shows it now"
    assert not any("weld" in why for _, why in first.holds)
    monkeypatch.setattr(entries, "_AT", entries.contextvars.ContextVar("other", default=now() + dt.timedelta(days=90)))
    assert of(job) == first


def test_another_moment_is_given_back_when_it_is_over():
    day = dt.datetime(2026, 3, 14, tzinfo=dt.UTC)
    with as_if_at(day):
        assert now() == day
    assert now() != day


def test_every_clock_has_its_end(job):
    job.add("open", "material", {"part": "section", "material": "celluloid", "sure": "yes"})
    dry = job.add("clean", "drying", {"part": "feed", "hours": "24 h", "begun_ago": "4 h"})
    soak = job.add("clean", "soak started", {"part": "section", "bath": "cold water soak", "limit": "10 min"})
    cure = job.add("seal", "sealant", {"sealant": "shellac", "place": "section", "cure": "24 h"})
    ends = {clock.sort: (clock.what, clock.until) for clock in of(job).clocks}
    assert ends["dries"] == ("feed", (dry.time + dt.timedelta(hours=20)).isoformat(timespec="minutes"))
    assert ends["soaks"] == (
        "section in cool water",
        (soak.time + dt.timedelta(minutes=10)).isoformat(timespec="minutes"),
    )
    assert ends["sets"] == (
        "shellac at the section joint",
        (cure.time + dt.timedelta(hours=24)).isoformat(timespec="minutes"),
    )
    job.add("clean", "soak ended", {"part": "section"})
    assert {clock.sort for clock in of(job).clocks} == {"dries", "sets"}


def test_what_the_owner_is_asked_and_since_when(job):
    job.add("agree", "proposal", {"part": "seals", "proposed": "a new sac"})
    day = job.record.live("agree", "proposal")[0].at[:10]
    assert of(job).asks == (("an answer to the proposal", day),)
    job.add("agree", "yes", YES)
    assert of(job).asks == ()
    job.add("work log", "departure", {"what": "the clip was soldered.", "why": "it broke"})
    assert of(job).asks == (("a yes to what was done otherwise (the clip was soldered)", day),)


def test_the_newest_word_on_a_part_counts_and_keeps_what_was_said_before(job):
    job.add("work log", "wanted", {"what": "A blind cap", "part": "blind-cap"})
    job.add("work log", "wanted", {"what": "a  Blind cap", "ordered_on": "2026-11-06", "expected_by": "2026-11-20"})
    job.add("work log", "wanted", {"what": "a clip"})
    cap, clip = parts_waited_for(job)
    assert (cap.part, cap.ordered_on, cap.expected_by, cap.arrived_on) == (
        "blind-cap",
        "2026-11-06",
        "2026-11-20",
        None,
    )
    assert cap.since == job.record.live("work log", "wanted")[0].at[:10]
    job.add("work log", "wanted", {"what": "a blind cap", "arrived_on": "2026-11-19"})
    cap, clip = parts_waited_for(job)
    assert (cap.arrived_on, cap.expected_by, clip.arrived_on) == ("2026-11-19", "2026-11-20", None)


def test_hours_left_are_those_estimated_less_those_worked(job):
    assert of(job).hours_left is None
    job.add("agree", "estimate", {"hours_likely": "3 h"})
    job.add("work log", "work", {"activity": "seal", "minutes": "45 min", "done": "the sac"})
    assert of(job).hours_left == pytest.approx(2.25)
    job.add("work log", "work", {"activity": "seal", "minutes": "6 h", "done": "the sac again"})
    assert of(job).hours_left == 0.0


def test_after_it_was_asked_after_the_next_day_counts(job):
    job.add("release", "result", {"ending": "done", "summary": "It writes.", "released_on": "2026-09-01", "follow_up_on": "2026-10-01"})  # fmt: skip
    one = of(job)
    assert (one.ending, one.ended_on, one.ask_on, one.asks, one.clocks) == ("done", "2026-09-01", "2026-10-01", (), ())
    job.add("release", "followed up", {"asked_on": "2026-10-02", "again_on": "2026-12-01"})
    assert of(job).ask_on == "2026-12-01"
    job.add("release", "followed up", {"asked_on": "2026-12-02"})
    assert of(job).ask_on is None


def test_a_joint_that_is_tested_waits_only_for_its_ink(job):
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": "celluloid"})
    [key] = [row.key for row in closing_rows("lever-sac") if row.clock == "section"]
    job.add("closing", "order", {"done": key, "section_with": "shellac"})
    [clock] = [one for one in clocks_of(job, dt.datetime(1970, 1, 2, tzinfo=dt.UTC)) if one.row.key == key]
    assert clock.test_at < clock.ink_at

    def until():
        return [one.until for one in of(job).clocks if one.what == f"shellac at the {clock.row.part}"]

    assert until() == [clock.test_at.isoformat(timespec="minutes")]
    job.add("closing", "order", {"tested": key})
    assert until() == [clock.ink_at.isoformat(timespec="minutes")]


def test_a_test_is_owed_until_it_was_made(job):
    keys = "; ".join(row.key for row in closing_rows("lever-sac"))
    job.add("intake", "arrival", {"pen": "a pen", "system": "lever-sac", "material": "celluloid"})
    job.add("closing", "order", {"done": keys, "tested": keys, "section_with": "shellac"})
    proofs = {proof.state: proof.row.label for proof in owed_now(job, now())}
    owed = [clock.what for clock in _tests(job, "fill test") if clock.sort == "owed"]
    assert proofs["owed"] in owed
    assert proofs["passed"] not in owed
    assert not any(clock.sort == "owed" for clock in _tests(job, "open"))
