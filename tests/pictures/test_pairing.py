"""A pair in one frame: the same point at the same place, cut to what both show; or half of each in one picture."""

from pathlib import Path

import cv2
import numpy as np
import pytest
from PIL import Image

from pentools.pictures.matching import Unlike
from pentools.pictures.pairing import half_and_half, largest_box, pair_of

SAMPLES = Path(__file__).resolve().parents[2] / "sample_jobs"


def pen(moment, job="green-piston"):
    return Image.open(SAMPLES / job / "photos" / f"side-{moment}.jpg").convert("RGB")


def moved(picture, right, down, size=1.0):
    shift = np.float32([[size, 0, right], [0, size, down]])
    return Image.fromarray(cv2.warpAffine(np.asarray(picture), shift, picture.size, borderValue=(200, 200, 200)))


def test_a_pair_is_of_one_size_and_the_same_point_lies_at_the_same_place():
    before = pen("before")
    pair = pair_of(before, moved(before, 60, 25, 0.95))
    assert pair.aligned
    assert pair.before.size == pair.after.size
    one, two = (np.asarray(p.convert("L")).astype(float)[20:-20, 20:-20] for p in (pair.before, pair.after))
    assert np.abs(one - two).mean() < 2.5  # apart by a pixel it is 4 and more
    assert pair.before.height < before.height


def test_what_only_one_shows_is_cut_off():
    before = pen("before")
    pair = pair_of(before, moved(before, 150, 0))
    # the right tenth of the first is out of the second: 150 px of 1500, less a field of the grid
    assert pair.before.width == pytest.approx(1350, abs=12)
    assert (np.asarray(pair.after) == 200).all(axis=2).mean() < 0.001


def test_two_that_share_too_little_stay_as_they_are():
    before = pen("before")
    pair = pair_of(before, moved(before, 0, 0, 2.4).crop((0, 0, 1500, 690)))
    assert not pair.aligned
    assert isinstance(pair.alignment, Unlike)
    assert "share too small a part" in pair.alignment.reason
    assert pair.before is before


def test_unlike_pictures_stay_as_they_are():
    one, two = pen("before"), pen("after", "mixed-dates")
    pair = pair_of(one, two)
    assert (pair.before, pair.after, pair.aligned) == (one, two, False)


def test_the_largest_box_is_the_largest():
    rng = np.random.default_rng(2)
    for _ in range(20):
        covered = rng.random((9, 12)) > 0.25
        left, top, right, bottom = largest_box(covered)
        assert covered[top:bottom, left:right].all()
        boxes = (
            (r - x) * (b - t)
            for t in range(9) for b in range(t + 1, 10) for x in range(12) for r in range(x + 1, 13)
            if covered[t:b, x:r].all()
        )  # fmt: skip
        assert (right - left) * (bottom - top) == max(boxes)
    assert largest_box(np.zeros((5, 5), bool)) == (0, 0, 0, 0)
    assert largest_box(np.ones((690, 1500), bool))[2] > 1480


@pytest.mark.parametrize(("size", "split"), [((400, 200), "left"), ((200, 400), "top")])
def test_the_first_is_on_the_left_or_above(size, split):
    made = half_and_half(Image.new("RGB", size, (90, 0, 0)), Image.new("RGB", size, (0, 0, 90)))
    wide, high = size
    first = (wide // 4, high // 2) if split == "left" else (wide // 2, high // 4)
    second = (3 * wide // 4, high // 2) if split == "left" else (wide // 2, 3 * high // 4)
    assert (made.size, made.getpixel(first), made.getpixel(second)) == (size, (90, 0, 0), (0, 0, 90))


@pytest.mark.parametrize(("size", "split"), [((480, 200), "left"), ((200, 480), "above")])
def test_each_half_is_named_at_its_own_outer_corner(size, split):
    ground = (90, 0, 0)
    made = np.asarray(half_and_half(Image.new("RGB", size, ground), Image.new("RGB", size, ground))).astype(int)
    label = (made.min(axis=2) > 180).astype(np.uint8)  # the pale ground of the two words
    label[:, size[0] // 2 - 4 : size[0] // 2 + 4] *= split != "left"
    label[size[1] // 2 - 4 : size[1] // 2 + 4] *= split == "left"
    rows, columns = np.nonzero(label)
    em = max(9.0, min(size[0], 2.2 * size[1]) / 48)
    if split == "left":
        assert rows.max() < 3 * em
        assert 0.2 * em < columns.min() < 0.6 * em
        assert columns.max() > size[0] - 1 - 0.6 * em
    else:
        assert columns.max() < 6 * em
        assert rows.min() < 0.7 * em
        assert columns.min() > 0.2 * em
        assert size[1] / 2 < rows.max() < size[1] / 2 + 3 * em
