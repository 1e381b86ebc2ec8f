"""Cleaning from the record: what is checked, and where the stage stands."""

import pytest
from record.stages.treatment.pens import put, to_clean


@pytest.fixture
def job(job):
    return to_clean(job)


def test_a_running_soak_and_a_surface_that_does_not_wet_are_checked(job):
    put(job, 0, "soak started", part="section", bath="cold water soak")
    put(job, 1, "rinse", part="feed", with_what="soap", wets=False)
    topics = [f.topic for f in job.stage("clean").checks(job)]
    assert topics == ["soak-running", "not-wetting"]
    put(job, 2, "soak ended", part="section")
    put(job, 3, "rinse", part="feed", with_what="soap", wets=True)
    assert job.stage("clean").checks(job) == ()


def test_state_from_nothing_to_done(job):
    stage = job.stage("clean")
    assert stage.state_of(job).word == "not begun"
    job.add("clean", "bath", {"part": "section", "bath": "cold water soak", "minutes": "5 min"})
    assert stage.state_of(job).word == "done"
    job.add("clean", "drying", {"part": "section", "hours": "24 h"})
    assert stage.state_of(job).word == "open"
