"""One ceiling: costs, hours and the price at the end are held against it, each in its own money."""

from decimal import Decimal

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.holds import held
from pentools.record.job import create_job
from pentools.record.review import review
from pentools.record.spending import counted, price_past_ceiling, spending_of, unread_amounts


@pytest.fixture
def job(bench):
    return create_job(bench, "pen")


def rated(bench, rate, currency="EUR"):
    path = bench.folder / "bench.toml"
    text = path.read_text().replace("rate_per_hour = 0.0", f"rate_per_hour = {rate}")
    path.write_text(text.replace('currency = "EUR"', f'currency = "{currency}"'))
    return open_bench_folder(bench.folder)


def limits(job, limit=None, ceiling=None, agreed=None):
    if limit:
        job.add("intake", "request", {"asked": "mend it", "price_limit": limit})
    if ceiling:
        job.add("agree", "estimate", {"ceiling": ceiling})
    if agreed:
        answer = {"action": "proposal", "agreed": agreed, "answered_on": "2026-03-14", "channel": "letter"}
        job.add("agree", "answer", answer)


@pytest.mark.parametrize(
    ("limit", "ceiling", "agreed", "most"),
    [
        (None, None, None, None),
        ("90 EUR", None, None, 90),
        (None, "120 EUR", None, 120),
        ("90 EUR", "80 EUR", None, 80),  # the bench may go below the limit by itself
        ("90 EUR", "120 EUR", None, 90),  # but not above it
        ("90 EUR", "120 EUR", "no", 90),
        ("90 EUR", "120 EUR", "yes", 120),
        ("90", "80 €", None, 80),
    ],
)
def test_limit_and_agreed_most_are_one_ceiling(job, limit, ceiling, agreed, most):
    limits(job, limit, ceiling, agreed)
    assert spending_of(job).ceiling == most
    raised = [f for f in review(job) if f.topic == "limit-raised"]
    assert len(raised) == (1 if (limit, ceiling) == ("90 EUR", "120 EUR") and agreed != "yes" else 0)


def test_an_amount_without_currency_is_kept_with_the_benchs_own(bench):
    job = create_job(rated(bench, 0, "CHF"), "other")
    entry = job.add("work log", "material", {"what": "cork", "way": "added", "cost": "4,50"})
    assert entry.data["cost"] == "4,50 CHF"
    assert spending_of(job).spent == Decimal("4.50")


def test_other_money_is_not_counted_but_named(job):
    limits(job, "50 USD")
    job.add("work log", "material", {"what": "cork", "way": "added", "cost": "60 EUR"})
    for cost in ("some", "12/6"):  # old money is none of today
        job.record.append(new_entry("work log", "material", {"what": "wax", "way": "added", "cost": cost}))
    money = spending_of(job)
    assert (money.spent, money.currency, money.past()) == (0, "USD", False)
    assert unread_amounts(job) == ("60 EUR", "some", "12/6")
    assert counted(job, "60 EUR") == 0
    assert counted(job, "60 USD") == 60


@pytest.mark.parametrize(("currency", "spent", "counted_too"), [("EUR", 60, True), ("USD", 0, False)])
def test_hours_count_only_in_the_money_of_the_rate(bench, currency, spent, counted_too):
    job = create_job(rated(bench, 40), "pen")
    limits(job, f"50 {currency}")
    job.add("work log", "work", {"activity": "seal", "minutes": "90 min", "done": "a cork"})
    money = spending_of(job)
    assert (money.spent, money.hours_counted, money.past()) == (spent, counted_too, spent > 50)


def test_the_price_at_the_end_is_held_against_the_ceiling_too(job):
    assert not price_past_ceiling(job, "95 EUR")
    limits(job, "90 EUR")
    assert price_past_ceiling(job, "95 EUR")
    assert price_past_ceiling(job, "95")
    assert not price_past_ceiling(job, "90 EUR")
    assert not price_past_ceiling(job, "95 GBP")
    assert not price_past_ceiling(job, None)
    job.add("release", "result", {"ending": "returned", "summary": "It writes.", "price": "95"})
    assert [f.text for f in review(job) if f.topic == "price-past"] == [
        "Release: the price of 95 EUR is past the agreed ceiling of 90.00 EUR (ask the owner first)."
    ]
    job.add("release", "result", {"ending": "returned", "summary": "It writes.", "price": "95 GBP"})
    assert unread_amounts(job) == ("95 GBP",)


@pytest.mark.parametrize(("rate", "spent"), [("0.0", 0), ("0.5", Decimal("0.75")), ("1.0", Decimal("1.50"))])
def test_a_small_rate_is_a_rate(bench, rate, spent):
    job = create_job(rated(bench, rate), "pen")
    job.add("work log", "work", {"activity": "seal", "minutes": "90 min", "done": "a cork"})
    assert (spending_of(job).spent, spending_of(job).hours_counted) == (spent, spent > 0)


def test_just_what_was_agreed_is_not_past_it(job):
    limits(job, "50 EUR")
    job.add("work log", "material", {"what": "cork", "way": "added", "cost": "50 EUR"})
    money = spending_of(job)
    assert (money.past(), money.past(Decimal("0.01"))) == (False, True)


YES = {"to": "sealant; replace part", "answered_on": "2026-03-14", "channel": "letter"}


@pytest.mark.parametrize(
    ("steps", "most"),
    [
        ([("yes", "60 EUR")], 60),
        ([("limit", "90 EUR"), ("yes", "60 EUR")], 60),  # what was agreed in the end counts, not what was named first
        ([("limit", "60 EUR"), ("yes", "90 EUR")], 90),  # the owner raised it
        ([("estimate", "120 EUR"), ("yes", "90 EUR")], 90),
        ([("yes", "90 EUR"), ("estimate", "80 EUR")], 80),
        ([("yes", "90 EUR"), ("estimate", "120 EUR")], 90),  # the bench alone does not raise it
        ([("proposal", "yes"), ("yes", "90 EUR"), ("estimate", "120 EUR")], 90),  # nor does a yes of before
        ([("yes", "90 EUR"), ("estimate", "120 EUR"), ("proposal", "yes")], 120),
        ([("yes", "90 EUR"), ("yes", "70 EUR")], 70),
        ([("limit", "60 EUR"), ("stranger", "90 EUR")], 60),  # a yes from somebody who may not decide
    ],
)
def test_a_price_that_the_owner_said_yes_to_is_the_ceiling(job, steps, most):
    for step, value in steps:
        if step in ("yes", "stranger"):
            job.add("agree", "yes", {**YES, "at_most": value, **({"authority": "no"} if step == "stranger" else {})})
        else:
            limits(job, **{{"limit": "limit", "estimate": "ceiling", "proposal": "agreed"}[step]: value})
    assert spending_of(job).ceiling == most


def test_postage_tax_and_the_price_of_the_work_are_held_against_the_most(bench):
    path = bench.folder / "bench.toml"
    path.write_text(path.read_text().replace('tax_rate = ""', 'tax_rate = "20 %"').replace("= 0.0 ", "= 30.0 "))
    job = create_job(open_bench_folder(bench.folder), "pen")
    limits(job, "100 EUR")
    job.add("work log", "work", {"activity": "seal", "minutes": "120 min", "done": "a cork"})
    job.add("work log", "material", {"what": "cork", "way": "added", "cost": "15 EUR"})
    money = spending_of(job)
    assert (money.spent, money.in_all(), money.past(), money.hours_counted) == (75, 90, False, True)
    assert "105.00 EUR with tax would be past" in held(job, "spend", amount=Decimal("12.50"))
    assert held(job, "spend", amount=Decimal("8.33")) == ""
    job.add("agree", "bill", {"postage": "8.50 EUR"})
    assert (spending_of(job).in_all(), spending_of(job).past()) == (Decimal("100.20"), True)
    job.add("agree", "bill", {"postage": "8.50 EUR", "work_price": "50 EUR", "taken_off": "3 EUR"})
    money = spending_of(job)
    assert (money.spent, money.in_all(), money.hours_counted) == (Decimal("70.50"), Decimal("84.60"), False)


def test_a_currency_of_three_decimals_keeps_them(bench):
    job = create_job(rated(bench, "10.0", "KWD"), "pen")
    limits(job, "5.500 KWD")
    job.add("work log", "work", {"activity": "seal", "minutes": "20 min", "done": "a cork"})
    assert spending_of(job).spent == Decimal("3.333")
    assert "5.833 KWD would be past the agreed ceiling of 5.500 KWD" in held(job, "spend", amount=Decimal("2.5"))
