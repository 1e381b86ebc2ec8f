"""What has been taken off, by diameter and by mass."""

import pytest
from record.stages.finish.pens import plan, topics

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
