"""Where closing stands, what it holds, and what is said of it when the pen has gone."""

import datetime as dt

from record.stages.closing.pens import KEYS, tick, up_to

from pentools.record.holds import held, job_facts, passed_by, state_of
from pentools.record.registry import find_stage
from pentools.record.review import review
from pentools.record.stages.closing.closing import (
    CLOSING,
    clock_words,
    closed_untested,
    closing_findings,
    closing_sentence,
    closing_untested,
)
from pentools.record.stages.closing.work import clocks_of


def state(job):
    return state_of(job, find_stage("closing"))


def test_where_it_stands_in_one_sentence(job):
    assert closing_sentence(job).startswith("Next, step 1 of 11, the nipple and barrel: Take every crumb")
    assert state(job).word == "not begun"
    up_to(job, "sac-on")
    entry = tick(job, ["sac-on"], sac_with="shellac")
    until = entry.time + dt.timedelta(hours=8)
    assert closing_sentence(job, entry.time) == (
        f"Step 6 of 11, the sac, is done; its test is owed. The shellac at the sac may be tested from {until:%d %B %H:%M}, ink from {entry.time + dt.timedelta(hours=24):%d %B %H:%M}."
    )
    assert state(job).reason == "5 of 11 steps done and tested; next: the sac"
    job.add("closing", "step", {"step": "sac-on", "outcome": "failed", "happened": "crept"})
    assert closing_sentence(job) == "Step 6 of 11, the sac, did not pass its test."
    assert any("not without loss" in f.text for f in closing_findings(job))


def test_done_says_what_it_still_owes(job):
    up_to(job, "rested")
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert state(job).word == "done"
    assert closing_sentence(job).endswith("It still owes: nib down and open on tissue, capped, and the cap looked into, writing after a night.")  # fmt: skip


def test_a_step_that_would_close_over_something_untested_is_held(job):
    assert held(job, "close") == ""
    up_to(job, "sac-cut")
    tick(job, ["sac-cut"])
    assert held(job, "close").startswith("step 6, the sac, closes over what is not tested")
    assert passed_by(job) == ()  # it waits; nothing was done against it
    assert not closed_untested(job)
    tick(job, ["sac-on"])
    assert closed_untested(job)
    assert [f.topic for f in passed_by(job)] == ["close-held"]
    assert any("closed over something untested" in f.text for f in review(job))
    job.release("closing", "close", "tried beside the barrel")
    assert held(job, "close") == ""
    assert passed_by(job) == ()


def test_a_skipped_step_holds_nothing(job):
    up_to(job, "sac-cut")
    tick(job, ["sac-cut"], ["sac-cut"])
    tick(job, ["sac-dusted"])
    assert closing_untested(job) == ""
    assert any(f.topic == "skipped" for f in closing_findings(job))


def test_what_was_tried_on_the_way_lets_sealant_go(job):
    assert not job_facts(job).dry_fit_passed
    up_to(job, "sac-on")
    assert job_facts(job).dry_fit_passed


def test_tests_still_owed_when_it_has_gone_are_told_and_one_that_failed_is_warned_of(job):
    up_to(job, "rested")
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    told = {f.topic: f for f in CLOSING.checks(job)}
    assert told["owed"].level == "note"
    assert "a night filled" in told["owed"].text
    job.add("seal", "test", {"test": "capped", "capped_seen": "ink in the cap, pen dry when open"})
    assert {f.topic: f.level for f in CLOSING.checks(job)}["sent-failed"] == "warning"
    job.add("release", "result", {"ending": "returned", "summary": "It could not be mended."})
    assert "owed" not in {f.topic for f in CLOSING.checks(job)}


def test_a_pen_that_was_never_closed_here_is_asked_nothing(job):
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert CLOSING.checks(job) == ()
    assert state(job).word == "not begun"


def test_the_clock_in_words(job):
    up_to(job, "sac-on")
    entry = tick(job, ["sac-on"], sac_with="silicone")
    [clock] = clocks_of(job, entry.time)
    assert clock_words(clock, entry.time).startswith("The silicone adhesive at the sac may be tested from")
    assert "tested" not in clock_words(clock, entry.time + dt.timedelta(hours=30))
    assert KEYS[5] == clock.row.key
