"""How long one further job of a kind will take: a low, a likely and a high end from the jobs that were."""

from __future__ import annotations

import functools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.uncertainty import coverage_factor, mean_and_spread
from pentools.calc.books.few import enough
from pentools.calc.books.pooled import Scatter, scatter_within
from pentools.errors import InputError

__all__ = ["LENT", "RANGE_SHARE", "ROUNDED_TO_MIN", "Ahead", "one_more", "one_of_another_kind"]

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


def one_more(
    minutes: Sequence[float],
    others: Scatter | None = None,
    share: float = RANGE_SHARE,
    *,
    rounded_to: float = ROUNDED_TO_MIN,
) -> Ahead | None:
    """The range in which one further job is to lie.

    Parameters
    ----------
    minutes : sequence of float
        What like jobs took [min], each above 0.
    others : Scatter or None
        How other kinds of job on the bench scatter about their own middle; None where nothing is known of them.
    share : float
        How often the range is to hold [1], 0.5 to 0.9999.
    rounded_to : float
        What the values are rounded to as people type them, in their own unit (amounts of money may be handed in too), 0
        or more.

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
    n = len(_above_nought(minutes))
    if not enough(n):
        return None
    middle, own = mean_and_spread([math.log(value) for value in minutes])
    lent = 0 if others is None else min(others.degrees_of_freedom, LENT)
    freedom = n - 1 + lent
    squares = (n - 1) * own**2 + (lent * others.log_spread**2 if others is not None else 0.0)
    rounding = rounded_to / math.sqrt(12) / math.exp(middle)
    spread = max(math.sqrt(squares / freedom), rounding)
    half = _factor(freedom, share) * spread * math.sqrt(1 + 1 / n)
    low, high = (math.exp(middle + sign * half) for sign in (-1, 1))
    return Ahead(n, low, math.exp(middle), high, share, spread, freedom)


def one_of_another_kind(groups: Mapping[str, Sequence[float]], share: float = RANGE_SHARE) -> Ahead | None:
    """The range in which a job of a kind that the bench hardly knows is to lie, from several other kinds.

    Parameters
    ----------
    groups : mapping of str to sequence of float
        What jobs took [min], each above 0, by kind.
    share : float
        How often the range is to hold [1], 0.5 to 0.9999.

    Returns
    -------
    Ahead or None
        None under three kinds: how kinds differ is too few to say.

    Raises
    ------
    InputError
        If a time is not above 0 and finite, or the share is outside its range.

    Notes
    -----
    Each kind counts as one, however many jobs it has: of what is often done much is known, and the job in hand is none of
    it. On the logarithms the variance is s² (1 + 1/G) + v (1 - mean of 1/n): s² that of the G kinds' means, v that of jobs
    within their kind; the factor is Student's t at G - 1.
    """
    logs = [[math.log(one) for one in _above_nought(values)] for values in groups.values() if values]
    if not enough(len(logs)):
        return None
    middle, between = mean_and_spread([math.fsum(group) / len(group) for group in logs])
    within = scatter_within(groups).log_spread
    rest = 1 - math.fsum(1 / len(group) for group in logs) / len(logs)
    spread = math.sqrt(between**2 * (1 + 1 / len(logs)) + within**2 * rest)
    half = _factor(len(logs) - 1, share) * max(spread, ROUNDED_TO_MIN / math.sqrt(12) / math.exp(middle))
    low, high = (math.exp(middle + sign * half) for sign in (-1, 1))
    return Ahead(sum(map(len, logs)), low, math.exp(middle), high, share, spread, len(logs) - 1)


def _above_nought(values: Sequence[float]) -> Sequence[float]:
    for value in values:
        if not (value > 0 and math.isfinite(value)):
            raise InputError("minutes", "above 0 and finite", value)
    return values


_factor = functools.cache(coverage_factor)
