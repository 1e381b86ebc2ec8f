"""Reading between elements."""

import numpy as np
import pytest

from pentools.calc.nib.sampling import read_at

SLOPE = (np.arange(200)[:, None] * 10 + np.arange(300)[None, :] * 100).astype(np.uint16)


def test_a_slope_is_read_where_it_is_asked_for():
    draw = np.random.default_rng(2)
    x, y = draw.uniform(0, 299, 5000), draw.uniform(0, 199, 5000)
    assert read_at(SLOPE, x, y) == pytest.approx(100 * x + 10 * y, abs=4)  # the library interpolates in 32nds


def test_tables_longer_than_the_library_takes_keep_their_order():
    x = np.tile(np.arange(300.0), 250)[:70000, None] + np.zeros(3)
    found = read_at(SLOPE, x, np.full_like(x, 7.0))
    assert found.shape == (70000, 3)
    assert (found == 100 * x + 70).all()


def test_beyond_the_rim_it_is_the_rim_and_nothing_is_nothing():
    assert read_at(SLOPE, np.array([-9.0, 400.0]), np.array([0.0, 0.0])).tolist() == [0.0, 29900.0]
    assert read_at(SLOPE, np.zeros(0), np.zeros(0)).shape == (0,)
    assert read_at(SLOPE, np.zeros((0, 5)), np.zeros((0, 5))).shape == (0, 5)
