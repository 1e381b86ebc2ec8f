"""The ladder of trials: each at its size, each with its word."""

import xml.etree.ElementTree as ET

import pytest

from pentools.figures.seal.rings import ladder_drawing
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job

SVG = "{http://www.w3.org/2000/svg}"


def parts(drawing):
    return ET.fromstring(drawing.svg)


def having(drawing, name):
    return [e for e in parts(drawing).iter() if e.get(name) is not None]


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "syringe"})
    job.add("seal", "measure", {"place": "washer", "bore": "8.30 mm; 8.32 mm", "rod": "2.40 mm"})
    return job


def try_washer(job, size, happened, dry="yes"):
    texts = {"place": "washer", "what": f"washer {size}", "outside": f"{size} mm", "dry": dry, "happened": happened}
    job.add("seal", "trial", texts)


def test_nothing_measured_no_ladder(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "bare")
    assert ladder_drawing(job, "washer") is None


def test_the_ladder_shows_each_trial_at_its_size(job):
    for size, happened in ((8.2, "no touch"), (8.7, "too stiff"), (8.4, "slides, no suction")):
        try_washer(job, size, happened)
    drawing = ladder_drawing(job, "washer")
    marks = having(drawing, "data-outcome")
    assert [m.get("data-outcome") for m in marks] == ["no touch", "too stiff", "slides, no suction", "next"]
    tags = [m.tag.removeprefix(SVG) for m in marks]
    assert tags == ["circle", "polygon", "circle", "circle"]
    middles = [float(m.get("cx")) if m.get("cx") else sum(float(p.split(",")[0]) for p in m.get("points").split()) / 4 for m in marks]  # fmt: skip
    sizes = [float(m.get("data-size")) for m in marks]
    assert sizes == [8.2, 8.7, 8.4, 8.5]
    slope = (middles[1] - middles[0]) / 0.5
    for middle, size in zip(middles, sizes, strict=True):
        assert middle == pytest.approx(middles[0] + slope * (size - 8.2), abs=0.02)
    bore = having(drawing, "data-bore")[0]
    assert float(bore.get("data-bore")) == pytest.approx(8.31)
    assert float(bore.get("points").split(",")[0]) == pytest.approx(middles[0] + slope * 0.11, abs=0.02)
    bracket = having(drawing, "data-bracket")[0]
    assert float(bracket.get("width")) == pytest.approx(slope * 0.3, abs=0.02)


def test_every_mark_has_its_word_and_the_one_that_held_its_own_shape(job):
    try_washer(job, 8.5, "slides, no suction")
    try_washer(job, 8.6, "pulls back", dry="no")
    try_washer(job, 8.6, "pulls back")
    drawing = ladder_drawing(job, "washer", ahead=False)
    words = [e.text for e in parts(drawing).iter(f"{SVG}text")]
    assert "8.50 slides, no suction" in words
    assert "8.60 pulls back, not dry" in words
    assert "8.60 pulls back" in words
    marks = having(drawing, "data-outcome")
    assert marks[1].get("fill") != marks[2].get("fill")
    assert not having(drawing, "data-bracket")
    assert drawing.title == "The washer on the head holds dry: washer 8.6, after one that did not do."
    assert "8.50 mm slides, no suction; 8.60 mm pulls back, not dry; 8.60 mm pulls back" in drawing.alt
