"""Invented pens scatter as their rates say, and lie within what the systems are declared to be."""

import datetime as dt
import math
import statistics

import pytest

from pentools.books.invented.pens import RATE, days_at_the_bench, draw_truth, true_volume_ml
from pentools.books.invented.truth import SEALS, Rates
from pentools.record.stages.seal.places import places_for
from pentools.systems.dimensions import LIMITS
from pentools.tables.fillers import usual_fill


@pytest.fixture(scope="module")
def truth():
    return draw_truth(3000, 4, dt.date(2026, 10, 31), Rates())


def test_dimensions_and_shares_are_what_the_systems_declare(truth):
    for pen in truth.pens:
        for name, value in pen.dimensions.items():
            named = "sac_" + name if name in ("wall",) else name
            limit = LIMITS.get(named)
            assert limit is None or limit.low <= value <= limit.high
        usual = usual_fill(pen.system)
        assert pen.share is None or usual.low < pen.share < usual.high
        assert not pen.seal or SEALS[pen.seal].place in places_for(pen.system)
        assert pen.holds_ml is None or 0.3 < pen.holds_ml < 5


def test_a_volume_is_the_systems_own_formula():
    # by hand: π/4 · 8.4² · 28 mm³
    assert true_volume_ml("piston", {"bore": 8.4, "stroke": 28.0}) == pytest.approx(math.pi / 4 * 8.4**2 * 0.028)


def test_minutes_have_the_median_and_the_spread_that_are_stated(truth):
    logs = [
        math.log(pen.minutes["seal"] / truth.minutes[f"{pen.system}|{pen.work}|seal"])
        for pen in truth.pens
        if pen.difficulty == 2 and "seal" in pen.minutes
    ]
    rates = truth.rates
    assert len(logs) > 500
    assert statistics.mean(logs) == pytest.approx(0.0, abs=0.05)
    assert statistics.stdev(logs) == pytest.approx(math.hypot(rates.pen_spread, rates.activity_spread), rel=0.08)


def test_bad_lots_send_pens_back_at_the_stated_rate(truth):
    bad = {lot.name: lot.bad for lot in truth.lots}
    fate = {kind: [pen.comes_back for pen in truth.pens if pen.lot and not pen.again_of and pen.price and bad[pen.lot] is kind] for kind in (True, False)}  # fmt: skip
    assert statistics.mean(fate[True]) == pytest.approx(truth.rates.bad_lot, abs=0.06)
    assert statistics.mean(fate[False]) == pytest.approx(truth.rates.good_lot, abs=0.015)


def test_a_pen_that_comes_back_is_the_same_pen_and_follows_the_first(truth):
    by_job = {pen.job: pen for pen in truth.pens}
    again = [pen for pen in truth.pens if pen.again_of]
    assert len(again) > 50
    for pen in again:
        first = by_job[pen.again_of]
        assert first.comes_back
        assert first.arrived_on < pen.arrived_on
        assert (first.owner, first.system, first.dimensions) == (pen.owner, pen.system, pen.dimensions)


def test_several_pens_come_in_one_parcel(truth):
    parcels = {}
    for pen in truth.pens:
        parcels.setdefault((pen.owner, pen.arrived_on), []).append(pen)
    assert max(len(pens) for pens in parcels.values()) >= 3
    for pen in truth.pens:
        together = [other for other in truth.pens if pen.lead and other.lead == pen.lead]
        assert not pen.lead or {(other.owner, other.arrived_on) for other in together} == {(pen.owner, pen.arrived_on)}
        assert not pen.lead or (len(together) > 1 and pen.lead in {other.job for other in together})


def test_a_price_is_hours_and_parts_to_a_whole_amount(truth):
    pen = next(pen for pen in truth.pens if pen.seal == "latex sac" and pen.price and not pen.again_of)
    assert float(pen.price) == pytest.approx(float(RATE) * sum(pen.minutes.values()) / 60 + 2.80, abs=0.51)


def test_a_bench_covers_a_year_at_least_and_eight_at_most():
    assert [days_at_the_bench(count) for count in (1, 300, 10_000)] == [365, 730, 2920]
