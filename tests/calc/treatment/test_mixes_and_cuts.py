"""Flush mix, dilutions and shellac: refusals, ranges, laws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.dilution import dilution
from pentools.calc.treatment.mixtures import AirLimit, ammonia_density, ammonia_ph, flush_mix, room_ppm
from pentools.calc.treatment.shellac import G_L_PER_POUND_CUT, check_chart, flakes_g, shellac_cut, thinning_parts
from pentools.errors import InputError

LIMITS = (AirLimit("shift", 25), AirLimit("short", 35), AirLimit("danger", 300))
bottles = st.floats(0.5, 12)


def levels(result, topic):
    return [f.level for f in result.findings if f.topic == topic]


@given(bottles, st.floats(1, 100))
def test_ammonia_is_conserved(bottle, parts):
    mix = flush_mix(bottle, parts)
    litre_g = 1000 * (ammonia_density(bottle) + parts * 0.998) / (1 + parts)
    assert mix.ammonia_percent_w_w / 100 * litre_g / 17.031 == pytest.approx(mix.ammonia_mol_l)


@given(bottles, st.floats(1, 99))
def test_more_water_is_always_weaker(bottle, parts):
    less, more = flush_mix(bottle, parts), flush_mix(bottle, parts + 1)
    assert more.ammonia_percent_w_w < less.ammonia_percent_w_w < bottle
    assert more.ph < less.ph
    assert more.room_ppm < less.room_ppm


@given(st.floats(0.01, 7))
def test_ph_solves_its_equation(mol_l):
    x = 10 ** (ammonia_ph(mol_l) - 14)
    assert x * x / (mol_l - x) == pytest.approx(1.8e-5, rel=1e-6)


@pytest.mark.parametrize("word", ["bleach", "household Bleach", "chlorine cleaner", "sodium hypochlorite"])
def test_bleach_is_refused(word):
    refusal = next(f for f in flush_mix(5, 9, beside=[word]).findings if f.topic == "refused")
    assert refusal.level == "stop"
    assert refusal.text.endswith(CLOSING_LINE)


def test_bleach_is_warned_of_every_time():
    assert levels(flush_mix(5, 9), "bleach") == ["warning"]
    assert not levels(flush_mix(5, 9), "refused")


def test_materials_handed_in_are_refused_and_others_not():
    refused = {"casein": "it swells", "latex": "it ages"}
    assert levels(flush_mix(5, 9, beside=["Casein", "latex", "nylon"], refused=refused), "refused") == ["stop", "stop"]


def test_strong_mixes_are_warned_of():
    assert levels(flush_mix(5, 9), "strength") == ["ok"]
    assert levels(flush_mix(10, 4), "strength") == ["warning"]
    assert levels(flush_mix(2, 9), "label") == ["note"]


def test_air_is_compared_with_each_limit():
    def air(jar_ml):
        return next(f for f in flush_mix(5, 9, jar_ml=jar_ml, air_limits=LIMITS).findings if f.topic == "air")

    assert air(100).level == "note"  # 23.4 ppm
    assert air(120).level == "warning"  # 28 ppm
    assert "shift" in air(120).text
    assert "short" not in air(120).text
    assert "short" in air(200).text
    assert air(2000).level == "stop"
    assert not levels(flush_mix(5, 9), "air")  # nothing to compare with, nothing said


@pytest.mark.parametrize(
    ("bottle", "parts"), [(0.07, 9), (28, 9), (float("nan"), 9), (5, 0), (5, float("nan")), (5, 1000)]
)
def test_out_of_range(bottle, parts):
    with pytest.raises(InputError):
        flush_mix(bottle, parts)


def test_other_ranges():
    for call in (
        lambda: room_ppm(-1, 30),
        lambda: room_ppm(1, 0),
        lambda: ammonia_ph(0),
        lambda: ammonia_density(13),
        lambda: flush_mix(5, 9, jar_ml=0),
    ):
        with pytest.raises(InputError):
            call()
    with pytest.raises(InputError, match="laboratory"):
        flush_mix(28, 9)


@given(st.floats(0.1, 100), st.floats(0.01, 1), st.floats(1, 5000))
def test_dilution_keeps_what_matters(strong, share, volume):
    made = dilution(strong, strong * share, volume, "peroxide")
    assert made.strong_ml * strong == pytest.approx(volume * strong * share)
    assert made.strong_ml + made.water_ml == pytest.approx(volume)


def test_strong_peroxide():
    def level(percent):
        return [f.level for f in dilution(percent, 1, 100, "peroxide").findings if f.topic == "strong-peroxide"]

    assert (level(3), level(6), level(30)) == ([], ["warning"], ["stop"])


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


@given(st.floats(0.2, 6), st.floats(0.1, 1))
def test_thinning_gives_the_cut_it_says(start, share):
    end = max(start * share, 0.1)
    parts = thinning_parts(start, end)
    # one part of solution: flakes and alcohol in it, from the finished solution; then alcohol is added
    flakes = shellac_cut(start).lb_per_gal_finished
    alcohol = 1 / (1 + 0.1 * start)
    assert flakes / (alcohol + parts) == pytest.approx(end, rel=1e-9)


def test_flakes_follow_the_alcohol():
    assert flakes_g(2, 60) == pytest.approx(2 * flakes_g(2, 30)) == pytest.approx(0.06 * 2 * G_L_PER_POUND_CUT)


@pytest.mark.parametrize(
    "call",
    [
        lambda: shellac_cut(0),
        lambda: shellac_cut(7),
        lambda: thinning_parts(1, 2),
        lambda: flakes_g(2, 0),
        lambda: check_chart([], 2),
        lambda: check_chart([{"mix": "shellac thinning, printed", "property": "2", "low": "1"}]),
    ],
)
def test_shellac_out_of_range(call):
    with pytest.raises(InputError):
        call()
