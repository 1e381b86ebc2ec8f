"""Money received for an invoice: deposits before it, payments after, and what is still open."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from pentools.record.stages.job.money_kinds import RECEIVED

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["Money", "Paid", "received"]


@dataclass(frozen=True, slots=True)
class Money:
    """An amount received: the day, how it came, how much, and whether it was a deposit."""

    received_on: str
    how: str
    amount: Decimal
    deposit: bool


@dataclass(frozen=True, slots=True)
class Paid:
    """What was received against a total.

    Parameters
    ----------
    amounts : tuple of Money
        By day.
    open : Decimal
        The total less all of them; below 0 where too much was received.
    not_counted : tuple of str
        Amounts as typed that cannot be read or are in another currency.
    """

    amounts: tuple[Money, ...]
    open: Decimal
    not_counted: tuple[str, ...]


def received(jobs: Iterable[Job], currency: str, total: Decimal, given_on: str) -> Paid:
    """What was received for some jobs.

    Parameters
    ----------
    jobs : iterable of Job
        The pens of the invoice.
    currency : str
        Its currency.
    total : Decimal
        What it comes to.
    given_on : str
        The day it is of, as year-month-day; where nobody said what an amount is for, one of an earlier day is a deposit.
    """
    found, strange = [], []
    for job in jobs:
        for logged in job.log(RECEIVED):
            values, money = logged.values, job.money(logged.values.amount)
            if money is None or money.currency != currency:
                strange.append(values.amount or "")
                continue
            day = values.received_on or ""
            deposit = values.what_for == "deposit" or (values.what_for is None and day < given_on)
            found.append(Money(day, values.how or "", money.amount, deposit))
    found.sort(key=lambda one: one.received_on)
    return Paid(tuple(found), total - sum((one.amount for one in found), Decimal(0)), tuple(strange))
