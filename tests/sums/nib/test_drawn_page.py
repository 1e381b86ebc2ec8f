"""The page that the kit draws."""

import numpy as np
import pytest

from pentools.sums.nib.drawn_page import DRAWN_DPI, drawn_page


def test_it_is_a_page_of_greys():
    page = drawn_page()
    assert page.dtype == np.uint8
    assert page.shape == pytest.approx((45 * DRAWN_DPI / 25.4, 70 * DRAWN_DPI / 25.4), abs=1)
    assert 200 < np.median(page) < 245
    assert (page < 80).mean() > 0.03


def test_the_ruler_has_longer_strokes_at_fives_and_tens():
    from pentools.sums.nib.drawn_page import drawn_ruler

    page, mm = drawn_ruler(), DRAWN_DPI / 25.4
    dark = [int((page[:, round((8 + k) * mm)] < 160).sum()) / mm for k in (0, 1, 5, 10, 59)]
    assert dark == pytest.approx([6, 3, 4.5, 6, 3], abs=0.15)
    assert page.shape == (round(16 * mm), round(76 * mm))
