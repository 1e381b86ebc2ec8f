"""Prices: as they were printed, rounding by what the index bears, and refusals."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.dating.price_reading import Price, read_price
from pentools.calc.dating.prices import IndexSeries, price_then_now, round_to_figures
from pentools.errors import InputError

COARSE = IndexSeries(
    "a coarse index", "USD", {1900: 9.9, 1940: 14.0, 2023: 304.702}, {1900: 0.05, 1940: 0.05, 2023: 0.0005}
)
ROUGH = IndexSeries("a rough index", "GBP", {1938: 155.84, 2023: 10112.79}, {1938: 1.5, 2023: 300}, rough=True)


@pytest.mark.parametrize(
    ("text", "amount", "currency"),
    [
        ("5.00 USD", 5, "USD"), ("$2.75", 2.75, "USD"), ("USD 5", 5, "USD"), ("2,75 USD", 2.75, "USD"), ("50 cents", 0.5, "USD"),
        ("£1", 1, "GBP"), ("£1 1s", 1.05, "GBP"), ("£2 10s 6d", 2.525, "GBP"), ("12/6", 0.625, "GBP"), ("21/-", 1.05, "GBP"),
        ("17s 6d", 0.875, "GBP"), ("6d", 0.025, "GBP"), ("£2/10/6", 2.525, "GBP"), ("12/6 GBP", 0.625, "GBP"), ("£2.50", 2.5, "GBP"),
    ],
)  # fmt: skip
def test_prices_as_printed(text, amount, currency):
    assert read_price(text) == Price(pytest.approx(amount), currency, text)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "5",
        "5 EUR",
        "0 USD",
        "-5 USD",
        "1,250 USD",
        "14d",
        "£1 25s",
        "$5 GBP",
        "nan USD",
        "inf USD",
        "5 5 USD",
        "twelve and six",
    ],
)
def test_prices_refused(text):
    with pytest.raises(InputError):
        read_price(text)


@given(st.integers(0, 99), st.integers(0, 19), st.integers(0, 11))
def test_pounds_shillings_and_pence_add_up(pounds, shillings, pence):
    if pounds or shillings or pence:
        farthings = read_price(f"£{pounds} {shillings}s {pence}d").amount * 960
        assert round(farthings) == 960 * pounds + 48 * shillings + 4 * pence


def test_three_figures_where_the_index_bears_them_and_two_where_not():
    fine = price_then_now(Price(5, "USD"), 1940, COARSE)
    assert (fine.figures, fine.rounded, fine.to_year) == (3, 109, 2023)
    coarse = price_then_now(Price(5, "USD"), 1900, COARSE)
    assert (coarse.figures, coarse.rounded) == (2, 150)
    assert coarse.amount == pytest.approx(153.89, abs=0.005)
    assert price_then_now(Price(0.625, "GBP"), 1938, ROUGH).figures == 2


def test_the_half_width_bounds_what_rounding_may_do():
    result = price_then_now(Price(5, "USD"), 1940, COARSE)
    for then in (13.95, 14.05):
        for now in (304.7015, 304.7025):
            assert abs(5 * now / then - result.amount) <= result.half_width * 1.005


def test_the_same_year_and_backwards():
    same = price_then_now(Price(5, "USD"), 1940, COARSE, 1940)
    assert (same.amount, same.rounded, same.half_width) == (5, 5, 0)
    back = price_then_now(Price(109, "USD"), 2023, COARSE, 1940)
    assert back.amount == pytest.approx(5, rel=0.01)
    assert any(f.topic == "backwards" for f in back.findings)


def test_refusals():
    with pytest.raises(InputError, match="1900 to 2023"):
        price_then_now(Price(5, "USD"), 1941, COARSE)
    with pytest.raises(InputError, match="in USD"):
        price_then_now(Price(5, "GBP"), 1940, COARSE)
    for wrong in ((0, 2), (float("inf"), 2), (1, 0)):
        with pytest.raises(InputError):
            round_to_figures(*wrong)
