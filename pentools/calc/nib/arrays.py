"""Many runs of samples laid end to end in one array: means along a run that never reach into the next."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

__all__ = ["Bytes", "Flags", "Floats", "Ints", "grow", "run_bounds", "run_ids", "running_mean", "runs_of"]

_FEW = 4
Floats: TypeAlias = NDArray[np.floating]
Ints: TypeAlias = NDArray[np.integer]
Bytes: TypeAlias = NDArray[np.uint8]
Flags: TypeAlias = NDArray[np.bool_]


def run_bounds(lengths: Ints) -> Ints:
    """Where each run begins, and after the last one where it ends.

    Parameters
    ----------
    lengths : array of int
        Samples of each run [1], 0 or more.

    Returns
    -------
    array of int
        One more than there are runs [1].

    Examples
    --------
    >>> run_bounds(np.array([3, 2])).tolist()
    [0, 3, 5]
    """
    return np.concatenate([np.zeros(1, np.int64), np.cumsum(lengths, dtype=np.int64)])


def run_ids(bounds: Ints) -> Ints:
    """The run that each sample belongs to [1].

    Examples
    --------
    >>> run_ids(np.array([0, 3, 5])).tolist()
    [0, 0, 0, 1, 1]
    """
    return np.repeat(np.arange(len(bounds) - 1), np.diff(bounds))


def running_mean(values: Floats, bounds: Ints, reach: Ints | int) -> Floats:
    """The mean over a window about each sample; near a run's ends the window shrinks on both sides alike.

    Parameters
    ----------
    values : array
        One row a sample; runs end to end.
    bounds : array of int
        As of `run_bounds` [1].
    reach : array of int or int
        Samples to either side [1], 0 or more.

    Returns
    -------
    array
        Of the same shape: a straight line stays what it is, right to its ends.

    Examples
    --------
    >>> running_mean(np.array([0.0, 1.0, 2.0, 9.0]), np.array([0, 3, 4]), 2).tolist()
    [0.0, 1.0, 2.0, 9.0]
    """
    ids, place = run_ids(bounds), np.arange(len(values))
    first, last = bounds[:-1][ids], bounds[1:][ids] - 1
    half = np.minimum(np.minimum(place - first, last - place), reach)
    if isinstance(reach, int) and reach <= _FEW:
        return _few_mean(values, half, reach)
    zero = np.zeros((1, *values.shape[1:]), np.float64)
    total = np.concatenate([zero, np.cumsum(values, axis=0, dtype=np.float64)])
    width = (2 * half + 1).reshape(-1, *([1] * (values.ndim - 1)))
    mean: Floats = (total[place + half + 1] - total[place - half]) / width
    return mean


def _few_mean(values: Floats, half: Ints, reach: int) -> Floats:
    """The mean over a few neighbours, added one by one in the values' own precision; those near the ends by themselves."""
    total = values.copy()
    for step in range(1, min(reach, (len(values) - 1) // 2) + 1):
        total[step:-step] += values[: -2 * step]
        total[step:-step] += values[2 * step :]
    total *= values.dtype.type(1 / (2 * reach + 1))
    for own in range(reach):
        rows = np.nonzero(half == own)[0]
        total[rows] = sum(values[rows + step] for step in range(-own, own + 1)) / values.dtype.type(2 * own + 1)
    return total


def grow(flags: Flags, bounds: Ints, reach: Ints | int) -> Flags:
    """Flags spread to their neighbours in the same run.

    Parameters
    ----------
    flags : array of bool
        One a sample; runs end to end.
    bounds : array of int
        As of `run_bounds` [1].
    reach : array of int or int
        Samples to either side [1], 0 or more.

    Returns
    -------
    array of bool
        True wherever one is within reach.

    Examples
    --------
    >>> grow(np.array([True, False, False, False]), np.array([0, 2, 4]), 1).tolist()
    [True, True, False, False]
    """
    ids, place = run_ids(bounds), np.arange(len(flags))
    total = np.concatenate([np.zeros(1, np.int64), np.cumsum(flags, dtype=np.int64)])
    low = np.maximum(place - reach, bounds[:-1][ids])
    high = np.minimum(place + reach + 1, bounds[1:][ids])
    found: Flags = total[high] > total[low]
    return found


def runs_of(flags: Flags) -> list[tuple[int, int]]:
    """Unbroken runs of True: where each begins, and where it has ended [1].

    Examples
    --------
    >>> runs_of(np.array([True, True, False, True]))
    [(0, 2), (3, 4)]
    """
    edges = np.nonzero(np.diff(np.concatenate([[0], flags.astype(np.int8), [0]])))[0].reshape(-1, 2)
    return [(int(start), int(end)) for start, end in edges]
