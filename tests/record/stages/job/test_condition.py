"""Condition: the gravest word on a part counts, and the whole pen is no part."""

from pentools.record.stages.common import PARTS
from pentools.record.stages.job.condition import worst_by_part


def seen(job, part, severity):
    job.add("condition", "part", {"part": part, "seen": "a mark", "severity": severity})


def test_the_gravest_word_on_a_part_counts_whichever_came_first(new_job):
    job = new_job()
    for part, severity in (("cap", "1"), ("cap", "3"), ("barrel", "2"), ("cap", "0"), ("nib", "0")):
        seen(job, part, severity)
    assert worst_by_part(job) == {"cap": 3, "barrel": 2, "nib": 0}


def test_every_part_must_be_looked_at_and_the_whole_pen_is_none(new_job):
    job = new_job()
    stage = job.stage("condition")
    assert stage.state_of(job).word == "not begun"
    seen(job, "whole", "1")
    assert (stage.state_of(job).word, stage.state_of(job).reason) == ("open", "0 of 13 parts looked at")
    for part, _ in PARTS[:-1]:
        assert stage.state_of(job).word == "open"
        seen(job, part, "0")
    assert (stage.state_of(job).word, stage.state_of(job).reason) == ("done", "13 of 13 parts looked at")
