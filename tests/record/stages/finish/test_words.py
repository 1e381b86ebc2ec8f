"""The finish in words: the findings, and what was left and why."""

import pytest
from record.stages.finish.pens import new_pen, plan, topics

from pentools.record.stages.finish.finishing import FINISH
from pentools.record.stages.finish.kinds import ZONE
from pentools.record.stages.finish.plan import (
    plan_of,
)
from pentools.record.stages.finish.words import finish_findings, finish_sentence, left_and_why, zone_stretch


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


def test_finer_or_the_same_again_and_another_zone_is_no_way_back(job):
    plan(job)
    for grade, zone in (
        ("P600", "plain barrel"),
        ("P600", "plain barrel"),
        ("film 5 um", "plain barrel"),
        ("P800", "near an imprint"),
    ):
        job.add("finish", "step", {"grade": grade, "zone": zone})
    assert topics(job).isdisjoint({"went-coarser", "forbidden-zone", "unknown-grade"})
    job.add("finish", "step", {"grade": "400", "zone": "near an imprint"})
    job.add("finish", "step", {"grade": "P600", "zone": "near an imprint"})
    said = {f.topic: f.text for f in finish_findings(job)}
    assert said["unknown-grade"].startswith("“400” names no grade")
    assert said["went-coarser"].startswith("P600 (25.8 µm) after P800 (21.8 µm)")


def test_the_sentence_before_the_first_step(job):
    assert finish_sentence(job).startswith("Nothing is planned yet")
    plan(job)
    words = "P800, P1200, film 9 µm, film 5 µm, cushioned cloth 12000: about 30 µm a side (25 to 36), finish like 3 µm."
    assert finish_sentence(job) == f"{words} It begins with P800, wet."
    assert finish_sentence(job, ahead=False) == f"Planned: {words}"
    job.add("finish", "plan", {"defect": "20 um"})
    assert finish_sentence(job).startswith("Not yet: where on the pen is not said")
    assert finish_sentence(job) == finish_sentence(job, ahead=False)
    assert [f.topic for f in FINISH.checks(job) if f.level == "stop"] == ["zone-not-said"]


def test_what_can_spare_nothing_is_left_as_it_was(bench):
    job = new_pen(bench, "silver-pen", "sterling silver")
    plan(job)
    assert finish_sentence(job).startswith("No paper, film or cloth on silver")
    [left] = left_and_why(job)
    assert left.what == "The surface as it was"
    assert left.why.startswith("No paper, film or cloth on silver")
    assert {f.level for f in FINISH.checks(job)} == {"stop", "warning"}


def test_without_a_plan_the_grades_are_told_once_each(job):
    for grade in ("P600", "P600", "film 9 um"):
        job.add("finish", "step", {"grade": grade, "minutes": "6 min"})
    assert finish_sentence(job) == "Worked with P600, film 9 µm, without a plan: what that took off is not known."


def test_what_was_not_counted_is_not_nought(job):
    plan(job)
    job.add("finish", "step", {"grade": "P400", "cleared": "no"})
    first = "0 of 5 steps done, the last with P400: what it took is not known; 50 µm can be spared."
    assert finish_sentence(job) == f"{first} Next: P800, wet, along the barrel."
    [note] = [f.text for f in finish_findings(job) if f.topic == "not-counted"]
    assert note == "1 of the steps is not in the plan and has no minutes: what it took is not counted."
    job.add("finish", "step", {"grade": "P800", "cleared": "no"})
    said = finish_sentence(job)
    assert said.startswith(
        "1 of 5 steps done, the last with P800: about 20 µm a side taken, by the plan, 1 step not counted, of the 50 µm"
    )
    assert said.endswith("Next: P800 once more, until the older lines are gone, wet, along the barrel.")
    assert finish_sentence(job, ahead=False).endswith("of the 50 µm that can be spared.")


def test_what_was_left_of_the_finish_counts_the_steps_not_done(job):
    plan(job)
    for grade in ("P800", "P1200"):
        job.add("finish", "step", {"grade": grade})
    [left] = left_and_why(job)
    assert left.what == "A finish like 15.3 µm where 3 µm was planned"
    assert left.why == "3 steps of the plan not done"


def test_a_plan_for_another_material_than_the_pen_s_is_said(job):
    plan(job, material="casein")
    assert "The plan is for casein, the pen is entered as celluloid." in {f.text for f in finish_findings(job)}
    plan(job, material="celluloid")
    assert "material-differs" not in topics(job)


def test_zones_that_can_spare_nothing_are_left_with_their_reason(job):
    job.add("finish", "zone", {"part": "barrel", "zone": "imprint", "start_mm": "22 mm", "end_mm": "39 mm"})
    job.add("finish", "zone", {"part": "barrel", "zone": "plain barrel"})
    [item] = left_and_why(job)
    assert item.what.startswith("The imprint on the barrel (22 to 39 mm)")
    assert "sanded off" in item.why
    assert "not-masked" in topics(job)
    job.add("finish", "zone", {"part": "cap", "zone": "gold-filled", "masked": "yes"})
    job.add("finish", "zone", {"part": "cap", "zone": "lacquer"})
    assert [item.what for item in left_and_why(job)[1:]] == ["The gold-filled cap, with the scratches in it"]
    assert [f.text for f in finish_findings(job) if f.topic == "not-masked"] == [
        "The imprint on the barrel (22 to 39 mm) is not masked."
    ]


@pytest.mark.parametrize(
    ("ends", "words"),
    [
        ({}, ""), ({"start_mm": "22 mm"}, "from 22 mm"), ({"end_mm": "39 mm"}, "0 to 39 mm"),
        ({"start_mm": "22 mm", "end_mm": "39 mm"}, "22 to 39 mm"),
    ],
)  # fmt: skip
def test_a_stretch_in_words(ends, words):
    values, _ = ZONE.read({"part": "barrel", "zone": "imprint", **ends})
    assert zone_stretch(ZONE.filled(values)) == words
