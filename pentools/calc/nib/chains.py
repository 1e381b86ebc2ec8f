"""Branches joined into strokes: over a crossing where they run on straight, and over a gap that the pen left empty."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats, Ints, run_bounds, running_mean
from pentools.calc.nib.thin import Branches

__all__ = ["LONGEST_GAP_MM", "Chains", "chains_of"]

LONGEST_GAP_MM = 2.6
"""A stroke that begins again after more than this is another stroke [mm]; judged."""
_STRAIGHT_ON = 0.94  # cosine of the bend that a stroke may make where it begins again
_ALIKE = 1.7  # widths on both sides of a gap differ by no more than this


@dataclass(frozen=True, slots=True)
class Chains:
    """Strokes as middle lines.

    Parameters
    ----------
    points : array
        Column and row [px of the page], shape (n, 2), one stroke after the other.
    half : array
        Half of the width there, roughly [px of the page].
    bridged : array of bool
        Points that were put in to join two branches.
    bounds : array of int
        Where each stroke begins, and where the last one ends [1].
    closed : array of bool
        One a stroke: whether it runs back into itself.
    forked : array of bool
        One a stroke: whether one of its ends lies at a fork.
    """

    points: Floats
    half: Floats
    bridged: Flags
    bounds: Ints
    closed: Flags
    forked: Flags


@dataclass(frozen=True, slots=True)
class _Ends:
    """Both ends of every open branch: place, way out, half width, and the branch with its side."""

    at: Floats
    out: Floats
    half: Floats
    branch: Ints
    side: Ints


def chains_of(branches: Branches, depth: Floats, um_per_px: float, factor: int) -> Chains:
    """Join what belongs together.

    Parameters
    ----------
    branches : Branches
        On the coarse page.
    depth : array
        Distance of each element of the mask from its edge [px of the coarse page].
    um_per_px : float
        Size of an element of the coarse page [µm], above 0.
    factor : int
        Picture elements of the page to one of the coarse page [1].

    Returns
    -------
    Chains
        In elements of the page.
    """
    at = branches.points.astype(np.int64)
    half = depth[at[:, 1], at[:, 0]].astype(np.float64)
    smooth = running_mean(branches.points, branches.bounds, 2)
    ends = _ends(branches, smooth, half)
    order = _walks(len(branches.closed), _links(ends, um_per_px))
    parts, halves, flags, closed, forked = [], [], [], [], []
    for walk in order:
        points, widths, bridged = _joined(walk, branches, smooth, half)
        parts.append(points)
        halves.append(widths)
        flags.append(bridged)
        closed.append(len(walk) == 1 and bool(branches.closed[walk[0][0]]))
        (first, turned), (last, back) = walk[0], walk[-1]
        forked.append(bool(branches.forked[first, int(turned)] or branches.forked[last, int(not back)]))
    bounds = run_bounds(np.array([len(part) for part in parts], np.int64))
    place = np.concatenate(parts) if parts else np.zeros((0, 2))
    return Chains(
        (place + 0.5) * factor - 0.5,
        (np.concatenate(halves) if halves else np.zeros(0)) * factor,
        np.concatenate(flags) if flags else np.zeros(0, np.bool_),
        bounds,
        np.array(closed, np.bool_),
        np.array(forked, np.bool_),
    )


def _ends(branches: Branches, smooth: Floats, half: Floats) -> _Ends:
    first, last = branches.bounds[:-1], branches.bounds[1:] - 1
    length = last - first
    typical = np.array([np.median(half[a : b + 1]) for a, b in zip(first, last, strict=True)])
    # the very end of a middle line bends into a corner of the ink: the way out is taken from further back
    skip = np.minimum(np.ceil(0.6 * typical).astype(np.int64) + 1, length // 3)
    back = np.minimum(skip + np.ceil(2.0 * typical).astype(np.int64) + 4, length)
    out_first = smooth[first + skip] - smooth[first + back]
    out_last = smooth[last - skip] - smooth[last - back]
    at = np.concatenate([smooth[first], smooth[last]])
    out = np.concatenate([out_first, out_last])
    out = out / np.maximum(np.linalg.norm(out, axis=1, keepdims=True), 1e-9)
    ids = np.arange(len(first))
    side = np.repeat(np.array([0, 1]), len(first))
    keep = np.tile(~branches.closed & (length >= 2), 2)
    branch = np.tile(ids, 2)
    return _Ends(at[keep], out[keep], np.tile(typical, 2)[keep], branch[keep], side[keep])


def _links(ends: _Ends, um_per_px: float) -> list[tuple[int, int, int, int]]:
    """Pairs of ends that face each other: branch and side of one, branch and side of the other."""
    found: list[tuple[float, int, int]] = []
    reach = 1000 * LONGEST_GAP_MM / um_per_px + 2 * (ends.half if len(ends.half) else np.zeros(0))
    cells = _cells(ends.at, float(reach.max()) if len(reach) else 1.0)
    for one in range(len(ends.at)):
        others = _near(cells, ends.at[one])
        others = others[others > one]
        if len(others):
            found += _faced(ends, one, others, float(reach[one]))
    taken: set[int] = set()
    links = []
    for _, one, other in sorted(found):
        if one not in taken and other not in taken:
            taken |= {one, other}
            links.append((int(ends.branch[one]), int(ends.side[one]), int(ends.branch[other]), int(ends.side[other])))
    return links


def _faced(ends: _Ends, one: int, others: Ints, reach: float) -> list[tuple[float, int, int]]:
    way = ends.at[others] - ends.at[one]
    far = np.linalg.norm(way, axis=1)
    unit = way / np.maximum(far, 1e-9)[:, None]
    turn = -(ends.out[others] @ ends.out[one])
    ahead = np.where(far > 1.5, np.minimum(unit @ ends.out[one], -(unit * ends.out[others]).sum(axis=1)), 1.0)
    broad = np.maximum(ends.half[others], ends.half[one])
    alike = broad <= _ALIKE * np.minimum(ends.half[others], ends.half[one]) + 0.7
    aside = far * np.sqrt(np.maximum(1 - np.minimum(ahead, 1.0) ** 2, 0.0))
    fits = (far < reach) & (turn > _STRAIGHT_ON) & alike & (ends.branch[others] != ends.branch[one])
    fits &= (ahead > 0) & ((ahead > _STRAIGHT_ON) | (far < 4 * broad)) & (aside <= 0.5 * broad + 1.0 + 0.06 * far)
    cost = far * (1 + 4 * (1 - turn)) + 3 * aside
    return [(float(cost[i]), one, int(others[i])) for i in np.nonzero(fits)[0]]


def _cells(at: Floats, size: float) -> tuple[float, dict[tuple[int, int], list[int]]]:
    held: dict[tuple[int, int], list[int]] = {}
    for i, (x, y) in enumerate(at):
        held.setdefault((int(x // size), int(y // size)), []).append(i)
    return size, held


def _near(cells: tuple[float, dict[tuple[int, int], list[int]]], at: Floats) -> Ints:
    size, held = cells
    x, y = int(at[0] // size), int(at[1] // size)
    found = [i for dx in (-1, 0, 1) for dy in (-1, 0, 1) for i in held.get((x + dx, y + dy), ())]
    return np.array(found, np.int64)


def _walks(count: int, links: list[tuple[int, int, int, int]]) -> list[list[tuple[int, bool]]]:
    """Branches in the order they are walked, each with whether it is walked backwards."""
    joined = {}
    for one, side, other, far_side in links:
        joined[one, side] = (other, far_side)
        joined[other, far_side] = (one, side)
    seen: set[int] = set()
    walks = []
    # from loose ends first; what is left then goes round
    starts = [(b, s) for b in range(count) for s in (0, 1) if (b, s) not in joined] + [(b, 0) for b in range(count)]
    for branch, side in starts:
        walk, at = [], (branch, side)
        while at[0] not in seen:
            seen.add(at[0])
            walk.append((at[0], at[1] == 1))
            ahead = joined.get((at[0], 1 - at[1]))
            if ahead is None:
                break
            at = ahead
        if walk:
            walks.append(walk)
    return walks


def _joined(
    walk: list[tuple[int, bool]], branches: Branches, smooth: Floats, half: Floats
) -> tuple[Floats, Floats, Flags]:
    points: list[Floats] = []
    widths: list[Floats] = []
    flags: list[Flags] = []
    for branch, backwards in walk:
        part = slice(branches.bounds[branch], branches.bounds[branch + 1])
        place, broad = smooth[part], half[part]
        if backwards:
            place, broad = place[::-1], broad[::-1]
        if points:
            bridge = _bridge(points[-1][-1], place[0])
            points.append(bridge)
            widths.append(np.full(len(bridge), 0.5 * (widths[-1][-1] + broad[0])))
            flags.append(np.ones(len(bridge), np.bool_))
        points.append(place)
        widths.append(broad)
        flags.append(np.zeros(len(place), np.bool_))
    return np.concatenate(points), np.concatenate(widths), np.concatenate(flags)


def _bridge(start: Floats, end: Floats) -> Floats:
    steps = max(2, int(np.ceil(np.linalg.norm(end - start))))
    share = np.linspace(0.0, 1.0, steps + 1)[1:-1, None]
    bridge: Floats = start + share * (end - start)
    return bridge
