"""Coverage factors: Student's t from the incomplete beta function, with no statistics library."""

from __future__ import annotations

import math

from pentools.errors import InputError

__all__ = ["coverage_factor"]


def coverage_factor(degrees_of_freedom: float, confidence: float = 0.95) -> float:
    """Factor from standard to expanded uncertainty.

    Parameters
    ----------
    degrees_of_freedom : float
        Effective degrees of freedom, 1 or more; infinite gives the normal distribution. A broken number is cut
        down to a whole one first, as JCGM 100 G.4.1 allows.
    confidence : float
        Level of confidence [1], 0.5 to 0.9999.

    Returns
    -------
    float
        Two-sided quantile of Student's t.

    Raises
    ------
    InputError
        If an argument is outside its range.

    Notes
    -----
    JCGM 100:2008, G.3 and table G.2. Found by bisection to 1e-12 on the incomplete beta function.

    Examples
    --------
    >>> round(coverage_factor(16), 3)
    2.12
    """
    if not degrees_of_freedom >= 1:
        raise InputError("degrees of freedom", "1 or more", degrees_of_freedom)
    if not 0.5 <= confidence <= 0.9999:
        raise InputError("confidence", "0.5 to 0.9999", confidence)
    nu = math.floor(degrees_of_freedom) if math.isfinite(degrees_of_freedom) else math.inf

    def within(t: float) -> float:
        return math.erf(t / math.sqrt(2)) if nu > 1e6 else _t_tail(t, nu)

    low, high = 0.0, 7000.0
    while high - low > 1e-12 * max(1.0, high):
        middle = (low + high) / 2
        low, high = (middle, high) if within(middle) < confidence else (low, middle)
    return (low + high) / 2


def _t_tail(t: float, nu: float) -> float:
    """Two-sided probability within ±t, by the continued fraction of the incomplete beta function."""
    x = nu / (nu + t * t)
    return 1 - _incomplete_beta(nu / 2, 0.5, x)


def _incomplete_beta(a: float, b: float, x: float) -> float:
    if x <= 0:
        return 0.0
    if x >= 1:
        return 1.0
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
