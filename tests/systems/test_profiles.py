"""Outlines of turned parts: ends where they must end, and stay within their radius."""

import math

import pytest

from pentools.systems.profiles import curve, dome, round_points, threads


def test_a_circle_has_its_radius_and_an_ellipse_its_flatness():
    for x, y in round_points(2.0, -1.0, 3.0):
        assert math.hypot(x - 2.0, y + 1.0) == pytest.approx(3.0)
    assert max(y for _, y in round_points(0.0, 0.0, 4.0, 0.5)) == pytest.approx(2.0)
    assert len(round_points(0.0, 0.0, 1.0)) == 16


def test_a_dome_is_a_quarter_of_an_ellipse():
    points = dome(10.0, 4.0, 3.0)
    assert (points[0], points[-1]) == ((10.0, 4.0), (13.0, 0.0))
    for x, r in points:
        assert ((x - 10.0) / 3.0) ** 2 + (r / 4.0) ** 2 == pytest.approx(1.0)
    forward = dome(10.0, 4.0, -3.0, 1.0)
    assert forward[-1] == (7.0, 1.0)
    assert all(1.0 <= r <= 4.0 for _, r in forward)


def test_a_curve_leaves_its_start_out_and_meets_its_end():
    points = curve((0.0, 0.0), (1.0, 2.0), (3.0, 2.0), (4.0, 0.0), 4)
    assert len(points) == 4
    assert points[-1] == (4.0, 0.0)
    # a cubic of Bézier at its middle: (P0 + 3 P1 + 3 P2 + P3) / 8
    assert points[1] == pytest.approx((2.0, 1.5))


def test_a_thread_goes_between_root_and_crest_from_end_to_end():
    points = threads(0.0, 9.0, 5.0, depth=0.4, pitch=0.9)
    assert (points[0], points[-1]) == ((0.0, 4.6), (9.0, 4.6))
    assert sum(1 for _, r in points if r == 5.0) == 10
    assert {round(r, 6) for _, r in points} == {4.6, 5.0}
    assert len(threads(0.0, 0.2, 5.0)) == 3  # one turn at least
