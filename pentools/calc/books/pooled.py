"""Groups with few pens each lean on one another: a shrunk mean of the logarithm of what was measured."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.uncertainty import coverage_factor
from pentools.errors import InputError

__all__ = ["FEWEST_GROUPS", "Pooling", "Scatter", "Shrunk", "pooled", "scatter_within"]

FEWEST_GROUPS = 4
"""Under four groups nothing can be said of how groups differ, so that none leans on the others; judged."""


@dataclass(frozen=True, slots=True)
class Scatter:
    """How jobs of one kind scatter about their own middle, over several kinds.

    Parameters
    ----------
    log_spread : float
        Standard deviation of the natural logarithm [1].
    degrees_of_freedom : int
        Jobs less groups, 0 where nothing is known.
    """

    log_spread: float
    degrees_of_freedom: int


@dataclass(frozen=True, slots=True)
class Shrunk:
    """What a group of a few comes to when it leans on the others.

    Parameters
    ----------
    n : int
        How many jobs in it.
    own : float
        Their own geometric mean, in the values' unit.
    likely, low, high : float
        The shrunk mean and the ends of its interval, in the values' unit.
    lean : float
        How far it was moved to the middle of all [1]: 0 not at all, 1 wholly.
    """

    n: int
    own: float
    likely: float
    low: float
    high: float
    lean: float


@dataclass(frozen=True, slots=True)
class Pooling:
    """Several groups taken together.

    Parameters
    ----------
    groups : mapping of str to Shrunk
        In the order given.
    within, between : float
        Standard deviations of the logarithm [1]: of jobs in their group, and of groups.
    middle : float
        The middle of the groups, in the values' unit.
    """

    groups: Mapping[str, Shrunk]
    within: float
    between: float
    middle: float


def scatter_within(groups: Mapping[str, Sequence[float]]) -> Scatter:
    """The scatter of jobs about their own group's middle, over all groups.

    Parameters
    ----------
    groups : mapping of str to sequence of float
        Values above 0 in one unit; an empty group counts for nothing.

    Returns
    -------
    Scatter
        Of their natural logarithms.

    Raises
    ------
    InputError
        If a value is not above 0 and finite.

    Notes
    -----
    The root of the pooled variance: squares about each group's mean, over jobs less groups.
    """
    logs = [_logs(values) for values in groups.values() if values]
    freedom = sum(len(group) - 1 for group in logs)
    squares = math.fsum((x - _mean(group)) ** 2 for group in logs for x in group)
    return Scatter(math.sqrt(squares / freedom) if freedom else 0.0, freedom)


def pooled(groups: Mapping[str, Sequence[float]], confidence: float = 0.95) -> Pooling | None:
    """Means of groups, each leaning on the others the more the fewer it has.

    Parameters
    ----------
    groups : mapping of str to sequence of float
        Values above 0 in one unit, such as minutes by kind of work; an empty group is left out.
    confidence : float
        Level of confidence of each interval [1], 0.5 to 0.9999.

    Returns
    -------
    Pooling or None
        None where there are fewer than four groups, or no group has two.

    Raises
    ------
    InputError
        If a value is not above 0 and finite, or the confidence is outside its range.

    Notes
    -----
    Random groups on the logarithm: y = m + g + e. The variances are those of the analysis of variance, with
    n0 = (N - Σ n² / N) / (G - 1) where groups differ in size; m is the mean weighted with 1 / (v_g + v_e / n). The shrunk
    mean is m + (1 - B)(ȳ - m), B = (v_e / n) / (v_g + v_e / n), as a mixed model gives it. Its variance is (1 - B) v_e / n +
    B² var(m), and for the doubt about B 2 B² (ȳ - m)² / (G - 1) more (after Morris 1983); the factor is Student's t at the
    degrees of freedom within groups. Good where the groups are much of a kind and jobs scatter alike in them; simulated
    coverage stands in docs/methods.md.
    """
    logs = {name: _logs(values) for name, values in groups.items() if values}
    inside = scatter_within(groups)
    if len(logs) < FEWEST_GROUPS or inside.degrees_of_freedom < 1:
        return None
    inner = inside.log_spread**2
    means = {name: _mean(group) for name, group in logs.items()}
    outer = _between(logs, means, inner)
    weights = {name: 1 / max(outer + inner / len(group), 1e-12) for name, group in logs.items()}
    whole = math.fsum(weights.values())
    middle = math.fsum(weights[name] * mean for name, mean in means.items()) / whole
    factor = coverage_factor(inside.degrees_of_freedom, confidence)
    found = {}
    for name, group in logs.items():
        own = inner / len(group)
        lean = own / (outer + own) if outer + own else 0.0
        centre = middle + (1 - lean) * (means[name] - middle)
        doubt = 2 * (lean * (means[name] - middle)) ** 2 / (len(logs) - 1)
        half = factor * math.sqrt((1 - lean) * own + lean**2 / whole + doubt)
        own_middle, likely, low, high = (math.exp(x) for x in (means[name], centre, centre - half, centre + half))
        found[name] = Shrunk(len(group), own_middle, likely, low, high, lean)
    return Pooling(found, math.sqrt(inner), math.sqrt(outer), math.exp(middle))


def _between(logs: Mapping[str, Sequence[float]], means: Mapping[str, float], inner: float) -> float:
    """The variance of groups, from the mean squares; 0 where the groups differ no more than chance makes them."""
    count, groups = sum(len(group) for group in logs.values()), len(logs)
    grand = math.fsum(x for group in logs.values() for x in group) / count
    square = math.fsum(len(group) * (means[name] - grand) ** 2 for name, group in logs.items()) / (groups - 1)
    size = (count - math.fsum(len(group) ** 2 for group in logs.values()) / count) / (groups - 1)
    return max(0.0, (square - inner) / size)


def _logs(values: Sequence[float]) -> list[float]:
    for value in values:
        if not (value > 0 and math.isfinite(value)):
            raise InputError("values", "above 0 and finite", value)
    return [math.log(value) for value in values]


def _mean(values: Sequence[float]) -> float:
    return math.fsum(values) / len(values)
