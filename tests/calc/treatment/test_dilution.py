"""Dilutions: laws, ranges, and what is too strong."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools import tables
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.dilution import dilution
from pentools.calc.treatment.hazards import HazardRow
from pentools.errors import InputError


@given(st.floats(0.1, 12), st.floats(0.01, 1), st.floats(1, 5000))
def test_dilution_keeps_what_matters(strong, share, volume):
    made = dilution(strong, strong * share, volume, "peroxide")
    assert made.strong_ml * strong == pytest.approx(volume * strong * share)
    assert made.strong_ml + made.water_ml == pytest.approx(volume)


HAZARDS = tables.read(HazardRow, "substance_hazards")


@pytest.mark.parametrize(("percent", "levels"), [(3, []), (3.5, ["warning"]), (6, ["warning", "warning"]), (9, ["stop", "warning", "warning"])])  # fmt: skip
def test_what_is_stronger_than_the_shelf_is_warned_of_and_leads_where_it_blinds(percent, levels):
    made = dilution(percent, 1, 100, "peroxide", hazards=HAZARDS)
    found = [f for f in made.findings if f.topic in ("hazard", "strong-peroxide")]
    assert [f.level for f in found] == levels
    assert made.sentence.startswith("Stop: ") == ("stop" in levels)
    assert made.findings[0].level == (levels or ["warning"])[0]
    assert all(f.text.endswith(CLOSING_LINE) for f in made.findings)


@pytest.mark.parametrize("percent", [12.1, 30, 35, 50, 90])
def test_peroxide_that_burns_is_refused_as_strong_ammonia_is(percent):
    with pytest.raises(InputError, match="do not dilute it at home"):
        dilution(percent, 3, 100, "peroxide", hazards=HAZARDS)


def test_alcohol_may_be_strong_and_is_topped_up():
    made = dilution(96, 70, 100, "alcohol")
    assert (made.strong_ml, made.water_ml) == (pytest.approx(72.917, abs=0.001), None)
    with pytest.raises(InputError) as refused:
        dilution(101, 70, 100, "alcohol")
    assert "peroxide" not in str(refused.value)


@pytest.mark.parametrize(
    "bad",
    [
        (3, 6, 90, "peroxide"),
        (0, 0, 90, "peroxide"),
        (3, 1, 0, "alcohol"),
        (3, 1, 90, "vinegar"),
        (101, 1, 9, "alcohol"),
    ],
)
def test_dilution_out_of_range(bad):
    with pytest.raises(InputError):
        dilution(*bad)


@pytest.mark.parametrize(
    ("strong", "wanted", "volume", "kind"),
    [(12, 3, 1, "peroxide"), (12, 12, 10_000, "peroxide"), (100, 100, 100, "alcohol"), (3, 0.01, 100, "peroxide")],
)
def test_the_ends_are_taken(strong, wanted, volume, kind):
    assert dilution(strong, wanted, volume, kind).final_ml == volume


@pytest.mark.parametrize(
    ("strong", "wanted", "volume", "kind"),
    [(3, 1, 0.9, "peroxide"), (3, 1, 10_001, "peroxide"), (100.1, 1, 100, "alcohol"), (3, 3.1, 100, "peroxide"), (3, 0, 100, "peroxide"), (0, 0, 100, "alcohol")],
)  # fmt: skip
def test_and_what_is_beyond_them_is_not(strong, wanted, volume, kind):
    with pytest.raises(InputError):
        dilution(strong, wanted, volume, kind)


def test_the_shelf_is_three_per_cent():
    def topics(percent):
        return [f.topic for f in dilution(percent, 1, 100, "peroxide").findings]

    assert topics(3) == ["peroxide"]
    assert topics(3.1) == ["peroxide", "strong-peroxide"]


def test_in_words():
    assert (
        dilution(6, 3, 100, "peroxide").sentence
        == "50.0 ml of the 6\u202f% and 50.0 ml of water make 100 ml of 3\u202f%."
    )
    assert dilution(91, 70, 100, "alcohol").sentence == "Measure 76.9 ml of the 91\u202f% and top up with water to 100 ml: 70\u202f%."  # fmt: skip
