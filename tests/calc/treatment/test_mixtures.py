"""The flush mix: conservation, refusals, the air of the room, what comes first."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools import tables
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.calc.treatment.hazards import HazardRow
from pentools.calc.treatment.mixtures import (
    AirLimit,
    MixtureRow,
    air_limits_from_rows,
    ammonia_density,
    ammonia_ph,
    flush_mix,
    room_ppm,
)
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


HAZARDS = tables.read(HazardRow, "substance_hazards")
AIR = air_limits_from_rows(tables.read(MixtureRow, "mixtures"))


def test_a_mix_that_would_fill_a_small_room_says_stop_first():
    # 10 %, 5 l, 5 m³: 13 739 ppm, once silent
    mix = flush_mix(10, 9, jar_ml=5000, room_m3=5, air_limits=AIR, hazards=HAZARDS)
    assert mix.room_ppm == pytest.approx(13_739, abs=1)
    assert (mix.findings[0].level, mix.findings[0].topic) == ("stop", "air")
    assert "13739 ppm" in mix.findings[0].text
    assert "immediately dangerous" in mix.findings[0].text


@given(bottles, st.floats(1, 100), st.floats(1, 5000), st.floats(1, 100))
def test_findings_are_told_gravest_first(bottle, parts, jar, room):
    order = ["stop", "warning", "note", "ok"]
    found = flush_mix(bottle, parts, jar_ml=jar, room_m3=room, air_limits=AIR, hazards=HAZARDS).findings
    assert [f.level for f in found] == sorted((f.level for f in found), key=order.index)


@pytest.mark.parametrize(("ppm_jar", "level"), [(1283, "warning"), (1285, "stop")])
def test_immediately_dangerous_air_is_a_stop(ppm_jar, level):
    # 5 % and nine parts into 30 m³: 23.36 ppm a 100 ml, so 300 ppm at 1284 ml
    found = next(f for f in flush_mix(5, 9, jar_ml=ppm_jar, air_limits=AIR).findings if f.topic == "air")
    assert found.level == level


def test_the_mix_and_its_bottle_are_held_against_the_labelling_rules():
    def hazards(bottle, parts):
        return [(f.key.partition(":")[2], f.level) for f in flush_mix(bottle, parts, hazards=HAZARDS).findings if f.topic == "hazard"]  # fmt: skip

    assert hazards(0.9, 9) == []
    assert hazards(5, 9) == [("bottle", "warning")]
    assert hazards(10, 4) == [("mix", "warning"), ("bottle", "warning")]
    assert hazards(10, 1) == [("mix", "stop"), ("bottle", "warning")]


def test_density_goes_through_the_table_and_straight_between():
    rows = [r for r in tables.rows("mixtures") if r["mix"] == "household ammonia" and r["property"] == "density"]
    assert [float(row["text"].split()[1]) for row in rows] == [2, 5, 10, 12]
    for row in rows:
        assert ammonia_density(float(row["text"].split()[1])) == pytest.approx(float(row["low"]))
    assert ammonia_density(7.5) == pytest.approx(0.967)
    assert ammonia_density(11) == pytest.approx(0.9535)


@pytest.mark.parametrize(
    ("call", "low", "high", "off"),
    [
        (lambda x: flush_mix(x, 9), 0.5, 12, 0.01), (lambda x: flush_mix(5, x), 1, 200, 0.01), (lambda x: flush_mix(5, 9, jar_ml=x), 1, 5000, 0.1),
        (lambda x: flush_mix(5, 9, room_m3=x), 1, 10_000, 0.1), (ammonia_density, 0, 12, 0.01), (ammonia_ph, 0.001, 7, 0.0001),
        (lambda x: room_ppm(1, x), 1, 10_000, 0.1), (lambda x: room_ppm(x, 30), 0, 1e6, 0.001),
    ],
)  # fmt: skip
def test_both_ends_of_every_range(call, low, high, off):
    call(low)
    call(high)
    for x in (low - off, *([high + off] if high < 1e6 else [])):
        with pytest.raises(InputError):
            call(x)


def test_the_refusal_of_a_strong_bottle_and_of_a_share_are_two():
    with pytest.raises(InputError, match="laboratory"):
        flush_mix(12.5, 9)
    with pytest.raises(InputError, match="Is it in per cent"):
        flush_mix(0.07, 9)


@pytest.mark.parametrize(("bottle", "said"), [(4.9, True), (5, False), (10, False), (10.1, True)])
def test_a_bottle_that_is_not_usual_is_asked_about(bottle, said):
    assert bool(levels(flush_mix(bottle, 9), "label")) is said


def test_one_per_cent_is_still_usual():
    # 10.4 % with nine parts holds 1.0014 % by weight, 10.3 % holds 0.9917 %
    assert levels(flush_mix(10.3, 9), "strength") == ["ok"]
    assert levels(flush_mix(10.4, 9), "strength") == ["warning"]


def test_ammonia_in_air_by_hand():
    # 0.6966 mg/m³ to 1 ppm: 1 g in 30 m³ is 33.33 mg/m³, 47.85 ppm
    assert room_ppm(1, 30) == pytest.approx(47.85, abs=0.01)
    assert [limit.ppm for limit in AIR] == [25, 35, 50, 300]
