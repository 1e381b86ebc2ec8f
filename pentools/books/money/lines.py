"""What one pen's job puts on an invoice: its hours, costs and postage, each with what the owner said to it beforehand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.money import in_money, read_money, rounded
from pentools.numbers import in_words
from pentools.record.billing import billing_of
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import agreed_price, consents, departures_without_yes
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.money_kinds import BILL
from pentools.record.stages.job.work_kinds import ACTIVITIES, DEPARTURE, MATERIAL
from pentools.record.stages.job.work_log import minutes_by_activity
from pentools.record.stages.repairs.kinds import BACK

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["NOT_AGREED", "InvoiceLine", "invoice_lines", "line_from_text"]

NOT_AGREED = "not agreed beforehand"
_HOLDS = re.compile(r"shellac|glue|cement|adhesive|sealant|silicone|epoxy|acrylate|rosin|wax|grease", re.IGNORECASE)
_WORDS = re.compile(r"[^\W\d_]{4,}")
_MOST_NAMED = 4  # activities that one line names; where there are more it names none


@dataclass(frozen=True, slots=True)
class InvoiceLine:
    """One line of an invoice.

    Parameters
    ----------
    pen : str
        The job it belongs to.
    what : str
        What is billed.
    how : str
        How much of it, or where; empty where there is nothing to say.
    amount : Decimal
        In whole minor units of the invoice's currency; below 0 for what is taken off.
    beside : str
        What stands beside it: `NOT_AGREED`, or nothing.
    """

    pen: str
    what: str
    how: str
    amount: Decimal
    beside: str = ""

    @property
    def agreed(self) -> bool:
        """Whether the owner had said yes to it."""
        return self.beside != NOT_AGREED

    def as_text(self, currency: str) -> str:
        """The line as the record keeps it, in one text."""
        minus = "−" if self.amount < 0 else ""
        cells = (self.pen, self.what, self.how, minus + in_money(abs(self.amount), currency), self.beside)
        return " | ".join(re.sub(r"[\s|]+", " ", cell).strip() for cell in cells)


def line_from_text(text: str) -> InvoiceLine:
    """The line that a record keeps in one text.

    Raises
    ------
    InputError
        If it is none.
    """
    cells = [cell.strip() for cell in text.split("|")]
    if len(cells) != len(InvoiceLine.__slots__):
        raise InputError("a line of an invoice", "five parts with | between them", text)
    pen, what, how, amount, beside = cells
    found = read_money(amount.lstrip("−"), name="a line of an invoice").amount
    return InvoiceLine(pen, what, how, -found if amount.startswith("−") else found, beside)


def invoice_lines(
    job: Job, currency: str, said: Mapping[str, bool] | None = None, priced: bool = False
) -> tuple[InvoiceLine, ...]:
    """The lines of one pen.

    Parameters
    ----------
    currency : str
        The currency that is billed.
    said : mapping of str to bool or None
        What the owner said to each kind of action; by default what this job's own record says.
    priced : bool
        Whether a price was agreed for the pen elsewhere, as for a whole parcel.

    Returns
    -------
    tuple of InvoiceLine
        Work, what went in, work by others, postage, what is taken off; those that come to something.

    Raises
    ------
    InputError
        If a cost on record cannot be read or is in another currency.

    Notes
    -----
    Hours are billed in whole minutes. A part counts as agreed where the owner said yes to replacing a part, what holds
    it to sealant or glue, work by others to sending it out; or to the proposal as a whole, where nothing else was said of
    that action; or to a departure that speaks of it. Work and postage count as agreed with the proposal or a price.
    """
    word = Words(job, consents(job) if said is None else said, priced or agreed_price(job) is not None)
    return tuple(line for line in _lines(job, currency, word) if line.amount)


class Words:
    """What the owner said, asked action by action."""

    def __init__(self, job: Job, said: Mapping[str, bool], priced: bool) -> None:
        self.said, self.priced = said, priced
        without = {what for what, _ in departures_without_yes(job)}
        agreed = (one.values.what or "" for one in job.log(DEPARTURE))
        self.departed = {w.casefold() for what in agreed if what not in without for w in _WORDS.findall(what)}

    def beside(self, action: str, what: str = "") -> str:
        """What stands beside a line of such an action: nothing where it was agreed."""
        own = self.said.get(action)
        if own is True or (own is None and self.said.get("proposal") is True):
            return ""
        named = {w.casefold() for w in _WORDS.findall(what)}
        return "" if named & self.departed else NOT_AGREED

    def as_a_whole(self) -> str:
        """What stands beside work and postage."""
        return "" if self.priced or self.said.get("proposal") is True else NOT_AGREED


def _lines(job: Job, currency: str, word: Words) -> Iterator[InvoiceLine]:
    bill, parts = job.newest(BILL), dict(PARTS)
    flat = _flat(job)
    yield from _work(job, currency, word)
    for bought in () if flat else job.log(MATERIAL):
        values = bought.values
        what = values.what or "material"
        action = "sealant" if _HOLDS.search(what) else "replace part"
        amount = _amount(job, values.cost, currency, what)
        yield InvoiceLine(job.name, what, parts.get(values.part or "", ""), amount, word.beside(action, what))
    for back in () if flat else job.log(BACK):
        amount = _amount(job, back.values.cost, currency, "work by another workshop")
        what = "Work by another workshop"
        yield InvoiceLine(job.name, what, parts.get(back.values.part or "", ""), amount, word.beside("send out"))
    postage = _amount(job, bill.postage, currency, "postage")
    yield InvoiceLine(job.name, "Postage and packing", "", postage, word.as_a_whole())
    off = _amount(job, bill.taken_off, currency, "what is taken off")
    yield InvoiceLine(job.name, "Taken off", bill.why_off or "", -off)


def _flat(job: Job) -> bool:
    """Whether the price said at the end is all there is to bill: hours are not priced, and the work has no price."""
    priced = billing_of(job.bench).rate > 0 or job.newest(BILL).work_price is not None
    return not priced and job.newest(RESULT).price is not None


def _work(job: Job, currency: str, word: Words) -> Iterator[InvoiceLine]:
    bill, bench = job.newest(BILL), billing_of(job.bench)
    spent = minutes_by_activity(job)
    if bill.work_price is not None:
        amount = _amount(job, bill.work_price, currency, "the price of the work")
        yield InvoiceLine(job.name, "Work", _named(spent), amount, word.as_a_whole())
    elif _flat(job):
        amount = _amount(job, job.newest(RESULT).price, currency, "the price at the end")
        yield InvoiceLine(job.name, "Work, parts and materials", "at the price said", amount, word.as_a_whole())
    elif bench.rate and spent:
        if bench.currency != currency:
            raise InputError("currency", f"{currency}, in which a price was agreed", bench.currency, "Hours have their rate in the bench’s own money: ask for a price in it, or enter a price of the work.")  # fmt: skip
        minutes = Decimal(str(sum(spent.values()))).quantize(Decimal(1), rounding="ROUND_HALF_UP")
        named = _named(spent)
        how = f"{minutes} min at {in_money(bench.rate, currency)} an hour"
        amount = rounded(minutes / 60 * bench.rate, currency, bench.rounding)
        yield InvoiceLine(job.name, f"Work: {named}" if named else "Work", how, amount, word.as_a_whole())


def _named(spent: Mapping[str, float]) -> str:
    names = [name for key, name in ACTIVITIES if key in spent and key != "other"]
    return in_words(names) if len(names) <= _MOST_NAMED else ""


def _amount(job: Job, typed: str | None, currency: str, what: str) -> Decimal:
    """An amount of the record, in the invoice's currency; 0 where none was typed."""
    if typed is None:
        return Decimal(0)
    money = job.money(typed)
    if money is None or money.currency != currency:
        advice = "Correct the entry: an invoice is in one currency, and changes none into another."
        raise InputError(f"what {what} cost, in job {job.name},", f"an amount in {currency}", typed, advice)
    return rounded(money.amount, currency, billing_of(job.bench).rounding)
