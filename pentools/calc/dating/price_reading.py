"""Prices as they stand on a price band, in an advert or on a clip: decimal money, and pounds, shillings and pence."""

from __future__ import annotations

import re
from dataclasses import dataclass

from pentools.errors import InputError
from pentools.units import read_number

__all__ = ["Price", "read_price"]

_SIGNS = {
    "$": "USD", "usd": "USD", "us$": "USD", "dollar": "USD", "dollars": "USD",
    "£": "GBP", "gbp": "GBP", "pound": "GBP", "pounds": "GBP", "l": "GBP",
}  # fmt: skip
_ACCEPTED = "an amount with its money, such as 5.00 USD, $2.75, £1 1s or 12/6"
_OLD = re.compile(
    r"(?:£?\s*(?P<pounds>\d+)(?:\s*[£l]|\s+(?=\d+\s*(?:s|/))|/(?=\d+/)))?\s*"
    r"(?:(?P<shillings>\d+)\s*(?:s\.?|/(?=\s*(?:\d|-|$))))?\s*(?:(?P<pence>\d+(?:\s?1/2|½)?)\s*(?:d\.?)?|-)?"
)


@dataclass(frozen=True, slots=True)
class Price:
    """An amount of money.

    Parameters
    ----------
    amount : float
        The amount, in whole units of the currency.
    currency : str
        ``USD`` or ``GBP``.
    typed : str
        The text as it was typed.
    """

    amount: float
    currency: str
    typed: str = ""


def read_price(text: str) -> Price:
    """Read a typed price.

    Parameters
    ----------
    text : str
        Decimal money with its sign or code before or after it (``5.00 USD``, ``$2.75``, ``£2.50``), cents
        (``50 cents``), or British money before 1971: ``£1 1s``, ``17s 6d``, ``12/6``, ``21/-``.

    Returns
    -------
    Price
        Amount and currency.

    Raises
    ------
    InputError
        If it is not one amount above zero, or its currency is missing or has no index here.

    Notes
    -----
    A dollar is taken as one of the United States. Twenty shillings were a pound and twelve pence a shilling until 14 February 1971.

    Examples
    --------
    >>> read_price("$2.75").amount
    2.75
    >>> read_price("12/6")
    Price(amount=0.625, currency='GBP', typed='12/6')
    """
    clean = re.sub(r"\s+", " ", text.strip())
    low = clean.lower()
    if found := re.fullmatch(r"(?P<before>[^\d\s.,-]+)?\s*(?P<number>[\d.,]+)\s*(?P<after>[^\d\s.,]+)?", low):
        words = [word for word in (found["before"], found["after"]) if word]
        if words in (["cents"], ["cent"], ["c"], ["¢"]):
            return _checked(read_number(found["number"], "price") / 100, "USD", text)
        currencies = {_SIGNS.get(word) for word in words}
        if len(currencies) == 1 and None not in currencies:
            return _checked(read_number(found["number"], "price"), str(currencies.pop()), text)
        if not words:
            raise InputError("price", _ACCEPTED, text, "The currency is missing.")
    old = low.removesuffix("gbp").strip()
    if (found := _OLD.fullmatch(old)) and re.search(r"[s/d£]", old) and any(found.groupdict().values()):
        return _checked(_pounds(found, text), "GBP", text)
    raise InputError("price", _ACCEPTED, text, "There is an index for USD and GBP only.")


def _pounds(found: re.Match[str], text: str) -> float:
    pence_text = (found["pence"] or "0").replace("½", " 1/2")
    pence = float(pence_text.split()[0]) + (0.5 if "1/2" in pence_text else 0.0)
    if pence >= 12:
        raise InputError("price", "fewer than 12 pence beside shillings or pounds", text)
    if found["pounds"] and int(found["shillings"] or 0) >= 20:
        raise InputError("price", "fewer than 20 shillings beside pounds", text)
    return int(found["pounds"] or 0) + int(found["shillings"] or 0) / 20 + pence / 240


def _checked(amount: float, currency: str, text: str) -> Price:
    if amount <= 0:
        raise InputError("price", "above zero", text)
    return Price(amount, currency, text.strip())
