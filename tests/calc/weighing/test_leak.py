"""Does it leak: decided at 1.645, stated at 3.29 standard uncertainties; evaporation up to its own estimate."""

import math

import pytest

from pentools.calc.weighing.leak import evaporation_mg_per_day, leak_down, vacuum_decay_pa_m3_s
from pentools.errors import InputError

DAYS = (0, 24, 48, 72)
FINE = 0.0021
COARSE = math.hypot(0.01 / math.sqrt(12), 0.01)


def losing(mg_day, reading_u=FINE, hours=DAYS, **more):
    return leak_down(hours, [20 - mg_day / 24000 * h for h in hours], reading_u, **more)


@pytest.mark.parametrize(
    ("readability", "spread", "hours", "limit"),
    # worked by hand: 3.29 √(d²/12 + s²) / √Σ(t - mean)²
    [
        (0.01, 0.01, (0, 1), 48.4),
        (0.01, 0.01, (0, 2, 4, 6, 8), 5.42),
        (0.01, 0.01, (0, 8, 16, 24), 1.91),
        (0.001, 0.002, (0, 1), 9.40),
        (0.001, 0.002, (0, 24, 48, 72), 0.124),
    ],
)
def test_limit_of_detection(readability, spread, hours, limit):
    result = leak_down(hours, [20.0] * len(hours), math.hypot(readability / math.sqrt(12), spread))
    assert result.detection_mg_per_h == pytest.approx(limit, rel=0.003)
    assert result.decision_mg_per_h == pytest.approx(limit / 2, rel=0.003)


def test_a_loss_is_told_from_none_at_half_the_limit_of_detection():
    # by hand: 2.1 mg / √2880 h = 0.03913 mg/h, times 1.645 and 24 is 1.545 mg a day
    assert losing(1.54).verdict == "tight"
    assert losing(1.55).verdict == "cannot-tell-which"
    assert losing(-1.54).verdict == "tight"
    assert losing(-1.55).verdict == "gain"
    assert losing(1.55).loss_mg_per_h == pytest.approx(1.55 / 24)
    assert losing(1.55).uncertainty_mg_per_h == pytest.approx(2.1 / math.sqrt(2880))


def test_four_steps_down_in_three_days_are_no_tight_pen():
    # the case of the issue: 0.4167 mg/h against 1.645 · 0.194
    found = leak_down(DAYS, [18.21, 18.20, 18.19, 18.18], COARSE)
    assert found.verdict == "cannot-tell-which"
    assert found.findings[0].text.startswith("It loses 10 mg a day, give or take 7.7. Whether that is evaporation or a")
    assert "Next test: seal the cap's seat" in found.findings[0].text


def test_without_an_estimate_only_milligrams_an_hour_are_a_leak():
    # 1 mg an hour and the 0.064 mg that weighing leaves open
    assert losing(24 * 1.06).verdict == "cannot-tell-which"
    leak = losing(24 * 1.07)
    assert (leak.verdict, leak.findings[0].level, leak.findings[0].topic) == ("leak", "warning", "leak")
    assert "milligrams an hour are a leak or an open nib" in leak.findings[0].text


@pytest.mark.parametrize(
    ("loss", "verdict"),
    # of 2.3 mg a day, weighing leaving 1.545 open: up to 3.84 evaporation, above 4.6 + 1.545 a leak
    [(1.7, "evaporation"), (3.83, "evaporation"), (3.86, "cannot-tell-which"), (6.13, "cannot-tell-which"), (6.16, "leak"), (20, "leak")],
)  # fmt: skip
def test_evaporation_goes_up_to_its_own_estimate(loss, verdict):
    found = losing(loss, evaporation_mg_day=2.3)
    assert found.verdict == verdict
    assert found.findings[0].topic == verdict
    assert "2.3 mg a day" in found.findings[0].text


def test_evaporation_is_never_said_beyond_twice_the_estimate():
    # a coarse balance leaves 7.66 mg a day open: 8 beside 2.3 would else be called evaporation
    assert losing(8.0, COARSE, evaporation_mg_day=2.3).verdict == "cannot-tell-which"
    assert losing(8.0, COARSE, evaporation_mg_day=4.1).verdict == "evaporation"
    assert losing(30.0, evaporation_mg_day=40.0).verdict == "evaporation"  # an hour's milligram is no leak beside that
    with pytest.raises(InputError):
        losing(1.0, evaporation_mg_day=-1.0)


def test_no_leak_is_only_said_with_its_limit():
    tight = losing(0.0)
    assert (tight.verdict, tight.findings[0].level) == ("tight", "ok")
    assert tight.findings[0].text.startswith("No leak of 3.1 mg a day or more: its mass did not change")
    # 1 mg/h is the most that a limit may be: 3.29 u/√Σ with two weighings 24 h apart is 0.19386 u
    assert leak_down((0, 24), [20, 20], 0.00515).verdict == "tight"
    coarse = leak_down((0, 24), [20, 20], 0.00517)
    assert (coarse.verdict, coarse.findings[0].level) == ("not-sensitive", "note")
    assert "Weigh longer or on a finer balance" in coarse.findings[0].text
    assert "it gained 0.51 mg a day" in losing(-0.51).findings[0].text
    assert "it lost 0.51 mg a day" in losing(0.51).findings[0].text


def test_a_gain_means_drift():
    found = losing(-48.0)
    assert (found.verdict, found.findings[0].level) == ("gain", "warning")
    assert "It gains 2 mg an hour" in found.findings[0].text


def test_a_scatter_beyond_the_balances_own_widens_the_decision():
    # by hand: residuals of 0, 0.1, -0.1, 0 over 24 h steps have slope -0.02/24 g/h... with t(2, 90 %) = 2.920
    wild = leak_down(DAYS, [20.0, 20.1, 19.9, 20.0], FINE)
    assert wild.line.degrees_of_freedom == 2
    assert wild.decision_mg_per_h == pytest.approx(2.920 * wild.uncertainty_mg_per_h, rel=1e-4)
    assert wild.detection_mg_per_h == pytest.approx(2 * wild.decision_mg_per_h)


def test_a_dummy_takes_the_drift_off_and_costs_some_certainty():
    hours, drift = (0, 8, 16, 24), [0.0, 0.004, 0.008, 0.012]
    result = leak_down(hours, [20.0 + d for d in drift], FINE, [10.0 + d for d in drift])
    assert result.loss_mg_per_h == pytest.approx(0.0, abs=1e-9)
    alone = leak_down(hours, [20.0] * 4, FINE)
    assert result.detection_mg_per_h == pytest.approx(math.sqrt(2) * alone.detection_mg_per_h)
    for blanks in ([10.0, None, 10.0, 10.0], [10.0] * 3):
        with pytest.raises(InputError, match="one for each weighing"):
            leak_down(hours, [20.0] * 4, FINE, blanks)


@pytest.mark.parametrize(("hours", "u"), [((1, 1), FINE), ((1,), FINE), ((0, 1), 0.0), ((0, 1), float("nan"))])
def test_unusable_weighings_are_refused(hours, u):
    with pytest.raises(InputError):
        leak_down(hours, [20.0] * len(hours), u)


def test_vapour_through_a_gap_by_hand():
    """Air of 20 °C holds 17.3 g/m³ of water when full (a handbook's figure): 2.42e-5 · 17.3 · half · 1 mm²/5 mm, a day of 86 400 s."""
    by_hand = 2.42e-5 * 17.29 * 0.5 * 1e-6 / 5e-3 * 86400 * 1000
    assert by_hand == pytest.approx(3.61, abs=0.01)
    assert evaporation_mg_per_day(1, 5, 0.5, 2.339, 20) == pytest.approx(by_hand, rel=1e-3)
    # twice the gap lets twice as much through, twice the way half, dry air twice that of half-full air, warm air holds less at one pressure
    assert evaporation_mg_per_day(2, 10, 0.0, 2.339, 20) == pytest.approx(2 * by_hand, rel=1e-3)
    assert evaporation_mg_per_day(1, 5, 0.5, 2.339, 35) == pytest.approx(by_hand * 293.15 / 308.15, rel=1e-3)


@pytest.mark.parametrize(
    ("gap", "refused"), [((1, 0, 0.5), True), ((-1, 5, 0.5), True), ((1, 5, 1.1), True), ((0, 5, 1), False)]
)
def test_a_gap_that_is_none(gap, refused):
    area, way, humidity = gap
    if refused:
        with pytest.raises(InputError):
            evaporation_mg_per_day(area, way, humidity, 2.34, 20.0)
    else:
        assert evaporation_mg_per_day(area, way, humidity, 2.34, 20.0) == 0


def test_a_vacuum_that_falls_off_is_a_volume_of_air_at_a_pressure_a_second():
    # by hand: 1.9 cm³ whose pressure rises by 2 kPa in a minute take in 1.9e-6 m³ × 2000 Pa in 60 s
    assert vacuum_decay_pa_m3_s(1.9, 2.0, 60) == pytest.approx(6.333e-5, rel=1e-4)


@pytest.mark.parametrize(("volume", "seconds"), [(1.9, 0), (0, 60)])
def test_a_vacuum_without_room_or_time_is_refused(volume, seconds):
    with pytest.raises(InputError):
        vacuum_decay_pa_m3_s(volume, 2.0, seconds)
