"""The bench's own rates, from the measured stages of all its jobs."""

import pytest
from record.stages.finish.pens import new_pen, one_measured_stage, plan, topics

from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job
from pentools.record.stages.finish.plan import (
    plan_of,
)
from pentools.record.stages.finish.rates import bench_log, bench_rates, diameter_u_mm, job_log, mass_per_um_of, mass_u_g
from pentools.units import read_quantity


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


def with_facts(job, **lines):
    path = job.bench.folder / "bench.toml"
    text = path.read_text()
    for old, new in lines.values():
        assert old in text
        text = text.replace(old, new)
    path.write_text(text)
    return open_job(job.name, bench=open_bench_folder(job.bench.folder))


def test_the_doubt_of_a_reading_is_the_typed_one_else_the_bench_s(job):
    typed, bare = read_quantity("12.00 mm ± 0.004 mm", "mm"), read_quantity("12.00 mm", "mm")
    assert (diameter_u_mm(job, typed), diameter_u_mm(job, bare)) == (0.004, 0.02)
    weighed, plain = read_quantity("9.18 g ± 0.003 g", "g"), read_quantity("9.18 g", "g")
    assert mass_u_g(job, weighed) == 0.003
    # a last digit of 0.01 g, evenly spread, beside a repeatability of as much
    assert mass_u_g(job, plain) == pytest.approx((0.01**2 / 12 + 0.01**2) ** 0.5)
    job = with_facts(
        job, a=('uncertainty = "0.02 mm"', 'uncertainty = "0.03 mm"'), b=('repeatability = ""', 'repeatability = "0.004 g"'),
        c=('readability = "0.01 g"', 'readability = "0.002 g"'),
    )  # fmt: skip
    assert diameter_u_mm(job, bare) == 0.03
    assert mass_u_g(job, plain) == pytest.approx((0.002**2 / 12 + 0.004**2) ** 0.5)
    job = with_facts(
        job, a=('uncertainty = "0.03 mm"', 'uncertainty = ""'), b=('readability = "0.002 g"', 'readability = ""')
    )
    assert diameter_u_mm(job, bare) == 0.02
    assert mass_u_g(job, plain) == pytest.approx((0.01**2 / 12 + 0.004**2) ** 0.5)


def test_a_micrometre_weighs_what_the_polished_stretch_does(job):
    # pi × 12 mm × 70 mm × 1.40 g/ml, of the intake; then of the plan's own stretch
    assert mass_per_um_of(job) == pytest.approx(3.695, rel=1e-3)
    plan(job, worked_length="35 mm")
    assert mass_per_um_of(job) == pytest.approx(3.695 / 2, rel=1e-3)
    plan(job, worked_length="35 mm", worked_diameter="6 mm")
    assert mass_per_um_of(job) == pytest.approx(3.695 / 4, rel=1e-3)
    job.add("intake", "arrival", {"pen": "a drawn pen", "material": "perhaps celluloid"})
    assert mass_per_um_of(job) is None


def weighed_stage(job, *steps, **more):
    """A stage by diameter (20 µm across) and by mass, with the surer one first to last as they are typed."""
    job.add("finish", "measure", {"station": "middle", "diameter": "12.10 mm ± 0.01 mm", "weighed": "barrel", "mass": "9.2000 g ± 0.0005 g"})  # fmt: skip
    for step in steps:
        job.add("finish", "step", {"grade": "P600", "minutes": "5 min", **step})
    job.add("finish", "measure", {"station": "middle", "diameter": "12.08 mm ± 0.01 mm", "weighed": "Barrel", "mass": "9.1557 g ± 0.0005 g", **more})  # fmt: skip


def test_the_surer_way_tells_the_stage_and_how_it_was_worked(job):
    weighed_stage(job, {"wet": "wet", "fresh": "used"}, {"wet": "wet", "fresh": "used", "minutes": "3 min"})
    [stage] = job_log(job)
    # 44.3 mg of 3.695 mg/µm; 500 and 1000 are half a diameter and a gram in µm and mg
    assert stage.row.removed_um == pytest.approx(44.3 / 3.695, rel=1e-3)
    assert stage.u_um == pytest.approx(0.5 * 2**0.5 / 3.695, rel=1e-3)
    assert (stage.row.amount, stage.row.basis, stage.row.wet, stage.row.fresh) == (8, "min", True, False)
    assert (stage.row.grade.label, stage.row.material, stage.usable) == ("P600", "celluloid", True)


def test_by_diameter_half_of_it_is_a_side(job):
    one_measured_stage(job, "12.100", "12.080", 5)
    [stage] = job_log(job)
    assert stage.row.removed_um == pytest.approx(10)
    assert stage.u_um == pytest.approx(500 * 0.002 * 2**0.5)
    assert (stage.row.wet, stage.row.fresh) == (None, None)


@pytest.mark.parametrize(
    "steps",
    [
        [{"minutes": ""}], [{}, {"minutes": ""}], [{"grade": "400"}], [{"zone": "plain barrel"}, {"zone": "near an imprint"}],
        [],
    ],
)  # fmt: skip
def test_a_stage_that_says_nothing_of_one_grade_is_left_out(job, steps):
    weighed_stage(job, *steps)
    assert job_log(job) == ()


def test_a_pen_that_grew_and_one_of_unknown_material_teach_nothing(bench, job):
    one_measured_stage(job, "12.080", "12.100", 5)
    assert job_log(job) == ()
    other = new_pen(bench, "pen-two", "perhaps celluloid")
    one_measured_stage(other, "12.100", "12.080", 5)
    assert job_log(other) == ()


def test_the_bench_s_calliper_reaches_the_logs_of_its_other_jobs(bench, job):
    other = new_pen(bench, "pen-two")
    for diameter in ("12.10 mm", "12.00 mm"):
        other.add("finish", "measure", {"station": "middle", "diameter": diameter})
        other.add("finish", "step", {"grade": "P600", "minutes": "5 min"})
    assert [stage.u_um for stage in bench_log(job.bench, job)] == [pytest.approx(500 * 0.02 * 2**0.5)]
    job = with_facts(job, a=('uncertainty = "0.02 mm"', 'uncertainty = "0.03 mm"'))
    assert [stage.u_um for stage in bench_log(job.bench, job)] == [pytest.approx(500 * 0.03 * 2**0.5)]
    assert len(bench_log(job.bench)) == 1


def test_a_change_of_twice_its_doubt_can_be_used(job):
    one_measured_stage(job, "12.0080", "12.0023", 5)  # 2.85 µm; twice the doubt is 2.83 µm
    one_measured_stage(job, "12.0080", "12.0024", 5)  # 2.80 µm
    assert [stage.usable for stage in job_log(job)] == [True, False]
