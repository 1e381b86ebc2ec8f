"""The stage of the parts mended: where it stands, and what is odd in it."""

import datetime as dt

import pytest

from pentools.record.entries import new_entry
from pentools.record.holds import state_of
from pentools.record.stages.repairs.repairs import REPAIRS, repair_findings, repair_sentence

NOON = dt.datetime(2026, 3, 14, 12, tzinfo=dt.UTC)
ROCKS = {"part": "clip", "seen": "It rocks.", "severity": "2"}


@pytest.fixture
def job(new_job):
    return new_job()


def topics(job):
    return [f.topic for f in repair_findings(job)]


def test_it_is_done_where_the_survey_has_nothing_for_it(job):
    assert state_of(job, REPAIRS).word == "not begun"
    job.add("condition", "part", {"part": "seals", "seen": "perished", "severity": "3"})
    assert state_of(job, REPAIRS).word == "done"
    job.add("condition", "part", ROCKS)
    assert state_of(job, REPAIRS).word == "not begun"
    assert repair_sentence(job) == "The survey found a fault that may be mended here: clip (It rocks)."


def test_it_is_open_while_something_waits_stands_or_is_away(job):
    job.add("condition", "part", ROCKS)
    job.add("condition", "part", {"part": "inner-cap", "seen": "Loose.", "severity": "2"})
    job.add("repairs", "repair", {"part": "clip", "method": "clip-tighten"})
    assert state_of(job, REPAIRS).reason == "still to mend or to leave: inner cap"
    job.add("repairs", "repair", {"part": "inner-cap", "method": "inner-cap-set"})
    assert state_of(job, REPAIRS).reason.startswith("The inner cap (set with shellac at its old depth) stands until ")
    job.add("repairs", "sent out", {"part": "nib", "work": "tipping", "sent_on": "2026-03-14"})
    assert state_of(job, REPAIRS).word == "open"


def test_it_is_done_once_all_is_done(job):
    job.add("condition", "part", ROCKS)
    job.add("repairs", "repair", {"part": "clip", "method": "clip-tighten"})
    assert (state_of(job, REPAIRS).word, repair_sentence(job)) == ("done", "1 part mended.")


def test_a_part_that_is_away_as_the_job_ends_is_named(job):
    job.add("repairs", "sent out", {"part": "nib", "work": "tipping", "sent_on": "2026-03-14", "due_on": "2026-05-01"})
    assert topics(job) == ["away"]
    assert repair_sentence(job) == "At another workshop: nib."
    job.add("release", "result", {"ending": "done", "summary": "It writes."})
    assert topics(job) == ["left-away", "away"]


def test_abrasive_before_a_weld_has_stood_is_named(job):
    job.record.append(new_entry("repairs", "repair", {"part": "cap", "method": "cap-lip-weld"}, at=NOON))
    for days, named in ((-1, []), (8, []), (6, ["too-early"])):
        job.record.append(new_entry("finish", "step", {"grade": "P600"}, at=NOON + dt.timedelta(days=days)))
        assert topics(job) == named
    [early] = repair_findings(job)
    assert (
        early.text
        == "Parts mended, cap, lip: solvent weld: an abrasive was used before it had stood its shortest time, until 21 March."
    )


def test_abrasive_beside_shellac_that_still_sets_is_no_matter(job):
    job.record.append(new_entry("repairs", "repair", {"part": "inner-cap", "method": "inner-cap-set"}, at=NOON))
    job.record.append(new_entry("finish", "step", {"grade": "P600"}, at=NOON + dt.timedelta(hours=2)))
    assert topics(job) == []


@pytest.mark.parametrize(
    ("kind", "texts"),
    [
        ("sent out", {"part": "nib", "work": "tipping", "sent_on": "2026-03-14"}),
        ("repair", {"part": "inner-cap", "method": "inner-cap-set"}),
    ],
)
def test_either_of_what_is_away_and_what_stands_keeps_it_open(job, kind, texts):
    job.add("repairs", kind, texts)
    assert state_of(job, REPAIRS).word == "open"


def test_an_entry_of_another_program_with_the_wrong_way_is_named(job):
    job.record.append(new_entry("repairs", "repair", {"part": "clip", "method": "cap-lip-weld"}))
    assert topics(job) == ["other-part"]


def test_what_holds_for_now_asks_what_would_replace_it(job):
    oiled = {"part": "threads", "method": "thread-oil"}
    job.add("repairs", "repair", {**oiled, "wanted": "a new thread"})
    assert topics(job) == []
    job.add("repairs", "repair", oiled)
    assert topics(job) == ["wanted"]
