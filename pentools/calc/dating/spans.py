"""Sets of days: what several of them have in common, and the largest agreements among sets that do not all agree."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from pentools.calc.dating.interval import Span, merge_spans

__all__ = ["ANY_DAY", "Agreement", "intersect", "largest_agreements", "years_left"]

ANY_DAY: tuple[Span, ...] = ((None, None),)
"""No limit at either end."""

_DAYS_A_YEAR = 365.2425
_BEFORE_ALL = 0  # day numbers start at 1


@dataclass(frozen=True, slots=True)
class Agreement:
    """Sets that agree on some days and to which no further one can be added.

    Parameters
    ----------
    members : int
        Which sets, as bits.
    weight : int
        Their weights together.
    spans : tuple of Span
        The days they have in common.
    """

    members: int
    weight: int
    spans: tuple[Span, ...]


def intersect(sets: Iterable[Sequence[Span]]) -> tuple[Span, ...]:
    """The days that all sets have in common.

    Parameters
    ----------
    sets : iterable of sequence of Span
        Each sorted and its spans apart, as `merge_spans` gives them; none at all means any day.

    Returns
    -------
    tuple of Span
        The days in common; empty where there are none.

    Examples
    --------
    >>> intersect([((1, 9), (20, None)), ((5, 21),)])
    ((5, 9), (20, 21))
    """
    common: tuple[Span, ...] = ANY_DAY
    for spans in sets:
        common = merge_spans(both for a in common for b in spans if (both := _overlap(a, b)) is not None)
    return common


def _overlap(a: Span, b: Span) -> Span | None:
    first = a[0] if b[0] is None else b[0] if a[0] is None else max(a[0], b[0])
    last = a[1] if b[1] is None else b[1] if a[1] is None else min(a[1], b[1])
    return None if first is not None and last is not None and last < first else (first, last)


def years_left(spans: Sequence[Span]) -> float:
    """How long some days are together.

    Parameters
    ----------
    spans : sequence of Span
        The days.

    Returns
    -------
    float
        Years of 365.2425 days; infinite where an end is open, 0 for no days.

    Examples
    --------
    >>> round(years_left([(1, 731)]), 2)
    2.0
    """
    days = 0
    for first, last in spans:
        if first is None or last is None:
            return math.inf
        days += last - first + 1
    return days / _DAYS_A_YEAR


def largest_agreements(sets: Sequence[Sequence[Span]], weights: Sequence[int]) -> tuple[Agreement, ...]:
    """All agreements to which no further set can be added.

    Parameters
    ----------
    sets : sequence of sequence of Span
        Days allowed by each; sorted and apart.
    weights : sequence of int
        Weight of each [1 or more].

    Returns
    -------
    tuple of Agreement
        In the order of their first days.

    Notes
    -----
    A sweep along the days: each set begins and ends at its bounds, and an agreement is complete where a set ends
    after one has begun. For single intervals these are exactly the maximal cliques of the interval graph; where a
    set has several spans, agreements within larger ones are taken out afterwards. No subset is
    tried one by one, so the work grows as n log n for single intervals.

    Examples
    --------
    >>> [bin(a.members) for a in largest_agreements([((1, 5),), ((4, 9),), ((8, 9),)], [1, 1, 1])]
    ['0b11', '0b110']
    """
    begins: dict[int, list[int]] = {}
    ends: dict[int, list[int]] = {}
    for number, spans in enumerate(sets):
        for first, last in spans:
            begins.setdefault(_BEFORE_ALL if first is None else first, []).append(number)
            if last is not None:
                ends.setdefault(last + 1, []).append(number)
    found = _sweep(begins, ends, weights)
    several = any(len(spans) > 1 for spans in sets)
    return tuple(
        Agreement(bits, total, tuple(spans))
        for bits, (total, spans) in found.items()
        if not several or not any(bits != other and bits & other == bits for other in found)
    )


def _sweep(
    begins: dict[int, list[int]], ends: dict[int, list[int]], weights: Sequence[int]
) -> dict[int, tuple[int, list[Span]]]:
    """Which sets hold where a set ends after one has begun: bits -> weight and days."""
    found: dict[int, tuple[int, list[Span]]] = {}
    members, weight, since, grown = 0, 0, _BEFORE_ALL, False
    for day in sorted({*begins, *ends}):
        if day in ends:
            if grown:
                found.setdefault(members, (weight, []))[1].append((since or None, day - 1))
            for number in ends[day]:
                members ^= 1 << number
                weight -= weights[number]
            grown = False
        if day in begins:
            for number in begins[day]:
                members |= 1 << number
                weight += weights[number]
            since, grown = day, True
    if grown:
        found.setdefault(members, (weight, []))[1].append((since or None, None))
    return found
