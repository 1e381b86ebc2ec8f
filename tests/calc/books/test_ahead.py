"""The range of one further job: its factor, what is lent to it, what keeps it honest, and that it holds as often as it says."""

import math
import random

import pytest

from pentools.calc.base.uncertainty import coverage_factor
from pentools.calc.books.ahead import LENT, ROUNDED_TO_MIN, one_more, one_of_another_kind
from pentools.calc.books.pooled import Scatter, scatter_within
from pentools.errors import InputError


def test_it_is_students_range_of_the_logarithms():
    found = one_more([30, 60, 120])
    half = coverage_factor(2, 0.8) * math.log(2) * math.sqrt(1 + 1 / 3)
    assert found.likely == pytest.approx(60)
    assert found.high == pytest.approx(60 * math.exp(half))
    assert found.low == pytest.approx(60 * math.exp(-half))
    assert (found.n, found.share, found.degrees_of_freedom) == (3, 0.8, 2)
    assert one_more([30, 60]) is None


def test_other_kinds_lend_no_more_than_two_jobs_worth():
    found = one_more([30, 60, 120], Scatter(0.2, 90))
    assert found.degrees_of_freedom == 2 + LENT
    assert found.log_spread == pytest.approx(math.sqrt((2 * math.log(2) ** 2 + LENT * 0.04) / (2 + LENT)))
    assert one_more([30, 60, 120], Scatter(0.2, 1)).degrees_of_freedom == 3
    assert one_more([30, 60, 120], Scatter(0.0, 0)) == one_more([30, 60, 120])


def test_jobs_that_agree_to_the_minute_do_not_give_a_range_of_nothing():
    found = one_more([45, 45, 45])
    assert found.log_spread == pytest.approx(ROUNDED_TO_MIN / math.sqrt(12) / 45)
    assert found.high - found.low > 5


@pytest.mark.parametrize("n", [3, 5, 10, 30])
@pytest.mark.parametrize(
    ("lenders", "least", "most"), [((), 0.77, 0.83), ((0.35,), 0.77, 0.86), ((0.23, 0.52), 0.77, 0.87)]
)
def test_it_holds_four_times_in_five_where_the_truth_is_known(n, lenders, least, most):
    """1500 benches: log-normal minutes of spread 0.35 about an hour; four other kinds of five jobs each lend theirs."""
    chance, held = random.Random(20261128 + n), 0
    for _ in range(1500):
        kinds = {
            str(k): [chance.lognormvariate(3.5 + 0.4 * k, lenders[k % len(lenders)]) for _ in range(5)]
            for k in range(4 if lenders else 0)
        }
        typed = [max(5.0, 5.0 * round(chance.lognormvariate(math.log(60), 0.35) / 5)) for _ in range(n)]
        found = one_more(typed, scatter_within(kinds) if kinds else None)
        held += found.low <= chance.lognormvariate(math.log(60), 0.35) <= found.high
    assert least <= held / 1500 <= most


def test_a_job_of_no_time_is_refused():
    with pytest.raises(InputError, match="minutes must be above 0"):
        one_more([45, 0, 50])


def test_a_kind_hardly_known_takes_its_range_from_how_kinds_differ():
    kinds = {"re-sac": [50, 60, 72], "piston": [100, 120, 144], "nib": [30]}
    found = one_of_another_kind(kinds)
    means = [math.log(60), math.log(120), math.log(30)]
    between = math.fsum((m - math.log(60)) ** 2 for m in means) / 2
    within = math.log(1.2) ** 2  # of four degrees of freedom, twice two squares of ln 1.2
    spread = math.sqrt(between * 4 / 3 + within * (1 - (1 / 3 + 1 / 3 + 1) / 3))
    assert (found.n, found.degrees_of_freedom) == (7, 2)
    assert found.likely == pytest.approx(60)
    assert found.log_spread == pytest.approx(spread)
    assert found.high == pytest.approx(60 * math.exp(coverage_factor(2, 0.8) * spread))
    assert one_of_another_kind({"re-sac": [50, 60], "piston": [100], "nib": []}) is None


def test_what_is_often_done_counts_as_one_kind():
    often = {"re-sac": [60.0] * 40, "piston": [120.0], "nib": [30.0]}
    assert one_of_another_kind(often).likely == pytest.approx(60)
    assert one_of_another_kind({**often, "re-sac": [60.0]}).likely == pytest.approx(60)
