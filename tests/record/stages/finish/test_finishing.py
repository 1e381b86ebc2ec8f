"""The finish from the record: the plan, the steps, the next one, the removal, the bench's rates and the hold point."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.holds import held, passed_by, state_of
from pentools.record.job import create_job
from pentools.record.stages.finish.facts import material_of
from pentools.record.stages.finish.plan import (
    next_step,
    nib_plan_of,
    plan_of,
    progress_of,
    steps_done,
    working_plan,
)
from pentools.record.stages.finish.rates import bench_log, bench_rates
from pentools.record.stages.finish.removal import removed_so_far
from pentools.record.stages.finish.words import finish_findings, finish_sentence, left_and_why

STOCK = 'abrasives = ["P400", "P600", "P800", "P1200", "P2000", "film 9 um", "film 5 um", "cushioned cloth 12000 = 2 um, finish 3 um"]'


@pytest.fixture
def bench(tmp_path):
    made = open_bench_folder(tmp_path / "bench", create=True)
    path = made.folder / "bench.toml"
    path.write_text(path.read_text().replace("abrasives = []", STOCK))
    return open_bench_folder(made.folder)


def new_pen(bench, name, material="celluloid"):
    job = create_job(bench, name)
    arrival = {
        "pen": "a drawn pen",
        "system": "lever-sac",
        "material": material,
        "barrel_mm": "70 mm",
        "barrel_outside_mm": "12 mm",
    }
    job.add("intake", "arrival", arrival)
    return job


@pytest.fixture
def job(bench):
    return new_pen(bench, "pen-one")


def plan(job, **more):
    job.add("finish", "plan", {"defect": "20 um", "finish": "gloss", "zone": "plain barrel", "trim": "plated", **more})


def ready(job):
    job.add("finish", "consent to polish", {"agreed": "yes", "channel": "letter"})
    job.add("finish", "masks on", {"masks": "yes"})


def topics(job):
    return {finding.topic for finding in finish_findings(job)}


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


def test_a_plan_with_a_bare_number_is_said_and_not_guessed(job):
    plan(job, own="400; 600")
    assert plan_of(job) is None
    [finding] = [f for f in finish_findings(job) if f.topic == "plan-unreadable"]
    assert "Which scale?" in finding.text


def test_cautious_takes_more(job):
    plan(job)
    usual = plan_of(job).removed_total_um.typical
    plan(job, cautious="yes")
    assert plan_of(job).removed_total_um.typical > usual


def test_an_ebonite_pen_is_hard_rubber(bench):
    assert material_of(new_pen(bench, "pen-two", "black ebonite")) == "hard rubber"
    assert material_of(new_pen(bench, "pen-three", "unknown")) is None


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


def test_an_older_entry_that_is_withdrawn_no_longer_counts(job):
    plan(job)
    entry = job.add("finish", "step", {"grade": next_step(job).grade.label})
    job.withdraw(entry, "that was another pen")
    assert next_step(job) == plan_of(job).steps[0]


def test_going_back_to_a_coarser_finish_and_the_wrong_zone_are_said(job):
    plan(job)
    job.add("finish", "step", {"grade": "film 5 um"})
    job.add("finish", "step", {"grade": "P600"})
    job.add("finish", "step", {"grade": "cushioned cloth 12000", "zone": "imprint"})
    assert {"went-coarser", "forbidden-zone"} <= topics(job)


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


def test_zones_that_can_spare_nothing_are_left_with_their_reason(job):
    job.add("finish", "zone", {"part": "barrel", "zone": "imprint", "start_mm": "22 mm", "end_mm": "39 mm"})
    job.add("finish", "zone", {"part": "barrel", "zone": "plain barrel"})
    [item] = left_and_why(job)
    assert item.what.startswith("The imprint on the barrel (22 to 39 mm)")
    assert "sanded off" in item.why
    assert "not-masked" in topics(job)


def test_removal_by_diameter_and_by_mass(job):
    """12 x 70 mm of celluloid at 1.40 g/ml: 3.695 mg for each µm (pi D L rho)."""
    plan(job)
    for diameter, mass in (
        ("12.020 mm ± 0.002 mm", "9.1840 g ± 0.0005 g"),
        ("12.000 mm ± 0.002 mm", "9.1470 g ± 0.0005 g"),
    ):
        job.add(
            "finish",
            "measure",
            {"station": "20 mm from the mouth", "diameter": diameter, "weighed": "barrel", "mass": mass},
        )
    removed = removed_so_far(job)
    assert removed.by_diameter[0].removed_um == pytest.approx(10.0)
    assert removed.by_mass[0].removed_um == pytest.approx(37.0 / 3.695, rel=1e-3)
    assert removed.check.agrees
    assert removed.surest.way == "mass"


def test_removal_that_differs_is_a_finding(job):
    plan(job)
    for diameter, mass in (
        ("12.020 mm ± 0.001 mm", "9.184 g ± 0.001 g"),
        ("12.000 mm ± 0.001 mm", "9.074 g ± 0.001 g"),
    ):
        job.add("finish", "measure", {"station": "middle", "diameter": diameter, "weighed": "barrel", "mass": mass})
    assert not removed_so_far(job).check.agrees
    assert "removal-differs" in topics(job)


def test_only_the_same_place_is_compared(job):
    plan(job)
    job.add("finish", "measure", {"station": "mouth", "diameter": "12.020 mm"})
    job.add("finish", "measure", {"station": "middle", "diameter": "12.000 mm"})
    assert removed_so_far(job).by_diameter == ()


def test_a_spent_budget_is_a_stop(job):
    plan(job, wall="0.4 mm")
    for diameter in ("12.200 mm ± 0.002 mm", "12.100 mm ± 0.002 mm"):
        job.add("finish", "measure", {"station": "middle", "diameter": diameter})
    [stop] = [f for f in finish_findings(job) if f.topic == "budget-spent"]
    assert stop.level == "stop"
    assert "40 µm" in stop.text


def one_measured_stage(job, before, after, minutes, grade="P600"):
    job.add("finish", "measure", {"station": "middle", "diameter": f"{before} mm ± 0.002 mm"})
    job.add("finish", "step", {"grade": grade, "minutes": f"{minutes} min"})
    job.add("finish", "measure", {"station": "middle", "diameter": f"{after} mm ± 0.002 mm"})


def test_the_bench_learns_from_all_its_jobs(bench, job):
    other = new_pen(bench, "pen-two")
    plan(job)
    one_measured_stage(job, "12.100", "12.080", 5)
    one_measured_stage(job, "12.080", "12.060", 5)
    assert not bench_rates(bench, "celluloid", job).calibrated
    assert "2 of 3" in bench_rates(bench, "celluloid", job).finding.text
    assert not plan_of(job).steps[0].calibrated
    one_measured_stage(other, "11.900", "11.880", 5)
    line = bench_rates(bench, "celluloid", job)
    assert line.calibrated
    assert line.rows == 3
    assert line.coefficient * 25.8**line.exponent == pytest.approx(2.0)  # 10 µm in 5 min with a grain of 25.8 µm
    assert plan_of(job).steps[0].calibrated
    assert not bench_rates(bench, "casein", job).calibrated


def test_what_the_instrument_cannot_tell_teaches_nothing(bench, job):
    one_measured_stage(job, "12.000", "11.998", 5)
    [stage] = bench_log(bench, job)
    assert not stage.usable
    assert "too-small" in topics(job)


def test_several_grades_between_two_measurements_teach_nothing(bench, job):
    job.add("finish", "measure", {"station": "middle", "diameter": "12.1 mm ± 0.002 mm"})
    for grade in ("P600", "P800"):
        job.add("finish", "step", {"grade": grade, "minutes": "5 min"})
    job.add("finish", "measure", {"station": "middle", "diameter": "12.0 mm ± 0.002 mm"})
    assert bench_log(bench, job) == ()


def test_another_jobs_file_is_only_read(bench, job):
    other = new_pen(bench, "pen-two")
    one_measured_stage(other, "11.900", "11.880", 5)
    torn = other.record.path.read_bytes() + b'{"id": "torn'
    other.record.path.write_bytes(torn)
    assert len(bench_log(bench, job)) == 1
    assert other.record.path.read_bytes() == torn


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


def test_the_nib_has_its_own_short_plan(job):
    assert nib_plan_of(job) is None
    job.add("finish", "nib plan", {"feel": "scratchy", "aligned": "yes"})
    plan(job, own="film 3 um; film 1 um; P600")
    made = nib_plan_of(job)
    assert [s.grade.label for s in made.steps] == ["film 3 µm", "film 1 µm"]
    assert all(s.check_every == 4 for s in made.steps)
