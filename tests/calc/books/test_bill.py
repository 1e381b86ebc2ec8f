"""Bills: the lines sum to the total to the last minor unit, in every currency, wherever the tax is rounded."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pentools.calc.books.bill import bill_of
from pentools.errors import InputError
from pentools.money import CURRENCIES, ROUNDINGS, decimals_of

AMOUNTS = st.lists(st.decimals(-(10**6), 10**6, places=5), max_size=12)
SHARES = st.decimals(0, 1, places=4)


@settings(max_examples=300, deadline=None)
@given(AMOUNTS, st.sampled_from(sorted(CURRENCIES)), SHARES, st.booleans(), st.booleans(), st.sampled_from(sorted(ROUNDINGS)))  # fmt: skip
def test_lines_sum_to_the_total_to_the_last_unit(amounts, currency, share, included, each_line, rounding):
    bill = bill_of(amounts, currency, tax_share=share, included=included, each_line=each_line, rounding=rounding)
    unit = Decimal(1).scaleb(-decimals_of(currency))
    assert sum(bill.lines) == (bill.total if included else bill.before_tax)
    assert bill.before_tax + bill.tax == bill.total
    assert all(one % unit == 0 for one in (*bill.lines, bill.before_tax, bill.tax, bill.total))
    assert all(abs(one - amount) <= unit / 2 for one, amount in zip(bill.lines, amounts, strict=True))
    most = unit / 2 * (len(amounts) if each_line else 1)
    exact = sum(bill.lines) * (share / (1 + share) if included else share)
    assert abs(bill.tax - exact) <= most + Decimal("1e-20")


def test_line_by_line_and_on_the_total_are_not_the_same():
    lines = [Decimal("0.10")] * 3
    share = Decimal("0.15")
    assert bill_of(lines, "EUR", tax_share=share, each_line=True).tax == Decimal("0.06")  # three times 0.015
    assert bill_of(lines, "EUR", tax_share=share, each_line=True, rounding="half even").tax == Decimal("0.06")
    assert bill_of(lines, "EUR", tax_share=share).tax == Decimal("0.05")  # 0.045
    assert bill_of(lines, "EUR", tax_share=share, rounding="half even").tax == Decimal("0.04")


@pytest.mark.parametrize(
    ("currency", "before", "tax", "total"),
    [("JPY", "1000", "83", "1083"), ("EUR", "1000.40", "83.03", "1083.43"), ("KWD", "1000.400", "83.033", "1083.433")],
)
def test_each_currency_in_its_own_units(currency, before, tax, total):
    bill = bill_of([Decimal("1000.4")], currency, tax_share=Decimal("0.083"))
    assert (str(bill.before_tax), str(bill.tax), str(bill.total)) == (before, tax, total)


def test_a_tax_that_prices_hold():
    bill = bill_of([Decimal(119)], "EUR", tax_share=Decimal("0.19"), included=True)
    assert (bill.before_tax, bill.tax, bill.total) == (100, 19, 119)


def test_nothing_comes_to_nothing_and_no_tax_is_none():
    assert bill_of([], "EUR").total == 0
    assert bill_of([Decimal("5.005"), Decimal(-1)], "EUR") == bill_of([Decimal("5.01"), Decimal(-1)], "EUR")
    with pytest.raises(InputError, match="from 0 to 1"):
        bill_of([Decimal(1)], "EUR", tax_share=Decimal(19))
