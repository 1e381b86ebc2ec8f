"""Vacuum decay and the half-stroke test."""

import math

import pytest
from ranges import refuses, takes_only

from pentools.calc.seal.proof import spring_back, vacuum_decay


def test_leak_is_volume_times_pressure_over_time():
    found = vacuum_decay(2.0, 60.0, 30.0, 60.0)
    assert found.leak_pa_m3_s == pytest.approx(2e-6 * 30e3 / 60)
    assert found.half_life_min == pytest.approx(1.0)
    assert found.leak_ml_per_min == pytest.approx(2.0 * 30 / 101.325)
    assert found.leak_uncertainty_pa_m3_s == pytest.approx(2e-6 * 2**0.5 * 1e3 / 60)


@pytest.mark.parametrize(
    ("start", "end", "seconds", "verdict"),
    [
        (60, 10, 60, "decays"),
        (60, 50, 60, "slow"),
        (60, 55, 600, "holds"),
        (60, 60, 600, "holds"),
        (60, 59, 20, "not told"),
        (60, 61, 600, "holds"),
        (60, 0, 30, "decays"),
    ],
)
def test_verdicts_of_a_vacuum(start, end, seconds, verdict):
    found = vacuum_decay(2.0, start, end, seconds)
    assert found.verdict == verdict
    assert found.findings


def test_a_loss_within_the_gauge_is_never_called_a_leak():
    assert vacuum_decay(2.0, 60, 58, 5, gauge_kpa=1.0).verdict == "not told"
    assert vacuum_decay(2.0, 60, 58, 5, gauge_kpa=0.1).verdict in ("slow", "decays")


def test_ranges():
    takes_only(lambda kpa: vacuum_decay(2, kpa, 0, 60), 0, 101.325, above=True)
    takes_only(lambda kpa: vacuum_decay(2, 101.325, kpa, 60), 0, 101.325)
    takes_only(lambda mm: spring_back(mm, 0), 2, 80)
    takes_only(lambda mm: spring_back(30, mm), 0, 30)
    refuses(lambda ml: vacuum_decay(ml, 60, 50, 60), 0)
    refuses(lambda s: vacuum_decay(2, 60, 50, s), 0)
    refuses(lambda kpa: vacuum_decay(2, 60, 50, 60, gauge_kpa=kpa), 0)
    # a vacuum that grew by more than twice √2 of the gauge's uncertainty was typed the wrong way round
    assert vacuum_decay(2, 60, 62.8, 600).verdict == "holds"
    refuses(lambda end: vacuum_decay(2, 60, end, 600), 62.9)


def test_a_loss_is_a_loss_beyond_twice_its_uncertainty():
    # 2 · √2 · 1 kPa = 2.83 kPa of 60, in half a minute
    assert vacuum_decay(2.0, 60, 57.2, 30).verdict == "not told"
    assert vacuum_decay(2.0, 60, 57.1, 30).verdict == "slow"
    # the same in ten minutes would be a half-life of 144 min at worst
    assert "144 min" in vacuum_decay(2.0, 60, 57.2, 600).findings[0].text


def test_spring_back():
    assert spring_back(30, 27).verdict == "returns"
    assert spring_back(30, 12).verdict == "part"
    assert spring_back(30, 0).verdict == "none"
    stiff = spring_back(30, 0, bore_mm=8, drag_n=6)
    assert stiff.can_return is False
    # π/4 · 64 mm² · 0.101325 MPa = 5.1 N
    assert stiff.findings[-1].text.startswith(
        "A drag of 6.0 N holds against the 5.1 N of a full vacuum: it cannot spring back"
    )
    assert spring_back(30, 0, bore_mm=8, drag_n=2).can_return is True
    # a thick rod takes area from the room's pressure
    assert spring_back(30, 0, bore_mm=8, drag_n=4, rod_mm=5).can_return is False


@pytest.mark.parametrize(
    ("end", "seconds", "verdict", "words"),
    [
        (30, 590, "slow", "goes in 9.8 min"),
        (30, 610, "holds", "would take 10 min"),
        (30, 61, "slow", "goes in 1.0 min"),
        (30, 59, "decays", "goes in 59 s"),
    ],
)
def test_verdicts_turn_at_one_and_ten_minutes(end, seconds, verdict, words):
    # 60 to 30 kPa: the half-life is the time itself
    found = vacuum_decay(2.0, 60, end, seconds, gauge_kpa=0.1)
    assert found.verdict == verdict
    assert words in found.findings[0].text


def test_what_would_not_show_is_named():
    # twice the gauge's uncertainty of the loss, 2·√2 kPa of 60, gone in 20 s
    slowest = math.log(2) * 20 / 60 / -math.log(1 - 2 * math.sqrt(2) / 60)
    found = vacuum_decay(2.0, 60, 59, 20)
    assert found.verdict == "not told"
    assert f"half-life of {slowest:.1f} min" in found.findings[0].text
    assert vacuum_decay(2.0, 60, 60, 600).half_life_min is None
    assert vacuum_decay(2.0, 60, 60.5, 600).verdict == "holds"


@pytest.mark.parametrize(
    ("returned", "verdict", "level"),
    [(24, "returns", "ok"), (23.9, "part", "note"), (3, "part", "note"), (2.9, "none", "warning")],
)
def test_spring_back_turns_at_four_fifths_and_a_tenth(returned, verdict, level):
    found = spring_back(30, returned)
    assert (found.verdict, found.findings[0].level) == (verdict, level)
    assert found.share == pytest.approx(returned / 30)
    assert found.can_return is None
    if verdict != "none":
        assert f"{100 * returned / 30:.0f}\u202f%" in found.findings[0].text


def test_a_drag_just_below_the_pull_lets_it_return():
    pull = math.pi / 4 * (64 - 4) * 0.101325
    assert spring_back(30, 0, bore_mm=8, rod_mm=2, drag_n=pull - 0.01).can_return is True
    assert spring_back(30, 0, bore_mm=8, rod_mm=2, drag_n=pull + 0.01).can_return is False
