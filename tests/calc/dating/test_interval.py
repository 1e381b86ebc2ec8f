"""EDTF strictly in and out, with the bounds of our own."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.dating.interval import read_edtf, write_edtf
from pentools.calc.dating.spans import first_and_last_day, merge_spans
from pentools.errors import InputError


def days(*text):
    return tuple(None if t is None else dt.date.fromisoformat(t).toordinal() for t in text)


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


def test_about_moves_a_leap_day_to_the_28th_and_stops_at_the_calendars_ends():
    assert read_edtf("1936-02-29~", about_years=1).spans == (days("1935-02-28", "1937-02-28"),)
    assert read_edtf("1936-02-29~", about_years=4).spans == (days("1932-02-29", "1940-02-29"),)
    for text in ("0002~", "9999~"):
        with pytest.raises(InputError, match="1 to 9999"):
            read_edtf(text)


def test_how_it_was_read_is_said_in_words_and_as_edtf():
    assert read_edtf("../1942-05").read_as == "May 1942 or earlier (../1942-05)"


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
