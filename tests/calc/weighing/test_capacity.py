"""Capacity from weight: behaviour, edges and refusals."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.weighing.balance import BALANCES, Balance
from pentools.calc.weighing.capacity import capacity_from_weight
from pentools.calc.weighing.setting import Conditions, Handling, Liquid
from pentools.errors import InputError

HUNDREDTH = BALANCES["0.01 g"]
NOTHING = Handling(0.0, 0.0)


def topics(result):
    return {f.topic for f in result.findings}


def part(result, start):
    [row] = [c for c in result.budget.components if c.source.startswith(start)]
    return row


def test_the_whole_budget_by_hand():
    # two roundings a weighing, 2·0.01/√12; two means of one, √2·0.01; linearity √2·0.02/√3; eccentric √2·0.01/√3;
    # drop 0.04/√12; evaporation 0.005/√12; all times Z 1.00285 (20 °C, 101.3 kPa, 50 %)
    result = capacity_from_weight([23.26], [25.06], HUNDREDTH)
    z = result.z_ml_per_g
    wanted = [0.0057735, 0.0141421, 0.0163299, 0.0081650, 0.0115470, 0.0014434]
    assert [c.contribution / z for c in result.budget.components[:6]] == pytest.approx(wanted, abs=5e-8)
    assert math.fsum(result.budget.shares()) == pytest.approx(1.0)
    assert result.gained_g == pytest.approx(1.80)
    assert result.correction_g == pytest.approx(-0.4 * 0.04 + 0.005 / 2)
    assert result.volume_ml == pytest.approx((1.80 - 0.0135) * z)


def test_a_drop_only_adds_and_evaporation_only_takes():
    bare = capacity_from_weight([23.26], [25.06], HUNDREDTH, handling=NOTHING)
    drop = capacity_from_weight([23.26], [25.06], HUNDREDTH, handling=Handling(0.1, 0.0))
    dried = capacity_from_weight([23.26], [25.06], HUNDREDTH, handling=Handling(0.0, 0.1))
    assert (bare.volume_ml - drop.volume_ml) / bare.z_ml_per_g == pytest.approx(0.04)
    assert (dried.volume_ml - bare.volume_ml) / bare.z_ml_per_g == pytest.approx(0.05)
    assert part(drop, "drop").standard_uncertainty == pytest.approx(0.028868, abs=1e-6)
    assert part(dried, "evaporation").standard_uncertainty == pytest.approx(0.028868, abs=1e-6)


def test_equal_readings_on_a_coarse_scale_are_not_perfect():
    result = capacity_from_weight([23.26] * 5, [25.06] * 5, Balance(0.01, 0.0, 0.0, 0.0), handling=NOTHING)
    wanted = 0.01 / math.sqrt(12) * math.sqrt(1 / 5 + 1 / 5)
    assert part(result, "repeatability").standard_uncertainty == pytest.approx(wanted)


def test_a_wide_scatter_counts_with_its_degrees_of_freedom():
    # squares of the first four 0.0125, of the others 0: pooled √(0.0125/6) with 6 degrees of freedom
    result = capacity_from_weight([23.20, 23.30, 23.25, 23.35], [25.06] * 4, HUNDREDTH)
    row = part(result, "repeatability")
    assert row.degrees_of_freedom == 6
    assert row.kind == "repeat readings"
    assert row.standard_uncertainty == pytest.approx(math.sqrt(0.0125 / 6) * math.sqrt(1 / 4 + 1 / 4), rel=1e-9)
    assert result.budget.degrees_of_freedom < 100
    assert result.budget.coverage_factor > 1.96


@pytest.mark.parametrize("empty", [[23.1, 23.4], [23.1, 23.25, 23.4]])
def test_the_scatter_of_few_readings_is_believed_when_it_is_wide(empty):
    result = capacity_from_weight(empty, [25.06], HUNDREDTH)
    assert result.budget.standard_uncertainty > 0.08
    assert result.budget.coverage_factor > 2.5
    assert "scatter-empty" in topics(result)


def test_readings_within_the_balances_own_scatter_change_nothing():
    quiet = capacity_from_weight([23.26, 23.26, 23.26], [25.06] * 3, HUNDREDTH)
    usual = capacity_from_weight([23.26, 23.25, 23.27], [25.06] * 3, HUNDREDTH)
    assert part(usual, "repeatability").kind == "instrument limit"
    assert usual.budget.standard_uncertainty == pytest.approx(quiet.budget.standard_uncertainty)
    assert not topics(usual) & {"scatter-empty", "scatter-filled", "few-weighings"}


def test_weighings_far_apart_are_named_by_their_state():
    # four times 0.01 g is the bound
    assert "scatter-filled" in topics(capacity_from_weight([23.26], [25.06, 25.11], HUNDREDTH))
    assert not topics(capacity_from_weight([23.26], [25.06, 25.09], HUNDREDTH)) & {"scatter-empty", "scatter-filled"}
    assert "few-weighings" in topics(capacity_from_weight([23.26] * 3, [25.06] * 2, HUNDREDTH))


@pytest.mark.parametrize(("pressure", "humidity"), [(60.0, 0.0), (61.0, 1.0), (110.0, 0.5)])
def test_a_room_at_the_edge_of_the_air_formula_still_works(pressure, humidity):
    result = capacity_from_weight([23.26], [25.06], HUNDREDTH, Conditions(20.0, 2.0, pressure, 3.0, humidity, 0.2))
    assert 1.78 < result.volume_ml < 1.80


@pytest.mark.parametrize(("confidence", "factor"), [(0.95, 1.960), (0.9545, 2.000), (0.99, 2.576)])
def test_the_level_of_confidence_is_a_choice(confidence, factor):
    result = capacity_from_weight([23.26], [25.06], HUNDREDTH, confidence=confidence)
    assert result.budget.coverage_factor == pytest.approx(factor, abs=5e-4)
    assert result.budget.expanded_uncertainty == pytest.approx(factor * result.budget.standard_uncertainty, rel=3e-4)


def test_more_weighings_help_but_never_below_the_rest():
    one = capacity_from_weight([23.26], [25.06], HUNDREDTH).budget.standard_uncertainty
    many = capacity_from_weight([23.26] * 10, [25.06] * 10, HUNDREDTH).budget.standard_uncertainty
    assert many < one
    assert many > 0.02  # linearity and the drop stay


def test_filled_lighter_than_empty_is_refused_beyond_what_weighing_is_sure_of():
    with pytest.raises(InputError, match="mixed up"):
        capacity_from_weight([25.06], [23.26], HUNDREDTH)
    u = capacity_from_weight([23.26], [23.26], HUNDREDTH, handling=NOTHING).budget.expanded_uncertainty
    inside, outside = (23.26 - share * u / 1.0029 for share in (0.99, 1.01))
    kept = capacity_from_weight([23.26], [inside], HUNDREDTH, handling=NOTHING)
    assert (kept.told, kept.volume_ml) == (False, 0.0)
    with pytest.raises(InputError, match="something taken off"):
        capacity_from_weight([23.26], [outside], HUNDREDTH, handling=NOTHING)


def test_a_gain_that_cannot_be_told_from_nothing_is_a_finding():
    # by hand: u = √(0.0057735² + 0.0141421² + 0.0163299² + 0.0081650²) = 0.02381 g without drop and evaporation;
    # 1.645 of it are 0.03916 g
    nothing, little, enough = (
        capacity_from_weight([23.26], [23.26 + gain], HUNDREDTH, handling=NOTHING) for gain in (0.0, 0.0389, 0.0395)
    )
    assert (nothing.told, little.told, enough.told) == (False, False, True)
    assert nothing.at_most_ml == pytest.approx(0.03916 * nothing.z_ml_per_g, abs=2e-5)
    [told] = [f for f in little.findings if f.topic == "gain-not-told"]
    assert told.level == "warning"
    assert told.text.startswith(
        "The gain of 0.039 g cannot be told from nothing: these weighings tell 0.039 g and more."
    )
    assert "weigh each state three times, or take a finer balance than one of 0.01 g" in told.text
    assert "gain-not-told" not in topics(enough)
    assert "No gain is seen" in next(f.text for f in nothing.findings if f.topic == "gain-not-told")


@pytest.mark.parametrize(
    ("empty", "filled"), [([], [1.0]), ([1.0], []), ([-1.0], [2.0]), ([1.0], [200.1]), ([float("nan")], [2.0])]
)
def test_unusable_masses_are_refused(empty, filled):
    with pytest.raises(InputError):
        capacity_from_weight(empty, filled, HUNDREDTH)


def test_the_starting_state_is_said():
    assert "start-dry" in topics(capacity_from_weight([23.26], [25.06], HUNDREDTH, start="dry"))
    drained = capacity_from_weight([23.26], [25.06], HUNDREDTH, start="drained")
    assert ("start-drained" in topics(drained), drained.start) == (True, "drained")
    with pytest.raises(InputError):
        capacity_from_weight([23.26], [25.06], HUNDREDTH, start="wet")


def test_a_gain_of_few_steps_asks_for_a_finer_balance():
    fine = Balance(0.01, 0.0, 0.0, 0.0)
    few, enough = (capacity_from_weight([20.0], [20.0 + g], fine, handling=NOTHING) for g in (0.0499, 0.05))
    assert "coarse-balance" in topics(few)
    assert "coarse-balance" not in topics(enough)


def test_a_gain_that_no_pen_holds_is_doubted():
    assert "too-much" in topics(capacity_from_weight([20.0], [28.01], HUNDREDTH))
    assert "too-much" not in topics(capacity_from_weight([20.0], [27.99], HUNDREDTH))


@pytest.mark.parametrize(("temperature", "wanted"), [(20.0, 1.0029), (30.0, 1.0054)])
def test_z_follows_the_temperature(temperature, wanted):
    found = capacity_from_weight([1.0], [2.0], HUNDREDTH, Conditions(temperature)).z_ml_per_g
    assert found == pytest.approx(wanted, abs=6e-5)


def test_ink_is_denser_than_water():
    water = capacity_from_weight([20.0], [22.0], HUNDREDTH)
    ink = capacity_from_weight([20.0], [22.0], HUNDREDTH, liquid=Liquid("ink", 1020.0, 3.0))
    assert ink.volume_ml < water.volume_ml
    assert ink.volume_ml * 1.020 == pytest.approx(water.volume_ml * 0.9982, rel=1e-3)
    assert "ink-density" not in topics(ink)
    assert "ink-density" in topics(capacity_from_weight([20.0], [22.0], HUNDREDTH, liquid=Liquid("ink", 1005.0, 5.0)))


def test_ink_expands_with_warmth():
    # by hand: 2 g over 1005 kg/m³, 2.5e-4 a kelvin, half-width 2 K over √3: 1.987 mL · 2.5e-4 · 1.1547 = 0.574 µL,
    # air's own part below 1 % of it
    ink = capacity_from_weight([20.0], [22.0], HUNDREDTH, liquid=Liquid("ink", 1005.0, 3.0), handling=NOTHING)
    assert part(ink, "temperature").contribution == pytest.approx(0.574e-3, rel=0.02)
    assert part(ink, "density").contribution == pytest.approx(2 * ink.z_ml_per_g * 3.0 / 1003.8, rel=1e-4)


@given(st.floats(1, 100), st.floats(0.1, 6.0))
def test_volume_is_proportional_to_the_gain(empty, gain):
    result = capacity_from_weight([empty], [empty + gain], HUNDREDTH, handling=NOTHING)
    assert result.volume_ml == pytest.approx(gain * result.z_ml_per_g, rel=1e-9, abs=1e-9)
