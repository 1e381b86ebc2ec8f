"""A size goes by one name wherever it was measured, and its doubt is what was stated, else the calliper's."""

import math

import pytest

from pentools.books.search.sizes import EITHER, SIZE_FIELDS, Size, calliper_of, doubt_of, sizes_of
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.seal.kinds import MEASURE
from pentools.systems.dimensions import DIMENSIONS


def sizes(job):
    return {size.name: size for size in sizes_of(job)}


def test_every_dimension_and_every_measure_of_a_seal_may_be_asked_for():
    assert set(DIMENSIONS) <= set(SIZE_FIELDS)
    assert all(name in SIZE_FIELDS for names in EITHER.values() for name in names)
    seals = {field.name for field in MEASURE.fields if field.kind in ("quantity", "quantities")}
    assert len(seals - {"bore_deep", "bore_before"}) == 26


def test_one_name_wherever_it_was_measured(bench):
    job = create_job(bench, "pen")
    job.add("intake", "arrival", {"pen": "a pen", "barrel_outside_mm": "12.6 mm ± 0.1 mm", "barrel_mm": "70 mm"})
    job.add("fill test", "dimensions", {"outside": "6.4 mm", "length": "60 mm", "reach": "55 mm", "nipple": "5.9 mm"})
    job.add("seal", "measure", {"place": "sac", "bore": "7.60 mm; 7.64 mm; 7.62 mm", "nipple": "6.20 mm", "depth": "62 mm", "wall": "0.5 mm"})  # fmt: skip
    job.add("open", "knock-out block", {"tail": "3.1 mm", "bore": "5.0 mm", "shoulder": "6 mm"})
    job.add("closing", "order", {"sac_length": "52 mm", "bar_length": "61 mm"})
    found = sizes(job)
    assert found["barrel_diameter"] == Size("barrel_diameter", 12.6, 0.1)
    assert {name: found[name].value for name in ("barrel_length", "nipple", "standing", "sac_outside", "breather_length", "sac_wall", "feed_tail", "section_bore", "bar_length")} == {
        "barrel_length": 70, "nipple": 6.2, "standing": 5.9, "sac_outside": 6.4, "breather_length": 55, "sac_wall": 0.5, "feed_tail": 3.1, "section_bore": 5.0, "bar_length": 61,
    }  # fmt: skip
    assert found["bore"].value == pytest.approx(7.62)
    assert found["bore"].spread == pytest.approx(0.02 / math.sqrt(3))
    assert found["bore"].stated is None
    assert sorted(s.value for s in sizes_of(job) if s.name == "sac_length") == [52, 60]


def test_the_newest_reading_at_a_place_counts_and_each_place_stands_alone(bench):
    job = create_job(bench, "pen")
    for place, bore in (("head", "8.0 mm"), ("cork", "8.5 mm"), ("head", "8.1 mm")):
        job.add("seal", "measure", {"place": place, "bore": bore, "groove": "4.5 mm"})
    assert sorted(s.value for s in sizes_of(job) if s.name == "bore") == [8.1, 8.5]


@pytest.mark.parametrize(
    ("size", "doubt"),
    [
        (Size("nipple", 6.2, None), 0.03),
        (Size("nipple", 6.2, 0.1), 0.1),
        (Size("nipple", 6.2, None, 0.04), 0.05),
        (Size("nipple", 6.2, 0.0, 0.04), 0.04),
        (Size("depth", 62.0, None), 0.5),
        (Size("depth", 62.0, 0.2), 0.2),
        (Size("barrel_length", 70.0, None), 0.03),
    ],
)
def test_what_is_in_doubt(size, doubt):
    assert doubt_of(size, 0.03) == pytest.approx(doubt)


@pytest.mark.parametrize(("said", "told"), [('"0.05 mm"', 0.05), ('""', 0.02), ('"2 thou"', 0.0508)])
def test_the_bench_says_what_its_calliper_is_good_for(tmp_path, said, told):
    (tmp_path / "bench.toml").write_text(f"[caliper]\nuncertainty = {said}\n")
    assert calliper_of(open_bench_folder(tmp_path)) == pytest.approx(told)
