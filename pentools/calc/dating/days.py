"""Days of the calendar as whole numbers, so that intervals of years, months and days compare as plain numbers."""

from __future__ import annotations

from pentools.errors import InputError

__all__ = ["civil_date", "day_number", "days_in_month", "first_and_last_day", "shift_years"]

_BEFORE_MONTH = (0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334)
_LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def _leap(year: int) -> bool:
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def days_in_month(year: int, month: int) -> int:
    """How many days a month has.

    Parameters
    ----------
    year : int
        Calendar year [1 to 9999].
    month : int
        Month [1 to 12].

    Returns
    -------
    int
        Days [28 to 31].

    Raises
    ------
    InputError
        If there is no such month.

    Examples
    --------
    >>> days_in_month(1936, 2)
    29
    """
    if not 1 <= month <= 12:
        raise InputError("month", "1 to 12", month)
    return 29 if month == 2 and _leap(year) else _LENGTHS[month - 1]


def day_number(year: int, month: int = 1, day: int = 1) -> int:
    """A day as a whole number; 1 January of year 1 is day 1.

    Parameters
    ----------
    year : int
        Calendar year [1 to 9999].
    month : int
        Month [1 to 12].
    day : int
        Day of the month [1 to 31].

    Returns
    -------
    int
        Day number [d].

    Raises
    ------
    InputError
        If there is no such day.

    Notes
    -----
    Gregorian calendar throughout (ISO 8601-1), also before it was used anywhere; good for the years 1 to 9999.

    Examples
    --------
    >>> day_number(1936, 5, 1) - day_number(1936, 4, 1)
    30
    """
    if not 1 <= year <= 9999:
        raise InputError("year", "1 to 9999", year)
    if not 1 <= day <= days_in_month(year, month):
        raise InputError("day", f"1 to {days_in_month(year, month)} in {year:04d}-{month:02d}", day)
    before = (year - 1) * 365 + (year - 1) // 4 - (year - 1) // 100 + (year - 1) // 400
    return before + _BEFORE_MONTH[month - 1] + (1 if month > 2 and _leap(year) else 0) + day


def civil_date(number: int) -> tuple[int, int, int]:
    """The calendar date of a day number.

    Parameters
    ----------
    number : int
        Day number as `day_number` gives it [1 to 3652059].

    Returns
    -------
    tuple of int
        Year, month and day.

    Raises
    ------
    InputError
        If it is before year 1 or after year 9999.

    Examples
    --------
    >>> civil_date(day_number(1942, 12, 31) + 1)
    (1943, 1, 1)
    """
    if not 1 <= number <= 3652059:
        raise InputError("day number", "1 to 3652059", number)
    year = (number - 1) * 400 // 146097 + 1
    while day_number(year) > number:
        year -= 1
    while year < 9999 and day_number(year + 1) <= number:
        year += 1
    month = 12
    while day_number(year, month) > number:
        month -= 1
    return year, month, number - day_number(year, month) + 1


def first_and_last_day(year: int, month: int | None = None, day: int | None = None) -> tuple[int, int]:
    """The first and the last day of a year, of a month or of a day.

    Parameters
    ----------
    year : int
        Calendar year [1 to 9999].
    month : int or None
        Month [1 to 12]; None for the whole year.
    day : int or None
        Day of the month; None for the whole month.

    Returns
    -------
    tuple of int
        Day numbers [d], both included.

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
    if month is None:
        return day_number(year), day_number(year, 12, 31)
    if day is None:
        return day_number(year, month), day_number(year, month, days_in_month(year, month))
    return day_number(year, month, day), day_number(year, month, day)


def shift_years(number: int, years: int) -> int:
    """The same day some years earlier or later; 29 February becomes 28 February where it must.

    Parameters
    ----------
    number : int
        Day number [d].
    years : int
        Years to go on, negative to go back.

    Returns
    -------
    int
        Day number [d].

    Raises
    ------
    InputError
        If it leaves the years 1 to 9999.

    Examples
    --------
    >>> civil_date(shift_years(day_number(1936, 2, 29), 2))
    (1938, 2, 28)
    """
    year, month, day = civil_date(number)
    target = year + years
    if not 1 <= target <= 9999:
        raise InputError("year", "1 to 9999", target)
    return day_number(target, month, min(day, days_in_month(target, month)))
