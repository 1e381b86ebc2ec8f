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
