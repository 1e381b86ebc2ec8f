"""A filler's sizes are typed once: the fill test takes them from the seal stage and from the closing."""

import pytest

from pentools.figures.pen_from_record import pen_shape
from pentools.record.stages.weighing.dimensions import dimensions_elsewhere, dimensions_of
from pentools.record.stages.weighing.filling import capacity_of


def sizes(found):
    return {name: reading.value for name, reading in found.items() if reading is not None}


@pytest.fixture
def lever(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "x", "system": "lever-sac"})
    return job


def test_a_pen_without_a_system_has_no_dimensions(new_job):
    assert dimensions_of(new_job()) == dimensions_elsewhere(new_job()) == {}


def test_the_sac_is_as_long_inside_as_it_was_cut_without_what_sits_on_the_nipple(lever):
    lever.add("closing", "order", {"done": "sac-cut", "sac_length": "52 mm"})
    assert sizes(dimensions_of(lever)) == {}
    lever.add(
        "seal", "measure", {"place": "sac", "bore": "8 mm", "nipple_length": "6 mm", "sac": "6.35 mm", "wall": "0.5 mm"}
    )
    assert sizes(dimensions_of(lever)) == {"length": 46, "outside": 6.35, "wall": 0.5}
    lever.add("fill test", "dimensions", {"length": "44 mm"})
    assert sizes(dimensions_of(lever)) == {"length": 44, "outside": 6.35, "wall": 0.5}
    assert sizes(dimensions_elsewhere(lever))["length"] == 46


def test_a_nipple_as_long_as_the_sac_is_no_sac(lever):
    lever.add("closing", "order", {"done": "sac-cut", "sac_length": "20 mm"})
    lever.add("seal", "measure", {"place": "sac", "bore": "8 mm", "nipple_length": "20 mm"})
    assert sizes(dimensions_of(lever)) == {}


def test_what_it_should_hold_follows_from_what_was_typed_elsewhere(lever):
    lever.add(
        "seal", "measure", {"place": "sac", "bore": "8 mm", "nipple_length": "6 mm", "sac": "7.14 mm", "wall": "0.5 mm"}
    )
    lever.add("closing", "order", {"done": "sac-cut", "sac_length": "52 mm"})
    for state, mass in (("dry", "14.00 g"), ("filled", "14.90 g")):
        lever.add("fill test", "weighing", {"state": state, "mass": mass})
    assert capacity_of(lever).data["expected_ml"] > 0.5
    assert pen_shape(lever).sac_length_mm == 46


def test_the_newest_word_on_a_breather_tube_counts_and_a_sacs_sizes_are_no_pumps(new_job):
    job = new_job()
    job.add("intake", "arrival", {"pen": "x", "system": "bulb"})
    job.add("seal", "measure", {"place": "breather", "tube": "2 mm", "tube_hole": "1.95 mm", "reach": "55 mm"})
    job.add("seal", "measure", {"place": "sac", "bore": "8 mm", "sac": "6.35 mm"})
    assert sizes(dimensions_elsewhere(job)) == {"reach": 55, "tube": 2}
    job.add("closing", "order", {"done": "tube-cut", "tube_reach": "54 mm"})
    assert sizes(dimensions_of(job)) == {"reach": 54, "tube": 2}
    job.add("seal", "measure", {"place": "breather", "tube": "2 mm", "tube_hole": "1.95 mm", "reach": "53 mm"})
    assert sizes(dimensions_elsewhere(job))["reach"] == 53
