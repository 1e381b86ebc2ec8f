"""Days as people write them: read where there is one way to read them, asked about where there are two or none."""

import calendar
import datetime as dt
import random

import pytest

from pentools.days import EARLIEST_YEAR, YEARS_AHEAD, read_day
from pentools.errors import InputError

TODAY = dt.date(2026, 11, 28)


@pytest.mark.parametrize(
    "text",
    [
        "2026-03-14", "2026/3/14", "2026.03.14", "20260314", "14.3.2026", "14. 03. 2026", "14 March 2026", "14th March 2026",
        "14th of March, 2026", "14-Mar-2026", "March 14, 2026", "Mar. 14 2026", "14/3/2026", "3/14/2026", "14-03-2026",
        " 14  march  2026 ", "２０２６-03-14",
    ],
)  # fmt: skip
def test_one_day_in_many_ways(text):
    assert read_day(text, today=TODAY) == "2026-03-14"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("2026-W11", "a week of the year"),
        ("2026-W11-1", "a week of the year"),
        ("2026W111", "a week of the year"),
        ("2026-074", "counts the days of the year"),
        ("2026074", "counts the days of the year"),
        ("3/4/2026", "Does it mean 2026-04-03 or 2026-03-04?"),
        ("14.3.26", "four figures"),
        ("26-03-14", "four figures"),
        ("2026-02-30", "no such day"),
        ("31.2.2026", "no such day"),
        ("29 February 2026", "no such day"),
        ("2026-13-01", "no such day"),
        ("14/13/2026", "no such day"),
        ("14 Smarch 2026", "no such day"),
        ("2026-03-14T10:00", "Type it like"),
        ("todays", "Type it like"),
        ("31 June", "Type it like"),
        ("14 Smarch", "Type it like"),
        ("", "Type it like"),
        ("9" * 5000, "Type it like"),
        ("١٤.٣.٢٠٢٦", "Type it like"),
        ("1026-03-14", "Is the year right?"),
        ("2062-03-14", "Is the year right?"),
        ("0001-01-01", "Is the year right?"),
        ("14 March 1026", "Is the year right?"),
    ],
)
def test_what_is_asked_about_or_refused(text, told):
    with pytest.raises(InputError, match="Arrived on must be") as refused:
        read_day(text, "Arrived on", TODAY)
    assert told in str(refused.value)


def test_a_year_far_off_may_be_meant():
    assert read_day("1026-03-14!", today=TODAY) == "1026-03-14"
    assert read_day("14 March 2062 !", today=TODAY) == "2062-03-14"
    first, last = f"{EARLIEST_YEAR}-01-01", f"{TODAY.year + YEARS_AHEAD}-12-31"
    assert (read_day(first, today=TODAY), read_day(last, today=TODAY)) == (first, last)
    for beyond in (f"{EARLIEST_YEAR - 1}-12-31", f"{TODAY.year + YEARS_AHEAD + 1}-01-01"):
        with pytest.raises(InputError):
            read_day(beyond, today=TODAY)


def test_a_thousand_days_in_every_way_come_out_as_the_calendar_has_them():
    """The outside reader is `datetime.strptime` of the standard library, told the form."""
    forms = ("%Y-%m-%d", "%Y/%m/%d", "%d.%m.%Y", "%d %B %Y", "%d %b %Y", "%B %d, %Y", "%Y%m%d")
    draw = random.Random(9)
    for _ in range(1000):
        year, month = draw.randint(1990, 2030), draw.randint(1, 12)
        day = dt.date(year, month, draw.randint(1, calendar.monthrange(year, month)[1]))
        form = draw.choice(forms)
        text = day.strftime(form)
        assert read_day(text, today=TODAY) == dt.datetime.strptime(text, form).date().isoformat(), text


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("today", "2026-11-28"),
        ("Yesterday", "2026-11-27"),
        ("tomorrow", "2026-11-29"),
        ("27 Nov", "2026-11-27"),
        ("Nov 27", "2026-11-27"),
        ("27. Nov.", "2026-11-27"),
        ("3rd of January", "2027-01-03"),  # nearer than the one of ten months ago
        ("20 May", "2027-05-20"),
        ("10 June", "2026-06-10"),
    ],
)
def test_a_day_named_from_today(text, day):
    assert read_day(text, today=TODAY) == day


def test_a_day_that_other_years_lack_is_read_near_a_year_that_has_it():
    assert read_day("29 Feb", today=dt.date(2024, 3, 3)) == "2024-02-29"


def test_the_benchs_own_order_settles_what_could_be_two_days():
    assert read_day("3/4/2026", today=TODAY, order="day first") == "2026-04-03"
    assert read_day("3/4/2026", today=TODAY, order="month first") == "2026-03-04"
    assert read_day("14/3/2026", today=TODAY, order="month first") == "2026-03-14"  # no month has that number
