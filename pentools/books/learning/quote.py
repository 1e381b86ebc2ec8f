"""A quote for a job from the bench's own like jobs: minutes, price and ceiling, with the jobs it rests on."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import ROUND_CEILING, Decimal
from typing import Any

from pentools.books.asked import ask_bench
from pentools.books.learning.held import Against, against
from pentools.books.learning.like import Circle, Moved, circle_of, counted_jobs, left_out, narrowed
from pentools.books.learning.time_taken import TIME, JobTime, time_of
from pentools.calc.books.ahead import Ahead, one_more, one_of_another_kind
from pentools.calc.books.few import TOO_FEW, enough
from pentools.calc.books.pooled import scatter_within
from pentools.errors import RecordError
from pentools.money import in_money, rounded
from pentools.numbers import capital, fixed, in_words, percent, plain
from pentools.record.bench import Bench, open_bench_folder
from pentools.record.billing import Billing, billing_of
from pentools.record.job import Job, open_job
from pentools.record.view import SPOILT, why_not

__all__ = ["PartsCost", "PriceRange", "Quote", "quote", "quote_of", "quoted_from"]

_FIGURES = 2
_MINUTES = 60
_LONG = 120.0
_SHOWN = 12
THIN = "\u202f"


@dataclass(frozen=True, slots=True)
class PartsCost:
    """What parts and materials of like jobs cost, from the cheapest to the dearest of them, in the bench's currency."""

    n: int
    low: Decimal
    likely: Decimal
    high: Decimal


@dataclass(frozen=True, slots=True)
class PriceRange:
    """What it will cost, in the bench's currency.

    Parameters
    ----------
    low, likely, high : Decimal
        In whole minor units.
    charged : int
        From so many prices of like jobs; 0 where it is hours at the bench's rate and the parts of like jobs.
    """

    low: Decimal
    likely: Decimal
    high: Decimal
    charged: int = 0


@dataclass(frozen=True, slots=True)
class Quote:
    """What a job is likely to take and to cost.

    Parameters
    ----------
    job : str
        Whose.
    circle : Circle
        The like jobs, and why no nearer ones.
    jobs : tuple of str
        Those it rests on, for the bench alone.
    minutes : Ahead or None
        Low, likely and high time [min]; None where they are too few to say.
    parts : PartsCost or None
        None where fewer than three of the jobs have a cost.
    price : PriceRange or None
        Hours at the bench's rate, parts, and the tax that comes on top; where the bench has no rate, as like jobs were charged. None where either
        is too few to say.
    billing : Billing
        What the bench has set: currency, rate an hour (0 where hours are not priced) and tax.
    ceiling : Decimal or None
        What to propose as the most: the high price, rounded up to two figures.
    limit : Decimal or None
        What the owner named at intake.
    moved : tuple of Moved
        What was looked at that might move it.
    outside : mapping of str to tuple of str
        Reason to like jobs that were not built on.
    actual : Against or None
        The estimate that was entered against what it took, once it is finished.
    """

    job: str
    circle: Circle
    jobs: tuple[str, ...]
    minutes: Ahead | None
    parts: PartsCost | None
    price: PriceRange | None
    billing: Billing
    ceiling: Decimal | None
    limit: Decimal | None
    moved: tuple[Moved, ...]
    outside: Mapping[str, tuple[str, ...]]
    actual: Against | None = None

    @property
    def currency(self) -> str:
        """The bench's own, in which all its amounts are."""
        return self.billing.currency

    @property
    def n(self) -> int:
        """How many jobs it rests on."""
        return len(self.jobs)

    @property
    def sentence(self) -> str:
        """What it comes to, in words."""
        if self.minutes is None:
            jobs = "job has" if self.n == 1 else "jobs have"
            return f"{capital(TOO_FEW)}: {self.n or 'no'} finished like {jobs} minutes to build on, and it takes three."
        held = f"{percent(self.minutes.share)} of further jobs like the {self.n} it rests on ({self.circle.words})"
        time = f"{_spell(self.minutes)}: so {held}."
        return " ".join(part for part in (time, self._priced(), self._capped()) if part)

    def _priced(self) -> str:
        if self.price is None:
            return f"No price: {in_words(self.lacking)}."
        span = _span(self.price.low, self.price.high, self.currency)
        if self.price.charged:
            return f"As {self.price.charged} of them were charged: {span}."
        assert self.parts is not None
        bought = _span(self.parts.low, self.parts.high, self.currency)
        rate = f"At {in_money(self.billing.rate, self.currency)} an hour and with parts for {bought}"
        tax = self.billing.on_top
        name = self.billing.tax_name or "tax"
        return (
            f"{rate}{f', {name} of {plain(float(100 * tax))}{THIN}% on top' if tax else ''}: {span}, postage not in it."
        )

    def _capped(self) -> str:
        if self.ceiling is None:
            return ""
        text = f"A ceiling to propose: {in_money(self.ceiling, self.currency)}"
        if self.limit is not None and self.limit < self.ceiling:
            return f"{text}; the owner named {in_money(self.limit, self.currency)}, which is less."
        return text + "."

    @property
    def lacking(self) -> tuple[str, ...]:
        """Why there is no price, as clauses."""
        if self.minutes is None:
            return (TOO_FEW,)
        if self.billing.rate <= 0:
            return ("the bench has no rate an hour (rate_per_hour in bench.toml), and too few like jobs have a price",)
        return ("what the parts of like jobs cost is " + TOO_FEW,)

    @property
    def not_in_it(self) -> tuple[str, ...]:
        """What does not move it, each with why."""
        return tuple(f"{one.words} ({one.told})" for one in self.moved if not one.counted)

    @property
    def lines(self) -> tuple[str, ...]:
        """All it says, line by line, for the bench alone: it names the jobs."""
        said = [self.sentence, "" if self.actual is None else self.actual.sentence, self.circle.why]
        said += [f"Only jobs like this one in {one.words}: {one.told}." for one in self.moved if one.counted]
        said += [f"Not in it: {'; '.join(self.not_in_it)}."] if self.not_in_it else []
        said += [f"It rests on {_names(self.jobs)}."] if self.jobs else []
        said += [f"Not built on, since {why}: {_names(names)}." for why, names in self.outside.items()]
        return tuple(line for line in said if line)

    def as_json(self) -> dict[str, Any]:
        """Plain values; amounts are `Decimal`, in `currency`, minutes are rounded to a tenth."""
        ahead, parts, price = self.minutes, self.parts, self.price
        ends = ("low", "likely", "high")
        return {
            "job": self.job,
            "sentence": self.sentence,
            "minutes": {
                **{end: None if ahead is None else round(getattr(ahead, end), 1) for end in ends},
                "holds_share": None if ahead is None else ahead.share,
                **({"said": TOO_FEW} if ahead is None else {}),
            },
            "price": {
                **{end: None if price is None else getattr(price, end) for end in ends},
                "currency": self.currency,
                "rate_per_hour": self.billing.rate,
                "tax_share": self.billing.on_top,
                "basis": None if price is None else "prices of like jobs" if price.charged else "hours and parts",
                **({} if price is not None else {"said": in_words(self.lacking)}),
            },
            "parts": {
                **{end: None if parts is None else getattr(parts, end) for end in ends},
                "n": 0 if parts is None else parts.n,
                "currency": self.currency,
                **({"said": TOO_FEW} if parts is None else {}),
            },
            "ceiling": self.ceiling,
            "owner_limit": self.limit,
            "n": self.n,
            "jobs": list(self.jobs),
            "circle": {"key": self.circle.key, "words": self.circle.words, "why": self.circle.why},
            "only_like_it_in": [one.key for one in self.moved if one.counted],
            "not_in_it": list(self.not_in_it),
            "actual": None if self.actual is None else self.actual.as_json(),
            "left_out": [{"why": why, "jobs": list(names)} for why, names in self.outside.items()],
        }

    def __str__(self) -> str:
        return "\n".join(self.lines)

    def _repr_html_(self) -> str:
        from html import escape

        return "".join(f"<p>{escape(line)}</p>" for line in self.lines)


def quote(job: str, bench: str | os.PathLike[str] | Bench | None = None) -> Quote:
    """What a job is likely to take and to cost, from the bench's own like jobs.

    Parameters
    ----------
    job : str
        The job's name.
    bench : str, path, Bench or None
        The bench; the usual one by default.

    Returns
    -------
    Quote
        It says so where like jobs are too few.

    Raises
    ------
    RecordError
        If there is no such job, or the bench cannot be looked into.
    """
    where = bench if isinstance(bench, Bench) else open_bench_folder(bench)
    return quote_of(open_job(job, bench=where))


def quote_of(job: Job) -> Quote:
    """The quote for an open job, its record taken as it stands.

    Raises
    ------
    RecordError
        If its own entries contradict each other, or the bench cannot be looked into.
    """
    told = ask_bench(job.bench, TIME)
    try:
        mine = time_of(job)
    except SPOILT as error:
        raise RecordError(f"{job.name} cannot be quoted for. {why_not(error)}") from error
    found = quoted_from(job.name, mine, told.answers, billing_of(job.bench))
    unread = tuple(name for name in told.unread if name != job.name)
    return replace(found, outside={**found.outside, "it cannot be read": unread}) if unread else found


def quoted_from(name: str, job: JobTime, jobs: Mapping[str, JobTime], billing: Billing) -> Quote:
    """The quote for a job from what all jobs of a bench answered.

    Parameters
    ----------
    name : str
        The job's name: its own answer is never built on.
    job : JobTime
        What it is, what is asked.
    jobs : mapping of str to JobTime
        The bench's jobs.
    billing : Billing
        What the bench has set: currency, rate and tax.

    Returns
    -------
    Quote
        From the nearest circle of three finished jobs whose minutes are whole.
    """
    counted = counted_jobs(jobs, name)
    circle = circle_of(job, counted)
    like, moved = narrowed(job, circle)
    minutes = _minutes(like, counted, circle)
    parts = _parts(like)
    price = _price(minutes, parts, billing) if billing.rate > 0 else _as_charged(like, billing.currency)
    ceiling = None if price is None else _rounded_up(price.high)
    outside = _outside(name, job, jobs, circle)
    return Quote(
        name, circle, tuple(like), minutes, parts, price, billing, ceiling, job.limit, moved, outside, against(job)
    )  # fmt: skip


def _minutes(like: Mapping[str, JobTime], counted: Mapping[str, JobTime], circle: Circle) -> Ahead | None:
    """From jobs of its kind; from a wider circle as one of yet another kind, where there are three kinds in it."""
    near = circle.key == "system and work"
    wide = None if near else one_of_another_kind(_by_kind(like))
    outside = {name: one for name, one in counted.items() if name not in circle.jobs}
    return wide or one_more([one.whole_min for one in like.values()], scatter_within(_by_kind(outside)))


def _by_kind(jobs: Mapping[str, JobTime]) -> dict[str, list[float]]:
    groups: dict[str, list[float]] = {}
    for one in jobs.values():
        groups.setdefault(f"{one.system} {one.work}", []).append(one.whole_min)
    return groups


def _parts(like: Mapping[str, JobTime]) -> PartsCost | None:
    costs = sorted(one.parts for one in like.values() if one.parts is not None)
    if not enough(len(costs)):
        return None
    middle = (costs[(len(costs) - 1) // 2] + costs[len(costs) // 2]) / 2
    return PartsCost(len(costs), costs[0], middle, costs[-1])


def _price(minutes: Ahead | None, parts: PartsCost | None, billing: Billing) -> PriceRange | None:
    """Hours at the bench's rate and parts, with the tax that comes on top: what the owner will be asked for."""
    if minutes is None or parts is None:
        return None
    low, likely, high = (
        rounded(
            (Decimal(fixed(time, 1)) / _MINUTES * billing.rate + bought) * (1 + billing.on_top),
            billing.currency,
            billing.rounding,
        )
        for time, bought in ((minutes.low, parts.low), (minutes.likely, parts.likely), (minutes.high, parts.high))
    )
    return PriceRange(low, likely, high)


def _as_charged(like: Mapping[str, JobTime], currency: str) -> PriceRange | None:
    """The range of one further price, for a bench that does not price its hours; nothing was charged under a promise."""
    found = one_more([float(one.price) for one in like.values() if one.price], rounded_to=0)
    if found is None:
        return None
    low, likely, high = (rounded(Decimal(fixed(end, 4)), currency) for end in (found.low, found.likely, found.high))
    return PriceRange(low, likely, high, found.n)


def _rounded_up(amount: Decimal) -> Decimal:
    """Up to two figures: 141.20 to 150, 96.30 to 97, 14120 to 15000."""
    if amount <= 0:
        return amount
    step = Decimal(1).scaleb(max(amount.adjusted() - _FIGURES + 1, 0))
    return ((amount / step).to_integral_value(ROUND_CEILING) * step).quantize(Decimal(1))


def _outside(name: str, job: JobTime, jobs: Mapping[str, JobTime], circle: Circle) -> dict[str, tuple[str, ...]]:
    """Jobs of the same kind that were not built on, by reason; those still under way need no word."""
    found: dict[str, tuple[str, ...]] = {}
    wanted = {"work": job.work, "system": job.system if "system" in circle.key else ""}
    for other, one in jobs.items():
        why = left_out(one)
        like = all(not value or getattr(one, key) == value for key, value in wanted.items())
        if other != name and why and one.ending and like:
            found[why] = (*found.get(why, ()), other)
    return found


def _names(jobs: tuple[str, ...]) -> str:
    """The newest of them by name, and how many more."""
    more = len(jobs) - _SHOWN
    return ", ".join(jobs) if more <= 0 else f"{', '.join(jobs[-_SHOWN:])} and {more} older"


def _spell(ahead: Ahead) -> str:
    """The range as a person says it: in minutes, from two hours on in hours."""
    ends = (ahead.low, ahead.high, ahead.likely)
    if ahead.high < _LONG:
        low, high, likely = (str(5 * round(end / 5) or round(end)) for end in ends)
        return f"{low} to {high} min, most likely {likely}"
    low, high, likely = (plain(end / _MINUTES, 2) for end in ends)
    return f"{low} to {high} h, most likely {likely}"


def _span(low: Decimal, high: Decimal, currency: str) -> str:
    """Two amounts as "3.00 to 4.50 EUR"."""
    shown = in_money(high, currency)
    return shown if low == high else f"{in_money(low, currency).removesuffix(currency).strip()} to {shown}"
