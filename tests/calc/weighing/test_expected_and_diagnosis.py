"""What a pen should hold, and what a short fill says."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.weighing.diagnosis import Suspect, diagnose_fill, implied_pressure
from pentools.calc.weighing.expected import Measured
from pentools.calc.weighing.leak import leak_down, vacuum_decay_pa_m3_s
from pentools.calc.weighing.series import fill_series, fills_by_start, stroke_series
from pentools.calc.weighing.volumes import plunger_volume_ml, pumped_volume_ml, sac_volume_ml, strokes_to_fill
from pentools.errors import InputError
from pentools.systems.registry import SYSTEMS, system_named
from pentools.systems.volume import system_volume


def volume(system, **dimensions):
    return system_volume(system, {name: Measured(value) for name, value in dimensions.items()}).volume_ml


def test_a_plunger_sweeps_the_annulus_not_the_bore():
    # worked by hand: π/4 (8.5² - 2.6²) 62 = 3189 mm³; the full bore would be 3518
    assert volume("plunger-vacuum", bore=8.5, rod=2.6, stroke=62) == pytest.approx(3.189, abs=5e-4)
    assert volume("piston", bore=8.5, stroke=62) == pytest.approx(3.518, abs=5e-4)


def test_a_rod_in_the_ink_takes_its_room():
    # worked by hand: 8 mm bore, 28 mm stroke: 1.407 mL, with a 3 mm rod 1.210 mL
    assert volume("syringe", bore=8, stroke=28) == pytest.approx(1.407, abs=5e-4)
    assert volume("syringe", bore=8, stroke=28, rod=3) == pytest.approx(1.210, abs=1e-3)


@pytest.mark.parametrize(("number", "full"), [(14, 0.958), (16, 1.318), (18, 1.734), (20, 2.205), (22, 2.733)])
def test_sacs(number, full):
    # worked by hand: wall 0.5 mm, length 60 mm, a hemisphere at the end
    assert sac_volume_ml(number * 25.4 / 64, 0.5, 60) == pytest.approx(full, abs=6e-4)
    assert volume("lever-sac", outside=number * 25.4 / 64, wall=0.5, length=60, pressed_share=0.75) == pytest.approx(
        0.75 * full, abs=6e-4
    )


def test_a_sphere_is_a_sac_of_two_hemispheres():
    d = 10.0
    half = sac_volume_ml(d + 2, 1.0, 1 + d / 2)
    assert half == pytest.approx(math.pi * d**3 / 12 / 1000)


def test_an_eyedropper_less_its_nipple():
    # worked by hand: 9 mm by 55 mm less 6 mm by 6 mm: 3.50 - 0.17 = 3.33 mL
    assert volume("eyedropper", bore=9, depth=55, nipple=6, nipple_length=6) == pytest.approx(3.33, abs=5e-3)


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_has_a_formula(system):
    family = system_named(system).family
    some = {"bore": 9.0, "rod": 2.0, "stroke": 30.0, "outside": 7.0, "length": 60.0, "reach": 50.0, "depth": 50.0}
    result = system_volume(system, {name: Measured(some[name], 0.02) for name in family.needs})
    assert 0.2 < result.volume_ml < 6
    assert result.budget.standard_uncertainty > 0
    assert system_volume(system, {}) is None


def test_uncertainty_follows_the_calliper():
    # worked by hand: u/V² = (2·8.5·u_D)²+… with u(D) 0.029, u(d) 0.012, u(L) 0.3: 0.90 %
    result = system_volume(
        "plunger-vacuum", {"bore": Measured(8.5, 0.029), "rod": Measured(2.6, 0.012), "stroke": Measured(62, 0.3)}
    )
    assert result.budget.standard_uncertainty / result.volume_ml == pytest.approx(0.0090, abs=5e-5)


@pytest.mark.parametrize(
    "dimensions",
    [
        {"bore": 8.5, "rod": 9.0, "stroke": 60.0},
        {"bore": 85.0, "rod": 2.0, "stroke": 60.0},
        {"bore": 8.5, "rod": 2.0, "stroke": 0.0},
    ],
)
def test_impossible_dimensions_are_refused(dimensions):
    with pytest.raises(InputError):
        volume("plunger-vacuum", **dimensions)


def test_unknown_systems_are_refused():
    with pytest.raises(InputError):
        volume("magic", bore=1)
    with pytest.raises(InputError):
        diagnose_fill("piston", (0, 0.1), (1, 0.1), "")


@pytest.mark.parametrize(
    ("share", "kpa"), [(0.95, 5.0), (0.90, 10.1), (0.80, 20.1), (0.70, 30.2), (0.50, 50.4), (0.30, 70.5)]
)
def test_implied_pressure(share, kpa):
    # worked by hand: (101.325 - 0.587) (1 - f)
    assert implied_pressure(share, 0.011).pressure_kpa == pytest.approx(kpa, abs=0.05)


def test_above_what_can_be_told_there_is_only_a_bound():
    bound = implied_pressure(0.99, 0.011)
    assert bound.at_most_kpa == pytest.approx(1.0 + 2 * 1.1, abs=0.1)
    assert implied_pressure(0.90, 0.011).at_most_kpa is None
    assert implied_pressure(1.02, 0.011).pressure_kpa == 0


def test_the_air_outside_sets_the_implied_pressure():
    # 80 kPa outside, 60 mm of water: (80 - 0.587) 0.1
    assert implied_pressure(0.90, 0.01, ambient_kpa=80.0).pressure_kpa == pytest.approx(7.94, abs=0.005)
    assert implied_pressure(0.90, 0.01, liquid_head_mm=0.0).pressure_kpa == pytest.approx(10.13, abs=0.005)


@pytest.mark.parametrize(("share", "u"), [(-0.1, 0.01), (1.6, 0.01), (0.5, -0.1), (float("nan"), 0.1)])
def test_impossible_shares_are_refused(share, u):
    with pytest.raises(InputError):
        implied_pressure(share, u)


def plunger(behind, ahead, head=60.0, vapour=0.0):
    return plunger_volume_ml(3.189, behind, ahead, head_mm=head, ambient_kpa=101.325, vapour_kpa=vapour)


def test_a_sound_plunger_fills_almost_all_it_sweeps():
    # worked by hand: 3.349 - 0.16 · 101.325/100.738 = 3.188 mL dry; over vapour of 2.34 kPa 3.349 - 0.1648 = 3.184 mL
    assert plunger(0.06, 0.10) == pytest.approx(3.188, abs=5e-4)
    assert plunger(0.06, 0.10, vapour=2.34) == pytest.approx(3.184, abs=5e-4)
    assert plunger(0.0, 0.0) == pytest.approx(3.189)
    with pytest.raises(InputError):
        plunger(-0.1, 0.0)


def test_dead_volumes_lower_what_a_plunger_should_hold():
    shape = {"bore": Measured(8.5), "rod": Measured(2.6), "stroke": Measured(62.0)}
    tight = system_volume("plunger-vacuum", shape)
    dead = system_volume(
        "plunger-vacuum", {**shape, "dead_behind": Measured(0.06, 0.01), "dead_ahead": Measured(0.1, 0.01)}
    )
    assert 0.001 < tight.volume_ml - dead.volume_ml < 0.01
    assert (
        system_volume("plunger-vacuum", {**shape, "dead_behind": Measured(0.0, 0.05)}).budget.standard_uncertainty > 0
    )


def test_strokes_of_a_pump():
    # worked by hand: 0.28 mL a stroke, 0.03 mL in the tube, 1.6 mL to its end: 0.25, 0.50 … 1.50 (6), 1.60 (7)
    assert [pumped_volume_ml(n, 0.28, 0.03, 1.6) for n in (0, 1, 2, 6, 7, 20)] == pytest.approx(
        [0, 0.25, 0.5, 1.5, 1.6, 1.6]
    )
    assert strokes_to_fill(0.28, 0.03, 1.6) == pytest.approx(6.4)
    # ln 0.05 / ln(1 - 0.28/1.6) = 15.6 where what is pushed out is mixed
    assert strokes_to_fill(0.28, 0.03, 1.6, mixed=True) == pytest.approx(15.6, abs=0.05)
    assert pumped_volume_ml(15.573, 0.28, 0.03, 1.6, mixed=True) == pytest.approx(0.95 * 1.6, rel=1e-4)
    with pytest.raises(InputError):
        pumped_volume_ml(3, 0.03, 0.03, 1.6)
    with pytest.raises(InputError):
        strokes_to_fill(0.28, 0.03, 1.6, share=1.0)


@given(st.floats(0.05, 1.0), st.floats(0.2, 4.0), st.integers(0, 40))
def test_a_pump_never_holds_more_than_its_level(stroke, level, n):
    for mixed in (False, True):
        held, more = (pumped_volume_ml(k, stroke, 0.03, level, mixed) for k in (n, n + 1))
        assert 0 <= held <= more * (1 + 1e-12)
        assert more <= level * (1 + 1e-12)


def test_strokes_made_limit_what_a_diaphragm_pump_should_hold():
    shape = {"bore": Measured(8.0, 0.02), "reach": Measured(40.0, 0.2), "stroke_volume": Measured(0.28, 0.02)}
    three = system_volume("diaphragm-pump", {**shape, "strokes": Measured(3)})
    assert three.volume_ml == pytest.approx(3 * 0.25)
    assert three.holds == "what 3 strokes bring"
    assert three.assumed == ("tube volume",)
    full = system_volume("diaphragm-pump", {**shape, "strokes": Measured(40)})
    assert full.volume_ml == pytest.approx(system_volume("diaphragm-pump", shape).volume_ml)
    assert full.assumed == ("tube",)


SEAL = Suspect("head-seal", "the head seal", "air slips past", "turn it half down")
STROKE = Suspect("short-stroke", "a short stroke", "it stops early", "measure it")


def said(drawn, u=0.02, system="piston", expected=1.9, expected_u=0.02, suspects=(SEAL, STROKE)):
    return diagnose_fill(
        system_named(system).family.key, (drawn, u), (expected, expected_u), "what the stroke sweeps", suspects
    )


def test_a_short_fill_has_suspects_and_tests():
    short = said(1.2)
    assert short.first_suspect == "the head seal"
    assert [(f.level, f.topic) for f in short.findings] == [
        ("warning", "suspect-head-seal"),
        ("note", "suspect-short-stroke"),
    ]
    assert all("Next test" in f.text for f in short.findings)
    assert [f.topic for f in said(1.2, suspects=()).findings] == ["short"]


def test_a_full_pen_has_no_suspect():
    assert said(1.88).first_suspect == ""
    assert [f.topic for f in said(1.88).findings] == ["full"]


def test_a_poorly_known_share_says_so():
    assert [f.topic for f in said(0.9, system="lever-sac", expected=1.0, expected_u=0.15).findings] == [
        "share-uncertain"
    ]


def test_more_than_full_is_doubted():
    assert said(2.5).findings[0].topic == "more-than-full"


def test_a_plunger_tells_its_pressure_or_a_bound():
    short = said(1.5, system="plunger-vacuum")
    assert short.findings[-1].topic == "vacuum"
    assert "look just the same" in short.findings[-1].text
    full = said(1.89, system="plunger-vacuum")
    assert full.implied.at_most_kpa > 0
    assert "≥" in full.findings[-1].text
    assert said(1.2).implied is None


@given(st.floats(0.1, 3), st.floats(0.1, 3))
def test_every_share_gets_some_finding(drawn, expected):
    for system in SYSTEMS:
        result = said(drawn, system=system, expected=expected)
        assert result.findings
        assert bool(result.first_suspect) == any(f.topic == "suspect-head-seal" for f in result.findings)


def test_series_that_settle_rise_and_fall():
    assert [f.topic for f in fill_series([1.31, 1.30, 1.31, 1.30], 0.02).findings] == ["steady"]
    assert [f.topic for f in fill_series([1.0, 1.1, 1.2, 1.3], 0.02).findings] == ["still-rising"]
    assert [f.topic for f in fill_series([1.3, 1.2, 1.1, 1.0], 0.02).findings] == ["falling"]
    assert [f.topic for f in fill_series([1.3, 1.2], 0.02).findings] == ["two-only"]
    assert fill_series([1.3], 0.02).mean_ml == 1.3


def test_fillings_from_dry_and_from_drained_stay_apart():
    both = fills_by_start([("dry", 1.80), ("drained", 1.49), ("drained", 1.50), ("drained", 1.51), ("dry", 1.82)], 0.02)
    assert both.dry.volumes_ml == (1.80, 1.82)
    assert both.drained.mean_ml == pytest.approx(1.50)
    assert both.kept_ml == pytest.approx(0.31)
    assert both.kept_uncertainty_ml == pytest.approx(0.02 * math.sqrt(1 / 2 + 1 / 3))
    one = fills_by_start([("drained", 1.49)], 0.02)
    assert one.dry is None
    assert one.kept_ml is None
    for bad in ([], [("wet", 1.0)]):
        with pytest.raises(InputError):
            fills_by_start(bad, 0.02)


STROKES = range(9)


def test_a_short_breather_tube_shows_as_an_early_plateau():
    masses = [20.0 + min(0.27 * n, 0.80) for n in STROKES]
    found = stroke_series(STROKES, masses, 1.003, 0.012, expected_ml=1.6)
    assert found.plateau_stroke == 3
    assert found.plateau_ml == pytest.approx(0.80, abs=0.01)
    assert found.findings[0].topic == "early-plateau"


def test_a_sound_pump_rises_and_then_stops():
    masses = [20.0 + min(0.27 * n, 1.6) for n in STROKES]
    found = stroke_series(STROKES, masses, 1.003, 0.012, expected_ml=1.6)
    assert found.per_stroke_ml == pytest.approx(0.27, abs=0.01)
    assert found.findings[0].topic == "plateau"


def test_a_pump_that_never_stops_or_never_starts():
    assert stroke_series(STROKES, [20.0 + 0.1 * n for n in STROKES], 1.003, 0.012).findings[0].topic == "never-flat"
    assert stroke_series(STROKES, [20.0] * 9, 1.003, 0.012).findings[0].topic == "no-gain"
    weak = stroke_series(STROKES, [20.0 + 0.1 * n for n in STROKES], 1.003, 0.012, stroke_ml=0.25)
    assert {f.topic for f in weak.findings} == {"never-flat", "low-slope"}
    with pytest.raises(InputError):
        stroke_series([0, 2, 1], [20, 21, 22], 1.003, 0.012)


@pytest.mark.parametrize(
    ("readability", "spread", "hours", "limit"),
    # worked by hand: 3.29 √(d²/12 + s²) / √Σ(t - mean)²
    [
        (0.01, 0.01, (0, 1), 48),
        (0.01, 0.01, (0, 2, 4, 6, 8), 5.4),
        (0.01, 0.01, (0, 8, 16, 24), 1.9),
        (0.001, 0.002, (0, 1), 9.4),
        (0.001, 0.002, (0, 24, 48, 72), 0.12),
    ],
)
def test_limit_of_detection(readability, spread, hours, limit):
    result = leak_down(hours, [20.0] * len(hours), math.hypot(readability / math.sqrt(12), spread))
    assert result.detection_mg_per_h == pytest.approx(limit, rel=0.04)


def test_leaks_evaporation_and_tightness():
    hours = (0, 8, 16, 24)
    fine = 0.0021
    assert leak_down(hours, [20 - 0.005 * h for h in hours], fine).findings[0].topic == "leak"
    assert (
        leak_down((0, 24, 48, 72), [20 - 0.0002 * h for h in (0, 24, 48, 72)], fine).findings[0].topic == "evaporation"
    )
    assert leak_down(hours, [20.0] * 4, fine).findings[0].topic == "tight"
    assert leak_down(hours, [20 + 0.005 * h for h in hours], fine).findings[0].topic == "gain"
    assert leak_down((0, 1), [20.0, 20.0], 0.0104).findings[0].topic == "not-sensitive"


def test_a_dummy_takes_the_drift_off():
    hours = (0, 8, 16, 24)
    drift = [0.0, 0.004, 0.008, 0.012]
    result = leak_down(hours, [20.0 + d for d in drift], 0.0021, [10.0 + d for d in drift])
    assert result.loss_mg_per_h == pytest.approx(0.0, abs=1e-9)
    with pytest.raises(InputError):
        leak_down(hours, [20.0] * 4, 0.0021, [10.0, None, 10.0, 10.0])


def test_a_dummy_costs_some_certainty():
    # a difference of two readings is √2 less sure than one
    hours = (0, 8, 16, 24)
    alone = leak_down(hours, [20.0] * 4, 0.0021)
    beside = leak_down(hours, [20.0] * 4, 0.0021, [10.0] * 4)
    assert beside.detection_mg_per_h == pytest.approx(math.sqrt(2) * alone.detection_mg_per_h)


def test_vacuum_decay():
    # worked by hand: 1.9 mL, 2 kPa in 60 s
    assert vacuum_decay_pa_m3_s(1.9, 2.0, 60) == pytest.approx(6.33e-5, rel=1e-3)
    with pytest.raises(InputError):
        vacuum_decay_pa_m3_s(1.9, 2.0, 0)
