"""Proportions: nothing measured is altered, and what is assumed follows what was measured."""

import pytest

from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import DRAWN, PenShape
from pentools.systems.typical import proportions_of


@pytest.mark.parametrize("system", SYSTEMS)
def test_what_was_measured_stays_and_the_rest_is_marked_assumed(system):
    measured = {"barrel_diameter": 13.3, "bore": 9.1, "barrel_length": 71.0, "nib_length": 18.2}
    full = proportions_of(PenShape(system, **{f"{name}_mm": value for name, value in measured.items()}))
    assert {name: full[name] for name in measured} == measured
    assert not full.assumed & set(measured)
    assert "cap_diameter" in full.assumed
    assert set(full.values) == set(DRAWN)


def test_a_measured_total_length_is_shared_out():
    full = proportions_of(PenShape("lever-sac", open_length_mm=121.0))
    assert full["nib_length"] + full["section_length"] + full["barrel_length"] == pytest.approx(121.0)


def test_measured_total_and_barrel_leave_the_rest_to_nib_and_section_in_their_usual_ratio():
    whole = proportions_of(PenShape("lever-sac", open_length_mm=121.0, barrel_length_mm=80.0))
    usual = proportions_of(PenShape("lever-sac", barrel_length_mm=80.0))
    assert whole["nib_length"] + whole["section_length"] == pytest.approx(41.0)
    assert whole["nib_length"] / whole["section_length"] == pytest.approx(usual["nib_length"] / usual["section_length"])


def test_a_barrel_with_nothing_measured_is_twelve_millimetres_thick():
    full = proportions_of(PenShape("lever-sac"))
    assert full["barrel_diameter"] == 12.0
    assert full["bore"] == pytest.approx(0.74 * 12.0)
    assert full["barrel_length"] == 66.0
    assert full["end_length"] == 0.0
    assert "end_length" not in full.assumed
    assert proportions_of(PenShape("piston"))["bore"] == pytest.approx(0.70 * 12.0)
    assert proportions_of(PenShape("piston"))["end_length"] == 15.0
    assert proportions_of(PenShape("bulb"))["barrel_length"] == 52.0


def test_the_cap_gives_the_barrel_where_the_barrel_was_not_measured():
    assert proportions_of(PenShape("piston", cap_diameter_mm=14.0))["barrel_diameter"] == pytest.approx(12.6)


def test_a_measured_sac_head_tube_or_converter_sets_the_bore_it_needs():
    assert proportions_of(PenShape("lever-sac", sac_outside_mm=9.5))["bore"] == pytest.approx(1.22 * 9.5)
    assert proportions_of(PenShape("piston", head_diameter_mm=10.0))["bore"] == pytest.approx(10.2)
    assert proportions_of(PenShape("pneumatic-down-stroke", tube_diameter_mm=9.0))["bore"] == pytest.approx(9.45)
    assert proportions_of(PenShape("cartridge-converter", cartridge_diameter_mm=7.4))["bore"] == pytest.approx(
        1.08 * 7.4
    )
    assert proportions_of(PenShape("piston", bore_mm=14.0))["barrel_diameter"] == pytest.approx(1.42 * 14.0)


def test_a_long_mechanism_lengthens_the_barrel():
    assert proportions_of(PenShape("lever-sac", sac_length_mm=70.0))["barrel_length"] == pytest.approx(80.0)
    assert proportions_of(PenShape("piston", stroke_mm=60.0))["barrel_length"] == pytest.approx(84.0)


def test_the_cap_covers_nib_section_and_threads():
    full = proportions_of(PenShape("lever-sac", nib_length_mm=30.0, section_length_mm=30.0))
    assert full["cap_length"] == pytest.approx(30.0 + 30.0 + 6.0 + 10.2)


def test_parts_fit_into_one_another():
    for system in SYSTEMS:
        full = proportions_of(PenShape(system))
        assert full["rod"] < full["groove_diameter"] < full["head_diameter"] <= full["bore"] < full["barrel_diameter"]
        assert full["nipple"] < full["sac_outside"] < full["bore"]
        assert full["groove_width"] < full["head_length"]
        assert full["breather_diameter"] < full["bore"]
        assert full["barrel_diameter"] < full["cap_diameter"]


@pytest.mark.parametrize("system", ["piston", "bulb", "lever-sac"])
def test_the_open_length_is_the_sum_of_what_lies_one_behind_the_other(system):
    full = proportions_of(PenShape(system))
    parts = ("nib_length", "section_length", "barrel_length", "end_length")
    assert full["open_length"] == pytest.approx(sum(full[name] for name in parts))
    assert full["capped_length"] == pytest.approx(full["open_length"] + 8.0)
