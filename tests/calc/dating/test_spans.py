"""Days and sets of days: the standard library's calendar, words, unions and intersections against day-by-day counting."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.dating.spans import (
    ANY_DAY,
    end_text,
    first_and_last_day,
    in_words,
    intersect,
    largest_agreements,
    merge_spans,
    span_texts,
    start_text,
    years_left,
)  # fmt: skip
from pentools.errors import InputError


def day(text):
    return None if text is None else dt.date.fromisoformat(text).toordinal()


def test_years_months_and_days():
    assert first_and_last_day(1936) == (day("1936-01-01"), day("1936-12-31"))
    assert first_and_last_day(1936, 2) == (day("1936-02-01"), day("1936-02-29"))
    assert first_and_last_day(1900, 2) == (day("1900-02-01"), day("1900-02-28"))
    assert first_and_last_day(1936, 5, 12) == (day("1936-05-12"),) * 2
    assert first_and_last_day(1) == (1, 365)
    assert first_and_last_day(9999)[1] == dt.date.max.toordinal()


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ((0,), "year must be 1 to 9999"), ((10000,), "year must be 1 to 9999"), ((1936, 13), "month must be 1 to 12"), ((1936, 0), "month must be"),
        ((1938, 2, 29), "day must be 1 to 28 in 1938-02"), ((1938, 2, 0), "day must be"),
    ],
)  # fmt: skip
def test_no_such_day(wrong, said):
    with pytest.raises(InputError, match=said):
        first_and_last_day(*wrong)


@pytest.mark.parametrize(
    ("date", "start", "end"),
    [
        ("1936-01-01", "1936", "1936-01-01"), ("1936-12-31", "1936-12-31", "1936"), ("1936-05-01", "1936-05", "1936-05-01"), ("1936-02-29", "1936-02-29", "1936-02"),
        ("1938-02-28", "1938-02-28", "1938-02"), ("0999-01-01", "0999", "0999-01-01"), ("0999-12-31", "0999-12-31", "0999"), ("1936-11-01", "1936-11", "1936-11-01"),
        ("1936-01-31", "1936-01-31", "1936-01"), ("1936-10-31", "1936-10-31", "1936-10"),
    ],
)  # fmt: skip
def test_ends_are_written_as_coarse_as_they_can_be(date, start, end):
    assert (start_text(day(date)), end_text(day(date))) == (start, end)


@pytest.mark.parametrize(
    ("first", "last", "texts", "words"),
    [
        ("1936-01-01", "1936-12-31", ("1936",), "1936"), ("1936-02-01", "1936-02-29", ("1936-02",), "February 1936"),
        ("1936-05-12", "1936-05-12", ("1936-05-12",), "12 May 1936"), ("1936-01-01", "1942-12-31", ("1936", "1942"), "1936 to 1942"),
        ("1936-01-01", "1942-05-31", ("1936-01", "1942-05"), "January 1936 to May 1942"), ("1936-01-02", "1942-12-31", ("1936-01-02", "1942-12-31"), "2 January 1936 to 31 December 1942"),
        (None, "1942-12-31", ("", "1942"), "1942 or earlier"), ("1936-05-01", None, ("1936-05", ""), "May 1936 or later"), (None, None, ("", ""), "any date"),
        ("1936-01-01", "1936-01-01", ("1936-01-01",), "1 January 1936"), ("1936-12-31", "1936-12-31", ("1936-12-31",), "31 December 1936"),
        ("0988-01-01", "0988-12-31", ("0988",), "988"),
    ],
)  # fmt: skip
def test_a_span_in_figures_and_words(first, last, texts, words):
    span = day(first), day(last)
    assert span_texts(span) == texts
    assert in_words([span]) == words


def test_several_spans_in_words():
    assert in_words([(day("1936-01-01"), day("1936-12-31")), (day("1938-01-01"), None)]) == "1936 or 1938 or later"


def test_spans_that_touch_are_one():
    assert merge_spans([(5, 9), (None, 4), (20, 21)]) == ((None, 9), (20, 21))
    assert merge_spans([(5, 9), (11, 12)]) == ((5, 9), (11, 12))
    assert merge_spans([(5, None), (7, 9), (1, 2)]) == ((1, 2), (5, None))
    assert merge_spans([(5, 20), (7, 9), (10, 30)]) == ((5, 30),)
    assert merge_spans([(7, 7)]) == ((7, 7),)
    with pytest.raises(InputError, match="0001-01-09 to 0001-01-05"):
        merge_spans([(9, 5)])


ends = st.none() | st.integers(1, 30)


@st.composite
def sets(draw):
    spans = []
    for _ in range(draw(st.integers(1, 3))):
        first = draw(ends)
        spans.append((first, draw(st.none() | st.integers(first or 1, 30))))
    return merge_spans(spans)


def held(spans):
    """The days from 0 to 31 that spans hold; 0 and 31 stand for all beyond."""
    return {d for d in range(32) if any((a is None or d >= a) and (b is None or d <= b) for a, b in spans)}


@given(st.lists(sets(), max_size=4))
def test_what_sets_have_in_common_day_by_day(some):
    common = intersect(some)
    assert held(common) == set(range(32)).intersection(*(held(spans) for spans in some))
    assert common == merge_spans(common)


def test_one_day_in_common_and_none():
    assert intersect([((1, 5),), ((5, 9),)]) == ((5, 5),)
    assert intersect([((1, 5),), ((6, 9),)]) == ()
    assert intersect([((1, 9), (20, None)), ((5, 21),)]) == ((5, 9), (20, 21))
    assert intersect([]) == ANY_DAY
    assert intersect([ANY_DAY, ((3, 4),)]) == ((3, 4),)


def test_how_long_days_are():
    assert years_left([]) == 0
    assert years_left([(1, None)]) == years_left([(None, 9)]) == float("inf")
    assert years_left([(day("1936-01-01"), day("1936-12-31"))]) == pytest.approx(366 / 365.2425)
    assert years_left([(1, 1), (3, 3)]) == pytest.approx(2 / 365.2425)


@given(st.lists(sets(), min_size=1, max_size=6), st.randoms())
def test_agreements_hold_their_days_and_weights(some, chance):
    weights = [chance.randint(1, 3) for _ in some]
    for found in largest_agreements(some, weights):
        members = [i for i in range(len(some)) if found.members >> i & 1]
        assert found.weight == sum(weights[i] for i in members)
        assert held(found.spans) <= set(range(32)).intersection(*(held(some[i]) for i in members))
        assert found.spans


def test_agreements_in_the_order_of_their_days():
    found = largest_agreements([((1, 5),), ((4, 9),), ((8, 9),), ((20, None),)], [1, 2, 3, 1])
    assert [(a.members, a.weight, a.spans) for a in found] == [
        (0b11, 3, ((4, 5),)),
        (0b110, 5, ((8, 9),)),
        (0b1000, 1, ((20, None),)),
    ]
    assert largest_agreements([ANY_DAY], [2])[0].spans == ANY_DAY
