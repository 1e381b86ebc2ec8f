"""Dates against the published EDTF examples, an open parser and its reader of words."""

import datetime as dt
import warnings

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from outside import Outside

from pentools.calc.dating.interval import read_edtf
from pentools.calc.dating.phrases import read_date
from pentools.errors import InputError

BOUNDS = Outside("edtf", "first and last day of an EDTF text")
MARKS = Outside("edtf", "uncertain and approximate dates")
PARSER = Outside("python-edtf", "first and last day of an EDTF text")
PHRASES = Outside("python-edtf", "a date in words as EDTF")

# Library of Congress, Extended Date/Time Format (EDTF) Specification, 2019 (the text of ISO 8601-2 Annex A), the examples
# of Level 0 (date, time interval), Level 1 (qualification, unspecified digits, extended interval) and Level 2 (one of a
# set), with the days that the words beside each example name. The examples are quoted from memory.
SPECIFICATION = [
    ("1985-04-12", "1985-04-12", "1985-04-12"),
    ("1985-04", "1985-04-01", "1985-04-30"),
    ("1985", "1985-01-01", "1985-12-31"),
    ("1964/2008", "1964-01-01", "2008-12-31"),
    ("2004-06/2006-08", "2004-06-01", "2006-08-31"),
    ("2004-02-01/2005-02-08", "2004-02-01", "2005-02-08"),
    ("2004-02-01/2005-02", "2004-02-01", "2005-02-28"),
    ("2004-02-01/2005", "2004-02-01", "2005-12-31"),
    ("2005/2006-02", "2005-01-01", "2006-02-28"),
    ("201X", "2010-01-01", "2019-12-31"),
    ("20XX", "2000-01-01", "2099-12-31"),
    ("2004-XX", "2004-01-01", "2004-12-31"),
    ("1985-04-XX", "1985-04-01", "1985-04-30"),
    ("1985-XX-XX", "1985-01-01", "1985-12-31"),
    ("1985-04-12/..", "1985-04-12", None),
    ("1985-04/..", "1985-04-01", None),
    ("1985/..", "1985-01-01", None),
    ("../1985-04-12", None, "1985-04-12"),
    ("../1985-04", None, "1985-04-30"),
    ("../1985", None, "1985-12-31"),
    ("1985-04-12/", "1985-04-12", None),
    ("1985-04/", "1985-04-01", None),
    ("1985/", "1985-01-01", None),
    ("/1985-04-12", None, "1985-04-12"),
    ("/1985-04", None, "1985-04-30"),
    ("/1985", None, "1985-12-31"),
    ("[1667,1668,1670..1672]", "1667-01-01", "1672-12-31"),
    ("[..1760-12-03]", None, "1760-12-03"),
    ("[1760-12..]", "1760-12-01", None),
]


def written(day):
    return None if day is None else dt.date.fromordinal(day).isoformat()


@pytest.mark.parametrize(("text", "first", "last"), SPECIFICATION)
def test_examples_of_the_specification(text, first, last):
    read = read_edtf(text)
    BOUNDS.same([written(read.first_day), written(read.last_day)], [first, last])
    assert read.edtf == text
    # in words the same text is the same days
    assert read_date(text).spans == read.spans


@pytest.mark.parametrize(("text", "uncertain", "approximate"), [("1984?", True, False), ("2004-06~", False, True), ("2004-06-11%", True, True), ("1984~/2004-06", False, True), ("1984?/2004%", True, True)])  # fmt: skip
def test_qualifiers_of_the_specification(text, uncertain, approximate):
    read = read_edtf(text)
    MARKS.same([read.uncertain, read.approximate], [uncertain, approximate])


def open_parser():
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return pytest.importorskip("edtf")


years = st.integers(1000, 2900)
months = st.integers(1, 12)


@st.composite
def texts(draw):
    def date(alone):
        year = f"{draw(years):04d}"
        match draw(st.sampled_from(["year", "month", "day", "decade", "century", "no month"])):
            case "month":
                return f"{year}-{draw(months):02d}"
            case "day":
                return f"{year}-{draw(months):02d}-{draw(st.integers(1, 28)):02d}"
            case "decade":
                return f"{year[:3]}X"
            case "century":
                return f"{year[:2]}XX"
            case "no month" if alone:  # in an interval the open parser stumbles over it
                return f"{year}-XX"
        return year

    return date(True) if draw(st.booleans()) else f"{date(False)}/{date(False)}"


@settings(max_examples=150, deadline=None)
@given(texts())
def test_bounds_agree_with_an_open_parser(text):
    # python-edtf 5.0.2 (MIT): its strict bounds, on what it gets right
    parser = open_parser()
    try:
        ours = read_edtf(text)
    except InputError as error:
        refused = str(error)
    else:
        refused = ""
    theirs = parser.parse_edtf(text)  # which takes a turned interval as it stands
    if refused:
        assert "end comes after its start" in refused
        assert tuple(theirs.upper_strict()[:3]) < tuple(theirs.lower_strict()[:3])
        return
    assert dt.date.fromordinal(ours.first_day) == dt.date(*theirs.lower_strict()[:3])
    assert dt.date.fromordinal(ours.last_day) == dt.date(*theirs.upper_strict()[:3])


@pytest.mark.parametrize("text", ["1936", "1936-02", "1900-02", "1936-05-12", "193X", "18XX", "1936/1942", "1936-05/1942", "1936-05-12/1942-06", "193X/194X"])  # fmt: skip
def test_bounds_of_an_open_parser(text):
    theirs = open_parser().parse_edtf(text)
    wanted = [dt.date(*end[:3]).isoformat() for end in (theirs.lower_strict(), theirs.upper_strict())]
    ours = read_edtf(text)
    PARSER.same([written(ours.first_day), written(ours.last_day)], wanted)


@pytest.mark.parametrize("words", ["circa 1936", "c. 1936", "c.1936", "about 1936", "1930s", "c. 1930s", "May 1936", "Sept 1936", "12 May 1936", "1936", "1936-1942", "possibly 1936", "1936?", "1936-05-12"])  # fmt: skip
def test_words_as_an_open_parser_reads_them(words):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        wanted = open_parser().text_to_edtf(words)
    PHRASES.same(read_date(words).edtf, wanted)


def test_where_the_open_parser_is_not_followed():
    parser = open_parser()
    assert parser.parse_edtf("1942/1936") is not None  # taken without a word
    with pytest.raises(InputError, match="Was 1936/1942 meant"):
        read_edtf("1942/1936")
    assert parser.parse_edtf("/1942").lower_strict()[0] == 1932  # ten years from nowhere
    assert read_edtf("/1942").first_day is None
    assert len(read_edtf("[1936,1948]").spans) == 2  # where its bounds are the hull 1936 to 1948
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        assert parser.text_to_edtf("by 1942") == "1942"  # the limit is passed over
        assert parser.text_to_edtf("late 1930s") == "193X"  # and so is the part
    assert read_date("by 1942").first_day is None
    assert read_date("late 1930s").meaning == "1936 to 1939"
