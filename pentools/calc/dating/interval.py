"""Dates in the extended format of ISO 8601-2 (EDTF), strictly read and written, with bounds of our own.

What is read: a year, month or day, a quarter, unspecified digits (``193X``), the qualifiers ``?``, ``~`` and ``%``
at the end of a date, an interval with either end open or unknown, and a set "one of these".
"""

from __future__ import annotations

import calendar
import datetime as dt
import re
from collections.abc import Iterable
from dataclasses import dataclass

from pentools.calc.dating.spans import Span, first_and_last_day, in_words, merge_spans, span_texts
from pentools.errors import InputError

__all__ = ["ABOUT_YEARS", "EdtfInterval", "read_edtf", "write_edtf"]

ABOUT_YEARS = 2
"""How far "about" reaches to either side where nothing is stated [years]; judged, the standard gives no width."""

_DATE = re.compile(r"(?P<year>\d{4}|\d{3}X|\d{2}XX)(?:-(?P<month>\d{2}|XX)(?:-(?P<day>\d{2}|XX))?)?(?P<mark>[?~%]?)")
_ACCEPTED = "an EDTF date such as 1936, 1936/1942, 1938~, ../1942 or 193X"


@dataclass(frozen=True, slots=True)
class EdtfInterval:
    """A date or interval and the days it allows.

    Parameters
    ----------
    edtf : str
        The EDTF text.
    spans : tuple of Span
        What it allows: one span, or several for a set; sorted and apart from each other. "About" is already in.
    approximate : bool
        Whether a ``~`` or ``%`` stands on it.
    uncertain : bool
        Whether a ``?`` or ``%`` stands on it: the date itself is in doubt, its bounds are not widened.
    about_years : int
        The width that "about" was given [years to either side]; 0 where it was not used.
    typed : str
        The text as it was typed.
    note : str
        What the reader should check about the way it was read; empty where nothing could be mistaken.
    """

    edtf: str
    spans: tuple[Span, ...]
    approximate: bool = False
    uncertain: bool = False
    about_years: int = 0
    typed: str = ""
    note: str = ""

    @property
    def first_day(self) -> int | None:
        """The earliest day allowed [day number], None where that end is open."""
        return self.spans[0][0]

    @property
    def last_day(self) -> int | None:
        """The latest day allowed [day number], None where that end is open."""
        return self.spans[-1][1]

    @property
    def meaning(self) -> str:
        """What it allows, in words."""
        return in_words(self.spans)

    @property
    def read_as(self) -> str:
        """How it was read, in words and as EDTF, such as ``1942 or earlier (../1942)``."""
        return f"{self.meaning} ({self.edtf})"


def read_edtf(text: str, *, about_years: int = ABOUT_YEARS) -> EdtfInterval:
    """Read an EDTF text strictly.

    Parameters
    ----------
    text : str
        The text, without words.
    about_years : int
        How far ``~`` reaches to either side [0 to 50 years].

    Returns
    -------
    EdtfInterval
        The days it allows.

    Raises
    ------
    InputError
        If it is not EDTF of the kind read here, if its end comes before its start, or if there is no such day.

    Notes
    -----
    Bounds, in days, both included: the first day of the start and the last day of the end. ``..`` is an open end and
    an empty end is an unknown one; neither sets a bound (some parsers invent one for an unknown end). The standard
    gives ``~`` no width: here it moves the bound of the date that carries it by `about_years`, and only that bound.
    ``?`` moves nothing. Quarters are the codes 33 to 36 of ISO 8601-2; the seasons 21 to 24 are refused, since the
    standard does not say in which months they lie. Good for the years 1 to 9999.

    Examples
    --------
    >>> read_edtf("1936/1942").meaning
    '1936 to 1942'
    >>> read_edtf("/1942").meaning
    '1942 or earlier'
    """
    clean = text.strip()
    if not 0 <= about_years <= 50:
        raise InputError("width of about", "0 to 50 years", about_years)
    if clean.startswith("[") and clean.endswith("]"):
        parts = [_read_range(part.strip(), "..", text, about_years) for part in clean[1:-1].split(",")]
        edtf = "[" + ",".join(part.edtf for part in parts) + "]"
    elif clean.startswith("{"):
        raise InputError(
            "date", _ACCEPTED, text, "Curly brackets mean all of these; one pen has one date: use [ ] for one of these."
        )
    else:
        parts = [_read_range(clean, "/", text, about_years)]
        edtf = parts[0].edtf
    approximate = any(part.approximate for part in parts)
    return EdtfInterval(
        edtf,
        merge_spans(span for part in parts for span in part.spans),
        approximate,
        any(part.uncertain for part in parts),
        about_years if approximate else 0,
        text.strip(),
    )


def write_edtf(spans: Iterable[Span]) -> str:
    """Days as EDTF text, each end as coarse as it can be without changing it.

    Parameters
    ----------
    spans : iterable of Span
        What is allowed; None for an open end.

    Returns
    -------
    str
        Such as ``1936/1942``, ``../1942-05``, ``1938`` or ``[1936..1938,1946]``.

    Raises
    ------
    InputError
        If there is no span, or one ends before it starts.

    Notes
    -----
    Widths of "about" are part of the days already, so no ``~`` is written: what is read back is the same days.

    Examples
    --------
    >>> write_edtf([(dt.date(1936, 1, 1).toordinal(), dt.date(1942, 12, 31).toordinal())])
    '1936/1942'
    """
    merged = merge_spans(spans)
    if not merged:
        raise InputError("spans", "at least one", 0)
    if len(merged) == 1:
        return _write_span(merged[0], "/", "..")
    return "[" + ",".join(_write_span(span, "..", "") for span in merged) + "]"


@dataclass(frozen=True, slots=True)
class _Date:
    first: int
    last: int
    edtf: str
    mark: str

    def widened(self, about_years: int) -> Span:
        if self.mark not in ("~", "%"):
            return self.first, self.last
        return _shifted(self.first, -about_years), _shifted(self.last, about_years)


def _read_range(clean: str, divider: str, text: str, about_years: int) -> EdtfInterval:
    if divider not in clean:
        date = _read_date(clean, text)
        return _one(date.edtf, date.widened(about_years), (date,), text)
    ends = clean.split(divider)
    if divider == "/":
        ends = ["" if end == ".." else end for end in ends]
    if len(ends) != 2 or (ends == ["", ""] and clean != "../.."):
        raise InputError("date", _ACCEPTED, text)
    start, end = (_read_date(part, text) if part else None for part in ends)
    if start is not None and end is not None and end.last < start.first:
        raise InputError(
            "date", "an interval whose end comes after its start", text, f"Was {end.edtf}{divider}{start.edtf} meant?"
        )
    span = (start.widened(about_years)[0] if start else None, end.widened(about_years)[1] if end else None)
    return _one(clean, span, tuple(date for date in (start, end) if date), text)


def _one(edtf: str, span: Span, dates: tuple[_Date, ...], text: str) -> EdtfInterval:
    marks = {date.mark for date in dates}
    return EdtfInterval(edtf, (span,), bool(marks & {"~", "%"}), bool(marks & {"?", "%"}), typed=text)


def _read_date(part: str, text: str) -> _Date:
    found = _DATE.fullmatch(part)
    if found is None:
        raise InputError("date", _ACCEPTED, text, f"“{part}” is not a date in that form." if part else "")
    year, month, day, mark = found["year"], found["month"], found["day"], found["mark"]
    if "X" in year:
        if month is not None:
            raise InputError("date", _ACCEPTED, text, "A decade or a century goes without a month.")
        low, high = int(year.replace("X", "0")), int(year.replace("X", "9"))
        return _Date(first_and_last_day(max(low, 1))[0], first_and_last_day(high)[1], part, mark)
    if month is None or month == "XX":
        if day is not None and day != "XX":
            raise InputError("date", _ACCEPTED, text, "A day needs its month.")
        return _Date(*_days(text, int(year)), part, mark)
    code = int(month)
    if 33 <= code <= 36 and day is None:
        first_month = 3 * (code - 33) + 1
        return _Date(_days(text, int(year), first_month)[0], _days(text, int(year), first_month + 2)[1], part, mark)
    if 21 <= code <= 41:
        raise InputError(
            "date",
            _ACCEPTED,
            text,
            "Seasons are not read, since the standard does not say in which months they lie: give the months, such as 1936-03/1936-05.",
        )
    return _Date(*_days(text, int(year), code, None if day in (None, "XX") else int(day)), part, mark)


def _days(text: str, year: int, month: int | None = None, day: int | None = None) -> tuple[int, int]:
    try:
        return first_and_last_day(year, month, day)
    except InputError as error:
        raise InputError(
            "date", "a day of the calendar", text, f"The {error.name} must be {error.accepted}."
        ) from error


def _shifted(day: int, years: int) -> int:
    """The same day some years on; 29 February becomes the 28th where it must, and the calendar's ends hold."""
    date = dt.date.fromordinal(day)
    target = date.year + years
    if not dt.MINYEAR <= target <= dt.MAXYEAR:
        raise InputError("date", f"within the years {dt.MINYEAR} to {dt.MAXYEAR}, the width of about included", target)
    return date.replace(year=target, day=min(date.day, calendar.monthrange(target, date.month)[1])).toordinal()


def _write_span(span: Span, divider: str, open_end: str) -> str:
    return divider.join(text or open_end for text in span_texts(span))
