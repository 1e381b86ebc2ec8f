"""A share's interval: its ends at nothing and all, its mirror, and that it never covers less than it says."""

import math

import pytest

from pentools.calc.books.share import share_of
from pentools.errors import InputError


def test_none_and_all_have_one_open_end():
    none, every = share_of(0, 8), share_of(8, 8)
    assert (none.low, every.high) == (0, 1)
    assert none.high == pytest.approx(1 - 0.025 ** (1 / 8), abs=1e-12)
    assert every.low == pytest.approx(1 - none.high, abs=1e-12)
    assert share_of(2, 2) is None
    assert share_of(1, 3).share == pytest.approx(1 / 3)


@pytest.mark.parametrize("true", [0.05, 0.3, 0.5, 0.83])
def test_it_covers_at_least_what_it_says(true):
    n = 11
    found = [share_of(count, n) for count in range(n + 1)]
    covered = math.fsum(
        math.comb(n, s.count) * true**s.count * (1 - true) ** (n - s.count) for s in found if s.low <= true <= s.high
    )
    assert covered >= 0.95


def test_more_than_all_is_refused():
    with pytest.raises(InputError, match="count must be 0 to 4"):
        share_of(5, 4)
    with pytest.raises(InputError, match="confidence"):
        share_of(1, 4, 0.2)
