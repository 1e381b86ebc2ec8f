"""Prices: as they were printed, rounding by what the index bears, and refusals."""

from decimal import Decimal

import pytest

from pentools.calc.dating.prices import IndexSeries, price_then_now, round_to_figures
from pentools.errors import InputError
from pentools.money import Money

COARSE = IndexSeries(
    "a coarse index", "USD", {1900: 9.9, 1940: 14.0, 2023: 304.702}, {1900: 0.05, 1940: 0.05, 2023: 0.0005}
)
ROUGH = IndexSeries("a rough index", "GBP", {1938: 155.84, 2023: 10112.79}, {1938: 1.5, 2023: 300}, rough=True)


def test_three_figures_where_the_index_bears_them_and_two_where_not():
    fine = price_then_now(Money(Decimal("5"), "USD"), 1940, COARSE)
    assert (fine.figures, fine.rounded, fine.to_year) == (3, 109, 2023)
    coarse = price_then_now(Money(Decimal("5"), "USD"), 1900, COARSE)
    assert (coarse.figures, coarse.rounded) == (2, 150)
    assert coarse.amount == pytest.approx(153.89, abs=0.005)
    assert price_then_now(Money(Decimal("0.625"), "GBP"), 1938, ROUGH).figures == 2


def test_the_half_width_bounds_what_rounding_may_do():
    result = price_then_now(Money(Decimal("5"), "USD"), 1940, COARSE)
    for then in (13.95, 14.05):
        for now in (304.7015, 304.7025):
            assert abs(5 * now / then - result.amount) <= result.half_width * 1.005


def test_the_same_year_and_backwards():
    same = price_then_now(Money(Decimal("5"), "USD"), 1940, COARSE, 1940)
    assert (same.amount, same.rounded, same.half_width) == (5, 5, 0)
    back = price_then_now(Money(Decimal("109"), "USD"), 2023, COARSE, 1940)
    assert back.amount == pytest.approx(5, rel=0.01)
    assert any(f.topic == "backwards" for f in back.findings)


def test_refusals():
    with pytest.raises(InputError, match="1900 to 2023"):
        price_then_now(Money(Decimal("5"), "USD"), 1941, COARSE)
    with pytest.raises(InputError, match="in USD"):
        price_then_now(Money(Decimal("5"), "GBP"), 1940, COARSE)
    for wrong in ((0, 2), (float("inf"), 2), (1, 0)):
        with pytest.raises(InputError):
            round_to_figures(*wrong)
