"""How numbers and lists stand in a sentence: digits in plain notation, never an exponent, never minus nought."""

from __future__ import annotations

import math
import re
import string
from collections.abc import Iterable
from decimal import Decimal
from typing import Any

__all__ = ["capital", "fixed", "in_words", "percent", "plain"]

_SIGNIFICANT = re.compile(r"\.(\d+)g")
_DECIMALS = re.compile(r"(,?\.\d+f)")
_PERCENT = re.compile(r"(?P<sign>[-+]?)(?P<rest>,?(\.\d+)?)%")
_JOINED = {"and": " and ", "or": " or "}


def plain(value: float, figures: int = 3) -> str:
    """A number rounded to significant digits, in plain notation.

    Parameters
    ----------
    value : float
        Any number.
    figures : int
        Significant digits, 1 or more; zeros that say nothing are left out.

    Returns
    -------
    str
        The number; ``∞`` for what has no end.

    Raises
    ------
    ValueError
        If it is not a number at all.

    Examples
    --------
    >>> plain(140, 2), plain(0.00001234, 2), plain(-0.0), plain(1.7500, 3)
    ('140', '0.000012', '0', '1.75')
    """
    if math.isnan(value):
        raise ValueError("not a number")
    if math.isinf(value):
        return "∞" if value > 0 else "-∞"
    text = format(Decimal(f"{value:.{figures - 1}e}"), "f")
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def fixed(value: float, decimals: int) -> str:
    """A number with so many decimals, without the minus of what rounds to nought.

    Examples
    --------
    >>> fixed(-0.004, 2), fixed(1.005e6, 0)
    ('0.00', '1005000')
    """
    return f"{value:z.{decimals}f}"


def percent(share: float, decimals: int = 0) -> str:
    """A share in per cent with so many decimals, a narrow no-break space before the sign.

    Examples
    --------
    >>> percent(0.184, 1).split(), percent(-0.0001).split()
    (['18.4', '%'], ['0', '%'])
    """
    return f"{fixed(100 * share, decimals)}\u202f%"


def in_words(items: Iterable[object], joint: str = "and") -> str:
    """Items as ``a, b and c``.

    Parameters
    ----------
    items : iterable
        Any number of them.
    joint : {"and", "or"}
        What stands before the last.

    Returns
    -------
    str
        Empty where there is none.
    """
    texts = [str(item) for item in items]
    return texts[0] if len(texts) == 1 else ", ".join(texts[:-1]) + _JOINED[joint] + texts[-1] if texts else ""


def capital(text: str) -> str:
    """The text with its first letter capital, without blanks about it."""
    text = text.strip()
    return text[:1].upper() + text[1:]


class PlainFormatter(string.Formatter):
    """``str.format`` in which ``.3g`` never gives an exponent, nothing rounds to minus nought, and ``and`` joins.

    A ``%`` stands after a narrow no-break space.
    """

    def format_field(self, value: Any, format_spec: str) -> str:
        """One value as its place in the template asks."""
        if format_spec in _JOINED and not isinstance(value, str):
            return in_words(value, format_spec)
        if isinstance(value, int | float) and not isinstance(value, bool):
            if format_spec in ("", "g") and isinstance(value, float):
                return plain(value, 6)
            significant = _SIGNIFICANT.fullmatch(format_spec)
            if format_spec == "g" or significant:
                return plain(value, int(significant[1]) if significant else 6)
            if _DECIMALS.fullmatch(format_spec):
                return format(value, "z" + format_spec)
            share = _PERCENT.fullmatch(format_spec)
            if share:
                return format(value, f"{share['sign']}z{share['rest']}%").replace("%", "\u202f%")
        text: str = super().format_field(value, format_spec)
        return text
