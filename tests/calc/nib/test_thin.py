"""Thinning and branches."""

import cv2
import numpy as np
from drawn_lines import cross

from pentools.calc.nib.thin import branches_of, thin


def branches(mask):
    depth = cv2.distanceTransform(mask.astype(np.uint8), cv2.DIST_L2, 5)
    return branches_of(thin(mask), depth)


def test_a_bar_is_one_line_in_its_middle():
    mask = np.zeros((60, 200), bool)
    mask[25:32, 20:180] = True
    found = branches(mask)
    assert len(found.bounds) == 2
    assert abs(found.points[:, 1] - 28).max() <= 1
    assert 148 <= len(found.points) <= 160
    steps = np.abs(np.diff(found.points, axis=0)).max(axis=1)
    assert (steps == 1).all(), "end to end without a leap"


def test_a_cross_is_four_branches_that_end_at_a_fork():
    found = branches(cross())
    assert len(found.closed) == 4
    assert (found.forked.sum(axis=1) == 1).all()


def test_a_ring_is_closed():
    mask = np.zeros((120, 120), np.uint8)
    cv2.circle(mask, (60, 60), 40, 1, 7)
    found = branches(mask > 0)
    assert found.closed.tolist() == [True]


def test_a_spur_is_pruned_and_a_dot_is_no_line():
    mask = np.zeros((60, 200), bool)
    mask[25:32, 20:180] = True
    mask[20:25, 100:102] = True
    mask[5:10, 5:10] = True
    assert len(branches(mask).closed) == 1


def test_no_ink_no_branch():
    found = branches(np.zeros((40, 40), bool))
    assert len(found.closed) == 0
