"""Medians, shares, ranges and groups of a few, against tables, worked examples and a reference library, live."""

import math

import pytest
from outside import Outside
from scipy import special, stats

from pentools.calc.base.beta import incomplete_beta
from pentools.calc.books.ahead import one_more
from pentools.calc.books.differ import difference
from pentools.calc.books.median import median_of, median_rank
from pentools.calc.books.pooled import pooled, scatter_within
from pentools.calc.books.share import share_of

TABLE = Outside("median-table", "which values bound a median, and how often [%]")
BINOMIAL = Outside("scipy-binomial", "coverage of a median's interval")
EXACT = Outside("scipy-binomial", "exact interval of a share, both ends")
STUDENT = Outside("scipy-students-t", "range of one further job, in logarithms")
BETA = Outside("scipy-students-t", "the incomplete beta function")
NIST = Outside("nist-proportions", "exact interval of a share")
HAHN = Outside("hahn-meeker", "half-width of the range of one further value")
DYES = Outside("davies-goldsmith", "variances and shrunk means of groups")

# n, rank from either end, level as printed [%]: the narrowest of at least 95 %, or the widest there is
BOUNDS = (
    (3, 1, "75.0"), (4, 1, "87.5"), (5, 1, "93.8"), (6, 1, "96.9"), (7, 1, "98.4"), (8, 1, "99.2"), (9, 2, "96.1"),
    (10, 2, "97.9"), (11, 2, "98.8"), (12, 3, "96.1"), (13, 3, "97.8"), (15, 4, "96.5"), (16, 4, "97.9"), (17, 5, "95.1"),
    (18, 5, "96.9"), (19, 5, "98.1"), (20, 6, "95.9"),
)  # fmt: skip
BATCHES = {
    "A": (1545, 1440, 1440, 1520, 1580), "B": (1540, 1555, 1490, 1560, 1495), "C": (1595, 1550, 1605, 1510, 1560),
    "D": (1445, 1440, 1595, 1465, 1545), "E": (1595, 1630, 1515, 1635, 1625), "F": (1520, 1455, 1450, 1480, 1445),
}  # fmt: skip
NEAR = "the library's own figure, both by series of their own"


@pytest.mark.parametrize(("n", "rank", "level"), BOUNDS)
def test_the_values_that_bound_a_median(n, rank, level):
    ours, coverage = median_rank(n)
    TABLE.same(ours, rank)
    TABLE.agree(100 * coverage, level)
    found = median_of([float(v) for v in range(1, n + 1)])
    assert (found.low, found.high) == (rank, n + 1 - rank)


@pytest.mark.parametrize("n", [3, 6, 14, 57, 400, 2501])
@pytest.mark.parametrize("confidence", [0.8, 0.95, 0.99])
def test_coverage_by_the_binomial_distribution(n, confidence):
    rank, coverage = median_rank(n, confidence)
    BINOMIAL.agree(coverage, float(1 - 2 * stats.binom.cdf(rank - 1, n, 0.5)), within=1e-11, because=NEAR)
    if 2 * (rank + 1) <= n + 1:
        assert 1 - 2 * stats.binom.cdf(rank, n, 0.5) < confidence


@pytest.mark.parametrize(("count", "n"), [(0, 3), (1, 3), (3, 3), (2, 7), (9, 10), (33, 40), (170, 1000)])
@pytest.mark.parametrize("confidence", [0.8, 0.95])
def test_a_share_by_the_reference_library(count, n, confidence):
    ours, theirs = share_of(count, n, confidence), stats.binomtest(count, n).proportion_ci(confidence, method="exact")
    EXACT.agree(ours.low, float(theirs.low), within=1e-9, because=NEAR)
    EXACT.agree(ours.high, float(theirs.high), within=1e-9, because=NEAR)


def test_a_share_by_a_worked_example():
    found = share_of(4, 20, 0.9)
    NIST.agree(found.low, "0.071354")
    NIST.agree(found.high, "0.401029", within=1e-6, because="its last digit: the reference library gives 0.401028")


@pytest.mark.parametrize(
    ("a", "b", "x"), [(0.5, 0.5, 0.2), (2, 7, 0.31), (900, 1200, 0.44), (1, 1, 0.7), (31.5, 0.5, 0.96)]
)
def test_the_incomplete_beta_function(a, b, x):
    BETA.agree(incomplete_beta(a, b, x), float(special.betainc(a, b, x)), within=1e-12, because=NEAR)


@pytest.mark.parametrize("minutes", [(31, 44, 90), (40, 45, 50, 55, 62), (20, 25, 30, 30, 35, 45, 45, 60, 80, 150)])
def test_the_range_of_one_further_job(minutes):
    found, logs = one_more(minutes), [math.log(m) for m in minutes]
    n = len(logs)
    low, high = stats.t.interval(0.8, n - 1, stats.tmean(logs), stats.tstd(logs) * math.sqrt(1 + 1 / n))
    STUDENT.agree(math.log(found.low), float(low), within=1e-9, because=NEAR)
    STUDENT.agree(math.log(found.high), float(high), within=1e-9, because=NEAR)


def test_the_range_of_one_further_value_by_a_worked_example():
    # five voltages of mean 50.10 and standard deviation 1.31: the sixth within 50.10 ± 3.04 × 1.31 in 95 of 100 cases
    made = [50.10 + 1.31 * z * math.sqrt(4 / 10) for z in (-2, -1, 0, 1, 2)]
    found = one_more([math.exp(v / 10) for v in made], share=0.95)
    half = 10 * (math.log(found.high) - math.log(found.likely))
    HAHN.agree(half / 1.31, "3.04")
    HAHN.agree(10 * math.log(found.low), "46.1")
    HAHN.agree(10 * math.log(found.high), "54.1")


def test_batches_of_dyestuff():
    # grams as if they were logarithms of hundreds of grams: the arithmetic does not know
    found = pooled({name: [math.exp(v / 100) for v in batch] for name, batch in BATCHES.items()})
    DYES.agree(1e4 * found.within**2, "2451")
    DYES.agree(1e4 * found.between**2, "1764")
    DYES.agree(100 * math.log(found.middle), "1527.5")
    # the mixed model's own shrunk deviations of the six batches [g]
    for name, printed in zip(BATCHES, ("-17.6", "0.4", "28.6", "-23.1", "56.7", "-45.0"), strict=True):
        DYES.agree(100 * math.log(found.groups[name].likely / found.middle), printed)


def test_the_mean_squares_of_groups_of_other_sizes():
    groups = {"a": (30, 45, 41), "b": (60, 52), "c": (90, 120, 75, 100, 88), "d": (38, 44)}
    logs = [[math.log(v) for v in group] for group in groups.values()]
    freedom = scatter_within(groups).degrees_of_freedom
    inner, n = scatter_within(groups).log_spread ** 2, sum(len(g) for g in logs)
    size = (n - sum(len(g) ** 2 for g in logs) / n) / (len(logs) - 1)
    between = pooled(groups).between ** 2
    ratio = (between * size + inner) / inner
    STUDENT_F = Outside("scipy-students-t", "mean squares of groups: their ratio")
    STUDENT_F.agree(ratio, float(stats.f_oneway(*logs).statistic), within=1e-9, because=NEAR)
    assert freedom == n - len(logs)


@pytest.mark.parametrize("seconds", [(31, 44, 90, 70), (120, 118, 122)])
def test_whether_two_sorts_of_job_differ(seconds):
    first = (40, 45, 50, 55, 62)
    found = difference(seconds, first, 0.9)
    logs = [[math.log(v) for v in values] for values in (seconds, first)]
    theirs = stats.ttest_ind(*logs).confidence_interval(0.9)
    DIFFER = Outside("scipy-students-t", "how two sorts of job differ, in logarithms")
    DIFFER.agree(math.log(found.low), float(theirs.low), within=1e-9, because=NEAR)
    DIFFER.agree(math.log(found.high), float(theirs.high), within=1e-9, because=NEAR)
