"""Posting: what is said of the parcel, what is odd about it, and where it stands."""

import datetime as dt

import msgspec
import pytest

from pentools.record.ahead import ahead_of, sheet_stages
from pentools.record.entries import new_entry
from pentools.record.holds import state_of
from pentools.record.stages.job.posting import (
    POSTING,
    declared_value,
    insured_since,
    insured_value,
    posting_findings,
    posting_sentence,
)

SENT = {
    "carried": "insured",
    "sent_on": "2026-03-30",
    "number": "XQ 12345",
    "insured": "180 EUR",
    "basis": "a dealer, March",
}


@pytest.fixture
def job(new_job):
    job = new_job()
    job.add("intake", "request", {"asked": "a new sac", "work": "re-sac"})
    job.add("intake", "owner", {"owner": "Adela Quist", "declared_value": "180 EUR", "value_basis": "her own guess"})
    return job


def end(job):
    job.add("release", "result", {"ending": "done", "summary": "It writes.", "mass_g": "16.5 g"})


def topics(job):
    return [f.topic for f in posting_findings(job)]


def test_the_value_is_that_of_the_intake_until_another_is_posted(job):
    assert declared_value(job) == "180 EUR"
    assert insured_value(job) == ("180 EUR", "her own guess")
    job.add("posting", "parcel", {**SENT, "insured": "250 EUR", "basis": ""})
    assert insured_value(job) == ("250 EUR", "her own guess")
    job.add("posting", "parcel", SENT)
    assert insured_value(job) == ("180 EUR", "a dealer, March")


def test_a_value_in_words_is_no_amount(job):
    job.add("intake", "owner", {"owner": "Adela Quist", "declared_value": "not much"})
    assert declared_value(job) == ""
    assert insured_value(job)[0] == "not much"


def test_a_sound_parcel_is_not_talked_about(job):
    end(job)
    job.add("posting", "parcel", {**SENT, "weighs": "210 g", "empty": "yes"})
    assert topics(job) == []


@pytest.mark.parametrize(
    ("change", "topic"),
    [
        ({"empty": "no"}, "posted-full"),
        ({"insured": "50 EUR"}, "insured-short"),
        ({"number": ""}, "parcel-number"),
        ({"weighs": "16 g"}, "parcel-light"),
    ],
)
def test_what_is_odd_is_named(job, change, topic):
    end(job)
    job.add("posting", "parcel", {**SENT, **change})
    assert topics(job) == [topic]


def test_money_of_another_country_is_not_held_against_it(job):
    end(job)
    job.add("posting", "parcel", {**SENT, "insured": "50 GBP"})
    assert topics(job) == []


def test_sent_before_the_end_is_named(job):
    job.add("posting", "parcel", SENT)
    assert topics(job) == ["posted-early"]


def test_it_stands_on_the_sheet_once_the_job_has_ended_and_waits_for_the_arrival(job):
    assert "posting" not in [stage.key for stage in sheet_stages(job)]
    end(job)
    assert sheet_stages(job)[-1].key == "posting"
    assert ahead_of(job).words == "nothing; the job has ended"
    job.add("posting", "parcel", SENT)
    assert state_of(job, POSTING).word == "open"
    assert ahead_of(job).words == "say how it arrived (on its way since 2026-03-30: insured parcel)"
    job.add("posting", "arrived", {"arrived_on": "2026-04-02", "state": "whole"})
    assert (state_of(job, POSTING).word, posting_sentence(job)) == ("done", "It arrived on 2026-04-02: whole.")
    assert ahead_of(job).words == "nothing; the job has ended"


def test_what_arrives_broken_or_not_at_all_stays_open(job):
    end(job)
    job.add("posting", "parcel", SENT)
    job.add("posting", "arrived", {"arrived_on": "2026-03-28", "state": "damaged", "said": "the cap is split"})
    assert state_of(job, POSTING).word == "open"
    assert topics(job) == ["arrived", "arrived-before"]
    assert posting_findings(job)[1].text.index("2026-03-28") < posting_findings(job)[1].text.index("2026-03-30")
    assert "the cap is split" in posting_findings(job)[0].text
    job.add("posting", "arrived", {"state": "lost"})
    assert (state_of(job, POSTING).word, posting_sentence(job)) == ("open", "It did not arrive.")


def test_handed_over_is_done(job):
    end(job)
    job.add("posting", "parcel", {"carried": "hand", "sent_on": "2026-03-30"})
    assert (state_of(job, POSTING).word, posting_sentence(job)) == ("done", "Handed over on 2026-03-30.")
    assert topics(job) == []


def test_since_when_a_value_was_said(new_job):
    job = new_job()
    assert insured_since(job) is None
    old = new_entry("intake", "owner", {"owner": "Adela Quist", "declared_value": "187 EUR"})
    job.record.append(msgspec.structs.replace(old, at="2026-03-01T10:00:00+01:00"))
    job.add("intake", "owner", {"owner": "Adela Quist", "contact": "by post", "declared_value": "187 EUR"})
    assert insured_since(job) == dt.date(2026, 3, 1)  # another telephone number is no other value
    job.add("posting", "parcel", {"carried": "parcel", "sent_on": "2026-03-30", "insured": "200 EUR"})
    assert insured_since(job) == job.record.entries[-1].time.date()
