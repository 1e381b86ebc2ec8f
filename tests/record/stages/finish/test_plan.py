"""The plan from the record: grades, the next step, what over the budget stays, and the nib's own plan."""

import pytest
from record.stages.finish.pens import plan

from pentools.record.stages.finish.plan import (
    next_step,
    plan_of,
    progress_of,
    steps_done,
    working_plan,
)
from pentools.record.stages.finish.words import finish_sentence, left_and_why


def test_the_plan_uses_the_benchs_stock_and_the_intakes_material(job):
    assert plan_of(job) is None
    plan(job)
    made = plan_of(job)
    assert made.limits.material.name == "celluloid"
    owned = {"P400", "P600", "P800"}
    assert {s.grade.label for s in made.steps if s.grade.scale == "P"} <= {*owned, "P1200", "P2000"}
    assert made.steps[-1].grade.label == "cushioned cloth 12000"
    assert (made.steps[-1].grade.particle_um, made.steps[-1].grade.finish_um) == (2, 3)  # the bench's own figures


def test_grades_of_the_plan_itself_go_before_the_stock(job):
    plan(job, own="P800; P1200; film 9 um; film 3 um")
    assert {s.grade.label for s in plan_of(job).steps} <= {"P800", "P1200", "film 9 µm", "film 3 µm"}


def test_an_edited_ladder_is_judged_in_the_order_given(job):
    plan(job, own="P800; P600; film 9 um", as_given="yes")
    assert [s.grade.label for s in plan_of(job).steps] == ["P800", "P600", "film 9 µm"]
    assert any(f.level == "stop" for f in plan_of(job).findings)


def test_cautious_takes_more(job):
    plan(job)
    usual = plan_of(job).removed_total_um.typical
    plan(job, cautious="yes")
    assert plan_of(job).removed_total_um.typical > usual


def test_next_step_walks_down_the_plan(job):
    plan(job)
    steps = plan_of(job).steps
    seen = []
    while (step := next_step(job)) is not None:
        seen.append(step.grade.label)
        job.add("finish", "step", {"grade": step.grade.label, "minutes": "5 min"})
    assert seen == [s.grade.label for s in steps]
    progress = progress_of(job)
    assert progress.planned_done == len(steps)
    assert progress.removed_um.typical == pytest.approx(plan_of(job).removed_total_um.typical)
    assert finish_sentence(job).startswith("Finished with cushioned cloth 12000")


def test_the_same_grade_is_offered_again_while_older_lines_are_left(job):
    plan(job)
    first, second = plan_of(job).steps[:2]
    job.add("finish", "step", {"grade": first.grade.label, "minutes": "5 min", "cleared": "no"})
    assert next_step(job) == first
    job.add("finish", "step", {"grade": first.grade.label, "minutes": "2 min", "cleared": "yes"})
    assert next_step(job) == second
    again = steps_done(job, plan_of(job))[1]
    assert again.planned is None
    # a second go is counted by its minutes: rule of thumb, a twelfth of the grain a minute
    assert again.removed_um.typical == pytest.approx(2 * first.grade.particle_um / 12)


def test_a_skipped_step_is_not_offered_later(job):
    plan(job)
    steps = plan_of(job).steps
    job.add("finish", "step", {"grade": steps[2].grade.label})
    assert next_step(job) == steps[3]


def test_nothing_coarser_is_offered_after_a_finer_grade_of_one_s_own(job):
    plan(job)
    job.add("finish", "step", {"grade": "film 12 um"})
    assert next_step(job).grade.label == "film 9 µm"
    job.add("finish", "step", {"grade": "film 3 um"})
    assert next_step(job) is None


def test_an_older_entry_that_is_withdrawn_no_longer_counts(job):
    plan(job)
    entry = job.add("finish", "step", {"grade": next_step(job).grade.label})
    job.withdraw(entry, "that was another pen")
    assert next_step(job) == plan_of(job).steps[0]


def test_over_budget_the_reduced_plan_is_followed_and_what_stays_is_said(job):
    plan(job, defect="60 um")
    made = plan_of(job)
    assert not made.within_budget
    assert working_plan(made) is made.reduced
    assert made.reduced.removed_total_um.high <= 50
    assert next_step(job) == made.reduced.steps[0]
    [rest] = [item for item in left_and_why(job) if "defect" in item.what]
    assert f"{60 - made.reduced.defect_um.typical:.2g} µm" in rest.what
    assert "can spare 50 µm" in rest.why
