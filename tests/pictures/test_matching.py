"""Pictures of one view are laid on each other within a few pixels; unlike ones are refused in words."""

import dataclasses
import functools
from pathlib import Path

import cv2
import numpy as np
import pytest
from PIL import Image

from pentools.pictures.matching import Agreement, Alignment, Unlike, align, judged

SAMPLES = Path(__file__).resolve().parents[2] / "sample_jobs"


@functools.cache
def pen(job, moment):
    return Image.open(SAMPLES / job / "photos" / f"side-{moment}.jpg").convert("RGB")


def taken_anew(picture, turn=7.0, size=0.9, tilt=25.0, light=0.75):
    """The picture as another photograph would have it, and the homography that did it."""
    pixels = np.asarray(picture)
    high, wide = pixels.shape[:2]
    turned = np.vstack([cv2.getRotationMatrix2D((wide / 2, high / 2), turn, size), (0, 0, 1)])
    corners = np.float32([[0, 0], [wide, 0], [wide, high], [0, high]])
    moved = cv2.perspectiveTransform(corners[None], turned)[0].astype(np.float32)
    moved += np.float32([[tilt, 0], [-tilt, tilt], [0, -tilt], [0, 0]])
    homography = cv2.getPerspectiveTransform(corners, moved)
    made = cv2.warpPerspective(pixels, homography, (wide, high), borderValue=(243, 238, 226))
    made = cv2.GaussianBlur(made, (0, 0), 1.0) / 255.0
    return Image.fromarray((255 * made**light).astype(np.uint8)), homography


def worst_px(found, homography, picture, other):
    """How far the corners of the pen lie from where they belong, in the first picture [px]."""
    wide, high = picture.size
    spots = np.float32([[[0.12 * wide, 0.55 * high], [0.87 * wide, 0.55 * high], [0.87 * wide, 0.8 * high], [0.3 * wide, 0.2 * high]]])  # fmt: skip
    back = found.matrix(picture.size, other.size) @ homography
    return float(np.abs(cv2.perspectiveTransform(spots, back) - spots).max())


@pytest.mark.parametrize("job", ["green-piston", "mixed-dates", "short-breather"])
def test_before_and_after_are_laid_on_each_other(job):
    after, homography = taken_anew(pen(job, "after"))
    found = align(pen(job, "before"), after)
    assert isinstance(found, Alignment)
    assert worst_px(found, homography, pen(job, "before"), after) < 6
    assert found.scale == pytest.approx(1 / 0.9, rel=0.05)  # the tilt adds to it


def test_the_same_homography_serves_every_size():
    before, (after, homography) = pen("green-piston", "before"), taken_anew(pen("green-piston", "after"))
    found = align(before, after)
    small = after.resize((after.width // 2, after.height // 2))
    spot = np.array([700.5, 300.5])
    there = cv2.perspectiveTransform(np.float32([[spot]]), homography)[0, 0]
    back = cv2.perspectiveTransform(np.float32([[(there + 0.5) / 2 - 0.5]]), found.matrix(before.size, small.size))[
        0, 0
    ]
    assert np.abs(back - spot).max() < 6


@pytest.mark.parametrize("other", ["mixed-dates", "short-breather", "syringe-ladder"])
def test_another_pen_on_the_same_paper_with_the_same_bar_is_refused(other):
    found = align(pen("green-piston", "after"), pen(other, "after"))
    assert isinstance(found, Unlike)
    assert found.reason


def test_another_pen_on_the_same_patterned_ground_is_refused():
    rng = np.random.default_rng(1)
    ground = cv2.GaussianBlur(rng.normal(128, 90, (690, 1500)).astype(np.float32), (0, 0), 2)
    ground = Image.fromarray(np.clip(ground, 0, 255).astype(np.uint8)).convert("RGB")

    def lying(job):
        picture = pen(job, "after")
        apart = np.abs(np.asarray(picture).astype(int) - (240, 234, 220)).sum(axis=2) > 110
        apart[590:] = False
        return Image.composite(picture, ground, Image.fromarray((255 * apart).astype(np.uint8)))

    found = align(lying("green-piston"), lying("mixed-dates"))
    assert isinstance(found, Unlike)
    assert "ground is the same" in found.reason
    assert isinstance(align(lying("green-piston"), lying("green-piston")), Alignment)


def test_the_other_side_is_refused():
    before = pen("green-piston", "before")
    assert isinstance(align(before, before.transpose(Image.Transpose.FLIP_TOP_BOTTOM)), Unlike)


def test_where_there_is_nothing_to_hold_on_to_that_is_said():
    empty = Image.new("RGB", (400, 300), "white")
    for one, two in ((empty, pen("green-piston", "after")), (empty, empty), (Image.new("RGB", (1, 1)), empty)):
        assert align(one, two) == Unlike("there is too little in them to hold on to")


GOOD = Agreement(inliers=40, hits=20, misses=8, edge_hits=0, edge_fields=40)


@pytest.mark.parametrize(("changed", "taken"), [
    ({}, True),
    ({"inliers": 12, "hits": 9, "misses": 5}, True),
    ({"inliers": 11, "hits": 9, "misses": 5}, False),
    ({"inliers": 9, "hits": 10}, True),
    ({"inliers": 8}, False),
    ({"hits": 5, "misses": 11}, True),
    ({"hits": 5, "misses": 12}, False),
    ({"hits": 4, "misses": 4}, True),
    ({"hits": 4, "misses": 5}, False),
    ({"hits": 3, "misses": 0}, False),
    ({"misses": 46}, True),
    ({"misses": 47}, False),
    ({"edge_hits": 12, "misses": 8}, True),
    ({"edge_hits": 12, "misses": 9}, False),
    ({"edge_hits": 11, "misses": 9}, True),
    ({"edge_hits": 12, "unlike": 0.08}, True),
    ({"edge_hits": 12, "unlike": 0.081}, False),
    ({"edge_hits": 11, "unlike": 0.5}, True),
])  # fmt: skip
def test_the_gate_holds_to_its_edges(changed, taken):
    assert (judged(dataclasses.replace(GOOD, **changed)) == "") is taken


def test_of_what_only_the_rest_agrees_on_more_is_asked():
    few = dataclasses.replace(GOOD, hits=5, misses=0)
    assert judged(few) == ""
    assert judged(few, first=False)
    assert judged(dataclasses.replace(few, hits=6), first=False) == ""


def test_two_pens_of_one_outline_on_the_same_paper_are_refused():
    assert isinstance(align(pen("green-piston", "after"), pen("lever-with-limits", "after")), Unlike)
