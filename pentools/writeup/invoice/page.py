"""The invoice as a page for the owner: number, lines pen by pen, sum and tax, what was received, what had been agreed."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import TYPE_CHECKING

from pentools.books.money.invoice import HELD, Draft
from pentools.books.money.received import Paid
from pentools.money import in_money, rounded
from pentools.numbers import capital
from pentools.record.billing import billing_of
from pentools.record.stages.job.agree import agreed_price
from pentools.record.stages.job.agree_kinds import ESTIMATE, YES
from pentools.record.stages.job.intake_kinds import ARRIVAL, OWNER
from pentools.record.stages.job.posting import insured_value
from pentools.writeup.forms import PageForm
from pentools.writeup.papers.sheet import NOT_ENTERED, Grid, Paper, Row, paper_html, told
from pentools.writeup.words import basis_in_words, date_in_words, sentence

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.stages.job.money_kinds import Invoice

__all__ = ["INVOICE_FORM", "invoice_html"]

INVOICE_FORM = PageForm("invoice", "invoice.html", "owner", "the invoice", "pentools.commands.invoice:run")
_DRAFT = "This is a draft: it has no number, and it is no invoice."


def invoice_html(jobs: Sequence[Job], draft: Draft, paid: Paid, given: Invoice | None) -> str:
    """The page.

    Parameters
    ----------
    jobs : sequence of Job
        The pens, the first one's job first: it says whom the invoice is for.
    draft : Draft
        What it says.
    paid : Paid
        What was received.
    given : Invoice or None
        The invoice as the record has it; None makes a draft without a number.
    """
    lead = jobs[0]
    title = "Draft of an invoice" if given is None else f"Invoice {given.number}"
    rows = (
        _to(lead), _from(lead), *(_pen(job, draft, several=len(jobs) > 1) for job in jobs), _sum(draft),
        _to_pay(draft, paid), _in_place(given), _agreed(lead, draft),
        Row("Beside it", draft.remarks), _insured(jobs, draft),
        Row("How to pay", billing_of(lead.bench).payment if paid.open > 0 else ()),
    )  # fmt: skip
    about = _DRAFT if given is None else f"Of {date_in_words(given.given_on)}."
    paper = Paper("invoice", title, about, tuple(row for row in rows if row), billing_of(lead.bench).tax_wording)
    pens = f"{len(jobs)} pens that came together" if len(jobs) > 1 else ""
    return paper_html(lead, paper, day="" if given is None else date_in_words(given.given_on), pen=pens)


def _to(job: Job) -> Row:
    owner = job.newest(OWNER)
    lines = (told(OWNER, owner, "owner"), *told(OWNER, owner, "address").splitlines())
    return Row("To", tuple(line.strip() for line in lines if line.strip()) or (sentence(NOT_ENTERED),))


def _from(job: Job) -> Row:
    return Row("From", tuple(t for t in (job.bench.text("bench", "name"), *job.bench.strings("bench", "contact")) if t))


def _plain(amount: Decimal, currency: str) -> str:
    """An amount without its code, with a minus sign where it is below 0."""
    return f"{'−' if amount < 0 else ''}{rounded(abs(amount), currency):f}"


def _pen(job: Job, draft: Draft, *, several: bool) -> Row:
    own = [line for line in draft.lines if line.pen == job.name]
    rows = [(capital(one.what), one.how, one.beside, _plain(one.amount, draft.currency)) for one in own]
    if several and len(own) > 1:
        rows.append(("Together", "", "", _plain(sum((one.amount for one in own), Decimal(0)), draft.currency)))
    head = ("What", "How much, or where", "Beside it", draft.currency)
    label = capital(job.newest(ARRIVAL).pen or job.name) if several else "What is billed"
    return Row(label, grid=Grid(head, tuple(rows), draft.currency).shown() if rows else None)


def _sum(draft: Draft) -> Row:
    """Sum and tax; nothing where the bench has set no tax, since the total then stands below."""
    bill, held = draft.bill, draft.tax_words.endswith(HELD)
    if not draft.tax_words:
        return Row("Sum")
    tax = draft.tax_words.removesuffix(HELD)
    rows = (("Before tax", bill.before_tax), (tax, bill.tax), ("Total", bill.total))
    if held:
        rows = (("Total", bill.total), (f"of it {tax}", bill.tax), ("before tax", bill.before_tax))
    shown = tuple((what, _plain(amount, draft.currency)) for what, amount in rows)
    return Row("Sum", grid=Grid(("What", draft.currency), shown, draft.currency))


def _to_pay(draft: Draft, paid: Paid) -> Row:
    currency = draft.currency
    came = [
        f"{'Deposit' if one.deposit else 'Received'}: {in_money(one.amount, currency)} on {date_in_words(one.received_on)}"
        f"{f', {one.how}' if one.how else ''}."
        for one in paid.amounts
    ]
    total = [f"Of {in_money(draft.bill.total, currency)} in all."] if paid.amounts else []
    if paid.open > 0:
        return Row("To pay", (*total, *came), big=in_money(paid.open, currency))
    over = [f"{in_money(-paid.open, currency)} too much was received and goes back."] if paid.open < 0 else []
    return Row("Paid", (*came, *over), big=in_money(draft.bill.total, currency))


def _in_place(given: Invoice | None) -> Row:
    if given is None or given.replaces_number is None:
        return Row("Correction")
    why = f" {sentence(given.why)}" if given.why else ""
    return Row("Correction", (f"It takes the place of invoice {given.replaces_number}, which no longer counts.{why}",))


def _agreed(job: Job, draft: Draft) -> Row:
    """The chain from the estimate over the yes to what is billed."""
    yes, estimate = agreed_price(job), job.newest(ESTIMATE)
    said = []
    if estimate.price_low or estimate.price_high:
        said.append(f"The estimate was {' to '.join(p for p in (estimate.price_low, estimate.price_high) if p)}.")
    if draft.most is not None:
        when = "" if yes is None else f", with your yes of {date_in_words(yes.values.answered_on)}"
        how = "" if yes is None else f" ({told(YES, yes.values, 'channel')})"
        said.append(
            f"At most {in_money(draft.most, draft.currency)} was agreed{when}{how}; postage and tax are held against it too."
        )
    if any(not line.agreed for line in draft.lines):
        said.append("What is marked so was not agreed beforehand: ask if it is not what you wanted.")
    return Row("What was agreed", tuple(said))


def _insured(jobs: Sequence[Job], draft: Draft) -> Row:
    """What a pen that is posted is insured for, on what basis and since when that was said."""
    if not any(line.what.startswith("Postage") for line in draft.lines):
        return Row("Insured value")
    said = []
    for job in jobs:
        value, _ = insured_value(job)
        if value:
            pen = f"{capital(job.newest(ARRIVAL).pen or job.name)}: " if len(jobs) > 1 else ""
            said.append(f"{pen}{value}. {basis_in_words(job)}")
    return Row("Insured value", tuple(said))
