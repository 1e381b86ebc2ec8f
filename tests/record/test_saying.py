"""Every stage in one sentence."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.registry import STAGES
from pentools.record.saying import say


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "pen")


@pytest.mark.parametrize("stage", STAGES)
def test_every_stage_says_something_of_an_empty_job(job, stage):
    assert say(job, stage).endswith(".")


def test_the_sentence_follows_the_record(job):
    job.add("intake", "arrival", {"pen": "blue pen", "pieces": "cap; barrel", "system": "piston"})
    job.add("condition", "part", {"part": "seals", "seen": "gone", "severity": "4"})
    job.add("condition", "part", {"part": "cap", "seen": "fine", "severity": "0"})
    job.add("agree", "answer", {"action": "heat", "agreed": "yes", "answered_on": "2026-03-01", "channel": "letter"})
    job.add("agree", "answer", {"action": "polish", "agreed": "no", "answered_on": "2026-03-01", "channel": "letter"})
    job.add("work log", "work", {"activity": "seal", "minutes": "90 min", "done": "a cork"})
    job.add("limits", "limit", {"part": "cap", "left": "The crack stays.", "why": "it holds"})
    job.add("release", "result", {"ending": "stopped", "summary": "It waits."})
    wanted = {
        "intake": "Blue pen, in 2 pieces.",
        "condition": "What keeps it from working: seals and sac.",
        "agree": "The owner said yes to heat; no to polishing. No ceiling is agreed.",
        "work log": "1.5 hours so far, most of it seals and sac (90 min).",
        "limits": "The crack stays.",
        "release": "The job has ended: stopped: it will not go on for now.",
    }
    assert {stage: say(job, stage) for stage in wanted} == wanted


def test_a_stage_that_is_not_known_says_nothing(job):
    assert say(job, "polishing the moon") == ""


def test_a_night_filled_without_a_balance_is_said_as_what_it_is(job):
    job.add("fill test", "leak check", {"rested": "12 h", "dry": "yes"})
    assert say(job, "fill test") == "Dry all over after 12\u202fh; it was not weighed."
    job.add("fill test", "weighing", {"state": "dry", "mass": "15 g"})
    assert say(job, "fill test") == "Now fill it and weigh it again."
