"""Dates in the extended format of ISO 8601-2 (EDTF), strictly read and written, with bounds of our own.

What is read: a year, month or day, a quarter, unspecified digits (``193X``), the qualifiers ``?``, ``~`` and ``%``
at the end of a date, an interval with either end open or unknown, and a set "one of these".
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from pentools.calc.dating.days import civil_date, day_number, days_in_month, first_and_last_day, shift_years
from pentools.errors import InputError

__all__ = ["ABOUT_YEARS", "EdtfInterval", "Span", "merge_spans", "read_edtf", "write_edtf"]

ABOUT_YEARS = 2
"""How far "about" reaches to either side where nothing is stated [years]; judged, the standard gives no width."""

Span = tuple[int | None, int | None]
"""First and last day number, both included; None where an end is open."""

_DATE = re.compile(r"(?P<year>\d{4}|\d{3}X|\d{2}XX)(?:-(?P<month>\d{2}|XX)(?:-(?P<day>\d{2}|XX))?)?(?P<mark>[?~%]?)")
_MONTH_NAMES = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December")  # fmt: skip
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
        return " or ".join(_span_in_words(span) for span in self.spans)


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
    >>> write_edtf([(day_number(1936), day_number(1942, 12, 31))])
    '1936/1942'
    """
    merged = merge_spans(spans)
    if not merged:
        raise InputError("spans", "at least one", 0)
    if len(merged) == 1:
        return _write_span(merged[0], "/", "..")
    return "[" + ",".join(_write_span(span, "..", "") for span in merged) + "]"


def merge_spans(spans: Iterable[Span]) -> tuple[Span, ...]:
    """Spans in order, those that touch or overlap made one.

    Parameters
    ----------
    spans : iterable of Span
        First and last day of each; None for an open end.

    Returns
    -------
    tuple of Span
        The same days in as few spans as possible.

    Raises
    ------
    InputError
        If a span ends before it starts.

    Examples
    --------
    >>> merge_spans([(5, 9), (None, 4), (20, 21)])
    ((None, 9), (20, 21))
    """
    merged: list[Span] = []
    for first, last in sorted(spans, key=lambda span: (span[0] is not None, span[0] or 0)):
        if first is not None and last is not None and last < first:
            raise InputError("span", "an end on or after its start", f"{civil_date(first)} to {civil_date(last)}")
        if merged:
            before_first, before_last = merged[-1]
            if before_last is None or first is None or first <= before_last + 1:
                longer = None if before_last is None or last is None else max(before_last, last)
                merged[-1] = (before_first, longer)
                continue
        merged.append((first, last))
    return tuple(merged)


@dataclass(frozen=True, slots=True)
class _Date:
    first: int
    last: int
    edtf: str
    mark: str

    def widened(self, about_years: int) -> Span:
        if self.mark not in ("~", "%"):
            return self.first, self.last
        return shift_years(self.first, -about_years), shift_years(self.last, about_years)


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
    number = int(year)
    if month is None or month == "XX":
        if day is not None and day != "XX":
            raise InputError("date", _ACCEPTED, text, "A day needs its month.")
        return _Date(*_days(text, number), part, mark)
    code = int(month)
    if 33 <= code <= 36 and day is None:
        quarter = code - 33
        first = day_number(number, 3 * quarter + 1)
        return _Date(first, day_number(number, 3 * quarter + 3, days_in_month(number, 3 * quarter + 3)), part, mark)
    if 21 <= code <= 41:
        raise InputError(
            "date",
            _ACCEPTED,
            text,
            "Seasons are not read, since the standard does not say in which months they lie: give the months, such as 1936-03/1936-05.",
        )
    return _Date(*_days(text, number, code, None if day in (None, "XX") else int(day)), part, mark)


def _days(text: str, year: int, month: int | None = None, day: int | None = None) -> tuple[int, int]:
    try:
        return first_and_last_day(year, month, day)
    except InputError as error:
        raise InputError(
            "date", "a day of the calendar", text, f"The {error.name} must be {error.accepted}."
        ) from error


def _write_span(span: Span, divider: str, open_end: str) -> str:
    first, last = span
    if first is not None and last is not None and (whole := _period(first, last)):
        return _as_edtf(*whole)
    fineness = _fineness(span)
    start = open_end if first is None else _as_edtf(*civil_date(first)[:fineness])
    end = open_end if last is None else _as_edtf(*civil_date(last)[:fineness])
    return f"{start}{divider}{end}"


def _fineness(span: Span) -> int:
    """1 where both ends are those of years, 2 of months, 3 of days."""
    first, last = span
    fineness = 1
    if first is not None:
        _, month, day = civil_date(first)
        fineness = 3 if day != 1 else 2 if month != 1 else 1
    if last is not None:
        year, month, day = civil_date(last)
        fineness = max(fineness, 3 if day != days_in_month(year, month) else 2 if month != 12 else 1)
    return fineness


def _period(first: int, last: int) -> tuple[int, ...]:
    """The year, month or day that these days are exactly; empty where they are none."""
    year, month, day = civil_date(first)
    if first_and_last_day(year) == (first, last):
        return (year,)
    if first_and_last_day(year, month) == (first, last):
        return (year, month)
    return (year, month, day) if first == last else ()


def _as_edtf(year: int, month: int | None = None, day: int | None = None) -> str:
    return "-".join([f"{year:04d}", *(f"{part:02d}" for part in (month, day) if part is not None)])


def _as_words(year: int, month: int | None = None, day: int | None = None) -> str:
    name = "" if month is None else _MONTH_NAMES[month - 1]
    return " ".join(part for part in ("" if day is None else str(day), name, str(year)) if part)


def _span_in_words(span: Span) -> str:
    first, last = span
    fineness = _fineness(span)
    if first is not None and last is not None:
        if whole := _period(first, last):
            return _as_words(*whole)
        return f"{_as_words(*civil_date(first)[:fineness])} to {_as_words(*civil_date(last)[:fineness])}"
    if first is not None:
        return f"{_as_words(*civil_date(first)[:fineness])} or later"
    if last is not None:
        return f"{_as_words(*civil_date(last)[:fineness])} or earlier"
    return "any date"
