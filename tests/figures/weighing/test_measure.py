"""Which small drawings go with the fill test's forms."""

import pytest

from pentools.figures.weighing.measure import dimension_drawings, fill_test_drawing
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "one")


def arrive(job, system):
    job.add("intake", "arrival", {"pen": "a pen", "system": system})


def test_no_system_no_dimension_to_measure(job):
    assert dimension_drawings(job) == ()


@pytest.mark.parametrize(
    ("system", "titles"),
    [
        ("piston", ["bore", "stroke", "rod diameter"]),
        ("plunger-vacuum", ["bore", "rod diameter", "stroke"]),
        ("lever-sac", ["sac outside diameter", "sac length", "sac wall"]),
        ("cartridge-converter", ["bore", "cartridge or converter length"]),
        ("eyedropper", ["bore", "depth for ink"]),
    ],
)
def test_each_dimension_that_a_calliper_takes_has_its_drawing_and_no_other(job, system, titles):
    arrive(job, system)
    assert [drawing.title for drawing in dimension_drawings(job)] == [f"Measure the {words} here." for words in titles]


def test_the_balance_shows_the_latest_pair(job):
    arrive(job, "piston")
    assert "Empty: not weighed yet." in fill_test_drawing(job).alt
    job.add("fill test", "weighing", {"state": "dry", "mass": "23.26 g"})
    job.add("fill test", "weighing", {"state": "filled", "mass": "25.06 g"})
    assert "Empty: 23.26 g. Filled: 25.06 g." in fill_test_drawing(job).alt
    job.add("fill test", "weighing", {"state": "drained", "mass": "23.57 g"})
    assert "Empty: 23.57 g. Filled: not weighed yet." in fill_test_drawing(job).alt
