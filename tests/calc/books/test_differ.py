"""A difference is told where the data show it, and not from one or two jobs."""

import math

import pytest

from pentools.calc.books.differ import difference
from pentools.errors import InputError


def test_it_is_a_ratio_with_its_interval():
    found = difference([80, 100, 125], [40, 50, 62.5])
    half = 2.776445 * math.log(1.25) * math.sqrt(2 / 3)  # Student's t of 4, from memory
    assert found.ratio == pytest.approx(2)
    assert found.high == pytest.approx(2 * math.exp(half), rel=1e-6)
    assert (found.with_it, found.without, found.shown) == (3, 3, True)
    turned = difference([40, 50, 62.5], [80, 100, 125])
    assert turned.ratio == pytest.approx(0.5)
    assert turned.shown


def test_a_small_one_among_much_scatter_is_not_shown():
    assert not difference([40, 60, 90, 140], [35, 50, 80, 130]).shown
    assert not difference([80, 100, 125], [40, 50, 62.5], 0.9999).shown


def test_too_few_and_no_scatter_say_nothing():
    assert difference([80, 100], [40, 50, 60]) is None
    assert difference([80, 100, 90], [40, 50]) is None
    assert difference([80, 80, 80], [40, 40, 40]) is None
    with pytest.raises(InputError, match="above 0"):
        difference([80, 0, 90], [40, 50, 60])
