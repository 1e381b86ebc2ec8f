"""How long one further job of a kind will take: a low, a likely and a high end from the jobs that were."""

from __future__ import annotations

import functools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.uncertainty import coverage_factor, mean_and_spread
from pentools.calc.books.few import enough
from pentools.calc.books.pooled import Scatter
from pentools.errors import InputError

__all__ = ["LENT", "RANGE_SHARE", "ROUNDED_TO_MIN", "Ahead", "one_more"]

RANGE_SHARE = 0.8
"""What share of further jobs the range is to hold: one in ten takes less, one in ten more. Judged: a wider range says
nothing to an owner, a narrower one is broken too often."""
LENT = 2
"""How many jobs' worth of scatter the bench's other kinds of work lend at most; judged."""
ROUNDED_TO_MIN = 5.0
"""What minutes are rounded to as people type them; judged. Jobs that agree to the minute do not scatter by less."""


@dataclass(frozen=True, slots=True)
class Ahead:
    """What one further job will take.

    Parameters
    ----------
    n : int
        From how many jobs.
    low, likely, high : float
        Time [min]; the likely one is as often passed as not.
    share : float
        How often the range is to hold [1].
    log_spread : float
        Standard deviation of the logarithm that was taken [1].
    degrees_of_freedom : int
        Of that.
    """

    n: int
    low: float
    likely: float
    high: float
    share: float
    log_spread: float
    degrees_of_freedom: int


def one_more(minutes: Sequence[float], others: Scatter | None = None, share: float = RANGE_SHARE) -> Ahead | None:
    """The range in which one further job is to lie.

    Parameters
    ----------
    minutes : sequence of float
        What like jobs took [min], each above 0.
    others : Scatter or None
        How other kinds of job on the bench scatter about their own middle; None where nothing is known of them.
    share : float
        How often the range is to hold [1], 0.5 to 0.9999.

    Returns
    -------
    Ahead or None
        None under three jobs: too few to say.

    Raises
    ------
    InputError
        If a time is not above 0 and finite, or the share is outside its range.

    Notes
    -----
    Minutes are taken as log-normal: they cannot be below 0, and a job goes wrong by a factor rather than by minutes. The
    range is exp(m ± t s √(1 + 1/n)), the prediction interval for one further value (Hahn and Meeker, Statistical
    Intervals, 4.7), m and s being mean and standard deviation of the logarithms. The scatter of three jobs is itself a
    guess; so the other kinds of work lend theirs, with their degrees of freedom but no more than `LENT`, and s is at
    least what rounding to five minutes makes of it. Simulated coverage stands in docs/methods.md.

    Examples
    --------
    >>> found = one_more([40, 50, 62.5])
    >>> round(found.low), round(found.likely), round(found.high)
    (31, 50, 81)
    """
    for value in minutes:
        if not (value > 0 and math.isfinite(value)):
            raise InputError("minutes", "above 0 and finite", value)
    n = len(minutes)
    if not enough(n):
        return None
    middle, own = mean_and_spread([math.log(value) for value in minutes])
    lent = 0 if others is None else min(others.degrees_of_freedom, LENT)
    freedom = n - 1 + lent
    squares = (n - 1) * own**2 + (lent * others.log_spread**2 if others is not None else 0.0)
    rounding = ROUNDED_TO_MIN / math.sqrt(12) / math.exp(middle)
    spread = max(math.sqrt(squares / freedom), rounding)
    half = _factor(freedom, share) * spread * math.sqrt(1 + 1 / n)
    low, high = (math.exp(middle + sign * half) for sign in (-1, 1))
    return Ahead(n, low, math.exp(middle), high, share, spread, freedom)


_factor = functools.cache(coverage_factor)
