"""A page from light to strokes."""

import numpy as np
import pytest
from drawn_lines import UM, bar, page, whole

from pentools.calc.nib.page import measure_strokes, trace
from pentools.calc.nib.strokes import Doubt


def strokes(light, um=UM, threshold=0.5, tell=None):
    return measure_strokes(trace(whole(light), um, tell=tell), Doubt(0.001, um, threshold=threshold), tell)


def test_bars_come_back():
    light = page(rows=400)
    for row, width in ((60, 300), (150, 500), (250.4, 800)):
        light = bar(light, row, width)
    found = strokes(light)
    assert sorted(s.width_um for s in found) == pytest.approx([300, 500, 800], abs=1.5)
    assert all(s.length_mm == pytest.approx(520 * UM / 1000, abs=0.05) for s in found)
    assert all(s.blur_um == pytest.approx((35**2 + UM**2 / 12) ** 0.5, abs=2) for s in found)
    assert all(s.skips == () for s in found)
    assert not any(s.too_fine for s in found)


def test_a_gap_is_a_skip_with_its_length_and_place():
    light = bar(bar(page(), 120, 500, end=250), 120, 500, start=262)
    (stroke,) = strokes(light)
    (skip,) = stroke.skips
    assert skip.length_um == pytest.approx(12 * UM, abs=12)
    assert (skip.x_px, skip.y_px) == pytest.approx((256, 120), abs=0.5)
    assert skip.at_mm == pytest.approx(210 * UM / 1000, abs=0.05)


def test_a_crossing_does_not_widen():
    light = bar(page(rows=600), 300, 500)
    light = np.minimum(light, bar(page(rows=600), 250, 500).T)
    found = strokes(light)
    assert len(found) == 2
    assert all(s.p95_um == pytest.approx(500, abs=4) for s in found)


def test_a_broad_thing_is_no_stroke_and_a_blank_page_has_none():
    assert strokes(bar(page(rows=500), 250, 9000)) == ()
    assert strokes(page()) == ()


def test_progress_is_told_from_start_to_end():
    told = []
    strokes(bar(page(), 120, 500), tell=lambda words, share: told.append((words, share)))
    shares = [share for _, share in told]
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    assert {"paper", "tracing", "measuring"} <= {words for words, _ in told}


@pytest.mark.parametrize("dpi", [300, 1200])
def test_other_resolutions(dpi):
    um = 25400 / dpi
    light = bar(page(rows=int(10000 / um), columns=int(25000 / um)), 5000 / um, 500, um=um)
    (stroke,) = strokes(light, um)
    assert stroke.width_um == pytest.approx(500, abs=2)
