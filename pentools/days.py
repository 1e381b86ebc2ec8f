"""A day as people write it, read strictly: what could be two days, or lies far from today, is asked about."""

from __future__ import annotations

import contextlib
import datetime as dt
import re
import unicodedata

from pentools.errors import InputError
from pentools.words import month_number

__all__ = ["EARLIEST_YEAR", "YEARS_AHEAD", "read_day"]

EARLIEST_YEAR = 1950
"""A job of an earlier year is asked about (judged: nobody enters one of before)."""

YEARS_AHEAD = 10
"""A day further ahead is asked about (judged: no promise of a bench goes so far)."""

_LONGEST = 40
_ACCEPTED = "a date as year-month-day"
_EXAMPLE = "Type it like 2026-03-14."
_YEAR_FIRST = re.compile(r"(\d{4})([-/.])\s?(\d{1,2})\2\s?(\d{1,2})|(\d{4})(\d\d)(\d\d)")
_DAY_FIRST = re.compile(r"(\d{1,2})\.\s*(\d{1,2})\.\s*(\d{4})")
_SLASHED = re.compile(r"(\d{1,2})([/-])(\d{1,2})\2(\d{4})")
_DAY_NAMED = re.compile(r"(\d{1,2})(?:\.|st|nd|rd|th)?(?:\s+of)?[\s-]+([a-z]{3,9})\.?,?[\s-]+(\d{4})", re.IGNORECASE)
_NO_YEAR = re.compile(
    r"(\d{1,2})(?:\.|st|nd|rd|th)?(?:\s+of)?[\s-]+([a-z]{3,9})\.?|([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?",
    re.IGNORECASE,
)
_NAMED_DAYS = {"today": 0, "yesterday": -1, "tomorrow": 1}
_MONTH_FIRST = re.compile(r"([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})", re.IGNORECASE)


def read_day(text: str, name: str = "date", today: dt.date | None = None, order: str = "") -> str:
    """Read one day.

    Parameters
    ----------
    text : str
        What was typed: ``2026-03-14``, ``20260314``, ``14.3.2026``, ``14 March 2026``, ``March 14, 2026``, ``today``; ``14 March``
        alone is the one nearest to today. A ``!`` at the end says that a year far off is meant.
    name : str
        What day it is, used in the error's sentence.
    today : date or None
        The day to be near to; by default the clock's.
    order : {"", "day first", "month first"}
        The bench's own way with ``3/4/2026``; where it is not said, such a day is asked about.

    Returns
    -------
    str
        The day as ``2026-03-14``.

    Raises
    ------
    InputError
        If it is no day of the calendar, names a week or the day of a year, could be two days (``3/4/2026``, where no order is given), has a year
        of two figures, or lies before `EARLIEST_YEAR` or more than `YEARS_AHEAD` years ahead without ``!``.

    Examples
    --------
    >>> read_day("14 March 2026"), read_day("2026-3-4")
    ('2026-03-14', '2026-03-04')
    """
    clean = " ".join(unicodedata.normalize("NFKC", text[: _LONGEST + 1]).split())
    if len(text) > _LONGEST or not clean.isascii():
        raise InputError(name, _ACCEPTED, text, _EXAMPLE)
    meant = clean.endswith("!")
    now = today or dt.date.today()
    day = _near(clean.removesuffix("!").rstrip(), now) or _day(clean.removesuffix("!").rstrip(), text, name, order)
    _ask_if_far(day, meant, text, name, now)
    return day.isoformat()


def _near(clean: str, today: dt.date) -> dt.date | None:
    """A day named from today, or without its year: the one nearest to today; None for anything else."""
    if clean.casefold() in _NAMED_DAYS:
        return today + dt.timedelta(days=_NAMED_DAYS[clean.casefold()])
    found = _NO_YEAR.fullmatch(clean)
    if found is None:
        return None
    try:
        month, number = month_number(found[2] or found[3]), int(found[1] or found[4])
    except ValueError:
        return None
    days = []
    for year in (today.year - 1, today.year, today.year + 1):
        with contextlib.suppress(ValueError):  # the 29th of February of another year
            days.append(dt.date(year, month, number))
    return min(days, key=lambda day: abs((day - today).days), default=None)


def _day(clean: str, text: str, name: str, order: str) -> dt.date:
    try:
        if found := _YEAR_FIRST.fullmatch(clean):
            year, month, number = (part for part in found.group(1, 3, 4, 5, 6, 7) if part)
            return dt.date(int(year), int(month), int(number))
        if found := _DAY_FIRST.fullmatch(clean):
            return dt.date(int(found[3]), int(found[2]), int(found[1]))
        if found := _DAY_NAMED.fullmatch(clean):
            return dt.date(int(found[3]), month_number(found[2]), int(found[1]))
        if found := _MONTH_FIRST.fullmatch(clean):
            return dt.date(int(found[3]), month_number(found[1]), int(found[2]))
        if found := _SLASHED.fullmatch(clean):
            return _slashed(found, text, name, order)
    except ValueError as error:
        if isinstance(error, InputError):
            raise
        raise InputError(name, _ACCEPTED, text, f"The calendar has no such day. {_EXAMPLE}") from None
    raise InputError(name, _ACCEPTED, text, _why(clean))


def _slashed(found: re.Match[str], text: str, name: str, order: str) -> dt.date:
    """``14/3/2026`` is clear, because no month has that number; ``3/4/2026`` is not."""
    one, other, year = int(found[1]), int(found[3]), int(found[4])
    if one == other or one > 12 or other > 12:
        return dt.date(year, min(one, other), max(one, other))
    first, second = dt.date(year, other, one), dt.date(year, one, other)
    if order:
        return first if order == "day first" else second
    raise InputError(
        name, "one clear date", text,
        f"Does it mean {first} or {second}? Type the one you mean; to be asked no more, say date_order = \"day first\" or \"month first\" under [bench] in bench.toml.",
    )  # fmt: skip


def _why(clean: str) -> str:
    if re.fullmatch(r"\d{4}-?W\d\d(?:-?\d)?", clean, re.IGNORECASE):
        return f"That is a week of the year: which day was it? {_EXAMPLE}"
    if re.fullmatch(r"\d{4}-?\d{3}", clean):
        return f"That counts the days of the year: which month and day? {_EXAMPLE}"
    if re.fullmatch(r"\d{1,2}[-./ ]\s?\w{1,9}[-./ ]\s?\d{2}", clean):
        return f"The year needs four figures. {_EXAMPLE}"
    return _EXAMPLE


def _ask_if_far(day: dt.date, meant: bool, text: str, name: str, today: dt.date) -> None:
    if meant or EARLIEST_YEAR <= day.year <= today.year + YEARS_AHEAD:
        return
    accepted = f"a date from {EARLIEST_YEAR} to {today.year + YEARS_AHEAD}"
    raise InputError(name, accepted, text, "Is the year right? If it is right as it stands, put ! after it.")
