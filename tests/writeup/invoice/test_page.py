"""The invoice's page: each amount in its place, what was not agreed is marked, nothing is said of a tax that nobody set."""

import datetime as dt
import re
from decimal import Decimal

import pytest
from books.billing import USUAL, bench_that_bills, pen
from writeup.pages import Parsed

from pentools.books.money.invoice import draft_invoice, give_invoice
from pentools.books.money.received import received
from pentools.record.came_with import join
from pentools.record.job import open_job
from pentools.writeup.invoice.page import invoice_html

DAY = dt.date(2026, 3, 30)
TAXED = USUAL + 'tax_name = "VAT"\ntax_rate = "19 %"\ntax_wording = "Tax number 12/345."\npayment = ["By transfer."]\n'


def page(job, *, draft=False):
    given = None if draft else give_invoice(job, DAY)
    told = draft_invoice(job) if given is None else given.draft
    jobs = [open_job(name, bench=job.bench) for name in told.pens]
    paid = received(jobs, told.currency, told.bill.total, DAY.isoformat())
    html = invoice_html(jobs, told, paid, given.values if given else None)
    return html, re.sub(r"\s+", " ", Parsed(html).text.replace("\u00a0", " "))


@pytest.fixture
def job(tmp_path):
    job = pen(bench_that_bills(tmp_path, TAXED))
    job.add("intake", "owner", {"owner": "Ada Vernon", "address": "Quince Lane 3\n1234 Overbrook", "declared_value": "180 EUR", "value_basis": "her guess of 2024", "private_note": "a present"})  # fmt: skip
    job.add("agree", "estimate", {"price_low": "60 EUR", "price_high": "90 EUR"})
    job.add("agree", "money received", {"amount": "40", "received_on": "2026-03-05", "how": "in cash"})
    job.add("agree", "bill", {"postage": "8.50", "words": "Thank you."})
    job.add("release", "result", {"ending": "done", "summary": "It fills.", "price": "69.02"})
    return job


def test_everything_stands_in_its_place(job):
    html, text = page(job)
    assert "default-src 'none'" in html
    for said in (
        "Invoice 2026-001", "Of 30 March 2026.", "Ada Vernon Quince Lane 3 1234 Overbrook",
        "Work: seals and sac 90 min at 30.00 EUR an hour 45.00", "Latex sac 16 seals and sac 4.50", "Postage and packing 8.50",
        "Before tax 58.00 VAT 19 % 11.02 Total 69.02", "29.02 EUR Of 69.02 EUR in all.", "Deposit: 40.00 EUR on 5 March 2026, in cash.",
        "The estimate was 60 EUR to 90 EUR.", "At most 130.00 EUR was agreed, with your yes of 3 March 2026 (letter)",
        "180 EUR. Basis: her guess of 2024.", "Thank you.", "By transfer.", "Tax number 12/345.",
    ):  # fmt: skip
        assert said.replace(" in all", " in all") in text, said
    assert "a present" not in text
    assert "not agreed beforehand" not in text
    assert "Unfinished" not in text


def test_paid_corrected_and_draft_say_so(job):
    assert "it has no number" in page(job, draft=True)[1]
    page(job)
    job.add("agree", "money received", {"amount": "29.02", "received_on": "2026-04-02"})
    text = page(job)[1]
    assert "Paid 69.02 EUR" in text
    assert "Received: 29.02 EUR on 2 April 2026." in text
    assert "By transfer." not in text
    job.add("agree", "bill", {"postage": "8.50", "taken_off": "5"})
    text = page(job)[1]
    assert "It takes the place of invoice 2026-001, which no longer counts." in text
    assert "Taken off −5.00" in text
    assert "5.95 EUR too much was received" in text


def test_no_tax_is_said_nowhere_and_what_was_not_agreed_is_marked(tmp_path):
    job = pen(bench_that_bills(tmp_path), agreed=False)
    text = page(job)[1]
    assert not re.search(r"\b(tax|vat)\b", text, re.IGNORECASE)
    assert "4.50" in text
    assert text.count("not agreed beforehand") == 2 + 1  # two lines, and what is said of them
    assert "insured" not in text.casefold()


def test_a_tax_that_prices_hold_is_shown_within(tmp_path):
    job = pen(bench_that_bills(tmp_path, TAXED + "tax_included = true\n"))
    assert "Total 49.50 of it VAT 19 % 7.90 before tax 41.60" in page(job)[1]


def test_a_parcel_has_a_group_a_pen(tmp_path):
    bench = bench_that_bills(tmp_path)
    join(pen(bench, "b", agreed=False, parts=("7 EUR",)), pen(bench, "a", most="200 EUR").name)
    text = page(open_job("b", bench=bench))[1]
    assert re.search(r"Pen a .*latex sac 16 seals and sac 4.50 Together 49.50 Pen b .*7.00 Together 52.00", text, re.IGNORECASE)  # fmt: skip
    assert "101.50 EUR" in text
    assert "2 pens that came together" in text


def test_amounts_keep_their_currencys_decimals(tmp_path):
    job = pen(bench_that_bills(tmp_path, 'currency = "JPY"\nrate_per_hour = 4000.0\n'), most="9000 JPY", parts=("450 JPY",))  # fmt: skip
    assert "6450 JPY" in page(job)[1]
    assert draft_invoice(job).bill.total == Decimal(6450)
