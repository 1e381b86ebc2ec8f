"""Consent, ceiling and departures: the newest word counts, a yes without authority never does."""

import datetime as dt

import pytest

from pentools.errors import InputError
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry, now
from pentools.record.holds import held, job_facts
from pentools.record.job import create_job
from pentools.record.review import review
from pentools.record.stages.job.agree import (
    answers_of,
    check_estimate,
    check_yes,
    consents,
    departures_without_yes,
    yes_and_no,
)
from pentools.record.stages.job.agree_kinds import ESTIMATE, Yes
from pentools.record.stages.job.intake import may_publish


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")


class Clock:
    """Entries a minute apart, so that "newest" is not left to the second in which a test runs."""

    def __init__(self, job):
        self.job, self.moment = job, now()

    def add(self, stage, kind, **data):
        self.moment += dt.timedelta(minutes=1)
        return self.job.record.append(new_entry(stage, kind, data, at=self.moment))

    def answer(self, action, agreed, **more):
        return self.add(
            "agree", "answer", action=action, agreed=agreed, answered_on="2026-04-02", channel="letter", **more
        )


@pytest.fixture
def clock(job):
    return Clock(job)


def found(job, level="warning"):
    return [f.text for f in review(job) if f.level == level and f.text.startswith("Agreement")]


def test_nothing_said_is_neither_yes_nor_no(job):
    assert consents(job) == {}
    assert yes_and_no(job) == (frozenset(), frozenset())
    assert not may_publish(job)


def test_the_newest_answer_counts_both_ways(job, clock):
    clock.answer("heat", True)
    clock.answer("polish", False)
    clock.answer("heat", False)
    clock.answer("polish", True)
    assert yes_and_no(job) == (frozenset({"polish"}), frozenset({"heat"}))


def test_the_hold_points_hear_the_answers(job, clock):
    clock.answer("heat", False)
    clock.answer("polish", True)
    facts = job_facts(job)
    assert "heat" in facts.refusals
    assert "polish" in facts.consents


def test_a_yes_without_authority_does_not_count_and_a_no_does(job, clock):
    clock.answer("heat", True, authority=False)
    assert consents(job) == {}
    assert len(found(job)) == 1
    clock.answer("soak", True, authority=True)
    clock.answer("soak", False, authority=False)
    assert consents(job) == {"soak": False}


def test_a_yes_without_authority_does_not_undo_a_no(job, clock):
    clock.answer("nib work", False)
    clock.answer("nib work", True, authority=False)
    assert consents(job) == {"nib work": False}


def test_a_no_to_publishing_after_the_yes_at_intake_holds_the_page(job, clock):
    clock.add("intake", "consent", publish=True)
    assert may_publish(job)
    clock.answer("publish", False)
    assert not may_publish(job)
    clock.add("intake", "consent", publish=True)
    assert may_publish(job)


def test_the_consent_at_the_finish_is_heard(job, clock):
    clock.add("finish", "consent to polish", agreed=True)
    assert consents(job) == {"polish": True}
    clock.answer("polish", False)
    assert consents(job) == {"polish": False}


def test_the_ceiling_is_held_against_what_is_spent(job, clock):
    clock.add("intake", "request", asked="write", price_limit="900 EUR")
    clock.add("agree", "estimate", ceiling="40 EUR")
    clock.add("work log", "material", what="cork", way="added", cost="39 EUR")
    assert job_facts(job).ceiling == 40
    assert held(job, "spend") == ""
    clock.add("work log", "material", what="wax", way="added", cost="2 EUR")
    assert "41.00" in held(job, "spend")


def test_a_departure_needs_a_yes_of_its_own(job, clock):
    clock.answer("departure", True)
    clock.add("work log", "departure", what="The nib was set.", why="It was bent.")
    assert departures_without_yes(job) == (("The nib was set.", False),)
    assert len(found(job)) == 1
    clock.answer("departure", True, authority=False)
    assert len(departures_without_yes(job)) == 1
    clock.answer("departure", True)
    assert departures_without_yes(job) == ()
    clock.answer("departure", False)
    assert departures_without_yes(job) == (("The nib was set.", True),)


def test_a_departure_that_says_when_it_was_agreed_is_agreed(job, clock):
    clock.add("work log", "departure", what="x", why="y", agreed_on="2026-04-02")
    assert departures_without_yes(job) == ()


def test_what_cannot_be_undone_must_have_been_told(job, clock):
    clock.add("agree", "proposal", part="barrel", proposed="polish", alternative="wax", leave_it="dull", permanent="substance")  # fmt: skip
    assert len(found(job)) == 1
    clock.add(
        "agree", "proposal", part="cap", proposed="polish", alternative="wax", leave_it="dull", permanent="substance",
        permanent_told=True,
    )  # fmt: skip
    assert len(found(job)) == 1
    assert found(job, "note") == []


def test_leaving_it_is_asked_for(job, clock):
    clock.add("agree", "proposal", part="cap", proposed="glue", alternative="solvent", reversible=True)
    assert found(job, "note") == ["Agreement, cap: leaving it is not weighed."]
    clock.add("agree", "proposal", part="clip", proposed="solder", reversible=True)
    assert found(job, "note")[1] == "Agreement, clip: another way and leaving it are not weighed."


def test_work_before_an_answer_is_odd(job, clock):
    clock.add("agree", "proposal", part="cap", proposed="glue", alternative="a", leave_it="b", reversible=True)
    assert found(job) == []
    clock.add("work log", "work", activity="open", minutes={"value": 5, "unit": "min"}, done="opened")
    assert len(found(job)) == 1
    clock.answer("proposal", True)
    assert found(job) == []


@pytest.mark.parametrize(
    "texts",
    [
        {"hours_low": "3 h", "hours_likely": "2 h"},
        {"hours_low": "3 h", "hours_high": "2 h"},
        {"price_low": "90 EUR", "price_high": "80 EUR"},
        {"price_high": "160 EUR", "ceiling": "150 EUR"},
        {"price_low": "80 EUR", "ceiling": "150 USD"},
    ],
)
def test_an_estimate_out_of_order_is_refused_and_named(job, texts):
    values, errors = job.read(ESTIMATE, texts)
    assert errors == {}
    with pytest.raises(InputError):
        check_estimate(ESTIMATE.filled(values))
    job.add("agree", "estimate", texts)
    assert len(found(job)) == 1


def test_an_estimate_in_order_is_taken():
    values, _ = ESTIMATE.read(
        {"hours_low": "90 min", "hours_likely": "2 h", "hours_high": "2 h", "price_high": "€ 80", "ceiling": "80 EUR"}
    )
    check_estimate(ESTIMATE.filled(values))


def test_an_amount_that_is_no_money_is_refused_and_named_where_it_stands(job):
    with pytest.raises(InputError):
        job.add("agree", "estimate", {"ceiling": "not more than last time"})
    job.record.append(new_entry("agree", "estimate", {"ceiling": "not more than last time"}))
    assert len(found(job)) == 1


def test_a_limit_in_money_of_old_is_not_held_against_a_ceiling(job, clock):
    clock.add("intake", "request", asked="write", price_limit="12/6")
    clock.add("agree", "estimate", ceiling="80 EUR")
    assert found(job) == []


def test_a_no_stands_although_the_clock_went_back(job, clock):
    clock.answer("heat", True)
    clock.moment -= dt.timedelta(days=1)
    clock.answer("heat", False)
    assert consents(job) == {"heat": False}
    clock.answer("heat", True)  # later in the record, but earlier by the clock than the first yes
    assert consents(job)["heat"] is True
    clock.moment += dt.timedelta(days=2)
    clock.answer("heat", False)
    clock.moment -= dt.timedelta(days=3)
    clock.answer("heat", True)
    assert consents(job)["heat"] is False


def test_the_state_follows_the_talk(job, clock):
    stage = job.stage("agree")
    assert stage.state_of(job).word == "not begun"
    clock.add("agree", "survey", conclusion="sound")
    assert "proposed" in stage.state_of(job).reason
    clock.add("agree", "proposal", part="cap", proposed="wax")
    assert "answered" in stage.state_of(job).reason
    clock.answer("proposal", True)
    assert stage.state_of(job).word == "done"
    clock.add("work log", "departure", what="x", why="y")
    assert stage.state_of(job).word == "open"


def test_one_yes_to_several_things_counts_like_as_many_answers(job, clock):
    clock.answer("polish", True)
    clock.answer("heat", False)
    said = {"answered_on": "2026-04-02", "channel": "letter"}
    clock.add("agree", "yes", to=["heat", "sealant", "publish"], not_to=["polish"], at_most="60 EUR", **said)
    assert yes_and_no(job) == (frozenset({"heat", "sealant", "publish"}), frozenset({"polish"}))
    assert may_publish(job)
    assert [answer.values.channel for answer in answers_of(job)] == ["letter"] * 6
    assert job_facts(job).ceiling == 60
    clock.answer("sealant", False)
    assert "sealant" in yes_and_no(job)[1]
    clock.add("agree", "yes", to=["sealant"], authority=False, **said)
    assert "sealant" in yes_and_no(job)[1]
    assert [f for f in found(job) if "sealant" in f]


def test_a_yes_and_a_no_to_the_same_thing_is_refused():
    with pytest.raises(InputError, match=r"No to must be other things than the yes: got .*polishing"):
        check_yes(Yes(to=("heat", "polish"), not_to=("polish",)))
    check_yes(Yes(to=("heat",), not_to=("polish",)))
