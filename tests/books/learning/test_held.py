"""Estimates against what was taken: who counts, and that each figure has its n and its interval."""

from decimal import Decimal

from pentools.books.learning.held import against, held_among, held_on, median_json, share_json
from pentools.books.learning.time_taken import JobTime
from pentools.calc.books.median import median_of
from pentools.calc.books.share import share_of


def job(minutes, hours=(1.0, 1.5, 2.0), **more):
    given = {"ending": "done", "estimate": (Decimal(40), Decimal(60)), "price": Decimal(50)} | more
    return JobTime(minutes={"seal": minutes}, hours=hours, **given)


def test_a_range_holds_up_to_its_ends():
    assert [against(job(m)).held for m in (59, 60, 120, 121)] == [False, True, True, False]
    assert [against(job(m)).over for m in (59, 120, 121)] == [False, False, True]
    assert [against(job(90, price=Decimal(p))).price_held for p in (39, 40, 60, 61)] == [False, True, True, False]


def test_what_was_not_estimated_or_is_not_whole_says_nothing():
    assert against(job(90, (None, None, None), estimate=(None, None))) is None
    assert against(job(90, ending="stopped")) is None
    assert against(job(90, doubt="late")) is None
    half = against(job(90, (None, 1.5, 2.0), price=None))
    assert (half.held, half.over, half.price_held) == (None, False, None)


def test_over_a_bench_each_figure_has_its_n_and_its_interval():
    found = held_among({str(n): job(m) for n, m in enumerate((59, 70, 90, 90, 110, 121, 150))})
    assert (found.hours.count, found.hours.n, found.over.count, found.price.count) == (4, 7, 2, 7)
    assert found.ratio.median == 1
    data = found.as_json()
    assert data["hours_held"] == {"count": 4, "n": 7, "share": 0.5714, "low": 0.1841, "high": 0.901, "confidence": 0.95}
    assert "4 of 7, 57\u202f% (18\u202f% to 90\u202f%)" in data["sentence"]
    assert data["jobs"][0] == {
        "job": "0", "hours_low": 1.0, "hours_likely": 1.5, "hours_high": 2.0, "hours": 0.983, "held": False, "price_held": True,
    }  # fmt: skip


def test_too_few_say_so(bench):
    found = held_on(bench)
    assert all("too few to say" in line for line in found.lines)
    assert found.as_json()["hours_held"] == "too few to say"
    assert (share_json(None), median_json(None)) == ("too few to say", "too few to say")
    assert share_json(share_of(1, 3))["n"] == 3
    assert median_json(median_of([1, 2, 4]))["coverage"] == 0.75


def test_it_is_said_in_a_sentence():
    assert against(job(150)).sentence == "It took 2.5 h; the estimate was from 1 to 2 h, which did not hold."
    assert against(job(90)).sentence == "It took 1.5 h; the estimate was from 1 to 2 h, which held."
    assert against(job(90, (None, None, 2.0))).sentence == "It took 1.5 h; the estimate was to 2 h."
    assert against(job(90, (None, None, None))).sentence == "It took 1.5 h; no hours were estimated."
