"""How near two measurements lie: their distance, and how far apart readings of one and the same size may be."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.errors import InputError

__all__ = ["COVERAGE", "ROUGH_MM", "Nearness", "near"]

COVERAGE = 2.0
"""Standard uncertainties that are allowed between two readings of the same size: about 95 %."""
ROUGH_MM = 0.5
"""Standard uncertainty of a length that is read by a rule or a depth rod inside a pen [mm] (judged)."""


@dataclass(frozen=True, slots=True)
class Nearness:
    """How one measurement lies to another.

    Parameters
    ----------
    distance : float
        The other less the one, in their unit.
    window : float
        How far apart they may be and still be one size, above 0, in the same unit.
    """

    distance: float
    window: float

    @property
    def within(self) -> bool:
        """Whether they may be of one size."""
        return abs(self.distance) <= self.window * (1 + 1e-9)

    @property
    def share(self) -> float:
        """The distance as a share of what may lie between them: 1 at the edge."""
        return abs(self.distance) / self.window


def near(value: float, uncertainty: float, other: float, other_uncertainty: float) -> Nearness:
    """How near another measurement lies.

    Parameters
    ----------
    value : float
        One measurement, in any unit.
    uncertainty : float
        Its standard uncertainty in that unit, 0 or more.
    other, other_uncertainty : float
        The other one, in the same unit; the uncertainties are not both 0.

    Returns
    -------
    Nearness
        Distance, and `COVERAGE` times the root of the sum of the squared uncertainties.

    Raises
    ------
    InputError
        If an uncertainty is below 0, or both are 0.

    Notes
    -----
    Uncertainties of independent readings add as their squares (JCGM 100, 5.1.2).

    Examples
    --------
    >>> near(7.60, 0.03, 7.68, 0.04).window
    0.1
    """
    if min(uncertainty, other_uncertainty) < 0 or uncertainty == other_uncertainty == 0:
        raise InputError("uncertainty", "above 0", f"{uncertainty:g} and {other_uncertainty:g}")
    return Nearness(other - value, COVERAGE * math.hypot(uncertainty, other_uncertainty))
