"""The incomplete beta function, which tails of Student's t and of the binomial distribution are read from."""

from __future__ import annotations

import math

__all__ = ["incomplete_beta"]


def incomplete_beta(a: float, b: float, x: float) -> float:
    """The regularised incomplete beta function I_x(a, b), the tail of Student's t and of the binomial distribution.

    Parameters
    ----------
    a, b : float
        Above 0.
    x : float
        0 to 1; beyond them it is 0 or 1.

    Returns
    -------
    float
        0 to 1, to about 1e-14 for a and b up to some thousands.

    Notes
    -----
    By its continued fraction (DLMF 8.17.22, modified Lentz), on the side where that converges fast.

    Examples
    --------
    >>> round(incomplete_beta(2, 3, 0.5), 4)
    0.6875
    """
    if not 0 < x < 1:
        return min(max(x, 0.0), 1.0)
    front = math.exp(math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x))
    if x > (a + 1) / (a + b + 2):
        return 1 - front / b * _beta_fraction(b, a, 1 - x)
    return front / a * _beta_fraction(a, b, x)


def _beta_fraction(a: float, b: float, x: float) -> float:
    tiny = 1e-300
    c, d = 1.0, 1 / (1 - (a + b) * x / (a + 1) or tiny)
    value = d
    for m in range(1, 400):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for step in (even, odd):
            d = 1 / (1 + step * d or tiny)
            c = 1 + step / c or tiny
            change = c * d
            value *= change
        if abs(change - 1) < 1e-15:
            break
    return value
