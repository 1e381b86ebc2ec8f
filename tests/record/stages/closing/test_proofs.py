"""The tests that are owed are answered where such results are kept, and asked once."""

import datetime as dt

from record.stages.closing.pens import KEYS, tick, up_to

from pentools.record.stages.closing.proofs import answers_to, owed_now, seal_test_of


def states(job, moment=None):
    return {proof.row.key: proof.state for proof in owed_now(job, moment)}


def test_nothing_is_owed_by_a_pen_whose_system_is_not_named(job):
    job.add("intake", "arrival", {"pen": "a pen", "material": "acrylic"})
    assert owed_now(job) == ()


def test_a_lever_pen_owes_five_and_each_is_answered_by_its_own_entry(job):
    assert states(job) == dict.fromkeys(("squeeze", "night", "nib-down", "capped", "writes"), "owed")
    up_to(job, "sealed")
    tick(job, ["sealed"], ["sealed"])
    assert states(job)["squeeze"] == "passed"  # the wet test has shown it
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes", "how": "nib up"})
    assert (states(job)["night"], states(job)["nib-down"]) == ("passed", "owed")
    job.add("seal", "test", {"test": "tissue", "tissue_seen": "drops all the time"})
    job.add("seal", "test", {"test": "capped", "capped_seen": "dry"})
    job.add("closing", "writing", {"rested": "12 h", "wrote": "at once"})
    assert states(job) == {"squeeze": "passed", "night": "passed", "nib-down": "failed", "capped": "passed", "writes": "passed"}  # fmt: skip
    job.add("closing", "writing", {"rested": "12 h", "wrote": "not by itself"})
    assert states(job)["writes"] == "failed"


def test_how_it_lay_at_a_long_rest_answers_too(job):
    up_to(job, "rested")
    job.add("fill test", "leak check", {"rested": "72 h", "dry": "yes", "how": "nib up by day, nib down by night"})
    assert (states(job)["night"], states(job)["nib-down"], states(job)["capped"]) == ("passed", "passed", "owed")


def test_a_night_that_was_begun_runs_and_is_then_due(job):
    up_to(job, "rested")
    entry = job.add("closing", "rest begun", {"test": "night"})
    assert states(job, entry.time + dt.timedelta(hours=7))["night"] == "running"
    assert states(job, entry.time + dt.timedelta(hours=9))["night"] == "due"
    job.add("fill test", "leak check", {"rested": "9 h", "dry": "yes"})
    assert states(job)["night"] == "passed"
    job.add("closing", "rest begun", {"test": "night"})
    assert states(job)["night"] == "running"


def test_a_night_as_it_came_counts_for_nothing(job):
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert states(job)["night"] == "owed"
    assert "rested" in KEYS


def test_answers_begin_with_the_one_that_passes(job):
    found = {proof.row.key: answers_to(proof.row) for proof in owed_now(job)}
    assert found["night"] == (("yes", "dry all over"), ("no", "damp"))
    assert found["squeeze"][0][0] == "bubbles stop"
    assert found["capped"][0][0] == "dry"
    assert found["writes"][0][0] == "at once"
    assert {seal_test_of(proof.row) for proof in owed_now(job)} == {"press", "tissue", "capped", ""}
