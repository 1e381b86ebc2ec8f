"""The one reader of money: codes and signs, decimal signs and thousands, whose money is taken, and what is refused with its reason."""

import contextlib
from decimal import Decimal

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from pentools.errors import InputError
from pentools.money import CURRENCIES, ROUNDINGS, Money, decimals_of, in_money, read_money, rounded


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("5.00 USD", "5.00 USD"), ("USD 5", "5.00 USD"), ("$2.75", "2.75 USD"), ("2,75 USD", "2.75 USD"), ("US$ 5", "5.00 USD"), ("12 usd", "12.00 USD"),
        ("12 dollars", "12.00 USD"), ("50 cents", "0.50 USD"), ("50¢", "0.50 USD"), ("12½ cents", "0.125 USD"), ("€ 4,50", "4.50 EUR"), ("4.50 EUR", "4.50 EUR"),
        ("5 €", "5.00 EUR"), ("5,- EUR", "5.00 EUR"), ("5.– CHF", "5.00 CHF"), ("12 euros.", "12.00 EUR"), ("£2.50", "2.50 GBP"), ("£ 12", "12.00 GBP"),
        ("2 pounds", "2.00 GBP"), ("50p", "0.50 GBP"), ("1,250.00 USD", "1250.00 USD"), ("1.250,00 €", "1250.00 EUR"), ("1 250,50 EUR", "1250.50 EUR"),
        ("1\u202f250,50 EUR", "1250.50 EUR"), ("1’250.50 CHF", "1250.50 CHF"), ("1,250,000 USD", "1250000.00 USD"), ("1.250.000,5 EUR", "1250000.50 EUR"),
        ("1,250 JPY", "1250 JPY"), ("¥ 1200", "1200 JPY"), (".50 USD", "0.50 USD"), ("0,05 EUR", "0.05 EUR"), ("CA$ 3", "3.00 CAD"), ("20 DM", "20.00 DEM"),
        ("1.250 KWD", "1.250 KWD"), ("0,5 KWD", "0.500 KWD"), ("12 345,678 BHD", "12345.678 BHD"), ("1.250,125 TND", "1250.125 TND"), ("5 CLF", "5.0000 CLF"),
        ("0 EUR", "0.00 EUR"), ("$5 USD", "5.00 USD"), ("100 zł", "100.00 PLN"), ("12 sFr.", "12.00 CHF"),
    ],
)  # fmt: skip
def test_decimal_money(text, shown):
    money = read_money(text)
    assert str(money) == money.read_as == shown
    assert (money.typed, money.assumed, money.old) == (text, False, False)


def test_it_is_exact():
    assert sum(read_money("0.10 EUR").amount for _ in range(3)) == Decimal("0.30")
    assert read_money("12/6") == Money(Decimal("0.625"), "GBP", "12/6", old=True)
    assert read_money("12/6 GBP").read_as == "12s 6d"
    assert read_money("£1 1s").amount == Decimal("1.05")


@pytest.mark.parametrize(
    ("text", "own", "currency"),
    [("30", "EUR", "EUR"), ("30", "eur", "EUR"), ("$30", "CAD", "CAD"), ("$30", "EUR", "USD"), ("30 kr", "SEK", "SEK"), ("50 cents", "EUR", "EUR"),
     ("50 cents", "GBP", "USD"), ("¥30", "CNY", "CNY"), ("30 francs", "CHF", "CHF"), ("£30", "EUR", "GBP")],
)  # fmt: skip
def test_whose_money_it_is(text, own, currency):
    assert read_money(text, own).currency == currency


def test_the_benchs_own_money_is_shown_as_such():
    money = read_money("30", "EUR")
    assert money.assumed
    assert money.read_as == "30.00 EUR (the bench’s own money)"
    assert str(money) == "30.00 EUR"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "Nothing was typed"), ("5", "currency is missing"), ("-5 USD", "plus or minus"), ("$-5", "plus or minus"), ("+5 USD", "plus or minus"),
        ("1,250 USD", "comma mean 1.25 or 1250"), ("1.250 EUR", "point mean 1.25 or 1250"), ("0.505 EUR", "two decimals"), ("0.5055 KWD", "three decimals"), ("1,250 KWD", "comma mean 1.250 or 1250"), ("1.250 CLF", "mean 1.25 or 1250"),
        ("12,345.678 EUR", "More than one number"), ("$5 GBP", "Two currencies stand there: GBP and USD"),
        ("USD 4 EUR", "EUR and USD"), ("nan USD", "no number"), ("free", "no number"), ("€", "no number"), ("twelve and six", "in figures"), ("5 5 USD", "More than one number"),
        ("4 to 5 EUR", "not a range"), ("80-130 EUR", "not a range"), ("5 XYZ", "“XYZ” is no money known"), ("30 kr", "DKK, NOK, SEK or ISK"), ("30 fr", "type the code"),
        ("12£1/21/2", "stands in the middle"), ("9" * 5000, "at most 12 digits"), ("1/" + "9" * 5000, "too long"), ("12/6 EUR", "EUR does not go with them"),
        ("2/6 each", "alone, such as 12/6"), ("2/6 and 3/6", "once each"), ("5/", "once each"), ("٣ EUR", "figures 0 to 9"), ("1e5 EUR", "not one amount"),
        ("12 1/2 USD", "as decimals"), ("1,25,000 USD", "parted in threes"), ("£12/6", "£12 6s"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said(text, said):
    with pytest.raises(InputError, match=said) as error:
        read_money(text, name="price")
    assert str(error.value).startswith("price must be ")
    assert len(str(error.value)) < 250


def test_what_the_caller_may_leave_out():
    with pytest.raises(InputError, match="above zero"):
        read_money("0 USD", zero=False)
    with pytest.raises(InputError, match="ended in 1971"):
        read_money("12/6", "EUR", old=False)
    assert read_money("0", "EUR").amount == 0


@settings(max_examples=400, deadline=None)
@given(st.text(alphabet="0123456789£$€.,/-½ sdEUR+", max_size=14))
@example("1/" + "9" * 5000)
@example("½")
@example("£")
def test_anything_is_read_or_refused_in_a_sentence(text):
    with contextlib.suppress(InputError):  # anything else would fail
        money = read_money(text, "EUR")
        assert money.amount >= 0
        assert money.currency in CURRENCIES


@settings(deadline=None)
@given(st.integers(0, 10**9), st.sampled_from(sorted(CURRENCIES)))
def test_plain_hundredths_come_back(hundredths, code):
    assert read_money(f"{hundredths // 100}.{hundredths % 100:02d} {code}").amount == Decimal(hundredths) / 100


@settings(deadline=None)
@given(st.integers(0, 10**12), st.sampled_from(sorted(CURRENCIES)), st.sampled_from(sorted(ROUNDINGS)))
def test_what_is_shown_is_read_again(millionths, code, rule):
    amount = rounded(Decimal(millionths) / 10**6, code, rule)
    assert abs(amount - Decimal(millionths) / 10**6) <= Decimal(1).scaleb(-decimals_of(code)) / 2
    assert -amount.as_tuple().exponent == decimals_of(code)
    assert read_money(in_money(amount, code)) == Money(amount, code, in_money(amount, code))


def test_half_goes_away_from_zero_or_to_the_even_one():
    halves = [Decimal(text) for text in ("0.005", "0.015", "-0.005", "-0.015")]
    assert [str(rounded(half, "EUR")) for half in halves] == ["0.01", "0.02", "-0.01", "-0.02"]
    assert [str(rounded(half, "EUR", "half even")) for half in halves] == ["0.00", "0.02", "-0.00", "-0.02"]
    assert str(rounded(Decimal("123456789012345678901234567.0005"), "KWD")) == "123456789012345678901234567.001"
    with pytest.raises(KeyError):
        rounded(halves[0], "EUR", "down")


def test_money_without_decimals_shows_those_that_were_typed():
    assert (str(Money(Decimal("12.5"), "JPY")), str(Money(Decimal("12.00"), "JPY"))) == ("12.5 JPY", "12 JPY")
