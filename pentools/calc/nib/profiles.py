"""Middle lines made smooth, and the ink across them: cuts square to a stroke, and where they cross its edges."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from pentools.calc.nib.arrays import Flags, Floats, Ints, run_bounds, run_ids, running_mean
from pentools.calc.nib.chains import Chains
from pentools.calc.nib.sampling import read_at

__all__ = ["STEP", "Cuts", "Lines", "cut_across", "edges_of", "lines_along", "recentred"]

STEP = 0.5
"""Way between two readings of a cut [px]."""


@dataclass(frozen=True, slots=True)
class Lines:
    """Points evenly set along strokes.

    Parameters
    ----------
    points, normals : array
        Place [px of the page] and the way square to the stroke (length 1), shape (n, 2).
    half : array
        Half of the width there, roughly [px].
    bridged : array of bool
        Where two branches were joined.
    bounds : array of int
        Where each stroke begins, and where the last one ends [1].
    closed : array of bool
        One a stroke: whether it runs back into itself.
    forked : array of bool
        One a stroke: whether one of its ends lies at a fork.
    step : array
        Way between two points of a stroke [px], one a stroke.
    """

    points: Floats
    normals: Floats
    half: Floats
    bridged: Flags
    bounds: Ints
    closed: Flags
    forked: Flags
    step: Floats


@dataclass(frozen=True, slots=True)
class Cuts:
    """Ink across strokes.

    Parameters
    ----------
    ink : array
        Share of the paper's light that is missing [1], one row a point, shape (n, p).
    first : float
        Where a row begins, square to the stroke from its middle [px], below 0; its readings are `STEP` apart.
    """

    ink: Floats
    first: float


def lines_along(chains: Chains, step_px: float, past_end_px: float) -> Lines:
    """Even points along each stroke, and a little past its open ends.

    Parameters
    ----------
    chains : Chains
        Strokes as joined branches.
    step_px : float
        Way between points [px], above 0.
    past_end_px : float
        How far past an end, beyond the half width that a middle line ends short by [px], 0 or more.

    Returns
    -------
    Lines
        Smoothed over about a width.
    """
    reach = np.maximum(np.round(0.5 * chains.half).astype(np.int64), 2)
    smooth = running_mean(chains.points, chains.bounds, reach)
    half = running_mean(chains.half, chains.bounds, reach)
    points, halves, flags, lengths = [], [], [], []
    for start, end, closed in zip(chains.bounds[:-1], chains.bounds[1:], chains.closed, strict=True):
        part = smooth[start:end]
        before = after = 0
        if not closed:
            part, before, after = _lengthened(part, 1.3 * float(np.median(half[start:end])) + past_end_px)
        along = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(part, axis=0), axis=1))])
        count = max(3, round(float(along[-1]) / step_px) + 1)
        at = np.linspace(0.0, along[-1], count)
        points.append(np.stack([np.interp(at, along, part[:, 0]), np.interp(at, along, part[:, 1])], axis=1))
        own = along[before : len(along) - after]
        halves.append(np.interp(at, own, half[start:end]))
        flags.append(np.interp(at, own, chains.bridged[start:end].astype(float)) > 0.5)
        lengths.append(count)
    bounds = run_bounds(np.array(lengths, np.int64))
    place = np.concatenate(points) if points else np.zeros((0, 2))
    broad = np.concatenate(halves) if halves else np.zeros(0)
    bridged = np.concatenate(flags) if flags else np.zeros(0, np.bool_)
    return _with_normals(
        Lines(place, place, broad, bridged, bounds, chains.closed, chains.forked, np.zeros(len(lengths)))
    )


def _lengthened(part: Floats, by: float) -> tuple[Floats, int, int]:
    back = min(len(part) - 1, max(3, int(by)))
    start, end = part[0] - part[back], part[-1] - part[-1 - back]
    out = [way / max(float(np.linalg.norm(way)), 1e-9) for way in (start, end)]
    return np.concatenate([[part[0] + by * out[0]], part, [part[-1] + by * out[1]]]), 1, 1


def _with_normals(lines: Lines) -> Lines:
    """The same with the way square to the stroke, taken over about its width."""
    ids = run_ids(lines.bounds)
    first, last = lines.bounds[:-1], lines.bounds[1:] - 1
    gaps = np.linalg.norm(np.diff(lines.points, axis=0), axis=1)
    inside = np.diff(ids) == 0
    step = np.bincount(ids[:-1][inside], gaps[inside], minlength=len(first)) / np.maximum(last - first, 1)
    reach = np.maximum(2, np.round(0.7 * lines.half / np.maximum(step[ids], 1e-9))).astype(np.int64)
    place = np.arange(len(ids))
    ahead, behind = np.minimum(place + reach, last[ids]), np.maximum(place - reach, first[ids])
    way = lines.points[ahead] - lines.points[behind]
    way /= np.maximum(np.linalg.norm(way, axis=1, keepdims=True), 1e-9)
    return replace(lines, normals=np.stack([-way[:, 1], way[:, 0]], axis=1), step=step)


def cut_across(light: Floats, level: Floats, lines: Lines, rows: Ints, reach_px: float) -> Cuts:
    """Read the page across strokes.

    Parameters
    ----------
    light : array
        Linear brightness of the page, 0 to `tone.FULL`.
    level : array
        Brightness of bare paper at each point, in the same count.
    lines : Lines
        The points.
    rows : array of int
        Which of them [1].
    reach_px : float
        How far to either side [px].

    Returns
    -------
    Cuts
        One row a point, smoothed over one element across the stroke.
    """
    import cv2

    count = int(np.ceil(reach_px / STEP))
    offsets = (np.arange(-count, count + 1) * STEP).astype(np.float32)
    middle = (
        np.round(2 * lines.points[rows]) / 2
    )  # whole steps: a line along the rows is then read where its elements are
    kernel = np.array([[0.25, 0.5, 0.25]], np.float32)
    ways = lines.normals[rows].astype(np.float32)
    x, y = (middle[:, k : k + 1].astype(np.float32) + ways[:, k : k + 1] * offsets for k in (0, 1))
    ink = read_at(light, x, y)
    ink /= -level[rows, None].astype(np.float32)
    ink += 1.0
    return Cuts(cv2.filter2D(ink, -1, kernel, borderType=cv2.BORDER_REPLICATE) if len(ink) else ink, float(offsets[0]))


def edges_of(cuts: Cuts, level: Floats) -> tuple[Floats, Floats, Flags]:
    """Where ink falls under a level, going out from the middle to either side.

    Parameters
    ----------
    cuts : Cuts
        Ink across strokes.
    level : array
        The level [1], one a row.

    Returns
    -------
    low, high : array
        Places [px from the middle], below and above it.
    found : array of bool
        False where the middle is bare, or ink runs on to the end of the cut.
    """
    ink = cuts.ink
    middle = ink.shape[1] // 2
    under = ink < level[:, None]
    high_at = np.argmax(under[:, middle:], axis=1) + middle
    low_at = middle - np.argmax(under[:, middle::-1], axis=1)
    rows = np.arange(len(ink))
    found = ~under[:, middle] & under[rows, high_at] & under[rows, low_at]
    high_at, low_at = np.maximum(high_at, 1), np.minimum(low_at, ink.shape[1] - 2)
    high = high_at - _share(ink[rows, high_at], ink[rows, high_at - 1], level)
    low = low_at + _share(ink[rows, low_at], ink[rows, low_at + 1], level)
    return cuts.first + STEP * low, cuts.first + STEP * high, found


def _share(under: Floats, over: Floats, level: Floats) -> Floats:
    """How far from the reading under a level it is reached, as a share of the way to the reading over it."""
    rise = over - under
    return np.where(rise > 1e-9, (level - under) / np.where(rise > 1e-9, rise, 1.0), 0.0)


def recentred(lines: Lines, middle: Floats, sure: Flags) -> Lines:
    """The same points moved to the middle between the edges, and smoothed again.

    Parameters
    ----------
    lines : Lines
        The points.
    middle : array
        Where the middle lies [px from the point, square to the stroke].
    sure : array of bool
        Where that is known; elsewhere it is taken from the neighbours.

    Returns
    -------
    Lines
        With new points and ways.
    """
    ids = run_ids(lines.bounds)
    known = np.where(sure, middle, 0.0)
    weight = sure.astype(np.float64)
    reach = np.maximum(2, np.round(0.8 * lines.half / np.maximum(lines.step[ids], 1e-9))).astype(np.int64)
    total, share = running_mean(known, lines.bounds, reach), running_mean(weight, lines.bounds, reach)
    shift = _filled(total / np.maximum(share, 0.05), share > 0.05, lines.bounds)
    limit = lines.half
    points = lines.points + lines.normals * np.clip(shift, -limit, limit)[:, None]
    return _with_normals(replace(lines, points=running_mean(points, lines.bounds, np.maximum(reach // 2, 1))))


def _filled(values: Floats, known: Flags, bounds: Ints) -> Floats:
    """Values with what is not known taken from the neighbours in the same run; 0 where none is known."""
    filled = np.where(known, values, 0.0)
    for start, end in pairwise(bounds):
        own = known[start:end]
        if own.any() and not own.all():
            place = np.arange(end - start)
            filled[start:end] = np.interp(place, place[own], values[start:end][own])
    return filled
