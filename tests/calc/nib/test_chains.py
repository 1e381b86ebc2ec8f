"""What is joined to one stroke."""

import cv2
import numpy as np
import pytest
from drawn_lines import cross

from pentools.calc.nib.chains import LONGEST_GAP_MM, chains_of
from pentools.calc.nib.thin import branches_of, thin

UM = 84.7


def chains(mask, factor=1):
    depth = cv2.distanceTransform(mask.astype(np.uint8), cv2.DIST_L2, 5)
    return chains_of(branches_of(thin(mask), depth), depth, UM, factor)


def lines(*spans, rows=(25, 32), columns=400):
    mask = np.zeros((80, columns), bool)
    for start, end in spans:
        mask[rows[0] : rows[1], start:end] = True
    return mask


def test_a_cross_is_two_strokes():
    found = chains(cross())
    assert len(found.closed) == 2
    assert found.bridged.any()
    assert not found.forked.any()


@pytest.mark.parametrize(("gap_mm", "strokes"), [(0.5, 1), (2.0, 1), (LONGEST_GAP_MM + 0.9, 2)])
def test_a_gap_is_bridged_up_to_its_longest(gap_mm, strokes):
    at = 150 + round(1000 * gap_mm / UM)
    assert len(chains(lines((20, 150), (at, at + 130))).closed) == strokes


def test_a_line_beside_or_askew_is_another():
    mask = lines((20, 150))
    mask[38:45, 160:300] = True
    assert len(chains(mask).closed) == 2
    other = lines((20, 150)).astype(np.uint8)
    cv2.line(other, (165, 32), (220, 75), 1, 7)
    assert len(chains(other > 0).closed) == 2


def test_a_thin_line_does_not_go_on_as_a_broad_one():
    mask = lines((20, 150), rows=(26, 30))
    mask[20:36, 160:300] = True
    assert len(chains(mask).closed) == 2


def test_points_are_those_of_the_page():
    found = chains(lines((20, 150)), factor=2)
    assert found.points[:, 1].mean() == pytest.approx(2 * 28.5 - 0.5, abs=0.6)
    assert np.median(found.half) == pytest.approx(7, abs=1.5)
