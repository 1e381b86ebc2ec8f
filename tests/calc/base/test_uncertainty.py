"""Coverage factors, budgets, the scatter that is believed, and the one rounding: exact cases, edges and refusals."""

import math
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.base.uncertainty import (
    Component,
    believed_spread,
    combine,
    coverage_factor,
    format_value,
    from_half_width,
    rounded_pair,
)
from pentools.errors import InputError


@pytest.mark.parametrize("confidence", [0.5, 0.90, 0.95, 0.9545, 0.99, 0.9973])
def test_closed_forms(confidence):
    # Student's t has closed forms for 1 and 2 degrees of freedom: tan(π p/2) and p √2/√(1 - p²)
    assert coverage_factor(1, confidence) == pytest.approx(math.tan(math.pi * confidence / 2), rel=1e-9)
    assert coverage_factor(2, confidence) == pytest.approx(confidence * math.sqrt(2 / (1 - confidence**2)), rel=1e-9)


def test_four_degrees_of_freedom_in_closed_form():
    # within ±t: p = s (3 - s²)/2 with s = t/√(4 + t²); for t = 2.776445 that is 0.95
    s = coverage_factor(4, 0.95) / math.sqrt(4 + coverage_factor(4, 0.95) ** 2)
    assert s * (3 - s * s) / 2 == pytest.approx(0.95, abs=1e-10)


def test_broken_degrees_of_freedom_are_cut_down():
    assert coverage_factor(16.9) == coverage_factor(16)
    assert coverage_factor(1.999) == coverage_factor(1)


def test_many_degrees_of_freedom_approach_the_normal_distribution():
    assert coverage_factor(1e5) == pytest.approx(coverage_factor(math.inf), abs=3e-5)
    assert coverage_factor(1e9) == coverage_factor(math.inf)
    assert math.erf(coverage_factor(math.inf, 0.95) / math.sqrt(2)) == pytest.approx(0.95, abs=1e-12)


@given(st.integers(1, 500), st.floats(0.5, 0.999))
def test_it_falls_with_freedom_and_rises_with_confidence(nu, confidence):
    assert coverage_factor(nu, confidence) > coverage_factor(nu + 1, confidence) > coverage_factor(math.inf, confidence)
    assert coverage_factor(nu, min(confidence + 0.0005, 0.9999)) > coverage_factor(nu, confidence)


@pytest.mark.parametrize(
    ("nu", "confidence"), [(0.5, 0.95), (0, 0.95), (float("nan"), 0.95), (5, 0.4), (5, 1.0), (5, float("nan"))]
)
def test_refusals(nu, confidence):
    with pytest.raises(InputError):
        coverage_factor(nu, confidence)


@pytest.mark.parametrize(
    ("value", "u", "shown"),
    [(1.80548, 0.3, ("1.8", "0.3")), (1.80548, 0.003, ("1.805", "0.003")), (-0.01, 0.3, ("0.0", "0.3")), (0.5, 9.6, ("1", "10")), (1.80548, 0.0470, ("1.81", "0.05")), (1.80548, 0.0135, ("1.805", "0.014")), (1.80548, 0.0296, ("1.805", "0.030")), (1234.0, 250.0, ("1230", "250")), (12.3, 34.0, ("10", "30")), (5.0, 0.0, ("5", "0"))],
)  # fmt: skip
def test_rounded_once(value, u, shown):
    assert rounded_pair(value, u) == shown


@given(st.floats(-1e4, 1e4), st.floats(1e-6, 1e3))
def test_value_and_uncertainty_end_at_one_place(value, u):
    shown, spread = rounded_pair(value, u)
    decimals = [len(text.partition(".")[2]) for text in (shown, spread)]
    assert decimals[0] == decimals[1]
    unit = Decimal(repr(u)).adjusted()  # the place of its first digit
    wanted = unit - 1 if repr(Decimal(repr(u)).scaleb(-unit)).split("'")[1][0] in "12" else unit
    assert decimals[1] == max(-wanted, 0)
    assert abs(Decimal(spread) - Decimal(repr(u))) <= Decimal(10) ** wanted / 2
    assert abs(float(shown) - value) <= 0.5 * 10 ** -decimals[0] * (1 + 1e-9) or "." not in shown


@pytest.mark.parametrize(
    ("value", "u"), [(float("nan"), 1), (float("inf"), 1), (1, float("nan")), (1, -1), (1, float("inf"))]
)
def test_what_is_no_number_is_not_rounded(value, u):
    with pytest.raises(InputError):
        rounded_pair(value, u)


def test_a_value_in_words():
    assert format_value(1.80548, 0.047, "mL") == "1.81\u202fmL ± 0.05"


def test_a_budget_of_one_is_itself():
    budget = combine([Component("only", 0.3, 2.0, 4)])
    assert budget.standard_uncertainty == pytest.approx(0.6)
    assert budget.degrees_of_freedom == pytest.approx(4)
    with pytest.raises(InputError):
        combine([])
    with pytest.raises(InputError):
        combine([Component("bad", -1.0)])


def test_what_is_known_is_believed_until_chance_cannot_explain_the_scatter():
    # chi-squared at 99.9 %: 10.828 for 1, 13.816 for 2, 20.515 for 5 degrees of freedom (any statistics table)
    for nu, bound in ((1, 10.828), (2, 13.816), (5, 20.515)):
        limit = math.sqrt(bound / nu)
        assert believed_spread(0.01, 0.0098 * limit, nu) == (0.01, math.inf)
        assert believed_spread(0.01, 0.0102 * limit, nu) == (0.0102 * limit, nu)
    assert believed_spread(0.01, 0.0, 0) == (0.01, math.inf)
    assert believed_spread(0.0, 0.002, 3) == (0.002, 3)
    with pytest.raises(InputError):
        believed_spread(-0.01, 0.0, 3)


def test_a_half_width_by_its_shape():
    # JCGM 100:2008, 4.3.7 to 4.3.9: √3, √6, √2
    shown = [round(from_half_width(1.0, shape), 4) for shape in ("rectangular", "triangular", "arcsine")]
    assert shown == [0.5774, 0.4082, 0.7071]
    for bad in ((-1.0, "rectangular"), (math.inf, "rectangular"), (1.0, "round")):
        with pytest.raises(InputError):
            from_half_width(*bad)
