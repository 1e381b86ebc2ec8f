"""A quote rests on like jobs alone, never on the job itself, says which, and holds as often as it says where the truth is known."""

from decimal import Decimal

import pytest

from pentools.books.asked import Told
from pentools.books.invented.bench import invent_bench
from pentools.books.learning.like import counted_jobs
from pentools.books.learning.quote import quote, quoted_from
from pentools.books.learning.time_taken import JobTime, time_of
from pentools.calc.books.ahead import one_more
from pentools.errors import RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.billing import Billing
from pentools.record.each import ask_each


def job(minutes=60.0, system="lever-sac", work="re-sac", parts="3", **more):
    given = {"ending": "done", "family": "sac", "parts": None if parts is None else Decimal(parts)} | more
    return JobTime(system=system, work=work, minutes={"seal": minutes}, **given)


HERE = JobTime(system="lever-sac", family="sac", work="re-sac", limit=Decimal(60))
JOBS = {"a": job(50, parts="2.50"), "b": job(60), "c": job(72, parts="4")}


def quoted(jobs=JOBS, here=HERE, rate="40", name="new"):
    return quoted_from(name, here, jobs, Billing("EUR", Decimal(rate)))


def test_minutes_price_and_ceiling_come_from_the_like_jobs():
    found, ahead = quoted(), one_more([50, 60, 72])
    assert found.jobs == ("a", "b", "c")
    assert (found.minutes.low, found.minutes.likely, found.minutes.high) == (ahead.low, ahead.likely, ahead.high)
    assert (found.parts.low, found.parts.likely, found.parts.high, found.parts.n) == (Decimal("2.50"), 3, 4, 3)
    assert found.price.low == (Decimal(f"{ahead.low:.1f}") / 60 * 40 + Decimal("2.50")).quantize(Decimal("0.01"))
    assert found.price.high == (Decimal(f"{ahead.high:.1f}") / 60 * 40 + 4).quantize(Decimal("0.01"))
    assert found.ceiling == 64
    assert found.sentence == (
        "40 to 90 min, most likely 60: so 80\u202f% of further jobs like the 3 it rests on (lever sac filler, a new sac). "
        "At 40.00 EUR an hour and with parts for 2.50 to 4.00 EUR: 29.37 to 63.47 EUR, postage not in it. "
        "A ceiling to propose: 64.00 EUR; the owner named 60.00 EUR, which is less."
    )


def test_the_job_itself_and_the_unfinished_are_never_built_on():
    jobs = JOBS | {"new": job(500), "d": job(300, ending="stopped"), "e": job(5, ending=""), "f": job(9, doubt="late")}
    found = quoted(jobs)
    assert found.jobs == ("a", "b", "c")
    assert found.outside == {"it was stopped": ("d",), "work was entered on a later day than the last minutes": ("f",)}
    assert "Not built on, since it was stopped: d." in found.lines


def test_under_three_it_is_too_few_to_say():
    found = quoted({"a": job(50), "b": job(60)})
    assert found.sentence == "Too few to say: 2 finished like jobs have minutes to build on, and it takes three."
    data = found.as_json()
    assert (data["minutes"]["low"], data["minutes"]["said"], data["price"]["high"]) == (None, "too few to say", None)
    assert (data["n"], data["jobs"], data["ceiling"]) == (2, ["a", "b"], None)
    assert quoted({}).sentence.startswith("Too few to say: no finished like jobs")


def test_without_a_rate_it_goes_by_what_was_charged():
    jobs = {name: job(60, price=Decimal(price)) for name, price in (("a", 40), ("b", 50), ("c", "62.50"), ("d", 0))}
    found = quoted(jobs, rate="0")
    ahead = one_more([40, 50, 62.5], rounded_to=0)
    assert found.price.charged == 3
    assert found.price.low == Decimal(f"{ahead.low:.2f}")
    assert "As 3 of them were charged: 30.76 to 81.28 EUR." in found.sentence
    assert quoted(rate="0").price is None
    assert "No price: the bench has no rate an hour" in quoted(rate="0").sentence
    unknown = {name: job(60, parts=None) for name in "abc"}
    assert "No price: what the parts of like jobs cost is too few to say." in quoted(unknown).sentence


def test_a_tax_on_top_is_in_the_price_and_one_that_is_included_is_not_added():
    plain, taxed = quoted(), quoted_from("new", HERE, JOBS, Billing("EUR", Decimal(40), "VAT", Decimal("0.2")))
    assert taxed.price.high == (plain.price.high * Decimal("1.2")).quantize(Decimal("0.01"))
    assert "for 2.50 to 4.00 EUR, VAT of 20\u202f% on top: " in taxed.sentence
    included = quoted_from("new", HERE, JOBS, Billing("EUR", Decimal(40), "VAT", Decimal("0.2"), tax_included=True))
    assert included.price == plain.price


def test_money_of_no_decimals_stays_so():
    found = quoted_from("new", HERE, JOBS, Billing("JPY", Decimal(4000)))
    assert found.price.high == found.price.high.to_integral_value()
    assert "4000 JPY an hour" in found.sentence
    assert found.ceiling == 6000


def test_other_kinds_of_work_lend_their_scatter():
    others = {f"p{n}": job(minutes, "piston", "whole", family="piston") for n, minutes in enumerate((100, 300, 900))}
    assert quoted().minutes.degrees_of_freedom == 2
    lent = quoted(JOBS | others)
    assert lent.jobs == ("a", "b", "c")
    assert lent.minutes.degrees_of_freedom == 4
    assert lent.minutes.high > quoted().minutes.high


def test_a_wider_circle_is_a_wider_range():
    jobs = {
        "a": job(100, "piston", family="piston"), "b": job(120, "piston", family="piston"), "c": job(45, "bulb", family="breather"),
        "d": job(55, "bulb", family="breather"), "e": job(70, "syringe", family="piston"),
    }  # fmt: skip
    found = quoted(jobs)
    assert found.circle.key == "work"
    assert found.minutes.degrees_of_freedom == 2  # three systems, whatever they have of jobs
    assert found.circle.why in found.lines


def test_on_a_bench_it_is_asked_by_name(bench, tmp_path):
    assert quote("a-first", bench.folder).n == 0
    with pytest.raises(RecordError, match="There is no job"):
        quote("nobody", bench)


def test_a_damaged_job_is_named_and_stops_nothing(bench, monkeypatch):
    monkeypatch.setattr("pentools.books.learning.quote.time_of", lambda _: HERE)
    unread = Told({}, {"c-torn": "It cannot be read."})
    monkeypatch.setattr("pentools.books.learning.quote.ask_bench", lambda *_: unread)
    found = quote("a-first", bench)
    assert found.outside == {"it cannot be read": ("c-torn",)}
    assert "Not built on, since it cannot be read: c-torn." in found.lines


def test_a_job_whose_own_entries_contradict_each_other_is_said(bench, monkeypatch):
    def spoilt(_):
        raise ZeroDivisionError

    monkeypatch.setattr("pentools.books.learning.quote.time_of", spoilt)
    with pytest.raises(RecordError, match="a-first cannot be quoted for"):
        quote("a-first", bench)


@pytest.mark.parametrize(("pens", "least", "most"), [(30, 0.7, 0.9), (200, 0.74, 0.86)])
def test_it_holds_four_times_in_five_on_benches_of_known_truth(tmp_path, pens, least, most):
    held = []
    for seed in range(180 // pens + 1):
        invent_bench(tmp_path / str(seed), pens, seed=300 + seed)
        jobs = dict(ask_each(open_bench_folder(tmp_path / str(seed)), time_of))
        for name, one in counted_jobs(jobs).items():
            minutes = quoted_from(name, one, jobs, Billing("EUR", Decimal(36))).minutes
            held.append(minutes.low <= one.whole_min <= minutes.high)
    assert least <= sum(held) / len(held) <= most
