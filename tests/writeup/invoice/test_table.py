"""The invoice's table: read back by a spreadsheet's reader, its lines sum to its total, and no cell is a formula."""

import datetime as dt
import io
from decimal import Decimal

import pandas
from books.billing import USUAL, bench_that_bills, pen

from pentools.books.money.invoice import give_invoice
from pentools.books.money.received import received
from pentools.writeup.invoice.table import COLUMNS, invoice_csv


def test_it_is_read_back_and_sums(tmp_path):
    job = pen(bench_that_bills(tmp_path, USUAL + 'tax_rate = "7.7 %"\n'))
    job.add("work log", "material", {"what": "=cmd()", "way": "added", "cost": "1,25 EUR"})
    job.add("agree", "bill", {"taken_off": "2 EUR", "why_off": "a, “b” and\nc"})
    job.add("agree", "money received", {"amount": "10", "received_on": "2026-03-01"})
    given = give_invoice(job, dt.date(2026, 3, 30))
    paid = received([job], "EUR", given.draft.bill.total, "2026-03-30")
    text = invoice_csv(given.draft, paid, "2026-001", "2026-03-30")
    frame = pandas.read_csv(io.StringIO(text), dtype=str, keep_default_na=False)
    assert tuple(frame.columns) == COLUMNS
    amount = {row: [Decimal(a) for a in part] for row, part in frame.groupby("row")["amount"]}
    assert sum(amount["line"]) == amount["before tax"][0] == Decimal("48.75")
    assert amount["before tax"][0] + amount["tax"][0] == amount["total"][0] == Decimal("52.50")
    assert amount["open"] == [Decimal("42.50")]
    assert amount["deposit"] == [Decimal(-10)]
    assert set(frame["number"]) == {"2026-001"}
    assert set(frame["currency"]) == {"EUR"}
    assert "'=cmd()" in list(frame["what"])
    assert "a, “b” and c" in list(frame["how"])
