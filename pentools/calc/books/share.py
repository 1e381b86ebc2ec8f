"""A share of a few jobs, such as how many came back, with an interval that never claims more than it knows."""

from __future__ import annotations

from dataclasses import dataclass

from pentools.calc.base.beta import incomplete_beta
from pentools.calc.books.few import enough
from pentools.errors import InputError

__all__ = ["Share", "share_of"]


@dataclass(frozen=True, slots=True)
class Share:
    """So many of so many.

    Parameters
    ----------
    count, n : int
        How many of how many.
    share : float
        Their ratio [1].
    low, high : float
        Ends of the interval [1].
    confidence : float
        Its level of confidence [1].
    """

    count: int
    n: int
    share: float
    low: float
    high: float
    confidence: float


def share_of(count: int, n: int, confidence: float = 0.95) -> Share | None:
    """A share with its exact interval.

    Parameters
    ----------
    count, n : int
        How many of how many, 0 <= count <= n.
    confidence : float
        Level of confidence [1], 0.5 to 0.9999.

    Returns
    -------
    Share or None
        None where there are fewer than three: too few to say.

    Raises
    ------
    InputError
        If an argument is outside its range.

    Notes
    -----
    Clopper and Pearson (1934): each end leaves half of the rest, read from the beta distribution. It covers the true
    share at least as often as it says at every n; Wilson's interval is narrower, but falls below what it says for some
    shares, and a bench with three returns of four would rather hear too wide a range than too narrow a one.

    Examples
    --------
    >>> found = share_of(9, 10)
    >>> round(found.low, 3), round(found.high, 4)
    (0.555, 0.9975)
    """
    if not 0 <= count <= n:
        raise InputError("count", f"0 to {n}", count)
    if not 0.5 <= confidence <= 0.9999:
        raise InputError("confidence", "0.5 to 0.9999", confidence)
    if not enough(n):
        return None
    rest = (1 - confidence) / 2
    low = 0.0 if count == 0 else _beta_quantile(count, n - count + 1, rest)
    high = 1.0 if count == n else 1 - _beta_quantile(n - count, count + 1, rest)
    return Share(count, n, count / n, low, high, confidence)


def _beta_quantile(a: float, b: float, probability: float) -> float:
    """Where the beta distribution has so much below it, by halving to 1e-15."""
    low, high = 0.0, 1.0
    while high - low > 1e-15:
        middle = (low + high) / 2
        if middle in (low, high):
            break
        low, high = (middle, high) if incomplete_beta(a, b, middle) < probability else (low, middle)
    return (low + high) / 2
