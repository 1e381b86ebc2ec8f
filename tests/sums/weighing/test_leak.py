"""The leak sum through the command line."""

import json

import pytest

from pentools.cli import main

FINE = ["--readability", "0.001 g"]
GAP = ["--gap", "0.05 mm", "--seat", "10 mm", "--gap-length", "5 mm"]


def leak(capsys, times, masses, *more):
    code = main(["sums", "leak", "--times", times, "--masses", masses, *more, "--json"])
    out = capsys.readouterr()
    assert code == 0, out.err
    return json.loads(out.out)


def topics(data):
    return [f["topic"] for f in data["findings"]]


def test_a_leak(capsys):
    data = leak(capsys, "0 h; 8 h; 24 h", "18.214 g; 18.150 g; 18.020 g", *FINE)
    assert data["verdict"] == "leak"
    assert data["loss_mg_per_h"] == pytest.approx(8.0893, abs=1e-4)
    assert data["intercept_g"] == pytest.approx(18.21429, abs=1e-5)
    assert data["sentence"] == data["findings"][0]["text"]
    assert (data["times_h"], data["masses_g"][-1]) == ([0, 8, 24], 18.02)


def test_as_many_masses_as_times(capsys):
    assert main(["sums", "leak", "--times", "0 h; 8 h", "--masses", "18.2 g"]) == 2
    assert "as many as the times, 2" in capsys.readouterr().err


def test_the_limit_of_detection_counts_rounding_and_repeatability(capsys):
    # by hand: 3.29 √(0.001²/12 + 0.002²) / √(2·12²) g/h with nothing lost, 0.39171 mg/h
    data = leak(capsys, "0 h; 12 h; 24 h", "18.200 g; 18.200 g; 18.200 g", *FINE)
    assert data["detection_limit_mg_per_h"] == pytest.approx(0.39171, abs=2e-5)
    assert data["decision_limit_mg_per_h"] == pytest.approx(0.39171 / 2, abs=2e-5)
    assert data["reading_uncertainty_g"] == pytest.approx(0.0020207, abs=1e-7)
    own = leak(capsys, "0 h; 12 h; 24 h", "18.200 g; 18.200 g; 18.200 g", *FINE, "--repeatability", "0.004 g")
    # by hand: √(0.001²/12 + 0.004²)
    assert own["reading_uncertainty_g"] == pytest.approx(0.0040104, abs=1e-7)


def test_the_digits_typed_bound_the_readability(capsys):
    data = leak(capsys, "0 h; 24 h", "18.2 g; 18.2 g", *FINE)
    assert data["readability_g"] == 0.1
    assert "digits-typed" in topics(data)
    assert data["verdict"] == "not-sensitive"
    dummy = leak(capsys, "0 h; 24 h", "18.200 g; 18.200 g", *FINE, "--blanks", "10.00 g; 10.00 g")
    assert dummy["readability_g"] == 0.01


def test_the_steps_of_the_issue_are_no_tight_pen(capsys):
    data = leak(capsys, "0 h; 24 h; 48 h; 72 h", "18.21 g; 18.20 g; 18.19 g; 18.18 g")
    assert data["verdict"] == "cannot-tell-which"
    assert "No leak" not in data["sentence"]


def test_a_dummy_is_taken_off(capsys):
    words = ("0 h; 24 h; 48 h", "18.214 g; 18.204 g; 18.194 g")
    assert leak(capsys, *words, *FINE)["verdict"] == "cannot-tell-which"
    drift = leak(capsys, *words, *FINE, "--blanks", "10.020 g; 10.010 g; 10.000 g")
    assert drift["verdict"] == "tight"
    assert drift["loss_mg_per_h"] == pytest.approx(0.0, abs=1e-9)


def test_evaporation_is_estimated_for_the_gap(capsys):
    words = ("0 h; 8 h; 24 h", "18.214 g; 18.213 g; 18.212 g", *FINE)
    assert leak(capsys, *words)["evaporation_estimate_mg_per_day"] is None
    assert leak(capsys, *words, *GAP[:4])["evaporation_estimate_mg_per_day"] is None
    data = leak(capsys, *words, *GAP)
    # by hand: π · 10.05 · 0.05 = 1.5786 mm² over 5 mm, 3.62 mg/day for 1 mm² at 20 °C and 50 %
    assert data["evaporation_estimate_mg_per_day"] == pytest.approx(5.71, abs=0.02)
    assert "evaporation-estimate" in topics(data)
    dry = leak(capsys, *words, *GAP, "--humidity", "25 %")
    assert dry["evaporation_estimate_mg_per_day"] == pytest.approx(1.5 * data["evaporation_estimate_mg_per_day"])
    warm = leak(capsys, *words, *GAP, "--temperature", "30 °C")
    # the vapour of saturation 4.247 to 2.339 kPa, over 303.15 to 293.15 K
    assert warm["evaporation_estimate_mg_per_day"] == pytest.approx(
        4.247 / 2.339 * 293.15 / 303.15 * data["evaporation_estimate_mg_per_day"], rel=1e-3
    )


def test_twenty_beside_two_is_no_evaporation(capsys):
    gap = ["--gap", "0.02 mm", "--seat", "10 mm", "--gap-length", "5 mm"]
    words = ("0 h; 24 h; 48 h; 72 h", "18.210 g; 18.190 g; 18.170 g; 18.150 g", *FINE)
    data = leak(capsys, *words, *gap)
    assert data["evaporation_estimate_mg_per_day"] == pytest.approx(2.28, abs=0.01)
    assert data["verdict"] == "leak"
    slow = leak(capsys, "0 h; 24 h; 48 h; 72 h", "18.210 g; 18.208 g; 18.206 g; 18.204 g", *FINE, *gap)
    assert slow["verdict"] == "evaporation"


def test_the_table(capsys):
    main(["sums", "leak", "--times", "0 h; 8 h; 24 h", "--masses", "18.214 g; 18.150 g; 18.020 g", *FINE, *GAP])
    out = capsys.readouterr().out
    for words in ("8.09 mg/h ± 0.19 (one-sided, 95\u202f%)", "0.38 mg/h", "3 over 24 h", "5.7 mg a day"):
        assert words in out
