"""Coverage factors: exact cases, edges and refusals."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.base.coverage import coverage_factor
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
