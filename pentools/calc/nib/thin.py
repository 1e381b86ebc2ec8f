"""From a mask of ink to middle lines one element wide, and these cut into branches."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Bytes, Flags, Floats, Ints, run_bounds

__all__ = ["Branches", "branches_of", "thin"]

# neighbours clockwise from the one above, as bits
_AROUND = ((-1, 0), (-1, 1), (0, 1), (1, 1), (1, 0), (1, -1), (0, -1), (-1, -1))


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
    flat = lines.ravel()
    left = np.flatnonzero(flat)
    while True:
        before = len(left)
        for table in (_FIRST, _SECOND):
            gone = table[_codes_at(flat, left, lines.shape[1])]
            flat[left[gone]] = 0
            left = left[~gone]
        if len(left) == before:
            return lines


def _codes_at(flat: Bytes, at: Ints, wide: int) -> Bytes:
    """The neighbours of some elements as bits; none of them lies at the rim."""
    codes = np.zeros(len(at), np.uint8)
    for bit, (row, column) in enumerate(_AROUND):
        codes |= flat.take(at + (row * wide + column)) << np.uint8(bit)
    return codes


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


def _cut(lines: Bytes) -> tuple[Bytes, Ints, Ints]:
    """The lines without their forks, the branch that each element belongs to, and where the forks lie on the page laid out flat."""
    import cv2

    wide = lines.shape[1]
    flat = lines.ravel()
    there = np.flatnonzero(flat)
    at = there[_CHANGES[_codes_at(flat, there, wide)] >= 3]
    cut = lines.copy()
    cut.ravel()[(at[:, None] + _square(1, wide)).ravel()] = 0
    labels = cv2.connectedComponents(cut, connectivity=8)[1]
    return cut, labels, at


def _square(reach: int, wide: int) -> Ints:
    """Steps to the elements of a square about one, in a page laid out flat."""
    steps = np.arange(-reach, reach + 1)
    return (steps[:, None] * wide + steps).ravel()


def _without_spurs(lines: Bytes, depth: Floats) -> Bytes:
    """The lines without branches that end free and are no longer than the ink at their fork is broad."""
    cut, labels, forks = _cut(lines)
    if not len(forks):
        return lines
    count, wide = int(labels.max()) + 1, lines.shape[1]
    there = np.flatnonzero(cut)  # few elements of the whole page
    own = labels.ravel()[there]
    length = np.bincount(own, minlength=count)
    free = _COUNT[_codes_at(lines.ravel(), there, wide)] == 1
    loose = np.bincount(own[free], minlength=count)
    at_fork = np.zeros(count)
    np.maximum.at(at_fork, own, _broadest(forks, depth, wide).ravel()[there])
    spur = (loose == 1) & (at_fork > 0) & (length < 1.3 * at_fork + 2)
    spur[0] = False
    if not spur.any():
        return lines
    kept = lines.copy()
    kept.ravel()[there[spur[own]]] = 0
    return thin(kept > 0)


def _broadest(forks: Ints, depth: Floats, wide: int) -> Floats:
    """Half the breadth of the broadest fork within two elements, elsewhere nought."""
    broad = np.zeros(depth.shape, np.float32)
    at = forks[:, None] + _square(2, wide)
    inside = (at >= 0) & (at < depth.size)
    np.maximum.at(broad.ravel(), at[inside], np.repeat(depth.ravel()[forks], inside.sum(axis=1)))
    return broad


def _ordered(cut: Bytes, labels: Ints, forks: Ints, depth: Floats) -> Branches:
    """Each branch's elements from end to end, without those that are no longer than they are broad."""
    rows, columns = np.nonzero(cut)
    number = np.full(cut.shape, -1, np.int32)
    number[rows, columns] = np.arange(len(rows))
    # straight neighbours before slanting ones, so that a staircase is walked step by step
    order = [_AROUND[i] for i in (0, 2, 4, 6, 1, 3, 5, 7)]
    beside = np.stack([number[rows + dr, columns + dc] for dr, dc in order], axis=1)
    degree = (beside >= 0).sum(axis=1)
    ids = labels[rows, columns]
    starts = np.lexsort((np.arange(len(rows)), degree, ids))
    first = starts[np.unique(ids[starts], return_index=True)[1]]
    near = beside.tolist()
    walks = [_walk(int(start), near) for start in first]
    deep = depth[rows, columns]
    walks = [walk for walk in walks if len(walk) >= 2 + 2.0 * float(np.median(deep[walk]))]
    bounds = run_bounds(np.array([len(walk) for walk in walks], np.int64))
    path = np.concatenate([np.array(walk, np.int64) for walk in walks]) if walks else np.zeros(0, np.int64)
    points = np.stack([columns[path], rows[path]], axis=1).astype(np.float64)
    fork = _broadest(forks, np.ones(cut.shape, np.float32), cut.shape[1])[rows[path], columns[path]] > 0
    forked = np.stack([fork[bounds[:-1]], fork[bounds[1:] - 1]], axis=1)
    return Branches(points, bounds, _closed(points, bounds), forked)


def _walk(start: int, near: list[list[int]]) -> list[int]:
    path, seen, at = [start], {start}, start
    while True:
        for ahead in near[at]:
            if ahead >= 0 and ahead not in seen:
                break
        else:
            return path
        path.append(ahead)
        seen.add(ahead)
        at = ahead


def _closed(points: Floats, bounds: Ints) -> Flags:
    first, last = points[bounds[:-1]], points[bounds[1:] - 1]
    return (np.abs(first - last).max(axis=1) <= 1.5) & (np.diff(bounds) >= 8)
