"""The thread sum: pitch and diameter in, the nearest three out, with how sure that is."""

import pytest
from sums.seal.asking import ask

from pentools.errors import InputError
from pentools.sums.seal.thread import THREAD


def topics(answer):
    return {f.topic for f in answer.findings}


def test_a_length_over_ten_pitches():
    answer = ask(THREAD, crests="7.94 mm", major="7.10 mm")
    data = answer.data
    assert [set(n) >= {"designation", "series", "major_mm", "pitch_mm"} for n in data["nearest"]] == [True] * 3
    assert (data["nearest"][0]["series"], data["nearest"][0]["designation"]) == ("ME", "9/32 x 32")
    assert (data["pitch_mm"], data["pitch_uncertainty_mm"]) == (pytest.approx(0.794), pytest.approx(0.003))
    assert data["major_mm"] == 7.1
    assert answer.sentence.startswith("Nearest is ME 9/32 x 32; then")
    assert answer.table[1][:2] == ("ME 9/32 x 32", "7.14 mm")


def test_a_lone_pitch_is_one_crest():
    alone, ten = ask(THREAD, pitch="0.66 mm"), ask(THREAD, crests="6.60 mm")
    assert (alone.data["pitch_uncertainty_mm"], ten.data["pitch_uncertainty_mm"]) == (0.03, pytest.approx(0.003))
    assert not alone.data["told"]
    assert ten.data["told"]
    assert alone.sentence.startswith("These readings cannot tell ")
    assert "one-crest" in topics(alone)
    assert ask(THREAD, pitch="0.66 ± 0.01 mm").data["pitch_uncertainty_mm"] == pytest.approx(0.01)
    assert ask(THREAD, pitch="0.66 mm", caliper="0.02 mm").data["pitch_uncertainty_mm"] == 0.02


def test_fewer_crests_on_a_short_thread():
    data = ask(THREAD, crests="3.97 mm", over="5", major="7.10 mm").data
    assert (data["pitch_mm"], data["pitch_uncertainty_mm"]) == (pytest.approx(0.794), pytest.approx(0.006))
    assert ask(THREAD, crests="3.97 ± 0.05 mm", over="5").data["pitch_uncertainty_mm"] == pytest.approx(0.01)


def test_a_wrong_count_of_starts_is_a_bad_match():
    answer = ask(THREAD, pitch="1/32 in", starts="4")
    assert answer.data["near"] is False
    assert answer.sentence.startswith("A bad match")
    assert answer.data["lead_mm"] == pytest.approx(25.4 / 8)
    triple = ask(THREAD, crests="8.00 mm", major="12.95 mm", starts="3").data
    assert triple["lead_mm"] == pytest.approx(2.4)
    assert triple["nearest"][0]["designation"] == "13x0.8 triple"
    assert triple["nearest"][0]["lead_mm"] == pytest.approx(2.4)
    assert triple["near"] is True


def test_a_makers_own_thread():
    own = ask(THREAD, crests="9.3 mm", major="9.0 mm")
    assert own.data["near"] is False
    assert "maker's own" in own.sentence


def test_an_angle_and_a_plus_minus_are_handed_on():
    assert ask(THREAD, crests="7.94 mm", major="6.35 mm", angle="55 deg").data["nearest"][0]["angle_deg"] == 55
    sure, unsure = (
        ask(THREAD, crests="7.94 mm", major=f"7.40{spread} mm").data["nearest"][0]["distance"]
        for spread in ("", " ± 0.2")
    )
    assert unsure < sure


def test_refusals():
    with pytest.raises(InputError, match="eleven crests make ten"):
        ask(THREAD, pitch="0.8 mm", crests="7.1 mm")
    with pytest.raises(InputError, match="6 crests make 5"):
        ask(THREAD, pitch="0.8 mm", crests="7.1 mm", over="5")
    with pytest.raises(InputError, match="pitch"):
        ask(THREAD, major="7 mm")


def test_every_figure_of_a_thread_stands_in_its_table():
    """7.94 mm over ten pitches and 7.10 mm across: 9/32 in is 7.144 mm, 32 in an inch are 0.794 mm; M7 x 0.75 of ISO 261."""
    answer = ask(THREAD, crests="7.94 mm", major="7.10 mm")
    assert answer.table[:3] == (
        ("thread", "major", "pitch", "pitch off", "diameter off", "distance"),
        ("ME 9/32 x 32", "7.14 mm", "0.794 mm", "+0.000 mm", "-0.04 mm", "0.4"),
        # 0.044 over hypot(0.003, 0.003), 0.10 over hypot(0.03, 0.05)
        ("ISO metric M7x0.75", "7.00 mm", "0.750 mm", "+0.044 mm", "+0.10 mm", "10.5"),
    )
    second = answer.data["nearest"][1]
    assert {**second, "distance": 0, "pitch_off_mm": 0, "major_off_mm": 0} == {
        "designation": "M7x0.75", "series": "ISO metric", "major_mm": 7, "pitch_mm": 0.75, "angle_deg": 60, "starts": 1, "lead_mm": 0.75,
        "distance": 0, "pitch_off_mm": 0, "major_off_mm": 0, "source": "iso261",
    }  # fmt: skip
    assert (second["pitch_off_mm"], second["major_off_mm"]) == pytest.approx((0.044, 0.1))
    assert second["distance"] == pytest.approx(((0.044 / 0.003) ** 2 / 2 + 0.01 / 0.0034) ** 0.5)
    assert answer.data["margin"] == pytest.approx(second["distance"] - answer.data["nearest"][0]["distance"])
    assert (answer.data["told"], answer.data["lead_mm"]) == (True, None)
    unmeasured = ask(THREAD, crests="6.60 mm")
    assert unmeasured.table[1] == ("BA 4 BA", "3.60 mm", "0.660 mm", "+0.000 mm", "–", "0.0")
    assert unmeasured.data["major_mm"] is None
    assert [row[1] for row in answer.table[1:]] == ["7.14 mm", "7.00 mm", "any"]


def test_a_length_and_a_pitch_may_differ_by_a_tenth():
    assert ask(THREAD, pitch="0.8 mm", crests="8.80 mm").data["pitch_mm"] == pytest.approx(0.88)
    with pytest.raises(InputError, match=r"near 8\.00 mm"):
        ask(THREAD, pitch="0.8 mm", crests="8.81 mm")
