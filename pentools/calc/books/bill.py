"""What a bill comes to: its lines in whole minor units, the tax on them or within them, and their sum."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from pentools.errors import InputError
from pentools.money import rounded

__all__ = ["Bill", "bill_of"]


@dataclass(frozen=True, slots=True)
class Bill:
    """A bill.

    Parameters
    ----------
    lines : tuple of Decimal
        What each line comes to, in whole minor units of the currency.
    before_tax, tax, total : Decimal
        In whole minor units; `before_tax` and `tax` are `total`.
    """

    lines: tuple[Decimal, ...]
    before_tax: Decimal
    tax: Decimal
    total: Decimal


def bill_of(
    amounts: Sequence[Decimal],
    currency: str,
    *,
    tax_share: Decimal = Decimal(0),
    included: bool = False,
    each_line: bool = False,
    rounding: str = "half up",
) -> Bill:
    """What some amounts come to, with the tax.

    Parameters
    ----------
    amounts : sequence of Decimal
        In whole units of the currency; below 0 for what is taken off.
    currency : str
        Code of ISO 4217.
    tax_share : Decimal
        The tax's share, 0 to 1.
    included : bool
        Whether the amounts hold the tax; otherwise it comes on top.
    each_line : bool
        Whether the tax is worked out and rounded line by line, and its parts added; otherwise on the sum of the lines.
    rounding : str
        A key of `pentools.money.ROUNDINGS`.

    Returns
    -------
    Bill
        Each line is rounded first, and nothing is rounded again: the lines sum to the total (where the tax comes on top,
        to what stands before it) to the last minor unit.

    Raises
    ------
    InputError
        If the tax's share is not from 0 to 1.

    Examples
    --------
    >>> bill_of([Decimal("100"), Decimal("4.50")], "EUR", tax_share=Decimal("0.19"))
    Bill(lines=(Decimal('100.00'), Decimal('4.50')), before_tax=Decimal('104.50'), tax=Decimal('19.86'), total=Decimal('124.36'))
    """
    if not 0 <= tax_share <= 1:
        raise InputError("tax", "a share from 0 to 1", tax_share)
    lines = tuple(rounded(amount, currency, rounding) for amount in amounts)
    whole = rounded(sum(lines, Decimal(0)), currency)
    share = tax_share / (1 + tax_share) if included else tax_share
    taxed = lines if each_line else (whole,)
    tax = rounded(sum((rounded(one * share, currency, rounding) for one in taxed), Decimal(0)), currency)
    return Bill(lines, whole - tax if included else whole, tax, whole if included else whole + tax)
