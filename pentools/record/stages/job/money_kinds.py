"""What is asked of money: what was received, what goes on the invoice beside hours and parts, and the invoices given."""

from __future__ import annotations

from typing import Annotated

from pentools.fields import ask
from pentools.record.forms import Form
from pentools.record.kinds import Kind

__all__ = ["BILL", "INVOICE", "RECEIVED", "Bill", "Invoice", "Received"]


# fmt: off
class Received(Form, frozen=True):
    """Money received: what one entry holds."""

    amount: Annotated[str | None, ask("Received", "money", required=True, hint="a deposit or what was paid, such as 40 EUR")] = None
    received_on: Annotated[str | None, ask("On", "date", required=True, default="today", hint="such as 14 March, or 2026-03-14")] = None
    how: Annotated[str | None, ask("How", hint="such as transfer, or in cash")] = None
    what_for: Annotated[str | None, ask("What for", "choice", choices=(("deposit", "a deposit"), ("invoice", "the invoice")), hint="empty: before the invoice a deposit, after it a payment")] = None


RECEIVED = Kind("agree", "money received", "Money received", Received, help="A deposit stands on the invoice, and so does the day it was paid.")


class Bill(Form, frozen=True):
    """What goes on the invoice beside hours and parts: what one entry holds."""

    postage: Annotated[str | None, ask("Postage and packing", "money", hint="such as 8.50 EUR")] = None
    work_price: Annotated[str | None, ask("Price of the work", "money", hint="in place of hours at the bench’s rate, such as 60 EUR")] = None
    taken_off: Annotated[str | None, ask("Taken off", "money", hint="what is let off, such as 5 EUR")] = None
    why_off: Annotated[str | None, ask("Why", hint="stands beside it, such as: an hour spent learning")] = None
    words: Annotated[str | None, ask("A line to the owner", "long text", hint="stands under the sum")] = None


BILL = Kind("agree", "bill", "For the invoice", Bill, log=False, help="Hours and costs are known already; here stands what they do not say.")


class Invoice(Form, frozen=True):
    """An invoice as it was given: what one entry holds. `pentools invoice` writes it; it is never edited."""

    number: Annotated[str | None, ask("Number", required=True)] = None
    place: Annotated[int | None, ask("Place in the sequence", "count", low=1, high=1_000_000, required=True)] = None
    given_on: Annotated[str | None, ask("Of", "date", required=True)] = None
    lines: Annotated[tuple[str, ...] | None, ask("Lines", "items", hint="pen | what | how much of it | amount | what is said beside it")] = None
    before_tax: Annotated[str | None, ask("Before tax", "money")] = None
    tax: Annotated[str | None, ask("Tax", "money")] = None
    tax_words: Annotated[str | None, ask("Which tax")] = None
    total: Annotated[str | None, ask("Total", "money", required=True)] = None
    deposit: Annotated[str | None, ask("Received before", "money")] = None
    replaces_number: Annotated[str | None, ask("In place of")] = None
    why: Annotated[str | None, ask("Why it was corrected")] = None
    remarks: Annotated[tuple[str, ...] | None, ask("Said under it", "items")] = None


INVOICE = Kind("agree", "invoice", "Invoice", Invoice, help="Written by the command, with every line.")


# fmt: on
