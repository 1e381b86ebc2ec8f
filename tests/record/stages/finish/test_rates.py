"""The bench's own rates, from the measured stages of all its jobs."""

import pytest
from record.stages.finish.pens import new_pen, one_measured_stage, plan, topics

from pentools.record.stages.finish.plan import (
    plan_of,
)
from pentools.record.stages.finish.rates import bench_log, bench_rates


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
