"""The seal's figures: the ring to scale at both ends of its squeeze, and the ladder with what failed and what held."""

import math
import re
import xml.etree.ElementTree as ET

import pytest

from pentools.calc.seal.fit import seal_fit
from pentools.calc.seal.gland import Gland, Ring
from pentools.errors import InputError
from pentools.figures.seal.measure import measure_seal
from pentools.figures.seal.rings import ladder_drawing, ring_drawing
from pentools.figures.sum_figures import figures_for
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.stages.seal.kinds import PLACES
from pentools.sums.base import read_options
from pentools.sums.seal.rings import SEAL
from pentools.tables import seals

SVG = "{http://www.w3.org/2000/svg}"
RING = Ring("a ring", 5.30, 1.78, 0.05, 0.02, measured=True)


def parts(drawing):
    return ET.fromstring(drawing.svg)


def having(drawing, name):
    return [e for e in parts(drawing).iter() if e.get(name) is not None]


def fitted(gland, ring=RING):
    return seal_fit(gland, (ring,), seals.duty("hand-turned")).best


@pytest.fixture(params=["piston", "packing"])
def candidate(request):
    return fitted(Gland(request.param, 5.30, 8.31, 2.40, 8.10 if request.param == "piston" else 5.45, 0.03, 0.04))


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "test-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "syringe"})
    job.add("seal", "measure", {"place": "washer", "bore": "8.30 mm; 8.32 mm", "rod": "2.40 mm"})
    return job


def try_washer(job, size, happened, dry="yes"):
    texts = {"place": "washer", "what": f"washer {size}", "outside": f"{size} mm", "dry": dry, "happened": happened}
    job.add("seal", "trial", texts)


def test_the_ring_is_drawn_to_one_scale_at_both_ends(candidate):
    drawing = ring_drawing(candidate)
    rings = {e.get("data-state"): e for e in having(drawing, "data-height")}
    fit = candidate.fit
    assert set(rings) == {"least", "most"}
    for name, state in (("least", fit.least), ("most", fit.most)):
        scale = float(rings[name].get("data-scale"))
        assert f"{scale:g}\u00a0:\u00a01" in "".join(parts(drawing).itertext())
        assert float(rings[name].get("data-height")) / scale == pytest.approx(
            min(state.depth_mm, state.section_mm), abs=1e-3
        )
        free = next(e for e in parts(drawing).iter(f"{SVG}circle") if e.get("data-state") == name)
        assert 2 * float(free.get("r")) / scale == pytest.approx(state.section_mm, abs=2e-3)


def test_the_path_itself_has_the_height_and_the_area_that_it_claims(candidate):
    for shape in having(ring_drawing(candidate), "data-height"):
        x0, y0, x1, _, r, _, _, y1 = (float(t) for t in re.match(
            r"M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)A([\d.]+) ([\d.]+) 0 0 1 ([\d.]+) ([\d.]+)", shape.get("d")
        ).groups())  # fmt: skip
        scale = float(shape.get("data-scale"))
        assert y1 - y0 == pytest.approx(2 * r, abs=0.03)
        area = (math.pi * r**2 + (x1 - x0) * 2 * r) / scale**2
        state = getattr(candidate.fit, shape.get("data-state"))
        assert area == pytest.approx(math.pi / 4 * state.section_mm**2, rel=0.01)


def test_the_groove_is_as_wide_as_measured(candidate):
    drawing = ring_drawing(candidate)
    scale = float(having(drawing, "data-scale")[0].get("data-scale"))
    line = next(e for e in having(drawing, "data-dimension") if e.get("data-dimension") == "groove width")
    (x0, _), (x1, _) = (map(float, point.split(",")) for point in line.get("points").split())
    assert (x1 - x0) / scale == pytest.approx(2.40, abs=0.01)


def test_everything_stands_inside_the_picture(candidate):
    for width in (150.0, 160.0, 210.0):
        drawing = ring_drawing(candidate, width_mm=width)
        _, _, w, h = map(float, parts(drawing).get("viewBox").split())
        for element in parts(drawing).iter(f"{SVG}polygon"):
            for point in element.get("points").split():
                x, y = map(float, point.split(","))
                assert 0 <= x <= w
                assert 0 <= y <= h


def test_title_and_words_carry_the_figures():
    drawing = ring_drawing(fitted(Gland("piston", 5.30, 8.31, 2.40, 8.10, 0.03, 0.04)))
    # worked by hand: h = 1.505, s = 1 - 1.505/1.78
    assert drawing.title.startswith("A ring in its groove: squeeze 15.4 %, at worst ")
    assert "At least squeeze the section of" in drawing.alt


def test_a_ring_that_does_not_touch_shows_its_gap():
    thin = Ring("thin", 5.30, 1.40, 0.05, 0.02, measured=True)
    drawing = ring_drawing(fitted(Gland("piston", 5.30, 8.31, 2.40, None, 0.03, 0.0), thin))
    words = "".join(parts(drawing).itertext())
    # worst case by hand: 8.34/2 - 5.27/2 = 1.535 against 1.38 less what the stretch of 0.4 % costs
    assert re.search(r"At least squeeze: no touch, a gap of 0\.1[56] mm", words)
    assert "head was not measured" in words


def test_what_was_not_measured_is_said():
    words = " ".join(parts(ring_drawing(fitted(Gland("packing", 2.40, 5.40)))).itertext())
    assert "width was not measured and is assumed" in words
    assert "guide hole was not measured" in words


def test_a_width_that_no_page_has_is_refused(candidate):
    with pytest.raises(InputError):
        ring_drawing(candidate, width_mm=100.0)


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


def test_the_quick_sum_draws_its_best_ring():
    answer = SEAL.run(read_options(SEAL.fields, {"bore": "7.40 mm", "groove": "4.50 mm", "width": "2.4 mm"}))
    (drawing,) = figures_for("seal", answer)
    assert drawing.title.startswith("Ring 008 in its groove")


@pytest.mark.parametrize("place", [key for key, place in PLACES.items() if place.asks])
def test_every_place_shows_where_its_first_reading_goes(job, place):
    assert measure_seal(job, place, "") is not None


def test_no_drawing_rather_than_a_wrong_one(job):
    assert measure_seal(job, "packing", "guide") is None
    assert measure_seal(job, "packing", "width") is None
    assert measure_seal(job, "section", "") is None
    assert measure_seal(job, "packing", "housing").title == "Measure the packing housing bore here."
