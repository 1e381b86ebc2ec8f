"""Several fillings of one pen, and a pump weighed after each stroke."""

import math

import pytest

from pentools.calc.weighing.series import fill_series, stroke_series
from pentools.errors import InputError

STROKES = range(9)


@pytest.mark.parametrize(
    ("volumes", "topic"),
    [
        ([1.31, 1.30, 1.31, 1.30], "steady"),
        ([1.0, 1.1, 1.2, 1.3], "still-rising"),
        ([1.3, 1.2, 1.1, 1.0], "falling"),
        ([1.3, 1.2], "two-only"),
    ],
)
def test_series_that_settle_rise_and_fall(volumes, topic):
    assert [f.topic for f in fill_series(volumes, 0.02).findings] == [topic]


def test_one_filling_has_a_mean_and_no_trend():
    one = fill_series([1.3], 0.02)
    assert (one.mean_ml, one.mean_uncertainty_ml, one.findings) == (1.3, 0.02, ())
    with pytest.raises(InputError):
        fill_series([1.3], 0.0)


def test_a_rise_is_told_at_its_one_sided_limit():
    # by hand: u(slope) = 0.02/√2 for three fillings; 1.645 of it are 0.02326 mL
    assert fill_series([1.0, 1.0231, 1.0462], 0.02).findings[0].topic == "steady"
    rising = fill_series([1.0, 1.0234, 1.0468], 0.02)
    assert rising.findings[0].topic == "still-rising"
    assert rising.slope_ml == pytest.approx(0.0234)
    assert fill_series([1.0, 0.9766, 0.9532], 0.02).findings[0].topic == "falling"


def test_fillings_that_scatter_more_than_weighing_explains_are_believed():
    # spread 0.2 of three about their mean: 0.2/√3; with two fillings of like volume the known one
    assert fill_series([1.0, 1.4, 1.2], 0.02).mean_uncertainty_ml == pytest.approx(0.2 / math.sqrt(3))
    assert fill_series([1.21, 1.20], 0.02).mean_uncertainty_ml == pytest.approx(0.02 / math.sqrt(2))


def sound(per_stroke=0.27, level=1.6, expected=1.6, stroke=None):
    masses = [20.0 + min(per_stroke * n, level) for n in STROKES]
    return stroke_series(STROKES, masses, 1.003, 0.012, expected_ml=expected, stroke_ml=stroke)


def test_a_sound_pump_rises_and_then_stops():
    found = sound()
    assert found.per_stroke_ml == pytest.approx(1.6 / 6 * 1.003, abs=0.01)
    assert (found.plateau_stroke, found.findings[0].topic) == (6, "plateau")
    assert found.plateau_ml == pytest.approx(1.6 * 1.003)
    assert found.findings[0].text == "It stops rising after stroke 6 at 1.60 mL, 100\u202f% of what it should hold."
    assert sound(expected=None).findings[0].text == "It stops rising after stroke 6 at 1.60 mL."


def test_a_short_breather_tube_shows_as_an_early_plateau():
    found = sound(level=0.80)
    assert found.plateau_stroke == 3
    assert found.plateau_ml == pytest.approx(0.80, abs=0.01)
    assert found.findings[0].topic == "early-plateau"
    # three quarters of what it should hold are the bound
    assert sound(level=1.19).findings[0].topic == "early-plateau"
    assert sound(level=1.20).findings[0].topic == "plateau"


def test_a_pump_that_never_stops_or_never_starts():
    assert sound(per_stroke=0.1).findings[0].topic == "never-flat"
    assert stroke_series(STROKES, [20.0] * 9, 1.003, 0.012).findings[0].topic == "no-gain"


def test_weak_strokes_are_told_below_seven_tenths():
    assert [f.topic for f in sound(per_stroke=0.1, stroke=0.15).findings] == ["never-flat", "low-slope"]
    assert [f.topic for f in sound(per_stroke=0.1, stroke=0.14).findings] == ["never-flat"]


def test_a_gain_within_its_own_noise_is_none():
    # by hand: two weighings, 2 · √2 · 0.012 · 1.003 = 0.0340 mL
    masses = [20.0, 20.1, 20.1335, 20.1335]
    assert stroke_series(range(4), masses, 1.003, 0.012).plateau_stroke == 1
    masses = [20.0, 20.1, 20.1345, 20.1345]
    assert stroke_series(range(4), masses, 1.003, 0.012).plateau_stroke == 2


def test_strokes_between_two_weighings_share_the_gain():
    found = stroke_series([0, 2, 4, 6], [20.0, 20.5, 21.0, 21.0], 1.0, 0.01)
    assert found.per_stroke_ml == pytest.approx(0.25)
    assert found.volumes_ml == pytest.approx((0.0, 0.5, 1.0, 1.0))


@pytest.mark.parametrize("strokes", [[0, 2, 1], [0, 1], [0, 1, 1]])
def test_strokes_have_to_rise(strokes):
    with pytest.raises(InputError):
        stroke_series(strokes, [20.0, 21.0, 22.0][: len(strokes)], 1.003, 0.012)
