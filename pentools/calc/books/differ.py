"""Whether jobs with something took longer than those without it, told only where the data show it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.uncertainty import coverage_factor, mean_and_spread
from pentools.calc.books.few import enough
from pentools.errors import InputError

__all__ = ["Difference", "difference"]


@dataclass(frozen=True, slots=True)
class Difference:
    """How two sorts of job differ.

    Parameters
    ----------
    with_it, without : int
        How many of each.
    ratio, low, high : float
        The middle of those with it over that of those without [1], and the ends of its interval.
    confidence : float
        Its level of confidence [1].
    """

    with_it: int
    without: int
    ratio: float
    low: float
    high: float
    confidence: float

    @property
    def shown(self) -> bool:
        """Whether the interval leaves out that there is no difference."""
        return self.low > 1 or self.high < 1


def difference(with_it: Sequence[float], without: Sequence[float], confidence: float = 0.95) -> Difference | None:
    """By what factor jobs with something differ from those without.

    Parameters
    ----------
    with_it, without : sequence of float
        Values above 0 in one unit, such as minutes.
    confidence : float
        Level of confidence [1], 0.5 to 0.9999; for one of k questions asked of the same jobs, 1 - 0.05 / k.

    Returns
    -------
    Difference or None
        None where there are fewer than three of either, or neither scatters: too few to say.

    Raises
    ------
    InputError
        If a value is not above 0 and finite, or the confidence is outside its range.

    Notes
    -----
    Student's test on the logarithms with the variance of both together; good where both scatter alike.

    Examples
    --------
    >>> found = difference([80, 100, 125], [40, 50, 62.5])
    >>> round(found.ratio, 2), found.shown
    (2.0, True)
    """
    for value in (*with_it, *without):
        if not (value > 0 and math.isfinite(value)):
            raise InputError("values", "above 0 and finite", value)
    if not (enough(len(with_it)) and enough(len(without))):
        return None
    (mean, spread), (other, others) = (mean_and_spread([math.log(v) for v in values]) for values in (with_it, without))
    n, m = len(with_it), len(without)
    squares = (n - 1) * spread**2 + (m - 1) * others**2
    if squares <= 0:
        return None
    half = coverage_factor(n + m - 2, confidence) * math.sqrt(squares / (n + m - 2) * (1 / n + 1 / m))
    ratio, low, high = (math.exp(mean - other + side) for side in (0.0, -half, half))
    return Difference(n, m, ratio, low, high, confidence)
