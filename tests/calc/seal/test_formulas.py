"""The formulas of a ring in its groove: what they keep, and what they refuse."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pentools.calc.seal.formulas import (
    aerospace_loss_share,
    constant_volume_section_mm,
    flattened_width_mm,
    gland_fill_share,
    outside_compression_share,
    squeeze_share,
    stretch_share,
)
from pentools.errors import InputError


@settings(deadline=None)
@given(st.floats(1, 30), st.floats(0.8, 4), st.floats(0, 0.4))
def test_stretching_keeps_the_volume(inside, section, stretch):
    seat = inside * (1 + stretch)
    used = constant_volume_section_mm(inside, section, seat)
    assert (seat + used) * used**2 == pytest.approx((inside + section) * section**2, rel=1e-9)
    assert used <= section * (1 + 1e-12)


def test_a_loose_ring_keeps_its_section():
    assert constant_volume_section_mm(5.0, 1.78, 4.0) == 1.78
    assert aerospace_loss_share(-0.02, 5) == 0.0


def test_a_flattened_ring_keeps_its_area():
    width, depth = flattened_width_mm(1.78, 1.5), 1.5
    area = depth * (width - depth) + 3.141592653589793 / 4 * depth**2
    assert area == pytest.approx(3.141592653589793 / 4 * 1.78**2)
    assert flattened_width_mm(1.78, 2.0) == 1.78


def test_shares_by_hand():
    assert squeeze_share(1.5, 2.0) == pytest.approx(0.25)
    assert stretch_share(5.0, 4.9) == pytest.approx(-0.02)
    assert outside_compression_share(5.0, 2.0, 8.1) == pytest.approx(0.1)
    assert gland_fill_share(2.0, 1.5, 3.0) == pytest.approx(math.pi / 4.5)


def test_the_curve_changes_with_the_ring_and_with_the_stretch():
    # small ring, X = 4, ID/CS = 2: 100·4/(315·e^-2 + 165 + 4) = 1.890 %; large ring, 2 %: 0.01 + 2.12 - 0.40 = 1.73 %
    assert 100 * aerospace_loss_share(0.04, 2.0) == pytest.approx(400 / (315 * math.exp(-2) + 169), abs=1e-9)
    assert 100 * aerospace_loss_share(0.04, 2.95) == pytest.approx(400 / (315 * math.exp(-2.95) + 169), abs=1e-9)
    assert 100 * aerospace_loss_share(0.04, 2.96) == pytest.approx(0.56 + 2.36 - 0.0736, abs=1e-9)
    assert 100 * aerospace_loss_share(0.02, 5.0) == pytest.approx(1.73, abs=1e-9)
    assert 100 * aerospace_loss_share(0.10, 5.0) == pytest.approx(0.56 + 5.9 - 0.46, abs=1e-9)


@pytest.mark.parametrize(
    "call",
    [
        lambda: constant_volume_section_mm(0, 1, 2),
        lambda: constant_volume_section_mm(4, 0, 5),
        lambda: gland_fill_share(1.78, 0, 2),
        lambda: gland_fill_share(1.78, 1.4, 0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(InputError, match="above 0 mm"):
        call()


@pytest.mark.parametrize(("depth", "width"), [(2.0, 2.0), (3.0, 2.0), (1.0, 1.0 + 3 * math.pi / 4)])
def test_flattened_width_by_hand(depth, width):
    assert flattened_width_mm(2.0, depth) == pytest.approx(width)
