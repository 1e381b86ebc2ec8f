"""EDTF strictly in and out, words in with their meaning, and days of the calendar against the standard library."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.dating.days import civil_date, day_number, days_in_month, first_and_last_day, shift_years
from pentools.calc.dating.interval import merge_spans, read_edtf, write_edtf
from pentools.calc.dating.words import read_date
from pentools.errors import InputError


def days(*text):
    return tuple(None if t is None else dt.date.fromisoformat(t).toordinal() for t in text)


@given(st.dates())
def test_day_numbers_are_those_of_the_standard_library(date):
    assert day_number(date.year, date.month, date.day) == date.toordinal()
    assert civil_date(date.toordinal()) == (date.year, date.month, date.day)


@pytest.mark.parametrize(
    ("year", "month", "length"), [(1900, 2, 28), (2000, 2, 29), (1936, 2, 29), (1938, 2, 28), (1938, 4, 30)]
)
def test_days_in_month(year, month, length):
    assert days_in_month(year, month) == length


@pytest.mark.parametrize("wrong", [(0, 1, 1), (10000, 1, 1), (1936, 13, 1), (1936, 0, 1), (1938, 2, 29)])
def test_no_such_day(wrong):
    with pytest.raises(InputError):
        day_number(*wrong)


def test_a_leap_day_is_shifted_to_the_28th():
    assert civil_date(shift_years(day_number(1936, 2, 29), 1)) == (1937, 2, 28)
    with pytest.raises(InputError):
        shift_years(day_number(3), -3)


@pytest.mark.parametrize(
    ("text", "bounds"),
    [
        ("1936", ("1936-01-01", "1936-12-31")),
        ("1936/1942", ("1936-01-01", "1942-12-31")),
        ("1936-05", ("1936-05-01", "1936-05-31")),
        ("1936-05-12", ("1936-05-12", "1936-05-12")),
        ("1936-05/1942", ("1936-05-01", "1942-12-31")),
        ("1936-XX", ("1936-01-01", "1936-12-31")),
        ("1936-02-XX", ("1936-02-01", "1936-02-29")),
        ("193X", ("1930-01-01", "1939-12-31")),
        ("18XX", ("1800-01-01", "1899-12-31")),
        ("../1942", (None, "1942-12-31")),
        ("/1942", (None, "1942-12-31")),
        ("1936/..", ("1936-01-01", None)),
        ("1936/", ("1936-01-01", None)),
        ("../..", (None, None)),
        ("1938~", ("1936-01-01", "1940-12-31")),
        ("1938%", ("1936-01-01", "1940-12-31")),
        ("1938?", ("1938-01-01", "1938-12-31")),
        ("1936~/1942", ("1934-01-01", "1942-12-31")),
        ("1936/1942~", ("1936-01-01", "1944-12-31")),
        ("1941-34", ("1941-04-01", "1941-06-30")),
    ],
)
def test_bounds(text, bounds):
    read = read_edtf(text)
    assert (read.first_day, read.last_day) == days(*bounds)
    assert read.edtf == text
    assert read.approximate == ("~" in text or "%" in text)
    assert read.uncertain == ("?" in text or "%" in text)


def test_the_width_of_about_is_the_one_stated():
    assert read_edtf("1938~", about_years=5).spans == (days("1933-01-01", "1943-12-31"),)
    assert read_edtf("1938~", about_years=0).spans == (days("1938-01-01", "1938-12-31"),)
    assert read_edtf("1938~", about_years=5).about_years == 5
    assert read_edtf("1938", about_years=5).about_years == 0
    with pytest.raises(InputError, match="0 to 50"):
        read_edtf("1938~", about_years=51)


def test_one_of_a_set_keeps_its_gap():
    read = read_edtf("[1936..1938,1946]")
    assert read.spans == (days("1936-01-01", "1938-12-31"), days("1946-01-01", "1946-12-31"))
    assert read.meaning == "1936 to 1938 or 1946"


@pytest.mark.parametrize(
    "text",
    ["1942/1936", "1936-06/1936-05", "36", "193", "19361", "0000", "1936-13", "1936-00", "1936-02-30", "1936-21", "1936-37", "/", "", "..", "1936//1942",
     "1936/1938/1940", "~1936", "1936?~", "193X-05", "Y19360", "-1936", "{1936,1938}", "[]", "[1936..1934]", "1936/unknown", "1936 /x", "1936-XX-05", "x"],
)  # fmt: skip
def test_refused(text):
    with pytest.raises(InputError) as error:
        read_edtf(text)
    assert "must be" in str(error.value)


def test_a_turned_interval_says_what_may_be_meant():
    with pytest.raises(InputError, match="Was 1936/1942 meant"):
        read_edtf("1942/1936")


@pytest.mark.parametrize(
    ("words", "edtf", "meaning"),
    [
        ("c. 1936", "1936~", "1934 to 1938"),
        ("ca 1936", "1936~", "1934 to 1938"),
        ("circa 1936 ± 4", "1936~", "1932 to 1940"),
        ("about 1936 +/- 1 year", "1936~", "1935 to 1937"),
        ("c. 1936-1942", "1936~/1942~", "1934 to 1944"),
        ("1936-1942", "1936/1942", "1936 to 1942"),
        ("1936–1942", "1936/1942", "1936 to 1942"),
        ("1936 to 1942", "1936/1942", "1936 to 1942"),
        ("between 1936 and 1942", "1936/1942", "1936 to 1942"),
        ("1936-42", "1936/1942", "1936 to 1942"),
        ("1905–10", "1905/1910", "1905 to 1910"),
        ("before 1942", "../1941", "1941 or earlier"),
        ("until 1942", "../1942", "1942 or earlier"),
        ("not after 1942", "../1942", "1942 or earlier"),
        ("after 1936", "1937/..", "1937 or later"),
        ("from 1936", "1936/..", "1936 or later"),
        ("not before 1936", "1936/..", "1936 or later"),
        ("1930s", "193X", "1930 to 1939"),
        ("approx. May 1936 ± 1", "1936-05~", "May 1935 to May 1937"),
        ("May 1936", "1936-05", "May 1936"),
        ("Sept. 1936", "1936-09", "September 1936"),
        ("Q1 1941", "1941-33", "January 1941 to March 1941"),
        ("unknown", "../..", "any date"),
    ],
)
def test_words(words, edtf, meaning):
    read = read_date(words)
    assert (read.edtf, read.meaning, read.typed) == (edtf, meaning, words)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("1930-35", "1930/1935 or Q3 1930"),
        ("1920-25", "Does it mean 1920/1925"),
        ("early 1930s", "no agreed years"),
        ("mai 1936", "not a date"),
        ("marble 1936", "no month"),
        ("1935s", "decade"),
        ("1942–36", "years in full"),
        ("1936 to 1930", "Was 1930/1936 meant"),
        ("", "Type it like"),
        ("yesterday", "EDTF"),
    ],
)
def test_words_that_are_not_clear_are_asked_about(words, said):
    with pytest.raises(InputError, match=said) as error:
        read_date(words)
    assert error.value.got == words


def test_what_could_be_mistaken_is_pointed_out():
    assert "1905/1910" in read_date("1905-10").note
    assert "without the year named" in read_date("before 1942").note
    assert read_date("1936/1942").note == ""


@st.composite
def spans(draw):
    first = draw(st.none() | st.integers(693596, 730119))
    last = draw(st.none() | st.integers(first or 693596, 766644))
    return first, last


@given(st.lists(spans(), min_size=1, max_size=4))
def test_what_is_written_is_read_back_as_the_same_days(some):
    assert read_edtf(write_edtf(some)).spans == merge_spans(some)


@given(st.integers(1000, 2900), st.integers(0, 60))
def test_whole_years_are_written_as_years(year, more):
    text = write_edtf([(first_and_last_day(year)[0], first_and_last_day(year + more)[1])])
    assert text == (f"{year}" if not more else f"{year}/{year + more}")
