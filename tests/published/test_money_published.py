"""Money against the outside: the decimals of every currency by the standard's own list, and roundings that others printed."""

from decimal import Decimal

import iso4217
import pytest
from babel.numbers import get_currency_precision, list_currencies
from outside import Outside

from pentools.money import CURRENCIES, decimals_of, rounded

STANDARD = {currency.code: currency.exponent for currency in iso4217.Currency}


def test_every_currency_has_the_decimals_of_the_standard():
    check = Outside("iso4217", "decimals of a currency in use")
    known = CURRENCIES & set(STANDARD)
    assert set(STANDARD) | list_currencies() >= CURRENCIES
    assert len(known) > 150
    for code in sorted(known):
        check.same(decimals_of(code), STANDARD[code])
    assert {STANDARD[code] for code in known} == {0, 2, 3, 4}


def test_money_the_euro_replaced_has_the_decimals_of_cldr():
    # the standard's list of withdrawn currencies gives no decimals
    check = Outside("cldr-currencies", "decimals of a currency that is not in use any more")
    gone = sorted(CURRENCIES - set(STANDARD))
    assert {"ITL", "ESP", "DEM"} < set(gone)
    for code in gone:
        check.same(decimals_of(code), get_currency_precision(code))


def test_where_the_two_differ_the_standard_counts():
    check = Outside("iso4217", "decimals where CLDR shows fewer")
    differ = {code for code in CURRENCIES & set(STANDARD) if STANDARD[code] != get_currency_precision(code)}
    assert {"HUF", "IQD"} <= differ
    for code in differ:
        assert get_currency_precision(code) == 0
        check.same(decimals_of(code), STANDARD[code])


# Java SE documentation, java.math.RoundingMode, "Summary of Rounding Operations Under Different Rounding Modes"
PRINTED = [
    ("5.5", "6", "6"),
    ("2.5", "3", "2"),
    ("1.6", "2", "2"),
    ("1.1", "1", "1"),
    ("1.0", "1", "1"),
    ("-1.0", "-1", "-1"),
    ("-1.1", "-1", "-1"),
    ("-1.6", "-2", "-2"),
    ("-2.5", "-3", "-2"),
    ("-5.5", "-6", "-6"),
]


@pytest.mark.parametrize(("amount", "half_up", "half_even"), PRINTED)
def test_the_table_of_rounding_modes(amount, half_up, half_even):
    check = Outside("java-rounding", "an amount rounded half up and half even")
    check.same(str(rounded(Decimal(amount), "JPY", "half up")), half_up)
    check.same(str(rounded(Decimal(amount), "JPY", "half even")), half_even)
    hundredth = str(rounded(Decimal(amount) / 100, "EUR", "half up"))
    check.same(Decimal(hundredth) * 100, Decimal(half_up))


@pytest.mark.parametrize(
    ("amount", "printed"),
    [(Decimal("24.784"), "24.78"), (Decimal("24.785"), "24.79"), (500 / Decimal("239.640"), "2.09"), (1000 / Decimal("239.640"), "4.17")],
)  # fmt: skip
def test_the_rounding_that_the_change_to_the_euro_laid_down(amount, printed):
    # Council Regulation (EC) No 1103/97, article 5: exactly half-way is rounded up; examples of the Slovenian campaign
    check = Outside("euro-rounding", "an amount rounded to the cent")
    check.same(str(rounded(amount, "EUR")), printed)
