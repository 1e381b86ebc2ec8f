"""The readings of one bore: their mean, how far they differ, and the one among them that stands apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["DIXON_95", "OddReading", "bore_from_readings", "odd_findings", "odd_reading"]

DIXON_95 = {3: 0.970, 4: 0.829, 5: 0.710, 6: 0.625, 7: 0.568, 8: 0.526, 9: 0.493, 10: 0.466}
"""Critical values of Dixon's Q (gap over range, two-sided 95 %) by the number of readings: Rorabacher 1991."""


@dataclass(frozen=True, slots=True)
class OddReading:
    """A reading that stands apart from the others of its bore.

    Parameters
    ----------
    place : int
        Which it is in the order typed, from 1.
    value_mm : float
        The reading [mm].
    count : int
        How many readings there are.
    low_mm, high_mm : float
        Smallest and largest of the others [mm].
    q, limit : float
        Dixon's Q, and the value above which it stands apart [1].
    mean_mm : float
        Mean of the others [mm].
    """

    place: int
    value_mm: float
    count: int
    low_mm: float
    high_mm: float
    q: float
    limit: float
    mean_mm: float

    @property
    def ovality_mm(self) -> float:
        """Largest less smallest of the others [mm]."""
        return self.high_mm - self.low_mm


def bore_from_readings(readings_mm: Sequence[float]) -> tuple[float, float]:
    """Mean and ovality of a bore measured at several angles and depths.

    Parameters
    ----------
    readings_mm : sequence of float
        Readings [mm]: best at three angles and two depths.

    Returns
    -------
    tuple of float
        Mean, and largest less smallest reading [mm].

    Raises
    ------
    InputError
        If there is no reading.

    Examples
    --------
    >>> mean, ovality = bore_from_readings((6.30, 6.34, 6.29))
    >>> round(mean, 2), round(ovality, 2)
    (6.31, 0.05)
    """
    if not readings_mm:
        raise InputError("bore", "at least one reading", "none")
    return sum(readings_mm) / len(readings_mm), max(readings_mm) - min(readings_mm)


def odd_reading(readings_mm: Sequence[float], half_width_mm: float = 0.03) -> OddReading | None:
    """The one reading that does not belong with the others.

    Parameters
    ----------
    readings_mm : sequence of float
        Readings of one bore [mm], in the order typed.
    half_width_mm : float
        Half-width of one calliper reading [mm], 0 or more.

    Returns
    -------
    OddReading or None
        None where fewer than four or more than ten were taken, or none stands apart.

    Notes
    -----
    Dixon's Q of the smallest and of the largest: gap to its neighbour over the range, odd above the critical value for
    95 % (Rorabacher, Analytical Chemistry 63, 1991, 139), asked once. Readings on a coarse scale pass that by one step,
    so the gap must also be above both half-widths of two readings (judged). An oval bore shows two or more high
    readings and is not taken for a slip.

    Examples
    --------
    >>> odd = odd_reading((8.30, 8.32, 8.29, 8.60, 8.33, 8.30))
    >>> odd.place, odd.value_mm, round(odd.q, 2)
    (4, 8.6, 0.87)
    """
    count = len(readings_mm)
    if count not in DIXON_95 or count < 4:
        return None
    ordered = sorted(readings_mm)
    gaps = {ordered[0]: ordered[1] - ordered[0], ordered[-1]: ordered[-1] - ordered[-2]}
    value, gap = max(gaps.items(), key=lambda item: item[1])
    span = ordered[-1] - ordered[0]
    if gap <= 2 * half_width_mm + 1e-9 or gap / span <= DIXON_95[count]:
        return None
    place = list(readings_mm).index(value)
    others = [reading for number, reading in enumerate(readings_mm) if number != place]
    mean = sum(others) / len(others)
    return OddReading(place + 1, value, count, min(others), max(others), gap / span, DIXON_95[count], mean)


def odd_findings(readings_mm: Sequence[float], half_width_mm: float = 0.03) -> tuple[Finding, ...]:
    """What to say of a reading that stands apart.

    Parameters
    ----------
    readings_mm : sequence of float
        Readings of one bore [mm], in the order typed.
    half_width_mm : float
        Half-width of one calliper reading [mm].

    Returns
    -------
    tuple of Finding
        One, or none where no reading stands apart.
    """
    odd = odd_reading(readings_mm, half_width_mm)
    if odd is None:
        return ()
    return (
        Finding(
            "warning", "seal.odd-reading",
            place=odd.place, value=odd.value_mm, count=odd.count, low=odd.low_mm, high=odd.high_mm, q=odd.q,
            limit=odd.limit, mean=odd.mean_mm, ovality=odd.ovality_mm,
        ),
    )  # fmt: skip
