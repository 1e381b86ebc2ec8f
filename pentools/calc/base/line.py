"""A straight line through points, with the uncertainty of its slope from n - 2."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.uncertainty import believed_spread, coverage_factor
from pentools.errors import InputError

__all__ = ["Line", "fit_line"]


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line through points.

    Parameters
    ----------
    slope, intercept : float
        The line.
    slope_uncertainty : float
        Standard uncertainty of the slope; infinite for two points of which nothing is known beforehand.
    residual_spread : float
        Standard deviation of the points from the line, with n - 2; 0 for two points.
    degrees_of_freedom : float
        Of the slope's uncertainty: n - 2, or infinite where the spread was known beforehand.
    """

    slope: float
    intercept: float
    slope_uncertainty: float
    residual_spread: float
    degrees_of_freedom: float

    def coverage(self, confidence: float = 0.95) -> float:
        """Factor from the slope's standard uncertainty to a two-sided interval: Student's t for its freedom."""
        return coverage_factor(max(self.degrees_of_freedom, 1), confidence)


def fit_line(x: Sequence[float], y: Sequence[float], known_spread: float = 0.0) -> Line:
    """Least squares line.

    Parameters
    ----------
    x, y : sequence of float
        At least two points with unlike x.
    known_spread : float
        The standard deviation of y that is known beforehand, such as the balance's; see `believed_spread`.

    Returns
    -------
    Line
        Slope [y/x] with its standard uncertainty.

    Raises
    ------
    InputError
        If there are fewer than two points or all x are alike.

    Notes
    -----
    u(slope) = sigma / √Σ(x - mean)², sigma from the residuals with n - 2: JCGM 100:2008, H.3.
    """
    if len(x) != len(y) or len(x) < 2:
        raise InputError("points", "at least two, with as many x as y", f"{len(x)} and {len(y)}")
    mean_x, mean_y = math.fsum(x) / len(x), math.fsum(y) / len(y)
    sxx = math.fsum((v - mean_x) ** 2 for v in x)
    if sxx == 0:
        raise InputError("points", "taken at unlike times", "all at one")
    slope = math.fsum((a - mean_x) * (b - mean_y) for a, b in zip(x, y, strict=True)) / sxx
    intercept = mean_y - slope * mean_x
    nu = len(x) - 2
    residual = math.fsum((b - intercept - slope * a) ** 2 for a, b in zip(x, y, strict=True))
    scatter = math.sqrt(residual / nu) if nu else 0.0
    sigma, freedom = believed_spread(known_spread, scatter, nu)
    if nu == 0 and known_spread == 0:
        sigma, freedom = math.inf, 0
    return Line(slope, intercept, sigma / math.sqrt(sxx), scatter, freedom)
