"""A page summed up."""

import numpy as np
import pytest
from drawn_lines import DOUBT, stroke

from pentools.calc.nib.strokes import Skip
from pentools.calc.nib.summary import summed_up


def topics(page):
    return [(finding.level, finding.topic) for finding in page.findings]


def even(width, n=500, **more):
    return stroke(np.full(n, float(width)) + np.tile([0.5, -0.5], n // 2), **more)


def test_the_middle_width_goes_by_length():
    page = summed_up((even(500, 1000), even(400, 200), even(410, 200)), DOUBT)
    assert page.median_width_um == pytest.approx(500, abs=1)
    assert page.length_mm == pytest.approx(84)
    assert page.skips_per_m is None, "under half a metre a figure by the metre says nothing"
    assert page.light is None


def test_light_and_pressed_strokes():
    page = summed_up((even(400), even(410), even(900), even(880)), DOUBT)
    assert (page.light.count, page.pressed.count) == (2, 2)
    assert page.light.width_um == pytest.approx(405, abs=6)
    assert page.pressed.width_um == pytest.approx(890, abs=11)
    assert page.variation_ratio == pytest.approx(900 / 400, abs=0.02)


def test_a_ladder_of_widths_is_not_two_kinds():
    assert summed_up(tuple(even(w) for w in (200, 300, 400, 500, 650, 800, 1000)), DOUBT).pressed is None


def test_skips_by_the_metre():
    skips = (Skip(300.0, 10.0, 0.0, 0.0), Skip(900.0, 20.0, 0.0, 0.0))
    page = summed_up((even(400, 20000, gaps=(skips, 1)),), DOUBT)
    assert (page.skips, page.skips_per_m) == (2, pytest.approx(2 / 1.2))
    assert ("note", "skips") in topics(page)
    assert ("note", "pale-places") in topics(page)
    assert "longest 0.90 mm" in next(f.text for f in page.findings if f.topic == "skips")


def test_an_even_page_has_no_ratio_and_no_warning():
    page = summed_up((even(400), even(401)), DOUBT)
    assert all(level == "note" for level, _ in topics(page))


def test_fine_lines_are_warned_of():
    assert ("warning", "too-fine") in topics(summed_up((even(180),), DOUBT))
    assert ("warning", "too-fine") not in topics(summed_up((even(180, 100), even(500, 1000)), DOUBT))
