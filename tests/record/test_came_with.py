"""The pens of a parcel share what is the parcel's, and nothing that is a pen's own."""

import pytest

from pentools.errors import InputError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.came_with import hand_on, join, lead_of, start
from pentools.record.job import create_job, open_job
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.agree_kinds import YES
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER
from pentools.record.stages.job.posting_kinds import ARRIVED, PARCEL

SENT = {
    "carried": "insured", "sent_on": "2026-04-02", "number": "RR 12", "weighs": "210 g", "insured": "400 EUR", "empty": "yes",
}  # fmt: skip


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "bench", create=True)


@pytest.fixture
def lead(bench):
    job = create_job(bench, "pen-one")
    job.add("intake", "owner", {"owner": "Adela Quist", "address": "Rope Walk 3", "declared_value": "180 EUR", "private_note": "late"})  # fmt: skip
    job.add("intake", "arrival", {"pen": "a black pen", "system": "piston", "arrived_on": "2026-03-02"})
    job.add("agree", "yes", {"to": "heat; departure", "at_most": "90 EUR", "answered_on": "2026-03-05", "channel": "letter"})  # fmt: skip
    job.add("agree", "answer", {"action": "departure", "agreed": "yes", "answered_on": "2026-03-06", "channel": "letter"})  # fmt: skip
    job.add("agree", "answer", {"action": "polish", "agreed": "no", "answered_on": "2026-03-06", "channel": "letter"})
    return job


@pytest.fixture
def job(bench, lead):
    return start(bench.folder, "pen-two", came_with=lead.name)


def again(job):
    return open_job(job.name, bench=job.bench)


def ended(job):
    job.add("release", "result", {"ending": "done", "summary": "It writes."})


def test_what_is_the_parcels_goes_along_and_what_is_the_pens_own_does_not(job):
    owner, arrival = job.newest(OWNER), job.newest(ARRIVAL)
    assert (owner.owner, owner.address, owner.declared_value, owner.private_note) == (
        "Adela Quist", "Rope Walk 3", None, None,
    )  # fmt: skip
    assert (arrival.arrived_on, arrival.pen, arrival.system) == ("2026-03-02", None, None)
    assert dict(consents(job)) == {"heat": True, "polish": False}, "and no departure"
    assert job.newest(YES).at_most == "90 EUR"
    assert {e.note for e in job.record.live() if e.kind != "came with"} == {"taken over from job pen-one"}


def test_first_pen_is_marked_once_and_every_pen_names_it(bench, lead, job):
    third = start(bench.folder, "pen-three", came_with="pen-two")
    assert [lead_of(again(one)) for one in (lead, job, third)] == ["pen-one"] * 3
    assert len(again(lead).record.live("intake", "came with")) == 1
    assert third.newest(OWNER).owner == "Adela Quist"


def test_nothing_is_done_twice_and_a_word_of_its_own_is_left_alone(lead, job):
    assert hand_on(again(lead), job) == 0
    job.add("intake", "owner", {"owner": "Her brother"})
    lead.add("intake", "owner", {"owner": "Adela Quist", "address": "Mill Lane 1"})
    assert hand_on(again(lead), again(job)) == 0
    assert again(job).newest(OWNER).owner == "Her brother"


def test_what_changes_with_the_first_pen_changes_here(lead, job):
    lead.add("intake", "owner", {"owner": "Adela Quist", "address": "Mill Lane 1"})
    [yes] = lead.record.live("agree", "yes")
    lead.withdraw(yes, "she took it back")
    assert hand_on(again(lead), job) == 2
    assert again(job).newest(OWNER).address == "Mill Lane 1"
    assert dict(consents(again(job))) == {"polish": False}


def test_posting_goes_along_once_the_pen_is_done_and_damage_never(lead, job):
    ended(lead)
    lead.add("posting", "parcel", SENT)
    assert hand_on(again(lead), job) == 0, "it is not done yet"
    ended(job)
    assert hand_on(again(lead), again(job)) == 1
    parcel = again(job).newest(PARCEL)
    assert (parcel.carried, parcel.sent_on, parcel.number) == ("insured", "2026-04-02", "RR 12")
    assert (parcel.weighs, parcel.insured, parcel.empty) == (None, None, None), "of the parcel, or of each pen"
    lead.add("posting", "arrived", {"state": "damaged"})
    assert hand_on(again(lead), again(job)) == 0
    lead.add("posting", "arrived", {"state": "whole", "arrived_on": "2026-04-04"})
    assert hand_on(again(lead), again(job)) == 1
    assert again(job).newest(ARRIVED).arrived_on == "2026-04-04"


def test_a_pen_that_was_here_before_keeps_what_is_known_of_it(bench, lead):
    older = create_job(bench, "old-one")
    older.add("intake", "arrival", {"pen": "a red pen", "system": "lever-sac"})
    job = start(bench.folder, "pen-two", came_with="pen-one", continues="old-one")
    assert (job.newest(ARRIVAL).pen, lead_of(job)) == ("a red pen", "pen-one")


def test_a_parcel_is_not_laid_round_itself(bench, lead, job):
    with pytest.raises(InputError, match="that of another job"):
        join(job, "pen-two")
    with pytest.raises(InputError, match="came with this one already"):
        join(again(lead), "pen-two")
    other = create_job(bench, "other")
    with pytest.raises(InputError, match="none, because other pens came with this one"):
        join(again(lead), "other")
    assert lead_of(again(other)) is None
    with pytest.raises(RecordError, match="no job nowhere"):
        start(bench.folder, "pen-nine", came_with="nowhere")
    assert not (bench.folder / "pen-nine").exists()
