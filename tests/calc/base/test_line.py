"""A straight line through points: its slope, what is known of it, and refusals."""

import math

import pytest

from pentools.calc.base.line import fit_line
from pentools.calc.base.uncertainty import coverage_factor
from pentools.errors import InputError


def test_a_line_through_exact_points_keeps_the_known_spread():
    line = fit_line([0, 1, 2, 3], [1, 3, 5, 7], known_spread=0.1)
    assert (line.slope, line.intercept) == pytest.approx((2, 1))
    assert line.slope_uncertainty == pytest.approx(0.1 / math.sqrt(5))
    assert line.degrees_of_freedom == math.inf
    assert line.coverage(0.90) == pytest.approx(1.645, abs=5e-4)


def test_the_scatter_is_from_n_less_two():
    # by hand: y = 0, 1, 0, 1 over x = 0..3 has slope 0.2, residuals -0.2 0.6 -0.6 0.2, squares 0.8 over 2, Σ(x - mean)² 5
    line = fit_line([0, 1, 2, 3], [0, 1, 0, 1])
    assert line.slope == pytest.approx(0.2)
    assert line.residual_spread == pytest.approx(math.sqrt(0.8 / 2))
    assert line.slope_uncertainty == pytest.approx(math.sqrt(0.8 / 2 / 5))
    assert line.degrees_of_freedom == 2
    assert line.coverage() == coverage_factor(2, 0.95)


def test_two_points_say_nothing_of_their_scatter():
    assert fit_line([0, 1], [1, 2]).slope_uncertainty == math.inf
    assert fit_line([0, 2], [1, 2], known_spread=0.1).slope_uncertainty == pytest.approx(0.1 / math.sqrt(2))


def test_a_scatter_beyond_chance_overrules_what_is_known():
    line = fit_line([0, 1, 2, 3], [0, 1, 0, 1], known_spread=0.01)
    assert line.slope_uncertainty == pytest.approx(math.sqrt(0.8 / 2 / 5))
    assert line.degrees_of_freedom == 2


@pytest.mark.parametrize(("x", "y"), [([1, 1], [1, 2]), ([1], [1]), ([0, 1, 2], [0, 1])])
def test_refusals(x, y):
    with pytest.raises(InputError):
        fit_line(x, y)
