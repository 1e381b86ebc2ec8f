"""What was received: deposits and payments, what is still open, and what cannot be counted."""

from decimal import Decimal

from books.billing import bench_that_bills, pen

from pentools.books.money.received import received


def test_deposits_come_before_the_invoice_unless_it_was_said(tmp_path):
    job = pen(bench_that_bills(tmp_path))
    for amount, day, what_for in (("40", "2026-03-01", ""), ("10", "2026-03-30", ""), ("5", "2026-03-01", "invoice"), ("1", "2026-04-02", "deposit")):  # fmt: skip
        job.add("agree", "money received", {"amount": amount, "received_on": day, "what_for": what_for})
    job.add("agree", "money received", {"amount": "7 USD", "received_on": "2026-03-01"})
    paid = received([job], "EUR", Decimal(60), "2026-03-30")
    assert [(str(one.amount), one.deposit) for one in paid.amounts] == [("40", True), ("5", False), ("10", False), ("1", True)]  # fmt: skip
    assert (paid.open, paid.not_counted) == (4, ("7 USD",))


def test_too_much_is_below_nothing(tmp_path):
    job = pen(bench_that_bills(tmp_path))
    job.add("agree", "money received", {"amount": "61.50", "received_on": "2026-03-01"})
    assert received([job], "EUR", Decimal(60), "2026-03-30").open == Decimal("-1.50")
