"""Estimates against what jobs took: how often the range that was told the owner held."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from pentools.books.asked import ask_bench
from pentools.books.learning.time_taken import DOUBTS, FINISHED, TIME, JobTime
from pentools.calc.books.few import TOO_FEW
from pentools.calc.books.median import Median, median_of
from pentools.calc.books.share import Share, share_of
from pentools.numbers import percent, plain
from pentools.record.bench import Bench

__all__ = ["Against", "Held", "against", "held_among", "held_on", "median_json", "share_json", "share_words"]


@dataclass(frozen=True, slots=True)
class Against:
    """One job's estimate against what it took.

    Parameters
    ----------
    hours_low, hours_likely, hours_high : float or None
        As entered [h]; None where that end was not.
    hours : float
        What it took [h].
    held : bool or None
        Whether it lay in the range; None where an end is missing.
    over : bool or None
        Whether it took more than the high end.
    price_held : bool or None
        Whether the price lay in its range; None where an amount is missing.
    """

    hours_low: float | None
    hours_likely: float | None
    hours_high: float | None
    hours: float
    held: bool | None
    over: bool | None
    price_held: bool | None

    @property
    def sentence(self) -> str:
        """What it took against what had been estimated, in words."""
        low, high = self.hours_low, self.hours_high
        ends = [f"{word} {plain(end, 3)}" for word, end in (("from", low), ("to", high)) if end is not None]
        if not ends:
            return f"It took {plain(self.hours, 3)} h; no hours were estimated."
        known = {True: ", which held", False: ", which did not hold", None: ""}[self.held]
        return f"It took {plain(self.hours, 3)} h; the estimate was {' '.join(ends)} h{known}."

    def as_json(self) -> dict[str, Any]:
        """Plain values; hours [h]."""
        return {
            "hours_low": self.hours_low, "hours_likely": self.hours_likely, "hours_high": self.hours_high,
            "hours": round(self.hours, 3), "held": self.held, "price_held": self.price_held,
        }  # fmt: skip


@dataclass(frozen=True, slots=True)
class Held:
    """How often estimates held, over a bench.

    Parameters
    ----------
    jobs : mapping of str to Against
        Finished jobs with an estimate and whole minutes.
    hours : Share or None
        How many ranges of hours held; None where they are too few to say.
    over : Share or None
        How many took more than the high end.
    price : Share or None
        How many prices lay in their range.
    ratio : Median or None
        Hours taken over hours likely [1].
    """

    jobs: Mapping[str, Against]
    hours: Share | None
    over: Share | None
    price: Share | None
    ratio: Median | None

    @property
    def lines(self) -> tuple[str, ...]:
        """In words, each figure with its n and its interval of 95 %."""
        ratio = TOO_FEW
        if self.ratio is not None:
            most = f"{plain(self.ratio.low, 2)} to {plain(self.ratio.high, 2)}, {_covers(self.ratio)}"
            ratio = f"{plain(self.ratio.median, 2)} ({most}; {self.ratio.n} jobs)"
        return (
            f"Hours lay in the range that was estimated: {share_words(self.hours)}.",
            f"Hours were more than its high end: {share_words(self.over)}.",
            f"The price lay in its range: {share_words(self.price)}.",
            f"Hours taken over hours most likely, the middle job: {ratio}.",
        )

    def as_json(self) -> dict[str, Any]:
        """Plain values; hours [h], shares [1] with their exact intervals of 95 %."""
        return {
            "n": len(self.jobs),
            "sentence": self.lines[0],
            "hours_held": share_json(self.hours),
            "hours_over": share_json(self.over),
            "price_held": share_json(self.price),
            "taken_over_likely": median_json(self.ratio),
            "jobs": [{"job": name, **one.as_json()} for name, one in self.jobs.items()],
        }


def held_on(bench: Bench) -> Held:
    """How often the estimates of a bench held.

    Raises
    ------
    RecordError
        If the bench cannot be looked into.
    """
    return held_among(ask_bench(bench, TIME).answers)


def held_among(jobs: Mapping[str, JobTime]) -> Held:
    """How often estimates held, from what the jobs answered.

    Returns
    -------
    Held
        Of jobs that ended as done or done with limits and whose minutes are not plainly incomplete; a pen that came back
        counts too, since an estimate was given for it.
    """
    found = {name: one for name, job in jobs.items() if (one := against(job)) is not None}
    held, over, price = (
        _counted(getattr(one, name) for one in found.values()) for name in ("held", "over", "price_held")
    )
    ratios = [one.hours / one.hours_likely for one in found.values() if one.hours_likely]
    return Held(found, held, over, price, median_of(ratios))


def against(job: JobTime) -> Against | None:
    """A job's estimate against what it took; None where it has none, is not mended, or its minutes are not whole."""
    low, likely, high = job.hours
    if job.ending not in FINISHED or job.doubt in DOUBTS or (low, likely, high, *job.estimate) == (None,) * 5:
        return None
    hours = job.whole_min / 60
    least, most = job.estimate
    over = None if high is None else hours > high
    held = None if low is None or high is None else low <= hours <= high
    price = None if least is None or most is None or job.price is None else least <= job.price <= most
    return Against(low, likely, high, hours, held, over, price)


def _counted(told: Iterable[bool | None]) -> Share | None:
    known = [one for one in told if one is not None]
    return share_of(sum(known), len(known))


def share_words(share: Share | None) -> str:
    """A share with its interval in words."""
    if share is None:
        return TOO_FEW
    return f"{share.count} of {share.n}, {percent(share.share)} ({percent(share.low)} to {percent(share.high)})"


def _covers(found: Median) -> str:
    return f"which holds the true middle in {percent(found.coverage)} of cases"


def share_json(share: Share | None) -> dict[str, Any] | str:
    """A share with its interval as plain values; "too few to say" where there is none."""
    if share is None:
        return TOO_FEW
    return {
        "count": share.count, "n": share.n, "share": round(share.share, 4), "low": round(share.low, 4),
        "high": round(share.high, 4), "confidence": share.confidence,
    }  # fmt: skip


def median_json(found: Median | None, digits: int = 3) -> dict[str, Any] | str:
    """A median with its interval as plain values; "too few to say" where there is none."""
    if found is None:
        return TOO_FEW
    return {
        "n": found.n, "median": round(found.median, digits), "low": round(found.low, digits),
        "high": round(found.high, digits), "coverage": round(found.coverage, 4),
    }  # fmt: skip
