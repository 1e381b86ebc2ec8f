"""Capacity from weight: behaviour, edges and refusals."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.weighing.capacity import (
    BALANCES,
    Balance,
    Conditions,
    Liquid,
    capacity_from_weight,
    ink_against_water,
)
from pentools.errors import InputError

TENTH = BALANCES["0.01 g"]


def topics(result):
    return {f.topic for f in result.findings}


def test_shares_add_up_to_one():
    result = capacity_from_weight([23.26], [25.06], TENTH)
    assert math.fsum(result.budget.shares()) == pytest.approx(1.0)
    assert all(share >= 0 for share in result.budget.shares())


def repeatability(result):
    [row] = [c for c in result.budget.components if c.source.startswith("repeatability")]
    return row


def test_equal_readings_on_a_coarse_scale_are_not_perfect():
    perfect = Balance(0.01, 0.0, 0.0, 0.0)
    result = capacity_from_weight([23.26] * 5, [25.06] * 5, perfect, residual_drop_g=0, evaporation_g=0)
    assert repeatability(result).standard_uncertainty == pytest.approx(0.01 / math.sqrt(12) * math.sqrt(1 / 5 + 1 / 5))


def test_a_wide_scatter_counts_with_its_degrees_of_freedom():
    # standard deviation of the first four 0.0645 g, of the others 0: pooled √(3·0.0645²/6) with 6 degrees of freedom
    result = capacity_from_weight([23.20, 23.30, 23.25, 23.35], [25.06] * 4, TENTH)
    row = repeatability(result)
    assert row.degrees_of_freedom == 6
    assert row.kind == "repeat readings"
    assert row.standard_uncertainty == pytest.approx(
        math.sqrt(3 * (0.0125 / 3) / 6) * math.sqrt(1 / 4 + 1 / 4), rel=1e-9
    )
    assert result.budget.degrees_of_freedom < 100
    assert result.budget.coverage_factor > 1.96


@pytest.mark.parametrize("empty", [[23.1, 23.4], [23.1, 23.25, 23.4]])
def test_the_scatter_of_few_readings_is_believed_when_it_is_wide(empty):
    result = capacity_from_weight(empty, [25.06], TENTH)
    assert result.budget.standard_uncertainty > 0.08
    assert result.budget.coverage_factor > 2.5
    assert "scatter-empty" in topics(result)


def test_readings_within_the_balances_own_scatter_change_nothing():
    quiet = capacity_from_weight([23.26, 23.26, 23.26], [25.06] * 3, TENTH)
    usual = capacity_from_weight([23.26, 23.25, 23.27], [25.06] * 3, TENTH)
    assert repeatability(usual).kind == "instrument limit"
    assert usual.budget.standard_uncertainty == pytest.approx(quiet.budget.standard_uncertainty)
    assert not {"scatter-empty", "scatter-filled"} & topics(usual)


@pytest.mark.parametrize(("pressure", "humidity"), [(60.0, 0.0), (61.0, 1.0), (110.0, 0.5)])
def test_a_room_at_the_edge_of_the_air_formula_still_works(pressure, humidity):
    result = capacity_from_weight([23.26], [25.06], TENTH, Conditions(20.0, 2.0, pressure, 3.0, humidity, 0.2))
    assert 1.79 < result.volume_ml < 1.82


@pytest.mark.parametrize(("confidence", "factor"), [(0.95, 1.960), (0.9545, 2.000), (0.99, 2.576)])
def test_the_level_of_confidence_is_a_choice(confidence, factor):
    result = capacity_from_weight([23.26], [25.06], TENTH, confidence=confidence)
    assert result.budget.coverage_factor == pytest.approx(factor, abs=5e-4)
    assert result.budget.expanded_uncertainty == pytest.approx(factor * result.budget.standard_uncertainty, rel=3e-4)


def test_more_weighings_help_but_never_below_the_rest():
    one = capacity_from_weight([23.26], [25.06], TENTH).budget.standard_uncertainty
    many = capacity_from_weight([23.26] * 10, [25.06] * 10, TENTH).budget.standard_uncertainty
    assert many < one
    assert many > 0.02  # linearity and the drop stay


@pytest.mark.parametrize(("empty", "filled"), [([25.06], [23.26]), ([23.26], [23.26])])
def test_filled_must_be_heavier(empty, filled):
    with pytest.raises(InputError, match="mixed up"):
        capacity_from_weight(empty, filled, TENTH)


@pytest.mark.parametrize(
    ("empty", "filled"), [([], [1.0]), ([1.0], []), ([-1.0], [2.0]), ([1.0], [2326.0]), ([float("nan")], [2.0])]
)
def test_unusable_masses_are_refused(empty, filled):
    with pytest.raises(InputError):
        capacity_from_weight(empty, filled, TENTH)


def test_the_starting_state_is_said():
    assert "start-dry" in topics(capacity_from_weight([23.26], [25.06], TENTH, start="dry"))
    assert "start-drained" in topics(capacity_from_weight([23.26], [25.06], TENTH, start="drained"))
    with pytest.raises(InputError):
        capacity_from_weight([23.26], [25.06], TENTH, start="wet")


def test_findings_about_balance_and_amount():
    assert "coarse-balance" in topics(capacity_from_weight([20.0], [22.0], BALANCES["1 g"]))
    assert "too-much" in topics(capacity_from_weight([20.0], [35.0], TENTH))


@pytest.mark.parametrize(("temperature", "wanted"), [(20.0, 1.0029), (30.0, 1.0054)])
def test_z_follows_the_temperature(temperature, wanted):
    assert capacity_from_weight([1.0], [2.0], TENTH, Conditions(temperature)).z_ml_per_g == pytest.approx(
        wanted, abs=6e-5
    )


def test_ink_is_denser_than_water():
    water = capacity_from_weight([20.0], [22.0], TENTH)
    ink = capacity_from_weight([20.0], [22.0], TENTH, liquid=Liquid("ink", 1020.0, 3.0))
    assert ink.volume_ml < water.volume_ml
    assert ink.volume_ml * 1.020 == pytest.approx(water.volume_ml * 0.9982, rel=1e-3)


def test_ink_against_water_in_one_syringe():
    ink = ink_against_water(2.040, 2.000, 20.0, 0.002)
    assert ink.density_kg_m3 == pytest.approx(998.207 * 1.02, abs=0.01)
    assert ink.density_uncertainty_kg_m3 == pytest.approx(ink.density_kg_m3 * 0.002 * math.hypot(1 / 2.04, 1 / 2.0))
    with pytest.raises(InputError, match="one mark"):
        ink_against_water(4.0, 2.0, 20.0, 0.002)


@given(st.floats(1, 100), st.floats(0.05, 6.0))
def test_volume_is_proportional_to_the_gain(empty, gain):
    result = capacity_from_weight([empty], [empty + gain], TENTH)
    assert result.volume_ml == pytest.approx(gain * result.z_ml_per_g, rel=1e-9, abs=1e-9)
