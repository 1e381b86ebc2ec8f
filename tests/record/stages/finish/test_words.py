"""The finish in words: the findings, and what was left and why."""

from record.stages.finish.pens import plan, topics

from pentools.record.stages.finish.plan import (
    plan_of,
)
from pentools.record.stages.finish.words import finish_findings, left_and_why


def test_a_plan_with_a_bare_number_is_said_and_not_guessed(job):
    plan(job, own="400; 600")
    assert plan_of(job) is None
    [finding] = [f for f in finish_findings(job) if f.topic == "plan-unreadable"]
    assert "Which scale?" in finding.text


def test_going_back_to_a_coarser_finish_and_the_wrong_zone_are_said(job):
    plan(job)
    job.add("finish", "step", {"grade": "film 5 um"})
    job.add("finish", "step", {"grade": "P600"})
    job.add("finish", "step", {"grade": "cushioned cloth 12000", "zone": "imprint"})
    assert {"went-coarser", "forbidden-zone"} <= topics(job)


def test_zones_that_can_spare_nothing_are_left_with_their_reason(job):
    job.add("finish", "zone", {"part": "barrel", "zone": "imprint", "start_mm": "22 mm", "end_mm": "39 mm"})
    job.add("finish", "zone", {"part": "barrel", "zone": "plain barrel"})
    [item] = left_and_why(job)
    assert item.what.startswith("The imprint on the barrel (22 to 39 mm)")
    assert "sanded off" in item.why
    assert "not-masked" in topics(job)
