"""The incomplete beta function at its ends, against sums that can be written out, and against its own mirror."""

import math

import pytest

from pentools.calc.base.beta import incomplete_beta


@pytest.mark.parametrize(("n", "k", "p"), [(5, 2, 0.3), (12, 1, 0.08), (40, 33, 0.9)])
def test_it_is_the_tail_of_the_binomial_distribution(n, k, p):
    tail = math.fsum(math.comb(n, i) * p**i * (1 - p) ** (n - i) for i in range(k, n + 1))
    assert incomplete_beta(k, n - k + 1, p) == pytest.approx(tail, abs=1e-13)


def test_beyond_its_ends_it_stays_there_and_it_mirrors():
    assert (
        incomplete_beta(2, 3, -1),
        incomplete_beta(2, 3, 0),
        incomplete_beta(2, 3, 1),
        incomplete_beta(2, 3, 7),
    ) == (0, 0, 1, 1)
    assert incomplete_beta(2.5, 7, 0.4) == pytest.approx(1 - incomplete_beta(7, 2.5, 0.6), abs=1e-14)
