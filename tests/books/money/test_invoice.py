"""An invoice: given once, again where nothing changed, in place of the last where something did, and never past the most."""

import datetime as dt
from decimal import Decimal

import pytest
from books.billing import USUAL, bench_that_bills, pen
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from pentools.books.money.invoice import draft_invoice, give_invoice, last_invoice, tax_in_words
from pentools.errors import HoldError, InputError
from pentools.money import decimals_of
from pentools.record.bench import open_bench_folder
from pentools.record.billing import Billing
from pentools.record.came_with import join
from pentools.record.job import create_job, open_job
from pentools.record.stages.job.money_kinds import INVOICE

DAY, LATER = dt.date(2026, 3, 30), dt.date(2026, 4, 2)
TAXED = USUAL + 'tax_name = "VAT"\ntax_rate = "19 %"\n'


def test_the_same_again_is_the_same_invoice_and_a_change_a_new_one(tmp_path):
    job = pen(bench_that_bills(tmp_path, TAXED))
    first = give_invoice(job, DAY)
    assert (first.values.number, first.values.place, first.values.total, first.fresh) == (
        "2026-001",
        1,
        "58.91 EUR",
        True,
    )
    assert (first.values.before_tax, first.values.tax, first.values.tax_words) == ("49.50 EUR", "9.41 EUR", "VAT 19 %")
    job.add("agree", "money received", {"amount": "40", "received_on": "2026-03-31"})
    job.add("work log", "note", {"note": "sent"})
    again = give_invoice(job, LATER)
    assert (again.values, again.fresh) == (first.values, False)
    before = (tmp_path / "a-pen" / "record.jsonl").read_bytes()
    job.add("agree", "bill", {"postage": "8.50"})
    second = give_invoice(job, LATER, why="postage was left out")
    assert (second.values.number, second.values.replaces_number, second.values.total) == ("2026-002", "2026-001", "69.02 EUR")  # fmt: skip
    assert second.values.why == "postage was left out"
    assert (tmp_path / "a-pen" / "record.jsonl").read_bytes().startswith(before)  # the first stands as it was
    assert last_invoice(job).values.number == "2026-002"
    assert len(second.values.lines) == 3


def test_what_the_bench_sets_later_counts_for_later_invoices_only(tmp_path):
    job = pen(bench_that_bills(tmp_path, TAXED))
    first = give_invoice(job, DAY)
    dearer = bench_that_bills(tmp_path, TAXED.replace("30.0", "45.0").replace("19", "21"))
    job = open_job("a-pen", bench=dearer)
    again = give_invoice(job, LATER)
    assert (again.values, again.draft.bill, again.draft.lines) == (first.values, first.draft.bill, first.draft.lines)
    job.add("work log", "work", {"activity": "seal", "minutes": "1 min", "done": "more"})
    assert give_invoice(job, LATER).values.tax_words == "VAT 21 %"


def test_more_than_was_agreed_is_refused_without_a_later_yes(tmp_path):
    job = pen(bench_that_bills(tmp_path, TAXED), most="58.90 EUR")
    with pytest.raises(HoldError, match=r"comes to 58.91 EUR, with postage and tax, and at most 58.90 EUR was agreed"):
        give_invoice(job, DAY)
    assert job.log(INVOICE) == ()
    job.add("agree", "yes", {"to": "proposal", "at_most": "58.91 EUR", "answered_on": "2026-03-29", "channel": "letter"})  # fmt: skip
    assert give_invoice(job, DAY).values.number == "2026-001"


def test_work_that_is_covered_is_not_billed(tmp_path):
    job = pen(bench_that_bills(tmp_path))
    job.add("release", "result", {"ending": "done", "summary": "It fills.", "price": "0 EUR"})
    assert draft_invoice(job).difference == Decimal("49.50")
    with pytest.raises(
        HoldError, match=r"said at the end was 0\.00 EUR, so nothing is billed; the lines come to 49\.50 EUR"
    ):
        give_invoice(job, DAY)
    job.add("release", "result", {"ending": "done", "summary": "It fills.", "price": "49.50 EUR"})
    assert give_invoice(job, DAY).fresh


def test_the_chain_is_told(tmp_path):
    job = pen(bench_that_bills(tmp_path), agreed=False)
    draft = draft_invoice(job)
    assert {finding.topic for finding in draft.findings} == {"invoice-not-agreed", "invoice-no-most", "invoice-open"}
    job.add("work log", "departure", {"what": "a silicone sac", "why": "celluloid"})
    assert draft_invoice(job).remarks == ("Done otherwise than agreed (not agreed beforehand): a silicone sac.",)
    job.add("release", "result", {"ending": "done", "summary": "It fills.", "price": "47 EUR"})
    draft = draft_invoice(job)
    assert draft.difference == Decimal("2.50")
    told = next(finding.text for finding in draft.findings if finding.topic == "invoice-price")
    assert "comes to 49.50 EUR; the price said at the end was 47.00 EUR, so it is 2.50 EUR more" in told
    job.add("agree", "bill", {"taken_off": "2.50"})
    assert draft_invoice(job).difference == 0
    assert "invoice-price" not in {finding.topic for finding in draft_invoice(job).findings}


def test_nothing_to_bill_and_too_much_taken_off_are_refused_and_use_no_number(tmp_path):
    job = create_job(bench_that_bills(tmp_path), "empty")
    with pytest.raises(InputError, match="what to bill must be on record"):
        give_invoice(job, DAY)
    job = pen(bench_that_bills(tmp_path))
    job.add("agree", "bill", {"taken_off": "50 EUR"})
    with pytest.raises(InputError, match=r"0\.50 EUR more"):
        give_invoice(job, DAY)
    job.add("agree", "bill", {})
    assert give_invoice(job, DAY).values.place == 1


@pytest.mark.parametrize(
    ("currency", "rate", "cost", "total"),
    [("JPY", "4000.0", "450", "6450 JPY"), ("KWD", "10.0", "0.125", "15.125 KWD"), ("HUF", "9000.0", "45.50", "13545.50 HUF")],
)  # fmt: skip
def test_each_currency_has_its_own_decimals(tmp_path, currency, rate, cost, total):
    job = pen(bench_that_bills(tmp_path, f'currency = "{currency}"\nrate_per_hour = {rate}\n'), most=f"99999 {currency}", parts=(f"{cost} {currency}",))  # fmt: skip
    given = give_invoice(job, DAY)
    assert given.values.total == total
    assert all(-line.amount.as_tuple().exponent == decimals_of(currency) for line in given.draft.lines)


def test_a_parcel_is_one_invoice_for_all_its_pens(tmp_path):
    bench = bench_that_bills(tmp_path)
    lead, other = pen(bench, "lead", most="200 EUR"), pen(bench, "other", agreed=False, parts=("7 EUR",))
    join(other, "lead")
    given = give_invoice(open_job("other", bench=bench), DAY)
    assert given.draft.pens == ("lead", "other")
    assert {line.pen: str(line.amount) for line in given.draft.lines if "sac" in line.what} == {"lead": "4.50", "other": "7.00"}  # fmt: skip
    assert given.values.total == "101.50 EUR"
    assert given.draft.most == 200  # one price for the parcel, counted once
    lead = open_job("lead", bench=bench)
    assert last_invoice(lead).values.number == "2026-001"
    assert last_invoice(open_job("other", bench=bench)) is None
    assert not give_invoice(lead, LATER).fresh
    open_job("other", bench=bench).add("work log", "material", {"what": "cork", "way": "added", "cost": "2 EUR"})
    assert give_invoice(lead, LATER).values.total == "103.50 EUR"


def test_the_tax_in_words():
    usual = Billing("EUR", Decimal(30))
    assert tax_in_words(usual) == ""
    assert tax_in_words(Billing("EUR", Decimal(30), "", Decimal("0.081"))) == "Tax 8.1 %"
    assert tax_in_words(Billing("EUR", Decimal(30), "VAT", Decimal("0.2"), tax_included=True)) == "VAT 20 %, held in the prices"  # fmt: skip


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.sampled_from(["EUR", "JPY", "KWD", "CLF", "USD"]), st.lists(st.integers(0, 10**5), max_size=4), st.integers(1, 600),
    st.sampled_from(["0 %", "7.7 %", "19 %"]), st.sampled_from(["total", "each line"]), st.booleans(),
    st.sampled_from(["half up", "half even"]),
)  # fmt: skip
def test_lines_and_tax_sum_to_the_total(tmp_path_factory, currency, units, minutes, rate, on, included, rounding):
    money = f'currency = "{currency}"\nrate_per_hour = 33.33\ntax_rate = "{rate}"\ntax_on = "{on}"\ntax_included = {str(included).lower()}\nrounding = "{rounding}"\n'  # fmt: skip
    costs = tuple(f"{Decimal(one).scaleb(-decimals_of(currency)):f} {currency}" for one in units)
    job = pen(bench_that_bills(tmp_path_factory.mktemp("bench"), money), agreed=False, minutes=f"{minutes} min", parts=costs)  # fmt: skip
    draft = give_invoice(job, DAY).draft
    assert sum(line.amount for line in draft.lines) == (draft.bill.total if included else draft.bill.before_tax)
    assert draft.bill.before_tax + draft.bill.tax == draft.bill.total
    assert draft == give_invoice(open_job("a-pen", bench=open_bench_folder(job.bench.folder)), LATER).draft
