"""Prices in another year's money: every year of both indices against tables of others, and old money against what a coin was."""

import csv
from pathlib import Path

import pytest
from outside import Outside

from pentools.calc.dating.prices import price_then_now
from pentools.money import read_money
from pentools.sums.dating.money import index_for

DATA = Path(__file__).parents[1] / "data"


def rows(name):
    return list(csv.DictReader((DATA / f"{name}.csv").read_text(encoding="utf-8").splitlines()))


def off(index, year, other):
    """How far a year stands off its neighbours, by the ratio to another series: 0 where both run alike."""
    ratio = {y: index[y] / other[y] for y in (year - 1, year, year + 1)}
    return ratio[year] / ((ratio[year - 1] + ratio[year + 1]) / 2) - 1


# --- United States


def test_every_year_of_the_minneapolis_table():
    # Federal Reserve Bank of Minneapolis, "Consumer Price Index, 1913-", annual averages 1913 to 2007
    check = Outside("minneapolis-fed", "US consumer price index, annual average")
    ours, table = index_for("USD").values, rows("minneapolis_fed_cpi")
    assert [int(row["year"]) for row in table] == list(range(1913, 2008))
    for row in table:
        if row["year"] == "2001":  # the copy of 2008 that was read has 177.0; the Bureau's own annual average is 177.1
            continue
        check.agree(ours[int(row["year"])], row["annual_average"])


def test_the_changes_of_the_minneapolis_table():
    check = Outside("minneapolis-fed", "US consumer prices, change in a year")
    ours = index_for("USD").values
    for row in rows("minneapolis_fed_cpi")[1:]:
        year = int(row["year"])
        rounding = 0.05 + 100 * 0.05 / ours[year - 1]
        check.agree(
            100 * (ours[year] / ours[year - 1] - 1),
            row["percent_change"],
            within=rounding,
            because="both indices are rounded to 0.1",
        )


def test_annual_averages_since_2006():
    # US Bureau of Labor Statistics, series CUUR0000SA0, as copied by hand into several open repositories
    check = Outside("bls-annual", "US consumer price index, annual average")
    ours, table = index_for("USD").values, rows("us_cpi_annual_2006_2024")
    assert [int(row["year"]) for row in table] == list(range(2006, 2025))
    for row in table:
        check.agree(ours[int(row["year"])], row["annual_average"])


def test_annual_averages_are_the_means_of_the_months():
    # US Bureau of Labor Statistics, monthly CPI-U, not seasonally adjusted: a year is the mean of its twelve months
    check = Outside("bls-months", "US consumer price index, mean of twelve months")
    ours, table = index_for("USD").values, rows("us_cpi_months")
    assert len(table) >= 14
    for row in table:
        months = [float(row[str(month)]) for month in range(1, 13)]
        digit = 0.05 if int(row["year"]) < 2007 else 0.0005  # how the Bureau rounded annual averages
        check.agree(ours[int(row["year"])], sum(months) / 12, within=digit * 1.2, because="the Bureau's own rounding")


def test_an_index_off_by_five_percent_in_any_one_year_would_show():
    ours = index_for("USD").values
    table = {int(row["year"]): float(row["annual_average"]) for row in rows("minneapolis_fed_cpi")}
    assert all(abs(off(ours, year, table)) < 0.01 for year in range(1914, 2007))


# --- United Kingdom. The chain here is the official cost of living and then consumer prices; the long series of others
# follow what households spent until 1947 and then retail prices, which ran apart in the first war and in 2009.


def uk(name, column):
    return {int(row["year"]): float(row[column]) for row in rows(name)}


def test_the_uk_chain_beside_the_composite_price_index():
    # Office for National Statistics, House of Commons Library and Bank of England, composite price index 1750 to 2015
    check = Outside("uk-composite", "UK consumer prices beside their neighbours")
    ours, theirs = index_for("GBP").values, uk("uk_composite_price_index", "index")
    assert set(theirs) == set(range(1900, 2016))
    apart = {1914, 1915, 1916, 1921, 1922}  # held by the cost of living index below
    for year in sorted(set(range(1901, 2015)) - apart):
        check.agree(
            off(ours, year, theirs),
            "0",
            within=0.025,
            because="the one follows consumer prices, the other retail prices",
        )
    assert ours[2011] / ours[1938] == pytest.approx(theirs[2011] / theirs[1938], rel=0.15)


def test_the_uk_chain_in_the_first_war_and_after():
    # Ministry of Labour, cost of living index, annual averages, July 1914 = 100; from memory
    check = Outside("cost-of-living", "UK cost of living, July 1914 = 100")
    ours = index_for("GBP").values
    printed = {
        1914: "100", 1915: "123", 1916: "146", 1917: "176", 1918: "203", 1919: "215", 1920: "249", 1921: "226", 1922: "183", 1923: "174", 1924: "175",
        1925: "176", 1926: "172", 1927: "168", 1928: "166", 1929: "164", 1930: "158", 1931: "148", 1932: "144", 1933: "140", 1934: "141", 1935: "143",
        1936: "147", 1937: "154", 1938: "156",
    }  # fmt: skip
    for year, value in printed.items():
        check.agree(100 * ours[year] / ours[1914], value, within=0.008 * float(value), because="ours is the pound's purchasing power turned round, printed to old pence")  # fmt: skip


def test_uk_changes_beside_retail_prices():
    # Office for National Statistics, series CDSI, retail prices, long run, change in per cent
    check = Outside("ons-cdsi", "UK prices, change in a year")
    ours, theirs = index_for("GBP").values, uk("uk_rpi_long_run_change", "percent_change")
    assert set(theirs) == set(range(1900, 2021))
    apart = {1915, 1917, 1918, 1919, 1922, 1940}  # the wars, as above; 1940: the official index fell behind
    for year in sorted(set(range(1901, 2021)) - apart):
        change = 100 * (ours[year] / ours[year - 1] - 1)
        check.agree(change, f"{theirs[year]:.1f}", within=3.05, because="another basket; five per cent off would show")


def test_uk_changes_since_2015():
    # Office for National Statistics, consumer prices with owners' housing (CPIH), annual rates; from memory
    check = Outside("ons-cpih", "UK consumer prices, change in a year")
    ours = index_for("GBP").values
    rates = {
        2015: "0.4",
        2016: "1.0",
        2017: "2.6",
        2018: "2.3",
        2019: "1.7",
        2020: "1.0",
        2021: "2.5",
        2022: "7.9",
        2023: "6.8",
        2024: "3.3",
    }
    for year, rate in rates.items():
        check.agree(100 * (ours[year] / ours[year - 1] - 1), rate, within=0.06, because="the chain is rounded as well")


def test_the_uk_chain_is_as_rough_as_it_says():
    library = Outside("commons-12-31", "UK prices, how many-fold")
    index = index_for("GBP")
    assert index.rough
    # House of Commons Library, Research Paper 12/31: "just over 90-fold" from 1912 to 2011; ONS Economic Trends 604: "more
    # than forty-fold" from 1938 to 2003; Hansard 14 March 1969: 571 for 1968 where July 1914 is 100
    library.agree(
        index.values[2011] / index.values[1912],
        "90",
        within=20,
        because="ours runs along the cost of living before 1947",
    )
    library.agree(index.values[2003] / index.values[1938], "40", within=3, because="the text says more than forty-fold")
    Outside("hansard-1969", "UK prices of 1968, July 1914 = 100").agree(
        index.values[1968], "571", within=20, because="the chain is rough"
    )
    result = price_then_now(read_money("12/6"), 1938, index, 2003)
    assert result.figures == 2
    assert any("about" in finding.text for finding in result.findings)


def test_every_year_of_both_is_there():
    for currency, first in (("USD", 1913), ("GBP", 1900)):
        assert sorted(index_for(currency).values) == list(range(first, 2025))


def test_five_dollars_of_1940():
    # common practice, no source: "about a hundred and ten today"
    check = Outside("round-figures", "five dollars of 1940 today")
    for to_year in (2023, 2024):
        amount = price_then_now(read_money("5.00 USD"), 1940, index_for("USD"), to_year).amount
        check.agree(amount, "110", within=3.3, because="a round figure")


@pytest.mark.parametrize(
    ("text", "new_pence"),
    [
        ("1s", "5"), ("2s", "10"), ("a florin", "10"), ("6d", "2.5"), ("half a crown", "12.5"), ("2/6", "12.5"), ("a crown", "25"), ("10/-", "50"), ("£1", "100"), ("1 guinea", "105"),
        ("1d", "0.417"), ("3d", "1.25"), ("1/2½", "6.0"),
    ],
)  # fmt: skip
def test_old_money_in_new_pence(text, new_pence):
    # Decimal Currency Board, conversion of £sd at 240 old pence to 100 new: the exact values of the coins; from memory
    Outside("decimal-currency", "old coins in new pence").agree(100 * read_money(text).amount, new_pence)
