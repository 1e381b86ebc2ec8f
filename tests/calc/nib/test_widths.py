"""Raw widths, clean cuts, and the blur taken out."""

import numpy as np
import pytest

from pentools.calc.nib.edge_model import normal_share
from pentools.calc.nib.profiles import STEP, Cuts
from pentools.calc.nib.widths import Usual, deblurred, raw_widths

N = 120
BOUNDS = np.array([0, N])
ACROSS = np.arange(-60, 61) * STEP


def cuts(width, blur, ink=0.9, beside=None):
    row = ink * (normal_share((ACROSS + width / 2) / blur) - normal_share((ACROSS - width / 2) / blur))
    if beside is not None:
        row = row + ink * normal_share((ACROSS - beside) / blur)
    return Cuts(np.tile(row, (N, 1)).astype(np.float32), float(ACROSS[0]))


def widths(width, blur, threshold=0.5, usual=None):
    raw, smooth = raw_widths(cuts(width, blur), np.full(N, width / 2), BOUNDS, 2)
    step = np.array([1.5])
    found, _ = deblurred(smooth, raw, raw.found, BOUNDS, um=(42.3, step), threshold=threshold, usual=usual or Usual())
    return raw, found


@pytest.mark.parametrize("width", [6.0, 11.8, 30.0])
def test_blur_does_not_widen(width):
    raw, found = widths(width, 1.1)
    assert raw.found.all()
    assert raw.clean.all()
    assert found.width == pytest.approx(width, abs=0.02)
    assert np.median(found.blur) == pytest.approx((1.1**2 - 1 / 6 - 1 / 8) ** 0.5, abs=0.03)


def test_a_narrow_line_is_held_to_the_blur_of_broad_ones():
    raw, alone = widths(3.4, 1.1)
    assert np.median(raw.high - raw.low) > 3.4 + 0.15
    _, held = widths(3.4, 1.1, usual=Usual(1.1, 0.9))
    assert np.median(held.width) == pytest.approx(3.4, abs=0.05)
    assert abs(np.median(alone.width) - 3.4) < 0.5


@pytest.mark.parametrize(("threshold", "z"), [(0.6, 0.2533), (0.4, -0.2533)])
def test_another_threshold_moves_both_edges(threshold, z):
    blur = (1.1**2 - 1 / 6 - 1 / 8) ** 0.5
    _, found = widths(11.8, 1.1, threshold)
    assert np.median(found.width) == pytest.approx(11.8 - 2 * z * blur, abs=0.06)


def test_ink_beside_a_stroke_is_seen():
    raw, _ = raw_widths(cuts(11.8, 1.1, beside=9.5), np.full(N, 5.9), BOUNDS, 2)
    assert not raw.clean.any()
