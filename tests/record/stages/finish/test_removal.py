"""What has been taken off, by diameter and by mass."""

import pytest
from record.stages.finish.pens import one_measured_stage, plan, topics

from pentools.record.stages.finish.removal import removed_so_far
from pentools.record.stages.finish.words import finish_findings


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


def taken(job, before, after, doubt="0.002"):
    for diameter in (before, after):
        job.add("finish", "measure", {"station": "middle", "diameter": f"{diameter} mm ± {doubt} mm"})


def found(job):
    return {f.key.removeprefix("finish."): f for f in removed_so_far(job).findings}


def test_a_change_within_the_instrument_is_said_as_that(job):
    plan(job)
    taken(job, "12.0050", "12.0000")  # 2.5 µm a side, ± 2 × 500 √2 × 0.002 mm
    assert (
        found(job)["not-resolved"].text
        == "The change by diameter, 2.5 µm, is within what the instrument can tell (± 2.8 µm)."
    )
    taken(job, "12.0000", "11.9990")  # 3 µm from first to last
    assert "not-resolved" not in found(job)


def test_the_budget_is_held_against_the_estimate_where_nothing_was_measured(job):
    plan(job)
    job.add("finish", "step", {"grade": "P600", "minutes": "3 min"})
    assert "budget-spent:estimated" not in found(job)
    job.add("finish", "step", {"grade": "P600", "minutes": "12 min"})
    stop = found(job)["budget-spent:estimated"]
    # rule of thumb, a twelfth of the grain of 25.8 µm a minute, and up to three times of it
    assert (stop.level, "about 32 µm" in stop.text, "“plain barrel” can spare 50 µm" in stop.text) == (
        "stop",
        True,
        True,
    )
    taken(job, "12.0200", "12.0000")
    assert "budget-spent:estimated" not in found(job)


def test_a_measurement_beside_the_plan_is_believed(job):
    plan(job)
    one_measured_stage(job, "12.0200", "12.0000", 5, grade="P800")  # planned: the 20 µm of the defect
    assert found(job)["plan-differs"].text.startswith(
        "By diameter 10.0 ± 2.8 µm a side are gone, the steps were planned to take 20 µm:"
    )


@pytest.mark.parametrize(
    ("after", "differs"), [("11.9850", False), ("11.9860", True), ("11.9740", True), ("11.9750", False)]
)
def test_the_plan_and_the_instrument_s_doubt_are_given_room(job, after, differs):
    plan(job)
    one_measured_stage(job, "12.0200", after, 5, grade="P800")
    assert ("plan-differs" in found(job)) is differs


def test_steps_that_are_not_counted_took_something_too(job):
    plan(job)
    job.add("finish", "step", {"grade": "P1000"})
    assert removed_so_far(job).by_plan_um is None
    one_measured_stage(job, "12.0800", "12.0000", 5, grade="P800")
    assert "plan-differs" not in found(job)
    assert removed_so_far(job).by_plan_um.typical == pytest.approx(20)


def test_the_surest_of_each_way_are_compared(job):
    plan(job)
    taken(job, "12.100", "12.000", doubt="0.02")
    for diameter in ("12.0200", "12.0000"):
        job.add("finish", "measure", {"station": " Near  the MOUTH", "diameter": f"{diameter} mm ± 0.001 mm"})
    for mass in ("9.184 g ± 0.001 g", "9.147 g ± 0.001 g"):
        job.add("finish", "measure", {"weighed": "barrel", "mass": mass})
    removed = removed_so_far(job)
    assert [m.place for m in removed.by_diameter] == ["middle", "near the mouth"]
    assert removed.check.agrees
    assert (removed.surest.way, removed.surest.place, removed.surest.before, removed.surest.after) == (
        "mass", "barrel", 9.184, 9.147,
    )  # fmt: skip
    assert removed.by_diameter[1].shown == "10.0 ± 1.4"
