"""Things with four straight sides on a page: rough outlines first, then each side to a fraction of an element."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Bytes, Flags, Floats
from pentools.calc.nib.sampling import read_at

__all__ = ["Outline", "exact", "rough_outlines", "side_lengths"]

_LEAST_SHARE, _MOST_SHARE = 0.004, 0.7  # of the page
_SOLID = 0.94
_CUTS = 160  # a side is read at so many places
_ENDS = 0.12  # of a side at each end, where its corner is round


@dataclass(frozen=True, slots=True)
class Outline:
    """Four sides, and how well they were seen.

    Parameters
    ----------
    corners : array
        Where the sides would meet if corners were sharp [px], shape (4, 2), going round.
    off_px : float
        Scatter of a side's edge about its line [px].
    seen : float
        Share of all cuts in which an edge was found [1], the worst side.
    rounding : array
        Where the outline passes each corner, as a distance from it on the way to the middle [px], shape (4,).
    """

    corners: Floats
    off_px: float
    seen: float
    rounding: Floats


def rough_outlines(grey: Bytes) -> list[Floats]:
    """Outlines that look like four sides on a page made small.

    Parameters
    ----------
    grey : array of uint8
        One brightness, about 1200 elements long.

    Returns
    -------
    list of array
        Four corners each [px], shape (4, 2).
    """
    import cv2

    found: list[Floats] = []
    size = grey.shape[0] * grey.shape[1]
    for mask in _masks(grey):
        for contour in cv2.findContours(mask, cv2.RETR_LIST, cv2.CHAIN_APPROX_NONE)[0]:
            if len(contour) < 60:
                continue
            wide, high = cv2.boundingRect(contour)[2:]
            if wide * high < _LEAST_SHARE * size:
                continue
            hull = cv2.convexHull(contour)
            area = cv2.contourArea(hull)
            if not _LEAST_SHARE * size <= area <= _MOST_SHARE * size:
                continue
            corners = _four(hull)
            if (
                corners is not None
                and area >= _SOLID * cv2.contourArea(corners.astype(np.float32))
                and _cardlike(corners)
            ):
                found.append(_sharpened(corners, contour[:, 0].astype(np.float64)))
    return _unlike(found)


def _masks(grey: Bytes) -> list[Bytes]:
    import cv2

    smooth = cv2.GaussianBlur(grey, (0, 0), 1.2)
    square = np.ones((3, 3), np.uint8)
    masks = []
    for low, high in ((8, 24), (25, 75)):
        masks.append(cv2.morphologyEx(cv2.Canny(smooth, low, high), cv2.MORPH_CLOSE, np.ones((5, 5), np.uint8)))
    level = int(np.median(smooth))
    far = cv2.absdiff(smooth, np.full_like(smooth, level))
    for step in (6, 14, 30, 60):
        masks.append(cv2.morphologyEx((far > step).astype(np.uint8), cv2.MORPH_OPEN, square))
    otsu = cv2.threshold(smooth, 0, 255, cv2.THRESH_BINARY + cv2.THRESH_OTSU)[1]
    return [*masks, otsu, 255 - otsu]


def _four(hull: Floats) -> Floats | None:
    """The four corners of a hull with round corners; None where it has not four sides."""
    import cv2

    around = cv2.arcLength(hull, True)
    for share in (0.02, 0.03, 0.04, 0.05):
        bent = cv2.approxPolyDP(hull, share * around, True)
        if len(bent) == 4:
            return bent[:, 0].astype(np.float64)
    return None


def side_lengths(corners: Floats) -> Floats:
    """Lengths of the sides going round, each from its corner to the next, shape (corners,), in the corners' unit."""
    lengths: Floats = np.linalg.norm(np.roll(corners, -1, axis=0) - corners, axis=1)
    return lengths


def _cardlike(corners: Floats) -> bool:
    """Whether one side is longer than the other by about what a card's is, an angle of view allowed for."""
    sides = side_lengths(corners)
    one, other = sides[0] + sides[2], sides[1] + sides[3]
    return bool(1.15 < max(one, other) / max(min(one, other), 1e-9) < 2.3 and sides.min() > 0.2 * sides.max())


def _sharpened(corners: Floats, contour: Floats) -> Floats:
    """Where the straight parts of the sides would meet: a round corner's own points lie inside that."""
    lines = []
    for i in range(4):
        start, way = corners[i], corners[(i + 1) % 4] - corners[i]
        length = float(np.linalg.norm(way))
        along = (contour - start) @ way / length**2
        off = (contour - start) @ np.array([way[1], -way[0]]) / length
        near = (along > 0.2) & (along < 0.8) & (np.abs(off) < 0.04 * length + 2)
        if near.sum() < 8:
            return corners
        points = contour[near]
        for _ in range(2):
            middle = points.mean(axis=0)
            normal = np.linalg.svd(points - middle, full_matrices=False)[2][1]
            away = np.abs((points - middle) @ normal)
            points = points[away <= np.quantile(away, 0.8) + 0.5]
        lines.append(np.array([*normal, float(normal @ middle)]))
    met = np.array([_meet(lines[i - 1], lines[i]) for i in range(4)])
    return (
        met
        if np.isfinite(met).all() and np.abs(met - corners).max() < 0.15 * np.ptp(corners, axis=0).max()
        else corners
    )


def _unlike(found: list[Floats]) -> list[Floats]:
    """Each outline once."""
    kept: list[Floats] = []
    for one in sorted(found, key=_area, reverse=True):
        middle, size = one.mean(axis=0), _area(one)
        if not any(np.linalg.norm(middle - o.mean(axis=0)) < 6 and abs(_area(o) / size - 1) < 0.06 for o in kept):
            kept.append(one)
    return kept[:40]


def _area(corners: Floats) -> float:
    x, y = corners[:, 0], corners[:, 1]
    return 0.5 * abs(float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))))


def exact(light: Floats, corners: Floats, reach_px: float) -> Outline | None:
    """The sides of a rough outline on the page itself.

    Parameters
    ----------
    light : array
        Brightness of the page, any linear count.
    corners : array
        Rough corners [px], shape (4, 2), going round.
    reach_px : float
        How far off a side may lie [px], above 2.

    Returns
    -------
    Outline or None
        None where a side leaves the page or cannot be seen.
    """
    lines: list[Floats] = []
    offs: list[float] = []
    seen: list[float] = []
    for reach in (reach_px, max(0.35 * reach_px, 6.0)):
        lines, offs, seen = [], [], []
        for i in range(4):
            side = _side(light, corners[i], corners[(i + 1) % 4], reach)
            if side is None:
                return None
            lines.append(side[0])
            offs.append(side[1])
            seen.append(side[2])
        corners = np.array([_meet(lines[i - 1], lines[i]) for i in range(4)])
        if not np.isfinite(corners).all():
            return None
    rounding = np.array([_rounding(light, corners, i) for i in range(4)])
    return Outline(corners, float(max(offs)), float(min(seen)), rounding)


def _side(light: Floats, start: Floats, end: Floats, reach: float) -> tuple[Floats, float, float] | None:
    """A line (a, b, c with a x + b y = c), the scatter about it, and the share of cuts that show it."""
    way = end - start
    length = float(np.linalg.norm(way))
    if length < 20:
        return None
    way = way / length
    out = np.array([way[1], -way[0]])
    share = np.linspace(_ENDS, 1 - _ENDS, _CUTS)
    feet = start + share[:, None] * (end - start)
    step = max(0.5, reach / 60)
    offsets = np.arange(-reach, reach + step, step)
    places = feet[:, None, :] + offsets[None, :, None] * out
    rows, columns = light.shape
    if places.min() < 1 or places[..., 0].max() > columns - 2 or places[..., 1].max() > rows - 2:
        inside = (feet.min() > 3) and feet[:, 0].max() < columns - 4 and feet[:, 1].max() < rows - 4
        if not inside:
            return None
    read = read_at(light, places[..., 0], places[..., 1]).astype(np.float64)
    return _line_through(feet, out, _edges(read, offsets))


def _edges(read: Floats, offsets: Floats) -> tuple[Floats, Flags]:
    """Where each cut has its edge, and whether it has one: a step, or the middle of a thin line."""
    import cv2

    step = offsets[1] - offsets[0]
    smooth = cv2.GaussianBlur(read.astype(np.float32), (0, 0), sigmaX=max(0.8 / step, 0.5), sigmaY=1.0).astype(
        np.float64
    )
    slope = np.gradient(smooth, axis=1)
    mean = cv2.GaussianBlur(np.median(slope, axis=0)[None].astype(np.float32), (0, 0), 1.0)[0].astype(np.float64)
    usual = int(np.argmax(np.abs(mean)))
    # the same edge all along: near where the mean cut has it, and going the same way
    near = np.abs(np.arange(len(offsets)) - usual) <= max(3, len(offsets) // 3)
    strong = np.where(near[None, :], slope * np.sign(mean[usual]), -np.inf)
    place, height = _peaks(strong, offsets)
    back = _other_side(mean, usual, step)
    if back is not None:  # a drawn outline: both its edges, and their middle
        close = np.abs(np.arange(len(offsets)) - back) <= max(2, abs(back - usual) // 2)
        place = 0.5 * (place + _peaks(np.where(close[None, :], -slope * np.sign(mean[usual]), -np.inf), offsets)[0])
    noise = np.median(np.abs(slope)) + 1e-9
    return place, height > max(4.0 * noise, 0.003 * float(np.abs(read).max()))


def _peaks(strong: Floats, offsets: Floats) -> tuple[Floats, Floats]:
    """Where each row is highest, to a fraction of a step, and how high."""
    rows = np.arange(len(strong))
    at = np.clip(np.argmax(strong, axis=1), 1, len(offsets) - 2)
    before, here, after = (np.where(np.isfinite(v), v, 0.0) for v in (strong[rows, at + k] for k in (-1, 0, 1)))
    bend = before - 2 * here + after
    shift = np.where(np.abs(bend) > 1e-9, 0.5 * (before - after) / np.where(np.abs(bend) > 1e-9, bend, 1.0), 0.0)
    return offsets[at] + np.clip(shift, -0.5, 0.5) * (offsets[1] - offsets[0]), here


def _other_side(mean: Floats, usual: int, step: float) -> int | None:
    """Where a thin line of one colour on even ground has its other edge; None where the edge is a step."""
    against = -mean * np.sign(mean[usual])
    at = int(np.argmax(against))
    level = np.cumsum(mean) * step
    dip = float(np.ptp(level[min(at, usual) : max(at, usual) + 1]))
    apart = abs(float(level[-1] - level[0]))
    return at if against[at] > 0.6 * abs(mean[usual]) and apart < 0.3 * dip else None


def _line_through(feet: Floats, out: Floats, edges: tuple[Floats, Flags]) -> tuple[Floats, float, float] | None:
    place, found = edges
    points = feet + place[:, None] * out
    keep = found.copy()
    line = np.zeros(3)
    for _ in range(4):
        if keep.sum() < 0.4 * len(keep):
            return None
        middle = points[keep].mean(axis=0)
        normal = np.linalg.svd(points[keep] - middle, full_matrices=False)[2][1]
        line = np.array([*normal, float(normal @ middle)])
        off = points @ normal - line[2]
        spread = max(1.4826 * float(np.median(np.abs(off[keep]))), 0.02)
        keep = found & (np.abs(off) < 3.5 * spread + 0.1)
    return line, float(np.sqrt(np.mean((points[keep] @ line[:2] - line[2]) ** 2))), float(keep.mean())


def _meet(one: Floats, other: Floats) -> Floats:
    both = np.stack([one[:2], other[:2]])
    if abs(float(np.linalg.det(both))) < 1e-6:
        return np.full(2, np.nan)
    return np.linalg.solve(both, np.array([one[2], other[2]]))


def _rounding(light: Floats, corners: Floats, i: int) -> float:
    """How far from a corner, on its bisector, the outline passes [px]; nan where that is not seen."""
    import cv2

    corner, before, after = corners[i], corners[i - 1], corners[(i + 1) % 4]
    short = min(float(np.linalg.norm(corner - before)), float(np.linalg.norm(corner - after)))
    inward = (before - corner) / np.linalg.norm(before - corner) + (after - corner) / np.linalg.norm(after - corner)
    inward /= max(float(np.linalg.norm(inward)), 1e-9)
    far = np.arange(-0.03 * short, 0.09 * short, max(0.25, short / 1500))
    aside = np.array([-inward[1], inward[0]]) * 0.004 * short
    sums = np.zeros(len(far))
    for shift in (-1.0, 0.0, 1.0):
        places = corner + far[:, None] * inward + shift * aside
        sums += read_at(light, places[:, 0], places[:, 1]).astype(np.float64) / 3
    step = far[1] - far[0]
    slope = np.abs(
        np.gradient(cv2.GaussianBlur(sums[None].astype(np.float32), (0, 0), max(0.006 * short / step, 1.0))[0])
    )
    at = int(np.argmax(slope))
    return float(far[at]) if slope[at] > 0 and 0 < at < len(far) - 1 else float("nan")
