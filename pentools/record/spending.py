"""Money in a job: what has been spent of the agreed most, from costs and hours as they were entered."""

from __future__ import annotations

import importlib
import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.record.registry import STAGES
from pentools.units import read_number

if TYPE_CHECKING:
    from pentools.fields import Value
    from pentools.record.job import Job

__all__ = ["Money", "Spending", "cost_of", "read_money", "spending_of"]

_SIGNS = {"€": "EUR", "$": "USD", "£": "GBP", "¥": "JPY"}
_MONEY = re.compile(r"(?P<before>[^\W\d_]{3}|[€$£¥])?\s*(?P<number>\d[\d.,]*)\s*(?P<after>[^\W\d_]{3}|[€$£¥])?")


@dataclass(frozen=True, slots=True)
class Money:
    """An amount of money; an empty currency is the bench's own."""

    amount: float
    currency: str = ""


@dataclass(frozen=True, slots=True)
class Spending:
    """What was spent of the agreed most.

    Parameters
    ----------
    spent : float
        Costs of materials, and hours at the bench's rate, in `currency`.
    ceiling : float or None
        The agreed most; None where none was agreed.
    currency : str
        The currency of both.
    not_counted : tuple of str
        Costs as typed that could not be read, or are in another currency.
    """

    spent: float
    ceiling: float | None
    currency: str
    not_counted: tuple[str, ...] = ()


def read_money(text: str) -> Money | None:
    """An amount as typed, such as 4.50 EUR, £12 or 30; None where it is not one amount."""
    found = _MONEY.fullmatch(" ".join(text.split()).rstrip("."))
    if found is None:
        return None
    words = {_SIGNS.get(word, word.upper()) for word in (found["before"], found["after"]) if word}
    if len(words) > 1:
        return None
    try:
        return Money(read_number(found["number"], "amount"), words.pop() if words else "")
    except InputError:
        return None


def spending_of(job: Job) -> Spending:
    """What a job has cost so far, against what was agreed.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    Spending
        In the ceiling's currency where there is a ceiling, else in the bench's. The ceiling is that of the
        agreement, else the price limit asked at intake.
    """
    own = job.bench.text("money", "currency").upper()
    limit = _ceiling(job)
    currency = (limit.currency if limit is not None else "") or own
    spent, strange = 0.0, []
    for _, values in job.log("work log", "material"):
        if values["cost"] is None:
            continue
        cost = read_money(str(values["cost"]))
        if cost is None or (cost.currency or own) != currency:
            strange.append(str(values["cost"]))
        else:
            spent += cost.amount
    spent += _hours(job) * job.bench.rate_per_hour if currency == own else 0.0
    return Spending(round(spent, 2), None if limit is None else limit.amount, currency, tuple(strange))


def cost_of(job: Job, cost: Value) -> float:
    """A cost about to be entered, as far as it can be held against the ceiling; 0 where it cannot."""
    money = read_money(str(cost)) if cost is not None else None
    own = job.bench.text("money", "currency").upper()
    return money.amount if money is not None and (money.currency or own) == spending_of(job).currency else 0.0


def _hours(job: Job) -> float:
    from pentools.record.stages.job.work_log import minutes_by_activity

    return sum(minutes_by_activity(job).values()) / 60


def _ceiling(job: Job) -> Money | None:
    if "agree" in STAGES:
        agreed = importlib.import_module("pentools.record.stages.job.agree").ceiling(job)
        if isinstance(agreed, (int, float)):
            return Money(float(agreed))
        if agreed is not None:
            return read_money(str(agreed))
    asked = job.values("intake", "request")["price_limit"]
    return read_money(str(asked)) if asked is not None else None
