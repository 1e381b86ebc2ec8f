"""A released hold lets the one repair go that it was given for, whoever gave it and in whatever order."""

import pytest

from pentools.record.holds import held, passed_by, released_step
from pentools.record.stages.repairs.kinds import Repair
from pentools.record.stages.repairs.released import repairs_in_the_way, topics_against

WELD = {"part": "cap", "method": "cap-lip-weld"}
SET = {"part": "inner-cap", "method": "inner-cap-ring"}
REASON = "the owner stood beside me"


@pytest.fixture
def job(new_job):
    return new_job()


def waits(job, repair):
    return bool(held(job, "repair", repair=Repair(**repair)))


def test_a_release_that_names_a_way_holds_for_it_alone(job):
    assert waits(job, WELD)
    assert waits(job, SET)
    job.release("repairs", "repair", REASON, about="cap-lip-weld")
    assert not waits(job, WELD)
    assert waits(job, SET)
    job.add("repairs", "repair", WELD)
    assert held(job, "repair") == ""
    job.add("repairs", "repair", SET)
    assert held(job, "repair")
    assert [finding.topic for finding in passed_by(job)] == ["repair-held"]


def test_one_that_names_none_holds_for_what_waited_on_record(job):
    job.add("repairs", "repair", WELD)
    assert held(job, "repair")
    job.release("repairs", "repair", REASON)
    assert held(job, "repair") == ""
    assert waits(job, SET)
    assert passed_by(job) == ()
    job.add("repairs", "repair", SET)
    assert [finding.topic for finding in passed_by(job)] == ["repair-held"]
    job.release("repairs", "repair", REASON)
    assert passed_by(job) == ()


def test_or_for_the_next_one_and_then_for_no_more(job):
    job.release("repairs", "repair", REASON)
    assert not waits(job, SET)
    job.add("repairs", "repair", SET)
    assert held(job, "repair") == ""
    assert waits(job, WELD)
    assert repairs_in_the_way(job, Repair(**WELD)) == topics_against(job, Repair(**WELD)) != ()
    job.add("repairs", "repair", WELD)
    assert set(repairs_in_the_way(job)) == set(topics_against(job, Repair(**WELD)))


def test_what_needs_no_release_uses_none_up(job):
    job.release("repairs", "repair", REASON)
    job.add("repairs", "repair", {"part": "cap", "method": "cap-lip-leave"})
    assert not waits(job, SET)


def test_a_correction_of_what_was_let_go_stays_let_go(job):
    entry = job.add("repairs", "repair", WELD)
    job.release("repairs", "repair", REASON)
    job.add("repairs", "repair", {**WELD, "where": "at the lip"}, replaces=entry.id)
    assert passed_by(job) == ()


def test_a_release_says_in_words_what_it_lets_go(job):
    named = job.release("repairs", "repair", REASON, about="cap-lip-weld")
    assert released_step(named) == "mending a part (cap, lip: solvent weld)"
    assert released_step(job.release("repairs", "repair", REASON)) == "mending a part"
    assert released_step(job.release("open", "heat", REASON)) == "heat"


def test_a_way_of_another_part_stands_in_nobodys_way(job):
    assert topics_against(job, Repair(part="clip", method="cap-lip-weld")) == ()
