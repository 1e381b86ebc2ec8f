"""The flow sum through the command line."""

import json

import pytest

from pentools.cli import main
from pentools.sums.nib.flow import known_span

LINE = ("--before", "23.5120 g", "--after", "23.4220 g", "--length", "18 m")
FINE = ("--readability", "0.0001 g")


def flow(capsys, *words):
    code = main(["sums", "flow", *words, "--json"])
    out = capsys.readouterr()
    assert code == 0, out.err
    return json.loads(out.out)


def topics(data):
    return [f["topic"] for f in data["findings"]]


def test_a_number_with_both_ends(capsys):
    data = flow(capsys, *LINE, *FINE)
    # 90 mg less 0.12 mg for 4 min at 0.03 mg; repeatability two digits: 2 √(2 (1/12 + 4)) · 0.1 mg = 0.57 mg, and 1 % of length
    assert data["mg_per_m"] == pytest.approx(89.88 / 18)
    assert data["expanded_uncertainty_mg_per_m"] == pytest.approx(2 * ((0.2858 / 18) ** 2 + (0.01 * 4.993) ** 2 + (0.0693 / 18) ** 2) ** 0.5, rel=2e-3)  # fmt: skip
    assert data["m_per_ml"] == pytest.approx(1005 / 4.9933, rel=1e-4)
    assert data["ul_per_m"] == pytest.approx(4.9933 / 1.005, rel=1e-4)
    assert data["m_per_ml_low"] < data["m_per_ml"] < data["m_per_ml_high"]
    assert (data["verdict"], data["coverage_factor"], data["length_m"]) == ("number", pytest.approx(2, abs=1e-3), 18)
    assert data["sentence"] == data["findings"][0]["text"]


def test_a_balance_that_cannot_tell_says_so(capsys):
    data = flow(capsys, "--before", "23.51 g", "--after", "23.50 g", "--length", "1 m", "--repeatability", "0 g")
    assert (data["verdict"], data["mg_per_m"], data["m_per_ml"]) == ("bound", None, None)
    assert data["less_than_mg_per_m"] == pytest.approx(10 + 8.2, abs=0.1)
    assert data["findings"][0]["level"] == "warning"
    assert "cannot tell" in data["sentence"]
    kitchen = flow(capsys, "--before", "23 g", "--after", "23 g", "--length", "160 m", "--readability", "1 g")
    assert kitchen["verdict"] == "bound", "a kitchen scale is no balance"


def test_the_digits_typed_bound_the_balance(capsys):
    data = flow(capsys, "--before", "23.5 g", "--after", "23.4 g", "--length", "18 m", *FINE)
    assert data["readability_g"] == 0.1
    assert "digits-typed" in topics(data)


def test_each_option_reaches_the_sum(capsys):
    plain = flow(capsys, *LINE, *FINE)
    twin = flow(capsys, *LINE, *FINE, "--idle", "1.8 mg")
    assert plain["mg_per_m"] - twin["mg_per_m"] == pytest.approx((1.8 - 0.12) / 18)
    long = flow(capsys, *LINE, *FINE, "--minutes", "64 min")
    assert long["dried_mg"] == pytest.approx(1.92)
    assert "flow-dried" in topics(long)
    assert "flow-dried" not in topics(twin)
    assert flow(capsys, *LINE, *FINE, "--density", "1.206 g/ml")["m_per_ml"] == pytest.approx(1.2 * plain["m_per_ml"])
    ruled = flow(capsys, "--before", "23.5120 g", "--after", "23.4220 g", "--length", "18 ± 0.9 m", *FINE)
    assert ruled["standard_uncertainty_mg_per_m"] == pytest.approx(0.05 * ruled["mg_per_m"], rel=0.01)
    assert "flow-ceiling" in topics(flow(capsys, *LINE, *FINE, "--width", "0.2 mm"))
    assert "flow-ceiling" not in topics(flow(capsys, *LINE, *FINE, "--width", "0.5 mm"))


def test_a_pen_that_gained_is_refused(capsys):
    assert main(["sums", "flow", "--before", "23.42 g", "--after", "23.51 g", "--length", "18 m"]) == 2
    assert "each other's place" in capsys.readouterr().err


def test_the_span_is_that_of_the_table():
    span = known_span()
    assert (span.low_mg_m, span.typical_mg_m, span.high_mg_m, span.ceiling_mg_m_mm) == (2.4, 5, 14, 16)


def test_the_table(capsys):
    main(["sums", "flow", *LINE, *FINE])
    out = capsys.readouterr().out
    for words in ("89.9 mg ± 0.59", "0.12 mg", "4.99 mg ± 0.11", "201 m (197 m to 206 m)"):
        assert words in out
