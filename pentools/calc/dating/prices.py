"""What a price of an earlier year is in the money of another, by an index of consumer prices."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError
from pentools.money import Money

__all__ = ["IndexSeries", "PriceThenNow", "price_then_now", "round_to_figures"]

THREE_FIGURES_BELOW = 0.005
"""Three figures are shown where the index's own rounding moves the result by less than this share; else two."""


@dataclass(frozen=True, slots=True)
class IndexSeries:
    """An index of consumer prices.

    Parameters
    ----------
    name : str
        Its name in words.
    currency : str
        The money it goes with.
    values : mapping of int to float
        Calendar year to index, any base, each above 0.
    half_widths : mapping of int to float
        Calendar year to how far the index may be off by its own rounding or roughness, in the index's units.
    rough : bool
        Whether it is too rough for more than two figures, whatever its digits.
    """

    name: str
    currency: str
    values: Mapping[int, float]
    half_widths: Mapping[int, float]
    rough: bool = False


@dataclass(frozen=True, slots=True)
class PriceThenNow:
    """A price in the money of another year.

    Parameters
    ----------
    price : Money
        The price as it was.
    year, to_year : int
        Its year, and the year whose money it is given in.
    multiplier : float
        Index of the one year over that of the other.
    amount : float
        The price times the multiplier, unrounded, in whole units of the currency.
    half_width : float
        How far the index's own rounding or roughness may move it, both ways.
    figures : int
        How many figures may be shown [2 or 3].
    rounded : float
        The amount in that many figures.
    index : IndexSeries
        The index.
    findings : tuple of Finding
        What to bear in mind.
    """

    price: Money
    year: int
    to_year: int
    multiplier: float
    amount: float
    half_width: float
    figures: int
    rounded: float
    index: IndexSeries
    findings: tuple[Finding, ...] = ()


def price_then_now(price: Money, year: int, index: IndexSeries, to_year: int | None = None) -> PriceThenNow:
    """A price of one year in the money of another.

    Parameters
    ----------
    price : Money
        Amount and currency; the index must go with the currency.
    year : int
        The year of the price, one of the index's.
    index : IndexSeries
        Consumer prices by year.
    to_year : int or None
        The year whose money it is wanted in; the index's last by default.

    Returns
    -------
    PriceThenNow
        The amount, rounded to the figures that the index bears.

    Raises
    ------
    InputError
        If a year is not in the index, or index and price are of different money.

    Notes
    -----
    amount = price × index(to_year) / index(year). The index's rounding is carried as the sum of both relative
    half-widths (a bound, not a standard uncertainty); three figures where it is below 0.5 %, else two, and two for
    an index that is rough as a whole. It tells what the same basket of goods costs, not what a pen is worth, nor what
    share of a wage it was. Good for the years of the index.

    Examples
    --------
    >>> from decimal import Decimal
    >>> series = IndexSeries("an index", "USD", {1940: 14.0, 2023: 304.702}, {1940: 0.05, 2023: 0.0005})
    >>> price_then_now(Money(Decimal(5), "USD"), 1940, series).rounded
    109.0
    """
    if price.currency != index.currency:
        raise InputError("price", f"in {index.currency}", price.typed or price.currency)
    target = max(index.values) if to_year is None else to_year
    for name, wanted in (("year of the price", year), ("year to compare with", target)):
        if wanted not in index.values:
            raise InputError(
                name, f"{min(index.values)} to {max(index.values)}", wanted, f"{index.name} has no other years here."
            )
    multiplier = index.values[target] / index.values[year]
    amount = float(price.amount) * multiplier
    relative = sum(index.half_widths.get(y, 0.0) / index.values[y] for y in {year, target}) if year != target else 0.0
    figures = 2 if index.rough or relative >= THREE_FIGURES_BELOW else 3
    rounded = round_to_figures(amount, figures) if year != target else amount
    return PriceThenNow(
        price,
        year,
        target,
        multiplier,
        amount,
        amount * relative,
        figures,
        rounded,
        index,
        _findings(index, year, target),
    )


def round_to_figures(value: float, figures: int) -> float:
    """A value in so many significant figures.

    Parameters
    ----------
    value : float
        The value, above 0.
    figures : int
        Significant figures [1 to 15].

    Returns
    -------
    float
        The rounded value.

    Raises
    ------
    InputError
        If the value is not above 0 and finite, or the figures are out of range.

    Examples
    --------
    >>> round_to_figures(108.822, 2)
    110.0
    """
    if not (math.isfinite(value) and value > 0):
        raise InputError("value", "above 0 and finite", value)
    if not 1 <= figures <= 15:
        raise InputError("figures", "1 to 15", figures)
    return float(f"{value:.{figures - 1}e}")


def _findings(index: IndexSeries, year: int, target: int) -> tuple[Finding, ...]:
    findings = [Finding("note", "dating.meaning")]
    if index.rough:
        findings.append(Finding("note", "dating.rough", index=index.name))
    if target < year:
        findings.append(Finding("note", "dating.backwards"))
    return tuple(findings)
