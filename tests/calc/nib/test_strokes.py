"""A stroke's figures from its cuts."""

import math

import numpy as np
import pytest
from drawn_lines import DOUBT, stroke

from pentools.calc.nib.strokes import Doubt, weighted_percentiles


def test_percentiles_ratio_and_length():
    made = stroke(np.linspace(400, 800, 401))
    assert (made.p5_um, made.p50_um, made.p95_um) == pytest.approx((420, 600, 780))
    assert made.width_um == made.p50_um
    assert made.ratio == pytest.approx(780 / 420)
    assert made.measured_mm == pytest.approx(401 * 0.06)
    assert made.ratio_floor == pytest.approx(1.0, abs=1e-6), "swelling is no scatter"


def test_scatter_makes_a_floor_of_the_ratio():
    made = stroke(500 + np.random.default_rng(5).normal(0, 10, 4000))
    assert made.ratio_floor == pytest.approx((500 + 16.45) / (500 - 16.45), rel=0.01)


@pytest.mark.parametrize("scatter", [0.0, 6.0, 15.0])
@pytest.mark.parametrize(("swell", "period_mm"), [(0.0, 1.0), (120.0, 4.0), (150.0, 9.0)])
def test_the_ratio_is_the_pens_without_the_papers_scatter(scatter, swell, period_mm):
    rng = np.random.default_rng(8)
    drawn = 500 + swell * np.sin(2 * np.pi * 0.06 * np.arange(4000) / period_mm)
    low, high = np.percentile(drawn, [5, 95])
    made = stroke(drawn + rng.normal(0, scatter, 4000))
    assert made.ratio == pytest.approx(high / low, abs=0.03)
    own = np.percentile(made.own_widths_um, [5, 95])
    assert own[1] / own[0] == pytest.approx(made.ratio)
    if scatter and not swell:
        assert made.p95_um / made.p5_um - 1 > 4 * (made.ratio - 1)


def test_what_the_doubt_is_made_of():
    # by hand: 500 x 0.003 = 1.5; 5.1 x 0.02 x 40 = 4.08; 2; 0.04 x 42.3 = 1.692
    assert DOUBT.of_width(500, 40, 0) == pytest.approx((1.5**2 + 4.08**2 + 2**2 + 1.692**2) ** 0.5)
    assert Doubt(0.003, 42.3, tone_blurs=0.4).of_width(500, 40, 0) == pytest.approx((28.2 + 16**2) ** 0.5, rel=0.01)
    assert DOUBT.of_width(500, 40, 0, 0.2) == pytest.approx(math.hypot(DOUBT.of_width(500, 40, 0), 8))
    assert DOUBT.of_width(150, 40, 0) > DOUBT.of_width(210, 40, 0) + 2


def test_too_fine_is_under_five_blurs():
    assert stroke(np.full(50, 199.0)).too_fine
    assert not stroke(np.full(50, 201.0)).too_fine
    assert stroke(np.full(50, 90.0), blur=10.0).too_fine


def test_weights_count():
    assert weighted_percentiles(np.array([1.0, 9.0]), np.array([9.0, 1.0]), (0.3,)) == (1.0,)
