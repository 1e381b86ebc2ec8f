"""The ring in its groove, to scale: its height, its width and its area."""

import math
import re
import xml.etree.ElementTree as ET

import pytest

from pentools.calc.seal.fit import seal_fit
from pentools.calc.seal.gland import Gland, Ring
from pentools.errors import InputError
from pentools.figures.seal.rings import ring_drawing
from pentools.figures.sum_figures import figures_for
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
    assert drawing.title.startswith("A ring in its groove: squeeze 15.4\u202f%, at worst ")
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


def test_the_quick_sum_draws_its_best_ring():
    answer = SEAL.run(read_options(SEAL.fields, {"bore": "7.40 mm", "groove": "4.50 mm", "width": "2.4 mm"}))
    (drawing,) = figures_for("seal", answer)
    assert drawing.title.startswith("Ring 008 in its groove")
