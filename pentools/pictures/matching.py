"""Two pictures of one view matched by their features, behind a gate: unlike pictures are refused in words."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    import numpy as np
    from PIL.Image import Image

__all__ = ["Agreement", "Alignment", "Unlike", "align", "judged"]

_WORK_PX = 1200
_PLACES, _A_PLACE = 28, 9  # features are taken evenly: so many of each of 28 strips of the long side
_LEAST_SIZE_PX = 2.4  # smaller features are grain
_RATIO, _NEAR = 0.85, 0.76  # distance to the best match over that to the second best; cosine of two that are one
_ERROR_PX, _REACH_PX = 4.0, 4.0
_TRIES = 3
# the gate: judged, on the pairs of `tests/bench/bench_pictures.py`
_FEWEST, _INLIERS, _MANY_HITS = 9, 12, 10
_PERSPECTIVE, _SCALES, _STRETCH = 1.7, (0.4, 2.5), 1.6
_GRID, _HIT, _MISS, _CONTENT = 16, 0.2, 0.08, 3
_SAME_GROUND, _MOST_MISSES, _MOST_UNLIKE, _LEAST_HITS, _LEAST_SHARE = 0.3, 0.3, 0.08, 4, 0.3
_LATER_HITS = 6
_CLOSE_PX, _WINDOW_PX, _SHIFT_PX, _LIKE, _STRUCTURE = 800, 15, 2, 0.5, 9.0
_TOO_LITTLE = "there is too little in them to hold on to"
_NOT_ALIKE = "too few places of the one are found in the other"
_BENT = "the one would have to be bent out of shape to lie on the other"
_OTHER = "the ground is the same, and what lies on it is not"


@dataclass(frozen=True, slots=True)
class Unlike:
    """Two pictures that cannot be aligned.

    Parameters
    ----------
    reason : str
        Why, as a clause.
    """

    reason: str


@dataclass(frozen=True, slots=True)
class Agreement:
    """How well two pictures agree once one lies on the other, counted in fields of a grid.

    Parameters
    ----------
    inliers : int
        Features that agree with one homography.
    hits, misses : int
        Fields inside, with something in both pictures, that are the same, and that are not.
    edge_hits, edge_fields : int
        Fields at the edge of the picture that are the same, of those that both pictures cover.
    unlike : float
        Share of the middle's structure that is not the same seen closely, 0 to 1; 0 where the ground is not the same, for
        then it is not asked.
    """

    inliers: int
    hits: int
    misses: int
    edge_hits: int
    edge_fields: int
    unlike: float = 0.0

    @property
    def same_ground(self) -> bool:
        """Whether the edge of the one picture is that of the other."""
        return self.edge_hits >= _SAME_GROUND * max(self.edge_fields, 1)


@dataclass(frozen=True, slots=True)
class Alignment:
    """How the second of two pictures lies on the first.

    Parameters
    ----------
    homography : tuple of tuple of float
        3 × 3: from the second picture to the first, each measured in shares of its own long side.
    scale : float
        How much larger the second becomes where it lies on the first, both at one size.
    agreement : Agreement
        What it rests on.
    """

    homography: tuple[tuple[float, ...], ...]
    scale: float
    agreement: Agreement

    def matrix(self, first: tuple[int, int], second: tuple[int, int]) -> np.ndarray:
        """The same for pictures of some size.

        Parameters
        ----------
        first, second : tuple of int
            Width and height [px] of the two.

        Returns
        -------
        ndarray
            3 × 3, from pixel centres of the second to those of the first.
        """
        import numpy as np

        full = _inverse(_in_shares(first)) @ np.array(self.homography) @ _in_shares(second)
        return np.asarray(full / full[2, 2])


@dataclass(frozen=True, slots=True)
class _Features:
    """Places [px] and directions of unit length that say what is there; the grey picture, its width and height [px]."""

    places: np.ndarray
    signs: np.ndarray
    grey: np.ndarray

    @property
    def size(self) -> tuple[int, int]:
        high, wide = self.grey.shape
        return wide, high


def align(first: Image, second: Image) -> Alignment | Unlike:
    """How one picture lies on another of the same view.

    Parameters
    ----------
    first, second : PIL.Image.Image
        Upright, of any size.

    Returns
    -------
    Alignment or Unlike
        Not aligned where they do not show the same thing, where that cannot be told, or where the one would have to be
        bent: what was only lying beside the pen in both counts for nothing.

    Notes
    -----
    SIFT features (Lowe 2004) compared as root histograms, a homography by MAGSAC; then each field of a grid is asked
    whether the same features lie at the same places in both. Where the edge of the picture agrees, the ground is the
    same, so the middle must be the same too when it is looked at closely (local correlation of brightness, of either
    sign); where it does not, near a third of the fields of the middle must agree.
    """
    one, two = _features(first), _features(second)
    if one is None or two is None:
        return Unlike(_TOO_LITTLE)
    alike = two.signs @ one.signs.T
    reasons: list[str] = []
    for tried, (found, inliers) in enumerate(_homographies(one, two, alike)):
        bent = _shape(found, two.size)[1]
        homography = found if bent else _settled(found, one, two, alike)
        scale, bent = _shape(homography, two.size)
        agreement = _agreement(homography, inliers, one, two, alike) if not bent else None
        if agreement is not None and agreement.same_ground:
            agreement = replace(agreement, unlike=_unlike(homography, one, two))
        reasons.append(judged(agreement, first=tried == 0) if agreement is not None else _BENT)
        if agreement is not None and not reasons[-1]:
            shares = _in_shares(one.size) @ homography @ _inverse(_in_shares(two.size))
            rows = tuple(tuple(float(v) for v in row) for row in shares / shares[2, 2])
            return Alignment(rows, scale * max(two.size) / max(one.size), agreement)
    return Unlike(reasons[0] if reasons else _NOT_ALIKE)


def judged(found: Agreement, *, first: bool = True) -> str:
    """Why two pictures that agree so far are not of one thing; empty where they are.

    Parameters
    ----------
    found : Agreement
        What was counted.
    first : bool
        Whether it is what most features agree on; of what the others agree on more is asked.

    Returns
    -------
    str
        A clause.
    """
    inside = found.hits + found.misses
    few = found.inliers < (_FEWEST if found.hits >= _MANY_HITS else _INLIERS)
    if few or found.hits < (_LEAST_HITS if first else _LATER_HITS):
        return _NOT_ALIKE
    if found.same_ground:
        return _OTHER if found.misses > _MOST_MISSES * inside or found.unlike > _MOST_UNLIKE else ""
    share = 0.5 if found.hits == _LEAST_HITS else _LEAST_SHARE
    return _NOT_ALIKE if found.hits < share * inside else ""


def _features(picture: Image) -> _Features | None:
    """The strongest features of each part of a picture; None where there are next to none."""
    import cv2
    import numpy as np
    from PIL import Image as Images

    grey = picture.convert("L")
    grey.thumbnail((_WORK_PX, _WORK_PX), Images.Resampling.BOX)
    pixels = cv2.createCLAHE(1.0, (8, 8)).apply(np.asarray(grey))
    found, signs = cv2.SIFT.create(6000, contrastThreshold=0.015).detectAndCompute(pixels, None)
    if signs is None:
        return None
    step = max(grey.size) / _PLACES
    kept: list[int] = []
    count: dict[tuple[int, int], int] = {}
    for index in sorted(range(len(found)), key=lambda i: -found[i].response):
        place = (int(found[index].pt[0] / step), int(found[index].pt[1] / step))
        if found[index].size >= _LEAST_SIZE_PX and count.get(place, 0) < _A_PLACE:
            count[place] = count.get(place, 0) + 1
            kept.append(index)
    if len(kept) < _FEWEST:
        return None
    shares = signs[kept] / np.maximum(signs[kept].sum(axis=1, keepdims=True), 1e-6)
    places = np.array([found[i].pt for i in kept], np.float32)
    return _Features(places, np.sqrt(shares).astype(np.float32), np.asarray(grey))


def _homographies(one: _Features, two: _Features, alike: np.ndarray) -> Iterator[tuple[np.ndarray, int]]:
    """What lays the second on the first, with the count of features that agree; then what the others agree on.

    Last comes a turn with a change of size, which holds on to few features better.
    """
    import cv2
    import numpy as np

    best = np.partition(alike, -2, axis=1)[:, -2:]
    apart = np.sqrt(np.maximum(2 - 2 * best, 0))
    near, back = alike.argmax(axis=1), alike.argmax(axis=0)
    pairs = np.flatnonzero((apart[:, 1] < _RATIO * apart[:, 0]) & (back[near] == np.arange(len(near))))
    every = pairs
    for _ in range(_TRIES):
        if len(pairs) < _FEWEST:
            break
        found, mask = cv2.findHomography(
            two.places[pairs], one.places[near[pairs]], cv2.USAC_MAGSAC, _ERROR_PX, maxIters=5000, confidence=0.9999
        )
        if found is None:
            break
        agree = mask.ravel() > 0
        yield found, int(agree.sum())
        pairs = pairs[~agree]
    if len(every) >= _FEWEST:
        turn, mask = cv2.estimateAffinePartial2D(
            two.places[every], one.places[near[every]], method=cv2.RANSAC, ransacReprojThreshold=2 * _ERROR_PX, maxIters=5000, confidence=0.999,
        )  # fmt: skip
        if turn is not None:
            yield np.vstack([turn, (0.0, 0.0, 1.0)]), int(mask.sum())


def _settled(homography: np.ndarray, one: _Features, two: _Features, alike: np.ndarray) -> np.ndarray:
    """The same homography over all features that it brings together, also those that were like several others."""
    import cv2
    import numpy as np

    for reach in (2 * _REACH_PX, _REACH_PX):
        moved = cv2.perspectiveTransform(two.places[None], homography)[0]
        apart = np.hypot(moved[:, 0, None] - one.places[None, :, 0], moved[:, 1, None] - one.places[None, :, 1])
        close = np.where((apart < reach) & (alike > _NEAR), alike, -1.0)
        near = close.argmax(axis=1)
        pairs = np.flatnonzero((close.max(axis=1) > 0) & (close.argmax(axis=0)[near] == np.arange(len(near))))
        if len(pairs) < _FEWEST:
            break
        found, _ = cv2.findHomography(two.places[pairs], one.places[near[pairs]], cv2.USAC_MAGSAC, 2.0, maxIters=2000)
        if found is None or _shape(found, two.size)[1]:
            break
        homography = found
    return homography


def _shape(homography: np.ndarray, size: tuple[int, int]) -> tuple[float, bool]:
    """How much larger the second picture becomes in its middle, and whether that bends it out of shape."""
    import numpy as np

    wide, high = size
    depths = np.array([[0, 0, 1], [wide, 0, 1], [wide, high, 1], [0, high, 1]]) @ homography[2]
    if depths.min() <= 0 or depths.max() > _PERSPECTIVE * depths.min():
        return 1.0, True
    middle = homography @ np.array([wide / 2, high / 2, 1.0])
    slope = homography[:2, :2] / middle[2] - np.outer(middle[:2], homography[2, :2]) / middle[2] ** 2
    most, least = np.linalg.svd(slope, compute_uv=False)
    scale = float(np.sqrt(most * least))
    turned_over = np.linalg.det(slope) <= 0
    return scale, bool(turned_over or most > _STRETCH * least or not _SCALES[0] < scale < _SCALES[1])


def _agreement(homography: np.ndarray, inliers: int, one: _Features, two: _Features, alike: np.ndarray) -> Agreement:
    """Field by field, whether the same features lie at the same places once the second lies on the first."""
    import cv2
    import numpy as np

    wide, high = one.size
    moved = cv2.perspectiveTransform(two.places[None], homography)[0]
    within = (moved > 0).all(axis=1) & (moved < (wide, high)).all(axis=1)
    moved = moved[within]
    covered = cv2.warpPerspective(np.ones(two.size[::-1], np.float32), homography, (wide, high))
    spots = one.places.astype(int).clip(0, (wide - 1, high - 1))
    shared = covered[spots[:, 1], spots[:, 0]] > 0
    apart = (one.places[:, 0, None] - moved[None, :, 0]) ** 2 + (one.places[:, 1, None] - moved[None, :, 1]) ** 2
    same = (apart < _REACH_PX**2) & (alike[within].T > _NEAR)
    step = max(wide, high) / _GRID
    fields = (max(3, round(high / step)), max(3, round(wide / step)))

    def counted(places: np.ndarray, weights: np.ndarray) -> np.ndarray:
        ranges = ((0, high), (0, wide))
        return np.asarray(np.histogram2d(places[:, 1], places[:, 0], bins=fields, range=ranges, weights=weights)[0])

    there, here = counted(one.places[shared], np.ones(shared.sum())), counted(moved, np.ones(len(moved)))
    met = counted(one.places[shared], same.any(axis=1)[shared]) + counted(moved, same.any(axis=0))
    share = met / np.maximum(there + here, 1)
    whole = cv2.resize(covered, fields[::-1], interpolation=cv2.INTER_AREA) > 0.8
    content = (there >= _CONTENT) & (here >= _CONTENT) & whole
    inside = np.zeros(fields, bool)
    inside[1:-1, 1:-1] = True
    hit, miss = content & (share > _HIT), content & (share < _MISS)
    return Agreement(
        inliers, int((hit & inside).sum()), int((miss & inside).sum()), int((hit & ~inside).sum()), int((whole & ~inside).sum()),
    )  # fmt: skip


def _unlike(homography: np.ndarray, one: _Features, two: _Features) -> float:
    """The share of the middle's structure that does not correlate once the second lies on the first."""
    import cv2
    import numpy as np

    shrink = _CLOSE_PX / max(one.size)
    smaller = np.diag([shrink, shrink, 1.0])
    size = (round(one.size[0] * shrink), round(one.size[1] * shrink))
    first = cv2.GaussianBlur(cv2.resize(one.grey, size, interpolation=cv2.INTER_AREA).astype(np.float32), (0, 0), 1.0)
    laid = cv2.warpPerspective(two.grey.astype(np.float32), smaller @ homography, size, flags=cv2.INTER_AREA)
    second = cv2.GaussianBlur(laid, (0, 0), 1.0)
    covered = cv2.warpPerspective(np.ones(two.size[::-1], np.float32), smaller @ homography, size) > 0.99

    def near(pixels: np.ndarray) -> np.ndarray:
        return np.asarray(cv2.blur(pixels, (_WINDOW_PX, _WINDOW_PX)))

    mean, best = near(first), np.zeros(size[::-1], np.float32)
    spread = near(first * first) - mean * mean
    shifts = range(-_SHIFT_PX, _SHIFT_PX + 1)
    for right, down in ((x, y) for x in shifts for y in shifts):
        moved = np.roll(second, (down, right), (0, 1))
        other = near(moved)
        spread_there = near(moved * moved) - other * other
        together = near(first * moved) - mean * other
        best = np.maximum(best, np.abs(together) / np.sqrt(np.maximum(spread, 1e-3) * np.maximum(spread_there, 1e-3)))
    there = near(second * second) - near(second) ** 2
    seen = (spread > _STRUCTURE) & (there > _STRUCTURE) & covered
    high, wide = (length // 12 for length in size[::-1])
    inside = best[high:-high, wide:-wide][seen[high:-high, wide:-wide]]
    return float((inside < _LIKE).mean()) if inside.size else 0.0


def _in_shares(size: tuple[int, int]) -> np.ndarray:
    """From pixel centres to shares of the long side."""
    import numpy as np

    long = float(max(size))
    return np.array([[1 / long, 0, 0.5 / long], [0, 1 / long, 0.5 / long], [0, 0, 1]])


def _inverse(matrix: np.ndarray) -> np.ndarray:
    import numpy as np

    return np.asarray(np.linalg.inv(matrix))
