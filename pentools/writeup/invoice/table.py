"""The invoice as a table for a spreadsheet: one row a line, then the sums."""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING

from pentools.books.cells import defused
from pentools.books.money.received import Paid
from pentools.money import rounded

if TYPE_CHECKING:
    from pentools.books.money.invoice import Draft

__all__ = ["COLUMNS", "invoice_csv"]

COLUMNS = ("number", "date", "job", "row", "what", "how", "amount", "currency", "beside")


def invoice_csv(draft: Draft, paid: Paid, number: str, given_on: str) -> str:
    """The table, with commas, in UTF-8.

    Parameters
    ----------
    draft : Draft
        What it says.
    paid : Paid
        What was received.
    number, given_on : str
        Of the invoice; empty for a draft.
    """
    rows = [(line.pen, "line", line.what, line.how, line.amount, line.beside) for line in draft.lines]
    sums = (
        [("before tax", "", draft.bill.before_tax), ("tax", draft.tax_words, draft.bill.tax)] if draft.tax_words else []
    )
    sums += [("total", "", draft.bill.total)]
    sums += [
        ("deposit" if one.deposit else "received", f"{one.received_on} {one.how}".strip(), -one.amount)
        for one in paid.amounts
    ]
    sums += [("open", "", paid.open)]
    rows += [(draft.job, row, what, "", amount, "") for row, what, amount in sums]
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for pen, row, what, how, amount, beside in rows:
        shown = f"{rounded(amount, draft.currency):f}"
        writer.writerow(
            (defused(number), given_on, pen, row, defused(what), defused(how), shown, draft.currency, beside)
        )
    return text.getvalue()
