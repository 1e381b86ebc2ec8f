"""What one pen puts on an invoice, and what of it the owner had said yes to."""

from decimal import Decimal

import pytest
from books.billing import USUAL, bench_that_bills, pen
from hypothesis import given, settings
from hypothesis import strategies as st

from pentools.books.money.lines import NOT_AGREED, InvoiceLine, invoice_lines, line_from_text
from pentools.errors import InputError
from pentools.money import CURRENCIES, rounded
from pentools.record.entries import new_entry
from pentools.record.spending import spending_of


def amounts(job, currency="EUR"):
    return {line.what: (str(line.amount), line.agreed) for line in invoice_lines(job, currency)}


def test_hours_parts_postage_and_what_is_taken_off(tmp_path):
    job = pen(bench_that_bills(tmp_path))
    job.add("work log", "work", {"activity": "other", "minutes": "10.4 min", "done": "post"})
    job.add("repairs", "back again", {"part": "nib", "back_on": "2026-03-20", "done": "tipped", "cost": "20 EUR"})
    job.add("agree", "bill", {"postage": "8.50 EUR", "taken_off": "5 EUR", "why_off": "learning"})
    assert amounts(job) == {
        "Work: seals and sac": ("50.00", True),  # 100 whole minutes
        "latex sac 16": ("4.50", True),
        "Work by another workshop": ("20.00", True),
        "Postage and packing": ("8.50", True),
        "Taken off": ("-5.00", True),
    }
    how = {line.what: line.how for line in invoice_lines(job, "EUR")}
    assert how["Work: seals and sac"] == "100 min at 30.00 EUR an hour"
    assert (how["latex sac 16"], how["Taken off"]) == ("seals and sac", "learning")
    spent = spending_of(job).spent  # what the ceiling is held against is what is billed, but for part of a minute
    assert abs(sum(line.amount for line in invoice_lines(job, "EUR")) - spent) <= Decimal("0.25")


def test_a_price_of_the_work_takes_the_place_of_hours_and_a_price_alone_of_everything(tmp_path):
    job = pen(bench_that_bills(tmp_path / "a"))
    job.add("agree", "bill", {"work_price": "60 EUR"})
    assert amounts(job)["Work"] == ("60.00", True)
    assert "Work: seals and sac" not in amounts(job)
    job = pen(bench_that_bills(tmp_path / "b", 'currency = "EUR"\n'))
    assert list(amounts(job)) == ["latex sac 16"]
    job.add("release", "result", {"ending": "done", "summary": "It fills.", "price": "45"})
    assert amounts(job) == {"Work, parts and materials": ("45.00", True)}


@pytest.mark.parametrize(
    ("to", "not_to", "price", "sac", "shellac", "work"),
    [
        ("proposal", "", None, True, True, True),
        ("replace part", "", None, True, False, False),
        ("sealant", "", "60 EUR", False, True, True),
        ("proposal", "replace part", None, False, True, True),
        ("publish", "", None, False, False, False),
    ],
)
def test_what_was_not_agreed_is_marked(tmp_path, to, not_to, price, sac, shellac, work):
    job = pen(bench_that_bills(tmp_path), agreed=False)
    job.add("agree", "yes", {"to": to, "not_to": not_to, "at_most": price or "", "answered_on": "2026-03-03", "channel": "letter"})  # fmt: skip
    job.add("work log", "material", {"what": "shellac, orange", "way": "added", "cost": "1 EUR"})
    told = {what: agreed for what, (_, agreed) in amounts(job).items()}
    assert told == {"Work: seals and sac": work, "latex sac 16": sac, "shellac, orange": shellac}


def test_a_departure_that_was_agreed_covers_what_it_speaks_of(tmp_path):
    job = pen(bench_that_bills(tmp_path), agreed=False)
    job.add("work log", "departure", {"what": "a silicone sac", "why": "the pen is celluloid"})
    assert not amounts(job)["latex sac 16"][1]
    job.add("work log", "departure", {"what": "Latex after all", "why": "asked for", "agreed_on": "2026-03-09"})
    assert amounts(job)["latex sac 16"] == ("4.50", True)


def test_a_cost_in_other_money_is_refused_by_its_words(tmp_path):
    job = pen(bench_that_bills(tmp_path), parts=("4.50 USD",))
    with pytest.raises(InputError, match=r"latex sac 16 cost, in job a-pen, must be an amount in EUR: got “4.50 USD”"):
        invoice_lines(job, "EUR")
    job = pen(bench_that_bills(tmp_path), "other", parts=())
    job.record.append(new_entry("work log", "material", {"what": "wax", "way": "added", "cost": "some"}))
    with pytest.raises(InputError, match="wax cost"):
        invoice_lines(job, "EUR")


def test_hours_are_not_changed_into_other_money(tmp_path):
    job = pen(bench_that_bills(tmp_path), parts=())
    with pytest.raises(InputError, match="in the bench’s own money"):
        invoice_lines(job, "USD")
    yen = pen(bench_that_bills(tmp_path / "yen", USUAL.replace("EUR", "JPY").replace("30.0", "4000")), most="20000 JPY", parts=("450 JPY",))  # fmt: skip
    assert [str(line.amount) for line in invoice_lines(yen, "JPY")] == ["6000", "450"]


TEXT = st.text(st.characters(codec="utf-8", exclude_categories=("C",)), max_size=20).map(str.strip)


@settings(max_examples=200, deadline=None)
@given(TEXT, TEXT, st.decimals(-(10**6), 10**6, places=4), st.sampled_from(sorted(CURRENCIES)), st.booleans())
def test_a_line_comes_back_from_its_text(what, how, amount, currency, agreed):
    line = InvoiceLine("a-pen", what, how, rounded(amount, currency), "" if agreed else NOT_AGREED)
    back = line_from_text(line.as_text(currency))
    assert (back.pen, back.amount, back.agreed) == ("a-pen", line.amount, agreed)
    if "|" not in what and "  " not in what:
        assert back.what == " ".join(what.split())
    with pytest.raises(InputError, match="five parts"):
        line_from_text("a | b")
