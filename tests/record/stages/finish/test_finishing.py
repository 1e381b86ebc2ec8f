"""The finish from the record: its material, the hold point and where the stage stands."""

from record.stages.finish.pens import new_pen, plan, ready

from pentools.record.holds import held, passed_by, state_of
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


def test_steps_logged_while_held_are_odd(job):
    plan(job)
    job.add("finish", "step", {"grade": "P600"})
    assert "polish-held" in {f.topic for f in passed_by(job)}
    ready(job)
    assert "polish-held" not in {f.topic for f in passed_by(job)}
