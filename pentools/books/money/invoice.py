"""An invoice: what is billed for a pen, or for all pens of a parcel, held against what was agreed, and given a number once."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from pentools.books.money.lines import InvoiceLine, invoice_lines, line_from_text
from pentools.books.money.register import NumberGiven, heal, numbers_given, sequence_held
from pentools.books.queue.parcels import members, parcel_of, shares_price
from pentools.calc.base.findings import Finding
from pentools.calc.books.bill import Bill, bill_of
from pentools.errors import HoldError, InputError
from pentools.money import in_money, read_money
from pentools.record.billing import Billing, billing_of
from pentools.record.job import open_job
from pentools.record.spending import spending_of
from pentools.record.stages.job.agree import agreed_price, consents, departures_without_yes
from pentools.record.stages.job.agree_kinds import ANSWER, YES
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.money_kinds import BILL, INVOICE, Invoice
from pentools.record.stages.job.work_kinds import DEPARTURE, MATERIAL, TIMER_STOP, WORK
from pentools.record.stages.repairs.kinds import BACK

if TYPE_CHECKING:
    from pentools.record.bench import Bench
    from pentools.record.forms import Logged
    from pentools.record.job import Job

__all__ = ["HELD", "Draft", "Given", "draft_invoice", "give_invoice", "last_invoice", "tax_in_words"]

HELD = ", held in the prices"
"""What follows a tax that does not come on top."""


@dataclass(frozen=True, slots=True)
class Draft:
    """What an invoice would say now.

    Parameters
    ----------
    job : str
        The job it is written for; of a parcel the first pen's.
    pens : tuple of str
        The jobs it is for.
    currency : str
        Code of ISO 4217.
    lines : tuple of InvoiceLine
        What is billed.
    bill : Bill
        What the lines come to.
    tax_words : str
        The tax with its rate; empty where there is none.
    most : Decimal or None
        The agreed most for all of it; None where none was agreed.
    said_price : Decimal or None
        The price said at the end, where it is in this currency.
    remarks : tuple of str
        What stands under it: departures that were not agreed, the bench's line to the owner.
    findings : tuple of Finding
        What the bench should look at.
    """

    job: str
    pens: tuple[str, ...]
    currency: str
    lines: tuple[InvoiceLine, ...]
    bill: Bill
    tax_words: str
    most: Decimal | None
    said_price: Decimal | None
    remarks: tuple[str, ...]
    findings: tuple[Finding, ...]

    @property
    def difference(self) -> Decimal | None:
        """What it is above the price said at the end; below 0 where it is less."""
        return None if self.said_price is None else self.bill.total - self.said_price

    def as_texts(self) -> dict[str, Any]:
        """What the record keeps of it."""
        kept: dict[str, Any] = {
            "lines": [line.as_text(self.currency) for line in self.lines],
            "before_tax": in_money(self.bill.before_tax, self.currency) if self.tax_words else None,
            "tax": in_money(self.bill.tax, self.currency) if self.tax_words else None,
            "tax_words": self.tax_words or None,
            "total": in_money(self.bill.total, self.currency),
            "remarks": list(self.remarks) or None,
        }
        return {name: value for name, value in kept.items() if value is not None}


@dataclass(frozen=True, slots=True)
class Given:
    """An invoice as the record has it.

    Parameters
    ----------
    values : Invoice
        Its entry.
    draft : Draft
        What it says: lines and sums as its entry has them.
    fresh : bool
        Whether it was given just now; otherwise nothing had changed since it was.
    """

    values: Invoice
    draft: Draft
    fresh: bool


def tax_in_words(bench: Billing) -> str:
    """The tax with its rate, such as ``VAT 19 %``; empty where the bench has set none."""
    if not bench.tax_share:
        return ""
    rate = f"{(bench.tax_share * 100).normalize():f} %"
    held = HELD if bench.tax_included else ""
    return f"{bench.tax_name or 'Tax'} {rate}{held}"


def last_invoice(job: Job) -> Logged[Invoice] | None:
    """The newest invoice of a job that stands; None where none was given."""
    given = job.log(INVOICE)
    return given[-1] if given else None


def draft_invoice(job: Job) -> Draft:
    """What an invoice would say as the records stand; of a parcel's pen, for the whole parcel.

    Raises
    ------
    InputError
        If a cost cannot be read or is in another currency, or there is nothing to bill.
    RecordError
        If a job of the parcel cannot be read.
    """
    pens = _pens(job)
    lead, bench = pens[0], billing_of(job.bench)
    most = _most(pens)
    currency = bench.currency if most is None else most[1]
    said, shared = consents(lead), shares_price(lead)
    lines = tuple(
        line
        for pen in pens
        for line in invoice_lines(pen, currency, {**said, **consents(pen)}, priced=shared and len(pens) > 1)
    )
    if not lines:
        raise InputError("what to bill", "on record", "nothing", "Enter hours and a rate, costs, a price of the work, or a price at the end.")  # fmt: skip
    bill = bill_of(
        [line.amount for line in lines], currency, tax_share=bench.tax_share, included=bench.tax_included,
        each_line=bench.each_line, rounding=bench.rounding,
    )  # fmt: skip
    if bill.total < 0:
        raise InputError("what is taken off", "at most what is billed", in_money(-bill.total, currency) + " more")
    return _draft(pens, currency, lines, bill, tax_in_words(bench))


def _draft(pens: tuple[Job, ...], currency: str, lines: tuple[InvoiceLine, ...], bill: Bill, tax_words: str) -> Draft:
    most = _most(pens)
    draft = Draft(
        pens[0].name, tuple(pen.name for pen in pens), currency, lines, bill, tax_words,
        most[0] if most is not None and most[1] == currency else None, _said_price(pens, currency), _remarks(pens), (),
    )  # fmt: skip
    return replace(draft, findings=_findings(pens, draft))


def give_invoice(job: Job, today: dt.date, *, why: str = "") -> Given:
    """Give an invoice its number and write it into the record; where nothing changed since the last, that one again.

    Parameters
    ----------
    today : date
        The day it is of.
    why : str
        Why the last one is corrected, in a few words.

    Returns
    -------
    Given
        The invoice as it stands in the record of the job, of a parcel in its first pen's. Where there was one already
        that says something else, the new one takes its place and names it.

    Raises
    ------
    HoldError
        If it comes to more than was agreed (it can be given once the owner's later yes is on record), or the price said at
        the end was nothing, as for work that is covered.
    InputError, RecordError
        As `draft_invoice` does, or if the record cannot be written; no number is used then.
    """
    bench: Bench = job.bench
    with sequence_held(bench):
        pens = _pens(job)
        lead = pens[0]
        lead.record.refresh()
        last = last_invoice(lead)
        if last is not None and not _changed_since(pens, last):
            return _given(pens, last.values, fresh=False)
        draft, set_by = draft_invoice(lead), billing_of(bench)
        texts = draft.as_texts()
        if last is not None and all(last.entry.data.get(name) == texts.get(name) for name in _SAME):
            return _given(pens, last.values, fresh=False)
        _refuse_past(draft)
        given = numbers_given(bench)
        place = max((one.place + 1 for one in given), default=set_by.first)
        number = set_by.number(place, today.year)
        texts |= {"number": number, "place": place, "given_on": today.isoformat()}
        if last is not None:
            texts |= {"replaces_number": last.values.number} | ({"why": why.strip()} if why.strip() else {})
        entry = lead.save(INVOICE.stage, INVOICE, {name: INVOICE.field(name).from_json(value) for name, value in texts.items()})  # fmt: skip
        heal(bench, (*given, NumberGiven(place, number, today.isoformat(), lead.name, texts["total"])))
        return _given(pens, INVOICE.decode(entry), fresh=True)


_SAME = ("lines", "before_tax", "tax", "tax_words", "total", "remarks")
"""What two invoices must say alike to be one."""
_BILLED = (WORK, TIMER_STOP, MATERIAL, BACK, BILL, DEPARTURE, YES, ANSWER, RESULT)
"""What an invoice is made of."""


def _changed_since(pens: tuple[Job, ...], last: Logged[Invoice]) -> bool:
    """Whether anything that is billed was entered, corrected or taken back since an invoice was given.

    What the bench has set since, such as another rate, counts for later invoices only.
    """
    keys = {(kind.stage, kind.key) for kind in _BILLED}
    ids = {entry.id for pen in pens for entry in pen.record.entries if (entry.stage, entry.kind) in keys}
    for pen in pens:
        own = pen.name == pens[0].name
        since = pen.record.entries[pen.line_of(last.entry) :] if own else pen.record.entries
        for entry in since:
            if (entry.id in ids or entry.replaces in ids) and (own or entry.time >= last.entry.time):
                return True
    return {line.split(" | ")[0] for line in last.values.lines or ()} - {pen.name for pen in pens} != set()


def _given(pens: tuple[Job, ...], values: Invoice, *, fresh: bool) -> Given:
    """An invoice from its entry alone."""
    lines = tuple(line_from_text(text) for text in values.lines or ())
    total = read_money(values.total or "", name=INVOICE.field("total").label)
    before, tax = (
        default if text is None else read_money(text).amount
        for text, default in ((values.before_tax, total.amount), (values.tax, Decimal(0)))
    )
    bill = Bill(tuple(line.amount for line in lines), before, tax, total.amount)
    draft = _draft(pens, total.currency, lines, bill, values.tax_words or "")
    return Given(values, replace(draft, remarks=values.remarks or ()), fresh)


def _refuse_past(draft: Draft) -> None:
    total, currency = in_money(draft.bill.total, draft.currency), draft.currency
    if draft.said_price == 0 and draft.bill.total > 0:
        raise HoldError(
            f"The price said at the end was {in_money(Decimal(0), currency)}, so nothing is billed; the lines come to {total}. "
            "Where something is to be paid after all, enter the price at the end anew."
        )
    if draft.most is not None and draft.bill.total > draft.most:
        most = in_money(draft.most, currency)
        raise HoldError(
            f"The invoice comes to {total}, with postage and tax, and at most {most} was agreed. Ask the owner first and "
            "enter the yes with its price under Proposal and agreement, or take something off there under “For the invoice”."
        )


def _pens(job: Job) -> tuple[Job, ...]:
    """The jobs that are billed together, the first pen's first."""
    lead = parcel_of(job)
    names = members(job.bench, lead) if lead is not None else ()
    if len(names) < 2 or job.name not in names:
        return (job,)
    return tuple(job if name == job.name else open_job(name, bench=job.bench) for name in names)


def _most(pens: tuple[Job, ...]) -> tuple[Decimal, str] | None:
    """The agreed most for all pens and its currency: one price for a parcel counts once, prices of single pens are added."""
    found: dict[str, Decimal] = {}
    shared = False
    for pen in pens:
        money = spending_of(pen)
        if money.ceiling is None:
            continue
        if len(pens) > 1 and shares_price(pen):
            if shared:
                continue
            shared = True
        found[money.currency] = found.get(money.currency, Decimal(0)) + money.ceiling
    if len(found) > 1:
        raise InputError("the agreed most", "in one currency for all pens of a parcel", " and ".join(sorted(found)))
    return next(((most, currency) for currency, most in found.items()), None)


def _said_price(pens: tuple[Job, ...], currency: str) -> Decimal | None:
    """The prices said at the end together; None where a pen has none in this currency."""
    prices = [pen.money(pen.newest(RESULT).price) for pen in pens]
    if any(price is None or price.currency != currency for price in prices):
        return None
    return sum((price.amount for price in prices if price is not None), Decimal(0))


def _remarks(pens: tuple[Job, ...]) -> tuple[str, ...]:
    found = []
    for pen in pens:
        for what, refused in departures_without_yes(pen):
            said = "although you had said no" if refused else "not agreed beforehand"
            found.append(f"Done otherwise than agreed ({said}): {what.rstrip('. ')}.")
        if words := pen.newest(BILL).words:
            found.append(words)
    return tuple(found)


def _findings(pens: tuple[Job, ...], draft: Draft) -> tuple[Finding, ...]:
    found = []
    strange = [line.what for line in draft.lines if not line.agreed]
    if strange:
        found.append(Finding("warning", "books.invoice-not-agreed", lines=strange))
    if draft.difference:
        way = "more" if draft.difference > 0 else "less"
        by, said = (
            in_money(abs(draft.difference), draft.currency),
            in_money(draft.said_price or Decimal(0), draft.currency),
        )
        total = in_money(draft.bill.total, draft.currency)
        found.append(Finding("warning", f"books.invoice-price:{way}", total=total, said=said, by=by))
    if draft.most is None:
        found.append(Finding("note", "books.invoice-no-most"))
    open_ones = [pen.name for pen in pens if pen.newest(RESULT).ending is None]
    if open_ones:
        found.append(Finding("note", "books.invoice-open", jobs=open_ones))
    if all(agreed_price(pen) is None for pen in pens) and draft.most is not None:
        found.append(Finding("note", "books.invoice-limit"))
    return tuple(found)
