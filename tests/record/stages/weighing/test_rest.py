"""The filled pen at rest: what of the record is handed on to the leak sum."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import create_job
from pentools.record.stages.weighing.rest import leak_of, leak_points, leak_values
from pentools.units import Reading


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "one", sample=None)


def rest(job, *readings):
    for hours, mass, *blank in readings:
        extra = {"blank": f"{blank[0]} g"} if blank else {}
        job.add("fill test", "leak reading", {"after": f"{hours} h", "mass": f"{mass} g", **extra})


def test_below_two_times_there_is_no_answer(job):
    assert leak_of(job) is None
    rest(job, (12, "20.220"))
    assert leak_of(job) is None
    rest(job, (12, "20.210"))
    assert leak_of(job) is None
    rest(job, (24, "20.210"))
    assert leak_of(job) is not None


def test_two_times_at_one_mass_are_an_answer(job):
    rest(job, (0, "20.220"), (24, "20.220"))
    assert leak_of(job).data["loss_mg_per_h"] == 0


def test_times_and_masses_in_their_order_with_their_digits(job):
    rest(job, (0, "20.22"), (24, "20.19"), (48, "20.2"))
    hours, masses, blanks = leak_points(job)
    assert [h.value for h in hours] == [0, 24, 48]
    assert [m.value for m in masses] == [20.22, 20.19, 20.2]
    assert blanks == (None, None, None)
    answer = leak_of(job)
    assert answer.data["readability_g"] == 0.1
    assert "digits-typed" in [f.topic for f in answer.findings]


def test_a_dummy_counts_only_where_it_was_weighed_every_time(job):
    rest(job, (0, "20.22", "10.00"), (24, "20.20", "9.98"))
    assert leak_of(job).data["loss_mg_per_h"] == pytest.approx(0.0, abs=1e-9)
    rest(job, (48, "20.18"))
    assert leak_values(job)["blanks"] is None
    assert leak_of(job).data["loss_mg_per_h"] == pytest.approx(40 / 48, rel=1e-6)


def test_balance_room_and_gap_come_from_the_setup(job):
    job.add(
        "fill test",
        "setup",
        {"readability": "0.001 g", "repeatability": "0.004 g", "gap": "0.05 mm", "seat": "10 mm", "gap_length": "5 mm"},
    )
    rest(job, (0, "20.220"), (24, "20.219"))
    answer = leak_of(job)
    assert answer.data["reading_uncertainty_g"] == pytest.approx(0.0040104, abs=1e-7)
    assert answer.data["evaporation_estimate_mg_per_day"] == pytest.approx(5.71, abs=0.02)
    job.add("fill test", "setup", {"gap": "0.05 mm", "seat": "10 mm", "gap_length": "5 mm", "humidity": "75 %"})
    assert leak_of(job).data["evaporation_estimate_mg_per_day"] == pytest.approx(5.71 / 2, abs=0.02)


def test_a_time_without_a_mass_and_a_mass_without_a_time_are_passed_by(job):
    rest(job, (0, "20.22"))
    job.record.append(new_entry("fill test", "leak reading", {"after": Reading(12.0, "h").as_json()}))
    job.record.append(new_entry("fill test", "leak reading", {"mass": Reading(20.0, "g").as_json()}))
    rest(job, (24, "20.19"))
    hours, masses, blanks = leak_points(job)
    assert ([h.value for h in hours], [m.value for m in masses], blanks) == ([0, 24], [20.22, 20.19], (None, None))


def test_times_are_not_taken_for_their_order(job):
    rest(job, (24, "20.22"), (0, "20.19"))
    assert leak_of(job).data["loss_mg_per_h"] == pytest.approx(-30 / 24)
