"""Rows of even marks found on a small page."""

import numpy as np
import pytest

from pentools.calc.nib.combs import rough_combs


def row(step=12.0, count=40, long=30, wide=3, jitter=0.0, shape=(300, 700)):
    page = np.full(shape, 220, np.uint8)
    draw = np.random.default_rng(4)
    for k in range(count):
        x = round(60 + k * step + jitter * draw.normal())
        page[80 : 80 + long, x : x + wide] = 40
    return page


@pytest.mark.parametrize("turned", [0, 1])
def test_a_row_is_found_with_its_step(turned):
    (comb,) = rough_combs(np.rot90(row(), turned).copy())
    assert comb.step_px == pytest.approx(12.0, abs=0.02)
    assert comb.count == 39
    assert comb.long_px == pytest.approx(30, abs=4)
    assert comb.filled == pytest.approx(0.25, abs=0.05)
    assert abs(comb.along @ comb.out) < 0.02


def test_fields_fill_half_of_a_step():
    (comb,) = rough_combs(row(step=120.0, count=5, long=24, wide=60))
    assert comb.count in (4, 5)  # to the last edge
    assert comb.filled == pytest.approx(0.5, abs=0.02)


def test_uneven_marks_and_few_marks_are_no_row():
    assert not [c for c in rough_combs(row(step=30.0, count=14, jitter=8.0)) if c.count > 8]
    assert rough_combs(row(count=3)) == []
    assert rough_combs(np.full((200, 200), 200, np.uint8)) == []
