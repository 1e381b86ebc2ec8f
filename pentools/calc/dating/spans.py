"""Days of the calendar and sets of them: bounds, words, what several sets have in common, and their largest agreements."""

from __future__ import annotations

import calendar
import datetime as dt
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from pentools.errors import InputError
from pentools.words import MONTHS

__all__ = [
    "ANY_DAY", "Agreement", "Span", "end_text", "first_and_last_day", "in_words", "intersect", "largest_agreements", "merge_spans",
    "span_texts", "start_text", "years_left",
]  # fmt: skip

Span = tuple[int | None, int | None]
"""First and last day number, both included; None where an end is open. 1 January of year 1 is day 1."""

ANY_DAY: tuple[Span, ...] = ((None, None),)
"""No limit at either end."""

_DAYS_A_YEAR = 365.2425
_BEFORE_ALL = 0  # day numbers start at 1


@dataclass(frozen=True, slots=True)
class Agreement:
    """Sets that agree on some days and to which no further one can be added.

    Parameters
    ----------
    members : int
        Which sets, as bits.
    weight : int
        Their weights together.
    spans : tuple of Span
        The days they have in common.
    """

    members: int
    weight: int
    spans: tuple[Span, ...]


def first_and_last_day(year: int, month: int | None = None, day: int | None = None) -> tuple[int, int]:
    """The first and the last day of a year, of a month or of a day.

    Parameters
    ----------
    year : int
        Calendar year [1 to 9999], Gregorian throughout (ISO 8601-1), also before that was used anywhere.
    month : int or None
        Month [1 to 12]; None for the whole year.
    day : int or None
        Day of the month [1 to 31]; None for the whole month.

    Returns
    -------
    tuple of int
        Day numbers [d], both included; 1 January of year 1 is day 1.

    Raises
    ------
    InputError
        If there is no such day.

    Examples
    --------
    >>> first, last = first_and_last_day(1936)
    >>> last - first + 1
    366
    """
    if not dt.MINYEAR <= year <= dt.MAXYEAR:
        raise InputError("year", f"{dt.MINYEAR} to {dt.MAXYEAR}", year)
    low, high = (1, 12) if month is None else (month, month)
    if not 1 <= low <= high <= 12:
        raise InputError("month", "1 to 12", month)
    length = calendar.monthrange(year, high)[1]
    if day is not None and not 1 <= day <= length:
        raise InputError("day", f"1 to {length} in {year:04d}-{high:02d}", day)
    return dt.date(year, low, day or 1).toordinal(), dt.date(year, high, day or length).toordinal()


def start_text(day: int) -> str:
    """A first day as EDTF, as coarse as it can be: the year if it is 1 January, the month if it is the first of one.

    Parameters
    ----------
    day : int
        Day number [1 to 3652059].

    Returns
    -------
    str
        Such as ``1936`` or ``1936-05``.
    """
    return dt.date.fromordinal(day).isoformat().removesuffix("-01").removesuffix("-01")


def end_text(day: int) -> str:
    """A last day as EDTF, as coarse as it can be: the year if it is 31 December, the month if it is the last of one.

    Parameters
    ----------
    day : int
        Day number [1 to 3652059].

    Returns
    -------
    str
        Such as ``1942`` or ``1942-02``.
    """
    date = dt.date.fromordinal(day)
    if date.day != calendar.monthrange(date.year, date.month)[1]:
        return date.isoformat()
    return f"{date:%Y}".zfill(4) if date.month == 12 else date.isoformat()[:7]


def span_texts(span: Span) -> tuple[str, ...]:
    """Both ends of a span as EDTF, equally fine and as coarse as they can be; one text where it is a year, month or day.

    Parameters
    ----------
    span : Span
        First and last day.

    Returns
    -------
    tuple of str
        One text, or a start and an end of which an open one is empty.
    """
    first, last = span
    start, end = "" if first is None else start_text(first), "" if last is None else end_text(last)
    if start == end:
        return (start,) if start else ("", "")
    fineness = max(len(start), len(end))
    if first is not None and last is not None and start_text(first) == dt.date.fromordinal(last).isoformat():
        return (start,)
    ends = tuple("" if day is None else dt.date.fromordinal(day).isoformat()[:fineness] for day in span)
    return ends[:1] if ends[0] == ends[1] else ends


def in_words(spans: Iterable[Span]) -> str:
    """Days in words, such as "1936 to 1938 or 1946"."""
    return " or ".join(_span_in_words(span) for span in spans)


def _span_in_words(span: Span) -> str:
    texts = [_date_in_words(text) for text in span_texts(span)]
    if len(texts) == 1:
        return texts[0]
    first, last = texts
    return (
        f"{first} to {last}"
        if first and last
        else f"{first} or later"
        if first
        else f"{last} or earlier"
        if last
        else "any date"
    )


def _date_in_words(text: str) -> str:
    if not text:
        return ""
    year, *rest = (int(part) for part in text.split("-"))
    return " ".join([*(str(day) for day in rest[1:]), *(MONTHS[month - 1] for month in rest[:1]), str(year)])


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
            raise InputError("span", "an end on or after its start", f"{start_text(first)} to {start_text(last)}")
        if merged:
            before_first, before_last = merged[-1]
            if before_last is None or first is None or first <= before_last + 1:
                longer = None if before_last is None or last is None else max(before_last, last)
                merged[-1] = (before_first, longer)
                continue
        merged.append((first, last))
    return tuple(merged)


def intersect(sets: Iterable[Sequence[Span]]) -> tuple[Span, ...]:
    """The days that all sets have in common.

    Parameters
    ----------
    sets : iterable of sequence of Span
        Each sorted and its spans apart, as `merge_spans` gives them; none at all means any day.

    Returns
    -------
    tuple of Span
        The days in common; empty where there are none.

    Examples
    --------
    >>> intersect([((1, 9), (20, None)), ((5, 21),)])
    ((5, 9), (20, 21))
    """
    common: tuple[Span, ...] = ANY_DAY
    for spans in sets:
        common = merge_spans(both for a in common for b in spans if (both := _overlap(a, b)) is not None)
    return common


def _overlap(a: Span, b: Span) -> Span | None:
    first = a[0] if b[0] is None else b[0] if a[0] is None else max(a[0], b[0])
    last = a[1] if b[1] is None else b[1] if a[1] is None else min(a[1], b[1])
    return None if first is not None and last is not None and last < first else (first, last)


def years_left(spans: Sequence[Span]) -> float:
    """How long some days are together.

    Parameters
    ----------
    spans : sequence of Span
        The days.

    Returns
    -------
    float
        Years of 365.2425 days; infinite where an end is open, 0 for no days.

    Examples
    --------
    >>> round(years_left([(1, 731)]), 2)
    2.0
    """
    days = 0
    for first, last in spans:
        if first is None or last is None:
            return math.inf
        days += last - first + 1
    return days / _DAYS_A_YEAR


def largest_agreements(sets: Sequence[Sequence[Span]], weights: Sequence[int]) -> tuple[Agreement, ...]:
    """All agreements to which no further set can be added.

    Parameters
    ----------
    sets : sequence of sequence of Span
        Days allowed by each; sorted and apart.
    weights : sequence of int
        Weight of each [1 or more].

    Returns
    -------
    tuple of Agreement
        In the order of their first days.

    Notes
    -----
    A sweep along the days: each set begins and ends at its bounds, and an agreement is complete where a set ends
    after one has begun. For single intervals these are exactly the maximal cliques of the interval graph; where a
    set has several spans, agreements within larger ones are taken out afterwards. No subset is
    tried one by one, so the work grows as n log n for single intervals.

    Examples
    --------
    >>> [bin(a.members) for a in largest_agreements([((1, 5),), ((4, 9),), ((8, 9),)], [1, 1, 1])]
    ['0b11', '0b110']
    """
    begins: dict[int, list[int]] = {}
    ends: dict[int, list[int]] = {}
    for number, spans in enumerate(sets):
        for first, last in spans:
            begins.setdefault(_BEFORE_ALL if first is None else first, []).append(number)
            if last is not None:
                ends.setdefault(last + 1, []).append(number)
    found = _sweep(begins, ends, weights)
    several = any(len(spans) > 1 for spans in sets)
    return tuple(
        Agreement(bits, total, tuple(spans))
        for bits, (total, spans) in found.items()
        if not several or not any(bits != other and bits & other == bits for other in found)
    )


def _sweep(
    begins: dict[int, list[int]], ends: dict[int, list[int]], weights: Sequence[int]
) -> dict[int, tuple[int, list[Span]]]:
    """Which sets hold where a set ends after one has begun: bits -> weight and days."""
    found: dict[int, tuple[int, list[Span]]] = {}
    members, weight, since, grown = 0, 0, _BEFORE_ALL, False
    for day in sorted({*begins, *ends}):
        if day in ends:
            if grown:
                found.setdefault(members, (weight, []))[1].append((since or None, day - 1))
            for number in ends[day]:
                members ^= 1 << number
                weight -= weights[number]
            grown = False
        if day in begins:
            for number in begins[day]:
                members |= 1 << number
                weight += weights[number]
            since, grown = day, True
    if grown:
        found.setdefault(members, (weight, []))[1].append((since or None, None))
    return found
