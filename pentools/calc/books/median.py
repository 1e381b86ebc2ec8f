"""The middle of a few values, with an interval that rests on no shape of their scatter."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.books.few import enough
from pentools.errors import InputError

__all__ = ["Median", "median_of", "median_rank"]

_PARTS = 10**9


@dataclass(frozen=True, slots=True)
class Median:
    """A median with its interval.

    Parameters
    ----------
    n : int
        How many values.
    median : float
        The middle one, or the mean of the two middle ones, in the values' unit.
    low, high : float
        Ends of the interval: two of the values themselves.
    coverage : float
        How often such an interval holds the true median [1], exactly.
    wanted : float
        How often it was to [1].
    """

    n: int
    median: float
    low: float
    high: float
    coverage: float
    wanted: float

    @property
    def reached(self) -> bool:
        """Whether so few values could give the coverage that was wanted."""
        return self.coverage >= self.wanted


def median_rank(n: int, confidence: float = 0.95) -> tuple[int, float]:
    """Which of n values in order, counted from either end, bound the median.

    Parameters
    ----------
    n : int
        How many values, 1 or more.
    confidence : float
        Coverage wanted [1], 0.5 to 0.9999.

    Returns
    -------
    rank : int
        The narrowest pair that covers as wanted; 1, the least and the greatest, where none does.
    coverage : float
        Its exact coverage [1].

    Raises
    ------
    InputError
        If an argument is outside its range.

    Notes
    -----
    The k-th of n from either end covers the median with 1 - 2 P(B ≤ k - 1), where B is binomial with n and 1/2: exact
    for any continuous scatter, and no less where values are equal. 95 % takes six values; five reach 93.75 %, three 75 %.

    Examples
    --------
    >>> median_rank(10), median_rank(3)
    ((2, 0.978515625), (1, 0.75))
    """
    if n < 1:
        raise InputError("values", "at least one", n)
    if not 0.5 <= confidence <= 0.9999:
        raise InputError("confidence", "0.5 to 0.9999", confidence)
    whole, allowed = 2**n, _PARTS - round(confidence * _PARTS)
    rank, term, tail = 1, 1, 1  # term: n over rank - 1; tail: the sum of terms up to it
    while 2 * (rank + 1) <= n + 1:
        term = term * (n - rank + 1) // rank
        if 2 * (tail + term) * _PARTS > allowed * whole:
            break
        rank, tail = rank + 1, tail + term
    return rank, (whole - 2 * tail) / whole if n > 1 else 0.0


def median_of(values: Sequence[float], confidence: float = 0.95) -> Median | None:
    """The median of some values with a distribution-free interval.

    Parameters
    ----------
    values : sequence of float
        Finite values in one unit.
    confidence : float
        Coverage wanted [1], 0.5 to 0.9999.

    Returns
    -------
    Median or None
        None under three values: too few to say. The coverage that was reached stands with it.

    Raises
    ------
    InputError
        If a value is not finite, or the confidence is outside its range.

    Notes
    -----
    The interval runs between two of the values themselves (`median_rank`); no shape of the scatter is assumed.

    Examples
    --------
    >>> found = median_of([40, 45, 50, 55, 60, 90])
    >>> found.median, found.low, found.high, found.coverage
    (52.5, 40, 90, 0.96875)
    """
    if not all(math.isfinite(value) for value in values):
        raise InputError("values", "finite", next(v for v in values if not math.isfinite(v)))
    n = len(values)
    rank, coverage = median_rank(max(n, 1), confidence)
    if not enough(n):
        return None
    ordered = sorted(values)
    middle = (ordered[(n - 1) // 2] + ordered[n // 2]) / 2
    return Median(n, middle, ordered[rank - 1], ordered[n - rank], coverage, confidence)
