"""The least honest record: what it asks of each kind of work, and what counts as said."""

import pytest

from pentools.record.owed import owed_by, owed_findings
from pentools.record.registry import find_stage
from pentools.record.stages.job.works import STAGES_AT_ONCE, WORKS


def missing(job):
    return [owed.key for owed in owed_by(job) if not owed.done]


def asked(job, work):
    job.add("intake", "request", {"asked": "please", "work": work})


def test_a_job_of_which_nothing_was_said_owes_everything(new_job):
    job = new_job()
    assert missing(job) == [
        "who",
        "pen",
        "asked",
        "before",
        "seen",
        "yes",
        "done",
        "parts",
        "tested",
        "left",
        "after",
        "ended",
    ]
    [found] = owed_findings(job)
    assert found.level == "warning"
    assert found.text.startswith("Owed before it goes home: who, the pen, ")


@pytest.mark.parametrize("work", [key for key, _ in WORKS])
def test_all_that_is_owed_can_be_entered_on_the_sheet_at_once(new_job, work):
    job = new_job()
    asked(job, work)
    shown = STAGES_AT_ONCE.get(work)
    for owed in owed_by(job):
        assert find_stage(owed.stage).kind(owed.kind)
        assert shown is None or owed.stage in shown


def test_who_only_looks_and_who_works_on_the_nib_owe_less(new_job):
    looked, nib = new_job("pen-a"), new_job("pen-b")
    asked(looked, "look")
    asked(nib, "nib only")
    assert missing(looked) == ["who", "pen", "before", "seen", "ended"]
    assert missing(nib) == ["who", "pen", "before", "seen", "yes", "done", "left", "after", "ended"]


@pytest.mark.parametrize(
    ("kind", "texts", "key"),
    [
        ("owner", {"owner": "Adela Quist"}, "who"),
        ("arrival", {"pen": "a pen", "system": "piston"}, "pen"),
        ("arrival", {"pen": "a pen", "material": "celluloid"}, "pen"),
    ],
)
def test_half_of_it_is_not_all_of_it(new_job, kind, texts, key):
    job = new_job()
    job.add("intake", kind, texts)
    assert key in missing(job)


def test_a_job_that_was_stopped_owes_what_was_known_by_then(new_job):
    job = new_job()
    job.add("intake", "owner", {"owner": "Adela Quist", "contact": "by letter"})
    job.add("release", "result", {"ending": "returned", "summary": "It goes back as it came."})
    assert missing(job) == ["pen", "asked", "seen"]
    [found] = owed_findings(job)
    assert found.text.startswith("The job has ended, and ")
    assert "the pen, what is asked and what is seen" in found.text


def test_a_clock_counts_as_minutes(new_job):
    job = new_job()
    job.add("work log", "timer start", {"activity": "seal"})
    assert "done" in missing(job)
    job.add("work log", "work", {"activity": "seal", "minutes": "5 min", "done": "new sac"})
    assert "done" not in missing(job)
