"""The finish from the record: its material, the hold point and where the stage stands."""

from record.stages.finish.pens import new_pen, plan, ready

from pentools.record.holds import held, passed_by, state_of
from pentools.record.kinds import StageState
from pentools.record.stages.finish.facts import material_of
from pentools.record.stages.finish.plan import (
    plan_of,
)


def test_an_ebonite_pen_is_hard_rubber(bench):
    assert material_of(new_pen(bench, "pen-two", "black ebonite")) == "hard rubber"
    assert material_of(new_pen(bench, "pen-three", "unknown")) is None


def test_the_hold_names_what_is_missing_and_opens_with_it(bench):
    job = new_pen(bench, "pen-four", "not sure, perhaps celluloid")
    reason = held(job, "polish")
    for words in ("consent", "material", "masks"):
        assert words in reason
    ready(job)
    assert held(job, "polish").startswith("the material is not named")
    job.add("intake", "arrival", {"pen": "a drawn pen", "material": "celluloid"})
    assert held(job, "polish") == ""
    job.add("finish", "consent to polish", {"agreed": "no"})
    assert "consent" in held(job, "polish")


def test_the_hold_is_released_with_a_reason(job):
    assert held(job, "polish")
    job.release("finish", "polish", "the pen is my own trial piece")
    assert held(job, "polish") == ""


def test_the_stage_says_where_it_stands(job):
    stage = job.stage("finish")
    assert state_of(job, stage).word == "not begun"
    plan(job)
    assert state_of(job, stage).word == "held"
    ready(job)
    assert state_of(job, stage).reason == f"0 of {len(plan_of(job).steps)} steps done"
    for step in plan_of(job).steps:
        job.add("finish", "step", {"grade": step.grade.label})
    assert state_of(job, stage).word == "done"


def test_the_owners_no_ends_the_finish_wherever_it_was_said(job):
    stage = job.stage("finish")
    answer = {"action": "polish", "answered_on": "2026-03-14", "channel": "letter"}
    job.add("agree", "answer", {**answer, "agreed": "no"})
    assert state_of(job, stage) == StageState("done", "not polished, by the owner’s wish")
    plan(job)
    assert state_of(job, stage) == StageState("done", "not polished, by the owner’s wish")
    job.add("agree", "answer", {**answer, "agreed": "yes"})
    job.add("finish", "masks on", {"masks": "yes"})
    steps = plan_of(job).steps
    job.add("finish", "step", {"grade": steps[0].grade.label})
    assert state_of(job, stage) == StageState("open", f"1 of {len(steps)} steps done")
    job.add("finish", "consent to polish", {"agreed": "no"})
    assert state_of(job, stage) == StageState("done", "no more polishing, by the owner’s wish")
    for step in steps[1:]:
        job.add("finish", "step", {"grade": step.grade.label})
    assert state_of(job, stage) == StageState("done")


def test_steps_logged_while_held_are_odd(job):
    plan(job)
    job.add("finish", "step", {"grade": "P600"})
    assert "polish-held" in {f.topic for f in passed_by(job)}
    ready(job)
    assert "polish-held" not in {f.topic for f in passed_by(job)}
