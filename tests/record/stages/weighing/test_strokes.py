"""Runs of weighings after single strokes, out of the record."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.weighing.strokes import stroke_runs, stroke_uncertainty_g, strokes_of


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "one", sample=None)


def weigh(job, state, mass, strokes=None):
    extra = {} if strokes is None else {"strokes": str(strokes)}
    job.add("fill test", "weighing", {"state": state, "mass": f"{mass} g", **extra})


def test_nothing_weighed_is_no_run(job):
    assert stroke_runs(job) == ()
    assert strokes_of(job) is None


def test_runs_stand_apart_and_begin_from_the_mean_of_their_empty_weighings(job):
    for state, mass, n in (
        ("dry", "16.83", None),
        ("dry", "16.85", None),
        ("stroke", "17.34", 1),
        ("stroke", "17.84", 2),
    ):
        weigh(job, state, mass, n)
    weigh(job, "drained", "16.89")
    weigh(job, "drained", "16.91")
    for n, mass in enumerate(("17.15", "17.40", "17.40"), 1):
        weigh(job, "stroke", mass, n)
    first, last = stroke_runs(job)
    assert first.strokes == (0, 1, 2)
    assert first.volumes_ml == pytest.approx((0.0, 0.5015, 1.003), abs=1e-6)
    assert (last.plateau_stroke, last.plateau_ml) == (2, pytest.approx(0.5015, abs=1e-6))
    assert strokes_of(job) == last


def test_a_missing_number_counts_on_and_one_that_does_not_rise_is_left_out(job):
    weigh(job, "dry", "16.00")
    for mass, n in (("16.25", None), ("16.50", None), ("16.60", 2), ("16.75", None)):
        weigh(job, "stroke", mass, n)
    (run,) = stroke_runs(job)
    assert run.strokes == (0, 1, 2, 3)
    assert run.volumes_ml[-1] == pytest.approx(0.75 * 1.003, abs=1e-6)


def test_a_filling_between_ends_the_run(job):
    weigh(job, "dry", "16.00")
    weigh(job, "filled", "17.00")
    weigh(job, "stroke", "16.25", 1)
    weigh(job, "stroke", "16.50", 2)
    assert stroke_runs(job) == ()


def test_what_it_should_hold_and_z_come_from_the_filling(job):
    job.add("intake", "arrival", {"pen": "a pen", "system": "diaphragm-pump"})
    job.add("fill test", "dimensions", {"bore": "8 mm", "reach": "40 mm"})
    job.add("fill test", "setup", {"temperature": "30 °C"})
    weigh(job, "dry", "16.00")
    weigh(job, "filled", "17.50")
    weigh(job, "dry", "16.00")
    for n, mass in enumerate(("16.30", "16.60", "16.60"), 1):
        weigh(job, "stroke", mass, n)
    run = strokes_of(job)
    assert run.findings[0].topic == "early-plateau"
    assert run.volumes_ml[1] == pytest.approx(0.30 * 1.0054, abs=2e-5)


def test_a_weighing_is_as_sure_as_digit_scatter_and_drop(job):
    weigh(job, "dry", "16.00")
    # by hand: √(0.01²/12 + 0.01² + 0.04²/12) = 0.015546; with 16.2 g typed √(0.1²/12 + 0.1² + 0.04²/12) = 0.10472
    assert stroke_uncertainty_g(job) == pytest.approx(0.015546, abs=1e-6)
    weigh(job, "stroke", "16.2", 1)
    assert stroke_uncertainty_g(job) == pytest.approx(0.10472, abs=1e-5)
    job.add("fill test", "setup", {"drop": "0 g"})
    assert stroke_uncertainty_g(job) == pytest.approx(0.10408, abs=1e-5)


def test_a_filling_that_contradicts_itself_does_not_hide_the_strokes(job):
    weigh(job, "dry", "18.00")
    weigh(job, "filled", "16.00")
    weigh(job, "dry", "16.00")
    for n, mass in enumerate(("16.30", "16.60", "16.60"), 1):
        weigh(job, "stroke", mass, n)
    assert strokes_of(job).plateau_stroke == 2
