"""A scale bar is as long as it says, in a colour that is seen, on a copy."""

import numpy as np
import pytest
from PIL import Image

from pentools.errors import InputError
from pentools.pictures.scale import bar_mm, mm_per_px, with_bar

INK = np.array((31, 58, 95))


@pytest.mark.parametrize(("known", "why"), [((0, 100), "0 mm"), ((-1, 100), "0 mm"), ((float("nan"), 100), "0 mm"), ((20, 19.9), "20 px"), ((20, float("inf")), "20 px")])  # fmt: skip
def test_a_length_that_cannot_be_is_refused(known, why):
    with pytest.raises(InputError, match=why):
        mm_per_px(*known)


def test_the_edge_of_the_range_counts():
    assert mm_per_px(2, 20) == 0.1


@pytest.mark.parametrize(("width", "scale", "length"), [(1600, 0.05, 20), (1600, 0.049, 10), (1000, 0.2, 50), (1000, 0.004, 1), (900, 0.0004, 0.05)])  # fmt: skip
def test_the_bar_is_a_round_length_of_at_most_a_quarter(width, scale, length):
    # a quarter of 1600 px at 0.05 mm is 20 mm, and so on, by hand
    assert bar_mm(width, scale) == pytest.approx(length)


@pytest.mark.parametrize(("size", "scale"), [((1600, 700), 0.05), ((600, 900), 0.11), ((320, 160), 0.4)])
def test_the_bar_in_the_picture_is_as_long_as_it_says(size, scale):
    plain = Image.new("RGB", size, (120, 110, 90))
    made = np.asarray(with_bar(plain, scale)).astype(int)
    ink = np.abs(made - INK).sum(axis=2) < 60
    longest = max(row.sum() for row in ink)
    assert longest == pytest.approx(bar_mm(size[0], scale) / scale, abs=1)
    assert ink[: size[1] // 2].sum() == 0
    assert np.asarray(plain).std(axis=(0, 1)).max() == 0
