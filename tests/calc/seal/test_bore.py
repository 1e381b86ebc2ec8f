"""Readings of one bore, and the one that stands apart."""

import pytest

from pentools.calc.seal.bore import bore_from_readings, odd_findings, odd_reading
from pentools.errors import InputError

SIX = [8.30, 8.32, 8.29, 8.31, 8.33, 8.30]


def test_bore_from_readings():
    assert bore_from_readings((6.3,)) == (6.3, 0.0)
    with pytest.raises(InputError, match="at least one reading"):
        bore_from_readings(())


@pytest.mark.parametrize(("place", "slip"), [(0, 8.60), (3, 8.03), (5, 8.50)])
def test_a_slip_among_six_is_named(place, slip):
    readings = [*SIX]
    readings[place] = slip
    odd = odd_reading(readings)
    assert (odd.place, odd.value_mm, odd.count) == (place + 1, slip, 6)
    rest = [r for i, r in enumerate(readings) if i != place]
    assert (odd.low_mm, odd.high_mm) == (min(rest), max(rest))
    assert odd.mean_mm == pytest.approx(sum(rest) / 5)
    assert odd.ovality_mm == pytest.approx(max(rest) - min(rest))
    (finding,) = odd_findings(readings)
    assert finding.level == "warning"
    assert f"Reading {place + 1} of 6, {slip:.2f} mm, is the odd one" in finding.text


def test_q_is_the_gap_over_the_range():
    odd = odd_reading([8.30, 8.32, 8.29, 8.60, 8.33, 8.30])
    assert odd.q == pytest.approx((8.60 - 8.33) / (8.60 - 8.29))
    assert odd.limit == 0.625


# two-sided 95 % values of r10: Rorabacher, Analytical Chemistry 63, 1991, 139, table 2
@pytest.mark.parametrize(
    ("count", "critical"), [(4, 0.829), (5, 0.710), (6, 0.625), (7, 0.568), (8, 0.526), (9, 0.493), (10, 0.466)]
)
def test_a_reading_is_odd_just_above_the_critical_value_and_not_just_below(count, critical):
    def with_q(q):
        return [8.0, *(8.0 + (1 - q) * step / (count - 2) for step in range(1, count - 1)), 9.0]

    assert odd_reading(with_q(critical - 0.002)) is None
    assert odd_reading(with_q(critical + 0.002)).place == count


@pytest.mark.parametrize(
    "readings",
    [
        SIX,
        [8.30, 8.30, 8.30, 8.30, 8.30, 8.36],  # Q is 1, but two readings may differ by that much
        [8.20, 8.22, 8.21, 8.50, 8.51, 8.20],  # an oval bore: two high readings
        [8.10, 8.20, 8.30, 8.40, 8.50, 8.70],  # Q 0.33
        [8.30, 8.31, 8.60],  # three are too few
        [8.3],
        [],
    ],
)
def test_what_is_no_slip(readings):
    assert odd_reading(readings) is None
    assert odd_findings(readings) == ()


def test_the_calliper_decides_what_a_step_is():
    readings = [8.30, 8.30, 8.30, 8.30, 8.30, 8.36]
    assert odd_reading(readings, 0.02).value_mm == 8.36
    # exactly twice the half-width is still one step
    assert odd_reading(readings, 0.03) is None
