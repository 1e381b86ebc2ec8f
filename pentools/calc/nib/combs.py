"""Evenly spaced marks on a page: the strokes of a ruler, the fields of a printed bar. Found roughly, on a page made small."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Bytes, Flags, Floats, Ints

__all__ = ["Comb", "rough_combs"]

_LONGEST_SHARE = 0.12  # of the page: a longer line is no mark of a scale
_SHORTEST_PX = 5.0
_DIRECTIONS = 4
_SEEDS = 60
_ALIKE_DEG = 2.0
_FEWEST = 4
_OFF_STEP = 0.13  # of a step: where a mark may lie beside its place
_GAP = 3  # marks in a row that may be missing
_FULL = 0.75  # of the places of a comb a mark was seen at


@dataclass(frozen=True, slots=True)
class Comb:
    """Marks in a row.

    Parameters
    ----------
    start : array
        A point on the line that one end of the marks lies on, at the first mark [px], shape (2,).
    along, out : array
        Ways of length 1, shape (2,): from mark to mark, and from that line along the marks.
    step_px : float
        From an edge to the next of the same kind [px].
    count : int
        Steps from the first mark to the last [1].
    long_px : float
        Length of the shorter marks [px].
    filled : float
        From the edge where a mark begins to where it ends, as a share of a step [1].
    """

    start: Floats
    along: Floats
    out: Floats
    step_px: float
    count: int
    long_px: float
    filled: float


@dataclass(frozen=True, slots=True)
class _Edges:
    """Short straight edges of one direction: place across, both ends along, and whether ink begins there."""

    across: Floats
    low: Floats
    high: Floats
    begins: Flags


def rough_combs(grey: Bytes) -> list[Comb]:
    """Rows of even marks, the longest first.

    Parameters
    ----------
    grey : array of uint8
        Codes of one brightness, some 3000 elements long.

    Returns
    -------
    list of Comb
        Each row once.
    """
    import cv2

    lines = cv2.createLineSegmentDetector().detect(grey)[0]
    if lines is None:
        return []
    ends = np.asarray(lines, np.float64).reshape(-1, 2, 2)
    length = np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1)
    ends = ends[(length > _SHORTEST_PX) & (length < _LONGEST_SHARE * max(grey.shape))]
    found: list[Comb] = []
    for way in _directions(ends):
        edges = _edges_of(ends, way)
        for end in (edges.low, edges.high):
            for some in _level_with(edges, end):
                comb = _comb(edges, some, way, upwards=end is edges.low)
                if comb is not None:
                    found.append(comb)
    return _once(found)


def _directions(ends: Floats) -> list[float]:
    """Directions that many edges share [°], 0 to 180."""
    ways = ends[:, 1] - ends[:, 0]
    angles = np.degrees(np.arctan2(ways[:, 1], ways[:, 0])) % 180.0
    counts = np.bincount(np.floor(angles).astype(int) % 180, minlength=180).astype(float)
    counts = counts + np.roll(counts, 1) + np.roll(counts, -1)
    found: list[float] = []
    while len(found) < _DIRECTIONS and counts.max() >= 2 * _FEWEST:
        at = int(np.argmax(counts))
        off = (angles - at - 0.5 + 90.0) % 180.0 - 90.0
        found.append(at + 0.5 + float(np.median(off[np.abs(off) < _ALIKE_DEG])))
        counts[(at + np.arange(-3, 4)) % 180] = 0.0
    return found


def _axes(degrees: float) -> tuple[Floats, Floats]:
    """Ways along marks of a direction, and square to them."""
    turn = np.radians(degrees)
    return np.array([np.cos(turn), np.sin(turn)]), np.array([np.sin(turn), -np.cos(turn)])


def _edges_of(ends: Floats, degrees: float) -> _Edges:
    ways = ends[:, 1] - ends[:, 0]
    off = (np.degrees(np.arctan2(ways[:, 1], ways[:, 0])) - degrees + 90.0) % 180.0 - 90.0
    some = ends[np.abs(off) < _ALIKE_DEG]
    down, across = _axes(degrees)
    along = some @ down
    place = some.mean(axis=1) @ across
    return _Edges(place, along.min(axis=1), along.max(axis=1), along[:, 1] > along[:, 0])


def _level_with(edges: _Edges, end: Floats) -> list[Ints]:
    """Groups of edges that have one end on a line: those about the edges that have most others so."""
    level = np.abs(end[:, None] - end[None, :]) < 2.5 + 0.008 * np.abs(edges.across[:, None] - edges.across[None, :])
    long = edges.high - edges.low
    level &= np.maximum(long[:, None], long[None, :]) < 5 * np.minimum(long[:, None], long[None, :])
    groups: list[Ints] = []
    left = level.sum(axis=1)
    while len(groups) < _SEEDS and len(left) and left.max() >= 2 * _FEWEST:
        some = np.nonzero(level[int(np.argmax(left))])[0]
        groups.append(some)
        left[some] = 0
    return groups


def _comb(edges: _Edges, some: Ints, degrees: float, *, upwards: bool) -> Comb | None:
    begin, stop = (np.sort(edges.across[some][edges.begins[some] == kind]) for kind in (True, False))
    runs = [_even(_merged(places)) for places in (begin, stop)]
    if runs[0] is None or runs[1] is None:
        return None
    (one, step, count), (other, step_too, count_too) = runs[0], runs[1]
    if abs(step_too / step - 1) > 0.02 or min(count, count_too) < 0.6 * max(count, count_too):
        return None
    step = (step * count + step_too * count_too) / (count + count_too)
    filled = ((other - one) / step) % 1.0
    down, across = _axes(degrees)
    first, last = min(one, other), max(one + count * step, other + count_too * step)
    inside = some[(edges.across[some] > first - 0.3 * step) & (edges.across[some] < last + 0.3 * step)]
    end = (edges.low if upwards else edges.high)[inside]
    lean, level = np.polyfit(edges.across[inside] - first, end, 1)
    long = float(np.percentile((edges.high - edges.low)[inside], 20))
    along = across + lean * down
    start = across * first + down * level
    out = down if upwards else -down
    return Comb(
        start, along / np.linalg.norm(along), out, step, round((last - first) / step), long, min(filled, 1 - filled)
    )


def _merged(places: Floats) -> Floats:
    """Sorted places, those of one edge that was found in pieces taken together."""
    if not len(places):
        return places
    parts = np.split(places, np.nonzero(np.diff(places) > 1.5)[0] + 1)
    return np.array([part.mean() for part in parts])


def _even(places: Floats) -> tuple[float, float, int] | None:
    """First place, step and number of steps of the longest run of even places."""
    best: tuple[float, float, int] | None = None
    if len(places) < _FEWEST:
        return None
    for step in _steps(places):
        for seed in range(0, len(places), max(1, len(places) // 8)):
            found = _grown(places, float(places[seed]), step)
            if found is not None and (best is None or found[1] * found[2] > 1.2 * best[1] * best[2]):
                best = found
    return best


def _steps(places: Floats) -> list[float]:
    """Steps that occur often between neighbours, the smallest last."""
    gaps = np.diff(places)
    gaps = gaps[gaps > 3.0]
    found: list[float] = []
    while len(gaps) >= 3 and len(found) < 4:
        near = np.abs(gaps[:, None] / gaps[None, :] - 1) < 0.06
        best = int(np.argmax(near.sum(axis=1)))
        found.append(float(np.median(gaps[near[best]])))
        gaps = gaps[~near[best]]
    return sorted(found, reverse=True)


def _grown(places: Floats, first: float, step: float) -> tuple[float, float, int] | None:
    """A run grown from one place to both sides, its step made better as it grows."""
    at = {0: first}
    for sign in (1, -1):
        ahead, last, missed = 0, 0, 0
        while missed <= _GAP:
            ahead += sign
            wanted = at[last] + (ahead - last) * step
            near = int(np.searchsorted(places, wanted))
            beside = places[max(near - 1, 0) : near + 1]
            found = float(beside[np.argmin(np.abs(beside - wanted))])
            if abs(found - wanted) > _OFF_STEP * step or abs(found - at[last]) < 0.5 * step:
                missed += 1
                continue
            at[ahead], last, missed = found, ahead, 0
            low, high = min(at), max(at)
            if high - low >= 4:
                step = (at[high] - at[low]) / (high - low)
    span = max(at) - min(at)
    if len(at) < _FEWEST or len(at) < _FULL * (span + 1):
        return None
    slope, level = np.polyfit(list(at), list(at.values()), 1)
    return (float(level + slope * min(at)), float(slope), span) if slope > 3.0 else None


def _once(found: list[Comb]) -> list[Comb]:
    """Each row once: of those that lie over each other the longest, and of these the finest."""
    kept: list[Comb] = []
    for comb in sorted(found, key=lambda one: -one.step_px * one.count**1.3):
        middle = comb.start + 0.5 * comb.count * comb.step_px * comb.along
        if not any(_over(middle, other) for other in kept):
            kept.append(comb)
    return kept


def _over(point: Floats, comb: Comb) -> bool:
    way = point - comb.start
    return bool(
        -comb.step_px < way @ comb.along < (comb.count + 1) * comb.step_px
        and abs(way @ comb.out) < 2 * comb.long_px + 4
    )
