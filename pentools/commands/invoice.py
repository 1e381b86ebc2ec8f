"""``pentools invoice``: what is billed for a pen, or for a parcel, with a number of its own."""

from __future__ import annotations

import argparse
import datetime as dt
import json
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from pentools.exits import EXIT_OK
from pentools.record.bench import Bench

if TYPE_CHECKING:
    from pentools.books.money.invoice import Draft, Given
    from pentools.books.money.received import Paid
    from pentools.record.job import Job

__all__ = ["arguments", "run"]


def arguments(command: argparse.ArgumentParser) -> None:
    """What the command takes."""
    command.add_argument("job", metavar="JOB", help="the job's name; any pen of a parcel stands for all of it")
    command.add_argument("--draft", action="store_true", help="show what it would say: no number is given")
    command.add_argument("--why", metavar="TEXT", default="", help="why the last one is corrected")
    command.add_argument("--json", action="store_true", help="print it as JSON")


def run(given: argparse.Namespace, bench: Bench, say: Callable[[str], None]) -> int:
    """Give an invoice, write its page and its table, and say what it comes to."""
    from pentools.books.money.invoice import draft_invoice, give_invoice
    from pentools.books.money.received import received
    from pentools.record.job import open_job

    job = open_job(given.job, bench=bench)
    today = dt.date.today()
    made = None if given.draft else give_invoice(job, today, why=given.why)
    draft = draft_invoice(job) if made is None else made.draft
    jobs = [open_job(name, bench=bench) for name in draft.pens]
    day = today.isoformat() if made is None else made.values.given_on or ""
    paid = received(jobs, draft.currency, draft.bill.total, day)
    files = _write(jobs, draft, made, paid)
    found = _as_json(bench, draft, made, paid, files)
    if given.json:
        say(json.dumps(found, ensure_ascii=False, indent=2))
        return EXIT_OK
    say(str(found["sentence"]))
    for finding in found["findings"]:
        say(f"  {finding['text']}")
    for path in files:
        say(f"Written: {path}")
    return EXIT_OK


def _write(jobs: list[Job], draft: Draft, made: Given | None, paid: Paid) -> list[str]:
    from pentools.writeup.invoice.page import INVOICE_FORM, invoice_html
    from pentools.writeup.invoice.table import invoice_csv
    from pentools.writeup.write import put_files

    values = None if made is None else made.values
    number, day = ("", "") if values is None else (values.number or "", values.given_on or "")
    name = "invoice" if made else "invoice-draft"
    files = {
        f"{name}.html": invoice_html(jobs, draft, paid, values),
        f"{name}.csv": invoice_csv(draft, paid, number, day),
    }
    first = put_files(jobs[0], INVOICE_FORM, files)
    return [str(first.with_name(path)) for path in files]


def _as_json(bench: Bench, draft: Draft, made: Given | None, paid: Paid, files: list[str]) -> dict[str, Any]:
    from pentools.calc.base.findings import Finding
    from pentools.record.billing import billing_of

    set_by, values = billing_of(bench), None if made is None else made.values
    findings = draft.findings
    if paid.not_counted:
        findings = (*findings, Finding("warning", "books.invoice-money", amounts=list(paid.not_counted)))
    return {
        "number": None if values is None else values.number,
        "place": None if values is None else values.place,
        "date": None if values is None else values.given_on,
        "new": made is not None and made.fresh,
        "replaces": None if values is None else values.replaces_number,
        "why": None if values is None else values.why,
        "job": draft.job,
        "jobs": list(draft.pens),
        "currency": draft.currency,
        "lines": [
            {"job": one.pen, "what": one.what, "how": one.how, "amount": _text(one.amount, draft), "agreed": one.agreed}
            for one in draft.lines
        ],
        "before_tax": _text(draft.bill.before_tax, draft),
        "tax": _text(draft.bill.tax, draft) if draft.tax_words else None,
        "tax_words": draft.tax_words or None,
        "total": _text(draft.bill.total, draft),
        "rounding": set_by.rounding,
        "tax_rounded_on": "each line" if set_by.each_line else "total",
        "agreed_most": _text(draft.most, draft),
        "price_at_end": _text(draft.said_price, draft),
        "difference": _text(draft.difference, draft),
        "received": [
            {"date": one.received_on, "how": one.how, "amount": _text(one.amount, draft), "deposit": one.deposit}
            for one in paid.amounts
        ],
        "open": _text(paid.open, draft),
        "findings": [finding.as_json() for finding in findings],
        "sentence": _sentence(draft, made, paid),
        "files": files,
    }  # fmt: skip


def _text(amount: Any, draft: Draft) -> str | None:
    from pentools.money import rounded

    return None if amount is None else f"{rounded(amount, draft.currency):f}"


def _sentence(draft: Draft, made: Given | None, paid: Paid) -> str:
    from pentools.money import in_money

    total = in_money(draft.bill.total, draft.currency)
    left = f"; {in_money(paid.open, draft.currency)} is still open" if paid.open > 0 and paid.amounts else ""
    done = "; it is paid" if paid.open <= 0 else ""
    if made is None:
        return f"An invoice would come to {total}{left}{done}. No number was given."
    values = made.values
    if not made.fresh:
        return f"Invoice {values.number} of {values.given_on} stands as it was: {total}{left}{done}."
    instead = f", in place of {values.replaces_number}" if values.replaces_number else ""
    return f"Invoice {values.number}{instead}: {total}{left}{done}."
