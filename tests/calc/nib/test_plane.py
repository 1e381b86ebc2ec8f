"""Planes seen aslant."""

import math

import numpy as np
import pytest

from pentools.calc.nib.plane import homography, mapped, pose, upright

TRUE = np.array([[0.0, 0], [85.6, 0], [85.6, 53.98], [0, 53.98]])


def seen(tilt=20.0, far=300.0, focal=3000.0, middle=(2000.0, 1500.0)):
    """What a pinhole sees of the four corners, the plane turned about its first way."""
    a = math.radians(tilt)
    lifted = np.column_stack([TRUE[:, 0] - 40, (TRUE[:, 1] - 27) * math.cos(a), far + (TRUE[:, 1] - 27) * math.sin(a)])
    return focal * lifted[:, :2] / lifted[:, 2:] + np.array(middle)


def test_points_go_there_and_back():
    matrix = homography(TRUE, seen())
    assert mapped(matrix, TRUE) == pytest.approx(seen(), abs=1e-6)
    inside = np.array([[10.0, 20], [60, 40]])
    assert mapped(np.linalg.inv(matrix), mapped(matrix, inside)) == pytest.approx(inside, abs=1e-9)


@pytest.mark.parametrize("tilt", [0.0, 10.0, 30.0])
def test_the_pose_of_a_pinhole(tilt):
    found = pose(homography(TRUE, seen(tilt)), 3000.0, (2000.0, 1500.0))
    assert (found.shape, found.lean, found.tilt_deg) == pytest.approx((1.0, 0.0, tilt), abs=1e-4)
    assert found.height_mm == pytest.approx(300 - 27 * math.sin(math.radians(tilt)), abs=0.01)


def test_another_shape_does_not_fit():
    other = TRUE * np.array([1.02, 1.0])
    assert abs(pose(homography(other, seen(15.0)), 3000.0, (2000.0, 1500.0)).shape - 1) > 0.015


def test_a_page_is_turned_to_straight_above():
    picture = np.full((3000, 4000), 50000, np.uint16)
    flat = upright(picture, (TRUE, seen()), 100.0, 0.0025, 0.3)
    assert flat.um_per_px == pytest.approx(100.25)
    sides = np.linalg.norm(np.roll(flat.corners, -1, axis=0) - flat.corners, axis=1) / 10
    assert sides == pytest.approx([85.6, 53.98, 85.6, 53.98], abs=1e-6)
    assert 0.0002 < flat.u_share < 0.01
    assert flat.light[~flat.outside].min() == 50000
