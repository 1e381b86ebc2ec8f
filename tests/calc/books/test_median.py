"""A median's interval: two of the values, never fewer than three of them, and what it really covers said with it."""

import random

import pytest

from pentools.calc.books.median import median_of, median_rank
from pentools.errors import InputError


def test_under_three_is_too_few_to_say():
    assert median_of([]) is None
    assert median_of([40.0, 50.0]) is None
    assert median_of([40.0, 50.0, 45.0]).median == 45


def test_below_six_it_says_that_95_per_cent_is_out_of_reach():
    five, six = median_of([1, 2, 3, 4, 5]), median_of([6, 1, 5, 2, 4, 3])
    assert (five.low, five.high, five.coverage, five.reached) == (1, 5, 0.9375, False)
    assert (six.low, six.high, six.coverage, six.reached) == (1, 6, 0.96875, True)
    assert six.median == 3.5


def test_it_covers_what_it_says_however_the_values_scatter():
    values, held = random.Random(11), 0
    for _ in range(3000):
        found = median_of([values.expovariate(1.0) for _ in range(9)])
        held += found.low <= 0.6931471805599453 <= found.high
    assert found.coverage == pytest.approx(0.9609375)
    assert held / 3000 == pytest.approx(found.coverage, abs=0.012)


def test_many_values_are_no_trouble_and_a_wider_wish_widens():
    rank, coverage = median_rank(10_001)
    assert coverage >= 0.95 > median_rank(10_001)[1] - 0.02
    assert 4800 < rank < 4950
    assert median_rank(20, 0.99)[0] < median_rank(20, 0.5)[0]


def test_what_is_no_number_and_no_confidence_are_refused():
    with pytest.raises(InputError, match="values must be finite"):
        median_of([1, 2, float("nan")])
    for wrong in (0.4, 1.0):
        with pytest.raises(InputError, match="confidence"):
            median_rank(9, wrong)
    with pytest.raises(InputError, match="at least one"):
        median_rank(0)
