"""Trial fitting one size at a time: which size to try next, by bisection over what is in stock."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["OUTCOMES", "LadderStep", "Outcome", "Trial", "next_trial_size"]

Outcome = Literal["no touch", "slides, no suction", "pulls back", "too stiff"]
OUTCOMES: dict[str, int] = {"no touch": -1, "slides, no suction": -1, "pulls back": 0, "too stiff": 1}
"""What happened, and whether the size was too small (-1), right (0) or too large (1)."""

SAME_MM = 0.0005


@dataclass(frozen=True, slots=True)
class Trial:
    """One size tried dry.

    Parameters
    ----------
    size_mm : float
        The size [mm], measured.
    outcome : Outcome
        no touch / slides, no suction / pulls back / too stiff.
    """

    size_mm: float
    outcome: str


@dataclass(frozen=True, slots=True)
class LadderStep:
    """What to do next.

    Parameters
    ----------
    next_mm : float or None
        The size to try [mm]; None where one held, nothing is left or the trials contradict each other.
    held_mm : float or None
        The smallest size that pulled back [mm].
    too_small_mm, too_large_mm : float or None
        The bracket so far [mm].
    left : int
        How many sizes of the stock are still between.
    findings : tuple of Finding
        What it means.
    """

    next_mm: float | None
    held_mm: float | None
    too_small_mm: float | None
    too_large_mm: float | None
    left: int
    findings: tuple[Finding, ...]


def next_trial_size(sizes_mm: Sequence[float], tried: Sequence[Trial], start_mm: float | None = None) -> LadderStep:
    """The size to try next.

    Parameters
    ----------
    sizes_mm : sequence of float
        Sizes in stock [mm]: one measure that grows with tightness, such as the outside diameter of a washer.
    tried : sequence of Trial
        What was tried so far, in any order.
    start_mm : float or None
        Where to start [mm]: the calculation's own best; the middle of the stock by default.

    Returns
    -------
    LadderStep
        Next size, bracket and findings.

    Raises
    ------
    InputError
        If there is no stock or an outcome is not known.

    Notes
    -----
    The largest size that was too small and the smallest that was too stiff bracket the answer; the middle size of the
    stock between them is next, so n sizes need about log2(n) trials. "A washer that does not touch gives no suction,
    one size up does; try before sealing" is common practice, no source.

    Examples
    --------
    >>> sizes = (8.1, 8.2, 8.3, 8.4, 8.5)
    >>> next_trial_size(sizes, [Trial(8.1, "no touch")]).next_mm
    8.3
    """
    if not sizes_mm:
        raise InputError("stock", "at least one size", "none")
    for trial in tried:
        if trial.outcome not in OUTCOMES:
            raise InputError("outcome", "one of: " + ", ".join(OUTCOMES), trial.outcome)
    stock = sorted(set(sizes_mm))
    small = max((t.size_mm for t in tried if OUTCOMES[t.outcome] < 0), default=None)
    large = min((t.size_mm for t in tried if OUTCOMES[t.outcome] > 0), default=None)
    held = min((t.size_mm for t in tried if OUTCOMES[t.outcome] == 0), default=None)
    clash = _contradiction(tried)
    if clash is not None:
        return LadderStep(None, held, small, large, 0, (clash,))
    if held is not None:
        return LadderStep(None, held, small, large, 0, (Finding("ok", "seal.held", size=held),))
    left = [s for s in stock if (small is None or s > small + SAME_MM) and (large is None or s < large - SAME_MM)]
    if not left:
        return LadderStep(None, None, small, large, 0, (_nothing_left(small, large),))
    chosen = left[(len(left) - 1) // 2]  # of two middle ones the smaller
    if not tried and start_mm is not None:
        chosen = min(left, key=lambda s: (abs(s - start_mm), s))
    following = Finding("note", "seal.next", size=chosen, left=len(left))
    return LadderStep(chosen, None, small, large, len(left), (following,))


def _contradiction(tried: Sequence[Trial]) -> Finding | None:
    ordered = sorted(tried, key=lambda t: t.size_mm)
    for smaller, larger in itertools.pairwise(ordered):
        if OUTCOMES[smaller.outcome] > OUTCOMES[larger.outcome]:
            return Finding(
                "warning", "seal.contradiction",
                small=smaller.size_mm, small_was=smaller.outcome, large=larger.size_mm, large_was=larger.outcome,
            )  # fmt: skip
    return None


def _nothing_left(small: float | None, large: float | None) -> Finding:
    if small is not None and large is not None:
        return Finding("warning", "seal.gap", small=small, large=large, between=(small + large) / 2)
    if small is not None:
        return Finding("warning", "seal.too-small", size=small)
    return Finding("warning", "seal.too-large", size=large or 0.0)
