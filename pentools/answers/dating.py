"""When a pen was made, and what old prices are today."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.answers.asking import Answer, BenchGiven, Column, Typed, ask, ask_each

if TYPE_CHECKING:
    import pandas

__all__ = ["date_range", "price_today"]


def date_range(*evidence: str, about: Typed = None) -> Answer:
    """The range of dates that all evidence on original parts allows, and what to doubt where it contradicts itself.

    Parameters
    ----------
    *evidence : str
        Each a feature, its dates, then if you like its kind, how sure (sure, likely, doubtful) and the part (original,
        replaced, unknown), such as ``nib c. 1940, replaced``.
    about : Typed
        Width of "about" where the text does not say, to either side [years], 0 to 50; 2 unless said.

    Returns
    -------
    Answer
        With a table of how each piece was read.

    Raises
    ------
    InputError
        If there is no evidence, or a piece of it cannot be read.

    Examples
    --------
    >>> date_range("clip 1936/1942", "patent 1934", "nib c. 1940, replaced").data["edtf"]
    '1936/1942'
    """
    return ask("date", {"evidence": list(evidence), "about": about})


def price_today(
    price: Typed | Column,
    *,
    year: Typed | Column,
    currency: Typed | Column = None,
    to: Typed | Column = None,
    bench: BenchGiven = None,
) -> Answer | pandas.DataFrame:
    """A price of an earlier year in the money of another.

    Parameters
    ----------
    price : Typed | Column
        Price then; such as 5.00 USD, $2.75, £1 1s or 12/6.
    year : Typed | Column
        Year of the price, 1900 to 2100; such as 1940.
    currency : Typed | Column
        Money where none is typed; a code such as USD; none: a bare number is asked about.
    to : Typed | Column
        In the money of, 1900 to 2100; a year such as 2023; the index's last if left empty.
    bench : BenchGiven
        The bench whose facts fill what is not said.

    Returns
    -------
    Answer or pandas.DataFrame
        One answer; a frame, a row a question, where an array or a Series was given.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> print(price_today("5.00 USD", year=1940, to=2023))  # doctest: +ELLIPSIS
    5.00 USD in 1940 is about $109 ...
    """
    return ask_each("money", locals())
