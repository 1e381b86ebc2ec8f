"""Dates against the published EDTF examples and an open parser; prices against agencies' figures."""

import csv
import datetime as dt
import warnings
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pentools import tables
from pentools.calc.dating.interval import read_edtf
from pentools.calc.dating.prices import price_then_now
from pentools.errors import InputError
from pentools.money import read_money
from pentools.sums.dating.money import index_for

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


@pytest.mark.parametrize(("text", "first", "last"), SPECIFICATION)
def test_examples_of_the_specification(text, first, last):
    read = read_edtf(text)
    assert (read.first_day, read.last_day) == tuple(
        None if d is None else dt.date.fromisoformat(d).toordinal() for d in (first, last)
    )
    assert read.edtf == text


@pytest.mark.parametrize(("text", "uncertain", "approximate"), [("1984?", True, False), ("2004-06~", False, True), ("2004-06-11%", True, True), ("1984~/2004-06", False, True), ("1984?/2004%", True, True)])  # fmt: skip
def test_qualifiers_of_the_specification(text, uncertain, approximate):
    read = read_edtf(text)
    assert (read.uncertain, read.approximate) == (uncertain, approximate)


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
    if refused:
        assert "end comes after its start" in refused
        theirs = parser.parse_edtf(text)  # which takes it as it stands
        assert tuple(theirs.upper_strict()[:3]) < tuple(theirs.lower_strict()[:3])
        return
    theirs = parser.parse_edtf(text)
    assert dt.date.fromordinal(ours.first_day) == dt.date(*theirs.lower_strict()[:3])
    assert dt.date.fromordinal(ours.last_day) == dt.date(*theirs.upper_strict()[:3])


def test_where_the_open_parser_is_not_followed():
    parser = open_parser()
    assert parser.parse_edtf("1942/1936") is not None  # taken without a word
    with pytest.raises(InputError, match="Was 1936/1942 meant"):
        read_edtf("1942/1936")
    assert parser.parse_edtf("/1942").lower_strict()[0] == 1932  # ten years from nowhere
    assert read_edtf("/1942").first_day is None
    assert len(read_edtf("[1936,1948]").spans) == 2  # where its bounds are the hull 1936 to 1948


def cpi():
    return {int(row["year"]): row for row in tables.rows("cpi_us")}


def test_two_annual_averages_of_the_bureau():
    # US Bureau of Labor Statistics, CPI-U, series CUUR0000SA0, annual averages
    assert cpi()[1940]["index"] == "14.0"
    assert cpi()[2023]["index"] == "304.702"


def test_every_year_of_the_minneapolis_table():
    # Federal Reserve Bank of Minneapolis, "Consumer Price Index, 1913-", annual averages 1913 to 2007 and changes in per cent
    path = Path(__file__).parents[1] / "data" / "minneapolis_fed_cpi.csv"
    rows = list(csv.DictReader(path.read_text(encoding="utf-8").splitlines()))
    assert len(rows) == 95
    # the copy of 2008 that was read has 177.0 for 2001, where the Bureau's own annual average is 177.1
    differing = {
        int(row["year"])
        for row in rows
        if abs(float(cpi()[int(row["year"])]["index"]) - float(row["annual_average"])) > 0.05
    }
    assert differing == {2001}
    before = None
    for row in rows:
        ours = float(cpi()[int(row["year"])]["index"])
        if before:
            change = 100 * (ours / before - 1)
            # half a printed digit, and what half a digit of either index moves
            assert abs(change - float(row["percent_change"])) <= 0.05 + 100 * 0.05 / before, row["year"]
        before = ours


def test_five_dollars_of_1940():
    # common practice, no source: "about a hundred and ten today"
    index = index_for("USD")
    for to_year in (2023, 2024):
        assert price_then_now(read_money("5.00 USD"), 1940, index, to_year).amount == pytest.approx(110, rel=0.03)


def test_the_uk_chain_is_as_rough_as_it_says():
    # House of Commons Library, Research Paper 12/31: prices rose just over 90-fold from 1912 to 2011; ONS Economic Trends
    # 604: more than forty-fold from 1938 to 2003; Hansard 14 March 1969: 571 for 1968 on this base
    index = index_for("GBP")
    assert index.rough
    assert 90 / (index.values[2011] / index.values[1912]) == pytest.approx(1.22, abs=0.02)
    assert 40 / (index.values[2003] / index.values[1938]) == pytest.approx(1.03, abs=0.02)
    assert index.values[1968] / 571 == pytest.approx(1.03, abs=0.005)
    result = price_then_now(read_money("12/6"), 1938, index, 2003)
    assert result.figures == 2
    assert any("about" in finding.text for finding in result.findings)
