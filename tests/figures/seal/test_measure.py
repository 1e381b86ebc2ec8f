"""Which drawing shows where the next reading at a seal goes."""

import pytest

from pentools.figures.seal.measure import measure_seal
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.seal.kinds import PLACES

UNDRAWN = ("bulb", "cap-seat", "inner-cap")
"""Places whose first reading no drawing shows; what else they ask may be drawn."""


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "syringe"})
    job.add("seal", "measure", {"place": "washer", "bore": "8.30 mm; 8.32 mm", "rod": "2.40 mm"})
    return job


@pytest.mark.parametrize("place", [key for key, place in PLACES.items() if place.asks and key not in UNDRAWN])
def test_every_place_shows_where_its_first_reading_goes(job, place):
    assert measure_seal(job, place, "") is not None


def test_no_drawing_rather_than_a_wrong_one(job):
    assert measure_seal(job, "packing", "guide") is None
    assert measure_seal(job, "packing", "width") is None
    assert measure_seal(job, "section", "") is None
    assert all(measure_seal(job, place, "") is None for place in UNDRAWN)
    assert measure_seal(job, "breather", "reach") is not None
    assert measure_seal(job, "packing", "housing").title == "Measure the packing housing bore here."
