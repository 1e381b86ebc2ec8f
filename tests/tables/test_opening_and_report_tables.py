"""The tables of opening, survey and report hold together with the others."""

import pytest

from pentools import tables
from pentools.record.stages.common import PARTS

SYSTEMS = [row["key"] for row in tables.rows("filling_systems")]
HOLDS = {row["key"]: row for row in tables.rows("opening_holds")}


def keys(text):
    return [part.strip() for part in text.split(";") if part.strip()]


def test_all_systems_have_an_order_and_nothing_else_has():
    assert list(dict.fromkeys(row["system"] for row in tables.rows("opening_steps"))) == SYSTEMS


@pytest.mark.parametrize("system", SYSTEMS)
def test_each_hold_is_from_outside_or_given_by_an_earlier_step(system):
    given = {key for key, row in HOLDS.items() if row["from_outside"] == "yes"}
    for number, row in enumerate((r for r in tables.rows("opening_steps") if r["system"] == system), 1):
        assert int(row["step"]) == number
        assert set(keys(row["hold"])) <= given, row
        if row["gives"]:
            assert HOLDS[row["gives"]]["from_outside"] == "no"
            given.add(row["gives"])


def test_every_hold_is_used_and_every_outside_one_stands_before_something():
    used = {key for row in tables.rows("opening_steps") for key in [*keys(row["hold"]), row["gives"]]}
    assert set(HOLDS) <= used
    held = {key for row in tables.rows("opening_steps") for key in keys(row["hold"])}
    assert {key for key, row in HOLDS.items() if row["from_outside"] == "yes"} <= held


def test_cautions_of_the_opening_are_known():
    known = {row["key"] for row in tables.rows("cautions")}
    assert {key for row in tables.rows("opening_steps") for key in keys(row["caution"])} <= known


def test_warming_a_joint_brings_its_cautions():
    for row in tables.rows("opening_steps"):
        if "Warm the barrel's mouth" in row["action"]:
            assert {"nitrate-heat", "hot-air"} <= set(keys(row["caution"]))
            assert {"material-named", "heat-agreed"} <= set(keys(row["hold"]))


@pytest.mark.parametrize("name", ["cpi_us", "cpi_uk"])
def test_an_index_has_every_year_once_and_is_above_zero(name):
    years = [int(row["year"]) for row in tables.rows(name)]
    assert years == list(range(years[0], years[-1] + 1))
    assert years[-1] == 2024
    assert all(float(row["index"]) > 0 for row in tables.rows(name))


def test_the_digits_of_the_us_index_are_those_of_its_half_step():
    for row in tables.rows("cpi_us"):
        decimals = len(row["index"].split(".")[1])
        assert float(row["half_step"]) == pytest.approx(0.5 * 10**-decimals)


def test_the_survey_knows_the_parts_of_the_record():
    parts = [key for key, _ in PARTS]
    surveyed = list(dict.fromkeys(row["part"] for row in tables.rows("survey_parts")))
    assert set(surveyed) <= set(parts)
    assert {
        "cap",
        "clip",
        "bands",
        "barrel",
        "blind-cap",
        "section",
        "feed",
        "nib",
        "filler",
        "seals",
        "imprint",
        "threads",
    } <= set(surveyed)
    pairs = [(row["part"], row["defect"]) for row in tables.rows("survey_parts")]
    assert len(pairs) == len(set(pairs))


def test_report_fields_are_named_once_and_have_a_place():
    rows = tables.rows("report_fields")
    assert len({row["key"] for row in rows}) == len(rows)
    for row in rows:
        assert row["level"] in ("must", "should", "ours")
        assert all(len(place.split(".")) == 3 for place in keys(row["place"])), row
        assert row["place"]
