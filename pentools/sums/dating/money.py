"""The money sum: a price of one year in the money of another, with the index and its years named."""

from __future__ import annotations

import functools
import re

import msgspec

from pentools import tables
from pentools.calc.dating.prices import IndexSeries, PriceThenNow, price_then_now
from pentools.errors import InputError
from pentools.fields import Field
from pentools.money import Money, read_money
from pentools.numbers import plain
from pentools.sums.base import Inputs, Sum, SumAnswer

__all__ = ["MONEY", "index_for", "money_answer", "price_answer"]

LAST_SHILLINGS = 1971
"""The year in which shillings and pence ended and new pence began, on 15 February (Decimal Currency Act 1967)."""

FIELDS = (
    Field("price", "Price then", "text", required=True, hint="such as 5.00 USD, $2.75, £1 1s or 12/6"),
    Field("year", "Year of the price", "count", low=1900, high=2100, required=True, hint="such as 1940"),
    Field("currency", "Money where none is typed", "text", hint="a code such as USD; none: a bare number is asked about"),
    Field("to", "In the money of", "count", low=1900, high=2100, hint="a year such as 2023; the index's last if left empty"),
)  # fmt: skip


class _UsYear(msgspec.Struct, frozen=True):
    year: int
    index: float
    half_step: float


class _UkYear(msgspec.Struct, frozen=True):
    year: int
    index: float
    rough_share: float


@functools.cache
def index_for(currency: str) -> IndexSeries:
    """The index of consumer prices for a currency, from its table.

    Parameters
    ----------
    currency : str
        ``USD`` or ``GBP``.

    Raises
    ------
    InputError
        If there is none.
    """
    if currency == "USD":
        us = tables.read(_UsYear, "cpi_us")
        values, steps = {row.year: row.index for row in us}, {row.year: row.half_step for row in us}
        return IndexSeries("The US consumer price index (CPI-U, annual averages)", "USD", values, steps)
    if currency == "GBP":
        uk = tables.read(_UkYear, "cpi_uk")
        values, widths = {row.year: row.index for row in uk}, {row.year: row.index * row.rough_share for row in uk}
        return IndexSeries("The UK consumer price chain", "GBP", values, widths, rough=True)
    raise InputError("price", "in USD or GBP", currency, "There is an index for USD and GBP only.")


def money_answer(given: Inputs) -> SumAnswer:
    """A price in the money of another year.

    Raises
    ------
    InputError
        If the price cannot be read or a year is not in the index.
    """
    price = read_money(given.text("price", ""), given.text("currency", ""), name="price", zero=False)
    year = given.whole("year")
    if year is None:
        raise InputError("Year of the price", "filled in", "", "Such as 1940.")
    return price_answer(price, year, given.whole("to"))


def price_answer(price: Money, year: int, to_year: int | None = None) -> SumAnswer:
    """A price as read, in the money of another year.

    Parameters
    ----------
    price : Money
        In dollars of the United States or pounds.
    year : int
        The year of the price.
    to_year : int or None
        The year whose money it is wanted in; the index's last by default.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If there is no index for the money or the year, or the money was not in use in that year.
    """
    _refuse_money_of_another_time(price, year)
    result = price_then_now(price, year, index_for(price.currency), to_year)
    data = {
        "sentence": _sentence(result),
        "price": float(price.amount),
        "currency": price.currency,
        "currency_assumed": price.assumed,
        "read_as": price.read_as,
        "year": result.year,
        "to_year": result.to_year,
        "amount": result.amount,
        "amount_rounded": result.rounded,
        "figures": result.figures,
        "half_width": result.half_width,
        "about": True,
        "multiplier": result.multiplier,
        "index": result.index.name,
        "index_then": result.index.values[result.year],
        "index_now": result.index.values[result.to_year],
        "findings": [finding.as_json() for finding in result.findings],
    }
    return SumAnswer(_sentence(result), data, result.findings, _table(result), result)


def _refuse_money_of_another_time(price: Money, year: int) -> None:
    if price.old and year > LAST_SHILLINGS:
        raise InputError("year of the price", f"{LAST_SHILLINGS} or earlier for shillings and pence", year)
    if year < LAST_SHILLINGS and re.search(r"\d\s*(?:p\b|new)", price.typed):
        advice = f"New pence began in {LAST_SHILLINGS}: type old pence with d."
        raise InputError("price", "in the money of its year", price.typed, advice)


def _table(result: PriceThenNow) -> tuple[tuple[str, str], ...]:
    return (
        ("quantity", "value"),
        ("price then", f"{result.price.typed} in {result.year}"),
        ("read as", result.price.read_as),
        (f"index in {result.year}", plain(result.index.values[result.year], 6)),
        (f"index in {result.to_year}", plain(result.index.values[result.to_year], 6)),
        ("multiplied by", plain(result.multiplier)),
    )


def _sentence(result: PriceThenNow) -> str:
    price, sign = result.price, {"USD": "$", "GBP": "£"}[result.price.currency]
    amount = f"{result.rounded:,.2f}" if result.rounded < 10 else f"{result.rounded:,.0f}"
    if result.figures == 3 and 10 <= result.rounded < 100:
        amount = f"{result.rounded:.1f}"
    return (
        f"{str(price) if price.assumed else price.typed} in {result.year} is about {sign}{amount} in the money of {result.to_year}, "
        f"by {result.index.name[0].lower()}{result.index.name[1:]}."
    )


MONEY = Sum(
    "money",
    "A price in today's money",
    "What a price of an earlier year is in the money of another, by the US index (1913 on) or a rough UK chain (1900 on).",
    FIELDS,
    money_answer,
    'pentools sums money "5.00 USD" --year 1940 --to 2023',
    "price",
)
