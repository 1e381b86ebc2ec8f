"""From a mask of ink to middle lines one element wide, and these cut into branches."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Bytes, Flags, Floats, Ints, run_bounds

__all__ = ["Branches", "branches_of", "thin"]

# neighbours clockwise from the one above, as bits
_AROUND = ((-1, 0), (-1, 1), (0, 1), (1, 1), (1, 0), (1, -1), (0, -1), (-1, -1))
_KERNEL = np.zeros((3, 3), np.float32)
for _bit, (_row, _column) in enumerate(_AROUND):
    _KERNEL[1 + _row, 1 + _column] = 1 << _bit


def _tables() -> tuple[Flags, Flags, Ints, Ints]:
    """For every code of neighbours: gone in the first half-step, in the second; changes round about; how many."""
    bits = (np.arange(256)[:, None] >> np.arange(8)) & 1
    changes = ((bits == 0) & (np.roll(bits, -1, axis=1) == 1)).sum(axis=1)
    count = bits.sum(axis=1)
    n, e, s, w = (bits[:, i] for i in (0, 2, 4, 6))
    edge = (count >= 2) & (count <= 6) & (changes == 1)
    return edge & (n * e * s == 0) & (e * s * w == 0), edge & (n * e * w == 0) & (n * s * w == 0), changes, count


_FIRST, _SECOND, _CHANGES, _COUNT = _tables()


@dataclass(frozen=True, slots=True)
class Branches:
    """Middle lines, point after point, one branch after the other.

    Parameters
    ----------
    points : array
        Column and row of each point [px of the mask], shape (n, 2).
    bounds : array of int
        Where each branch begins, and where the last one ends [1].
    closed : array of bool
        One a branch: whether it runs back into itself.
    forked : array of bool
        Whether a branch begins, and ends, at a fork; shape (branches, 2).
    """

    points: Floats
    bounds: Ints
    closed: Flags
    forked: Flags


def _codes(lines: Bytes) -> Bytes:
    import cv2

    found: Bytes = cv2.filter2D(lines, cv2.CV_8U, _KERNEL, borderType=cv2.BORDER_CONSTANT)
    return found


def thin(mask: Flags) -> Bytes:
    """Peel a mask from its edges until lines one element wide are left.

    Parameters
    ----------
    mask : array of bool
        Where ink is.

    Returns
    -------
    array of uint8
        1 on the middle lines.

    Notes
    -----
    Two half-steps in turn, each taking edge elements whose loss breaks nothing (Zhang and Suen, Communications of the
    ACM 27, 1984, 236).
    """
    lines = mask.astype(np.uint8)
    lines[[0, -1], :] = 0
    lines[:, [0, -1]] = 0
    tables = [table.astype(np.uint8) for table in (_FIRST, _SECOND)]
    import cv2

    while True:
        taken = 0
        for table in tables:
            gone = cv2.LUT(_codes(lines), table) & lines
            taken += int(cv2.countNonZero(gone))
            lines -= gone
        if not taken:
            return lines


def branches_of(lines: Bytes, depth: Floats) -> Branches:
    """Cut middle lines at their forks, without the spurs that a ragged edge grows.

    Parameters
    ----------
    lines : array of uint8
        As of `thin`.
    depth : array
        Distance of each element of the mask from its edge [px].

    Returns
    -------
    Branches
        Every branch ordered from end to end.
    """
    for _ in range(2):
        lines = _without_spurs(lines, depth)
    return _ordered(*_cut(lines), depth)


def _cut(lines: Bytes) -> tuple[Bytes, Ints, Flags]:
    """The lines without their forks, the branch that each element belongs to, and the forks."""
    import cv2

    forks = (cv2.LUT(_codes(lines), (_CHANGES >= 3).astype(np.uint8)) & lines).astype(np.uint8)
    near = cv2.dilate(forks, np.ones((3, 3), np.uint8))
    cut = lines * (1 - near)
    labels = cv2.connectedComponents(cut, connectivity=8)[1]
    return cut, labels, forks > 0


def _without_spurs(lines: Bytes, depth: Floats) -> Bytes:
    """The lines without branches that end free and are no longer than the ink at their fork is broad."""
    import cv2

    cut, labels, forks = _cut(lines)
    if not forks.any():
        return lines
    count = int(labels.max()) + 1
    there = cut > 0  # few elements of the whole page
    own = labels[there]
    length = np.bincount(own, minlength=count)
    free = cv2.LUT(_codes(lines), (_COUNT == 1).astype(np.uint8)) & cut
    loose = np.bincount(labels[free > 0], minlength=count)
    # the broadest fork within two elements of a branch
    broad = cv2.dilate(np.where(forks, depth, 0.0).astype(np.float32), np.ones((5, 5), np.uint8))
    at_fork = np.zeros(count)
    np.maximum.at(at_fork, own, broad[there])
    spur = (loose == 1) & (at_fork > 0) & (length < 1.3 * at_fork + 2)
    spur[0] = False
    if not spur.any():
        return lines
    kept = lines.copy()
    kept[there] = np.where(spur[own], 0, kept[there])
    return thin(kept > 0)


def _ordered(cut: Bytes, labels: Ints, forks: Flags, depth: Floats) -> Branches:
    """Each branch's elements from end to end, without those that are no longer than they are broad."""
    rows, columns = np.nonzero(cut)
    number = np.full(cut.shape, -1, np.int64)
    number[rows, columns] = np.arange(len(rows))
    # straight neighbours before slanting ones, so that a staircase is walked step by step
    order = [_AROUND[i] for i in (0, 2, 4, 6, 1, 3, 5, 7)]
    beside = np.stack([number[rows + dr, columns + dc] for dr, dc in order], axis=1)
    degree = (beside >= 0).sum(axis=1)
    ids = labels[rows, columns]
    starts = np.lexsort((np.arange(len(rows)), degree, ids))
    first = starts[np.unique(ids[starts], return_index=True)[1]]
    walks = [_walk(int(start), beside) for start in first]
    deep = depth[rows, columns]
    walks = [walk for walk in walks if len(walk) >= 2 + 2.0 * float(np.median(deep[walk]))]
    bounds = run_bounds(np.array([len(walk) for walk in walks], np.int64))
    path = np.concatenate([np.array(walk, np.int64) for walk in walks]) if walks else np.zeros(0, np.int64)
    points = np.stack([columns[path], rows[path]], axis=1).astype(np.float64)
    import cv2

    near = cv2.dilate(forks.astype(np.uint8), np.ones((5, 5), np.uint8))[rows[path], columns[path]] > 0
    forked = np.stack([near[bounds[:-1]], near[bounds[1:] - 1]], axis=1)
    return Branches(points, bounds, _closed(points, bounds), forked)


def _walk(start: int, beside: Ints) -> list[int]:
    near, path, seen, at = beside, [start], {start}, start
    while True:
        ahead = next((int(n) for n in near[at] if n >= 0 and n not in seen), -1)
        if ahead < 0:
            return path
        path.append(ahead)
        seen.add(ahead)
        at = ahead


def _closed(points: Floats, bounds: Ints) -> Flags:
    first, last = points[bounds[:-1]], points[bounds[1:] - 1]
    return (np.abs(first - last).max(axis=1) <= 1.5) & (np.diff(bounds) >= 8)
