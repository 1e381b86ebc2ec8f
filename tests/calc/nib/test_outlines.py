"""Outlines with four sides."""

import numpy as np
import pytest
from drawn_lines import codes, whole, with_card

from pentools.calc.nib.outlines import exact, rough_outlines


def test_a_card_is_found_and_its_sides_are_exact():
    light = with_card(5.0)
    rough = min(rough_outlines(codes(light)), key=lambda q: abs(q.mean(axis=0) - 6 * np.array([70, 60])).sum())
    outline = exact(whole(light), rough, 8.0)
    sides = np.linalg.norm(np.roll(outline.corners, -1, axis=0) - outline.corners, axis=1) / 6
    assert sorted(sides) == pytest.approx([53.98, 53.98, 85.60, 85.60], abs=0.05)
    assert outline.rounding / 6 / (2**0.5 - 1) == pytest.approx(3.18, abs=0.3)
    assert outline.off_px < 0.2
    assert outline.seen > 0.95


def test_a_side_off_the_page_is_none():
    light = with_card(0.0, middle=(110, 60))
    assert all(q.max() < 6 * 140 for q in rough_outlines(codes(light)))
    corners = 6 * np.array([[67.0, 33], [152, 33], [152, 87], [67, 87]])
    assert exact(whole(light), corners, 8.0) is None


def test_an_empty_page_has_none():
    assert rough_outlines(np.full((300, 400), 230, np.uint8)) == []
