"""Worked examples of uncertainty guides, against their unrounded figures; and a reference library, live."""

import math

import pytest

from pentools.calc.base.uncertainty import Component, combine, coverage_factor, from_half_width, mean_and_spread
from pentools.calc.weighing.capacity import BALANCES, Conditions, capacity_from_weight


def test_quam_a1():
    # EURACHEM/CITAC QUAM:2012, example A1 (a calibration standard); unrounded as reproduced by four libraries
    m, p, v = 100.28, 0.9999, 100.0
    flask = [
        Component("flask", from_half_width(0.1, "triangular")),
        Component("filling", 0.02),
        Component("temperature", from_half_width(0.084)),
    ]
    volume = combine(flask)
    assert volume.standard_uncertainty == pytest.approx(0.06647305218407432, rel=1e-12)
    c = 1000 * m * p / v
    u = combine([
        Component("mass", 0.05, 1000 * p / v),
        Component("purity", from_half_width(0.0001), 1000 * m / v),
        Component("volume", volume.standard_uncertainty, -c / v),
    ])  # fmt: skip
    assert c == pytest.approx(1002.69972, abs=5e-6)
    assert [row.contribution for row in u.components] == pytest.approx([0.49995, 0.0578967, 0.666525], rel=1e-5)
    assert u.standard_uncertainty == pytest.approx(0.8351992267684394, rel=1e-12)
    # the guide prints 0.9 after rounding in between
    assert round(u.standard_uncertainty, 1) == 0.8


def test_quam_a2_counts_linearity_twice():
    # QUAM:2012, example A2: ±0.15 mg, rectangular, for tare and gross
    assert math.sqrt(2) * from_half_width(0.00015) == pytest.approx(0.00012247448713915892, rel=1e-12)


def test_quam_a2_whole():
    # QUAM:2012, example A2 (a sodium hydroxide solution standardised), inputs of its section A2.4; unrounded results
    # and contributions as in the documentation of GTC: the results cut off after the last digit shown (so one unit of
    # it), the contributions rounded to six digits
    m, p, v = 0.3888, 1.0, 18.64
    carbon, hydrogen, oxygen, potassium = (from_half_width(h) for h in (0.0008, 0.00007, 0.0003, 0.0001))
    molar = 8 * 12.0107 + 5 * 1.00794 + 4 * 15.9994 + 39.0983
    c = 1000 * m * p / (molar * v)
    mass = combine([Component("tare", from_half_width(0.00015)), Component("gross", from_half_width(0.00015))])
    volume = combine([Component("calibration", from_half_width(0.03, "triangular")), Component("temperature", 0.006)])
    formula = combine(
        [Component("C", carbon, 8), Component("H", hydrogen, 5), Component("O", oxygen, 4), Component("K", potassium)]
    )
    budget = combine([
        Component("volume", volume.standard_uncertainty, -c / v),
        Component("repeatability", 0.0005, c),
        Component("mass", mass.standard_uncertainty, c / m),
        Component("purity", from_half_width(0.0005), c / p),
        Component("molar mass", formula.standard_uncertainty, -c / molar),
    ])  # fmt: skip
    assert c == pytest.approx(0.102136159706, abs=1e-12)
    assert budget.standard_uncertainty == pytest.approx(0.000100500722124, abs=1e-15)
    printed = (7.47292e-05, 5.10681e-05, 3.21735e-05, 2.94842e-05, 1.88312e-06)
    assert [row.contribution for row in budget.components] == pytest.approx(printed, rel=1e-5)
    assert math.fsum(budget.shares()) == pytest.approx(1.0, abs=1e-12)


def test_our_budget_counts_linearity_as_quam_does():
    result = capacity_from_weight([23.26], [25.06], BALANCES["0.01 g"])
    [row] = [c for c in result.budget.components if c.source.startswith("linearity")]
    assert row.standard_uncertainty == pytest.approx(math.sqrt(2) * 0.02 / math.sqrt(3), rel=1e-12)


def gum_h1():
    ls, alpha_s, theta = 50000623.0, 1.15e-5, -0.1
    return [
        Component("standard", 25, 1, 18),
        Component("difference", 5.8, 1, 24),
        Component("comparator, random", 3.9, 1, 5),
        Component("comparator, systematic", 6.7, 1, 8),
        Component("expansion of the standard", from_half_width(2e-6), 0.0),
        Component("difference of expansions", from_half_width(1e-6), -ls * theta, 50),
        Component("difference of temperatures", from_half_width(0.05), -ls * alpha_s, 2),
        Component("temperature", 0.2, 0.0),
    ]


def test_gum_h1():
    # JCGM 100:2008, H.1: 32 nm printed, 31.66388 unrounded; 16 degrees of freedom from 16.75186
    budget = combine(gum_h1(), 0.99)
    assert budget.standard_uncertainty == pytest.approx(31.66388, abs=5e-6)
    assert budget.degrees_of_freedom == pytest.approx(16.75186, abs=5e-6)
    assert budget.coverage_factor == pytest.approx(2.92078, abs=5e-6)
    assert round(budget.expanded_uncertainty, 4) == pytest.approx(92.4833, abs=5e-5)


def test_ea_4_02_s2():
    # EA-4/02 M:2022, example S2 (a 10 kg weight): 29.2617 mg before rounding, 29.2 printed
    budget = combine([
        Component("standard", 45 / 2),
        Component("drift", from_half_width(15)),
        Component("repeatability", 25 / math.sqrt(3)),
        Component("eccentric loading", from_half_width(10)),
        Component("buoyancy", from_half_width(10)),
    ])  # fmt: skip
    assert budget.standard_uncertainty == pytest.approx(29.2617, abs=5e-5)


@pytest.mark.parametrize(
    ("nu", "printed"),
    # JCGM 100:2008, table G.2, column 95 %
    [(1, 12.71), (2, 4.30), (3, 3.18), (4, 2.78), (5, 2.57), (9, 2.26), (16, 2.12), (30, 2.04), (math.inf, 1.960)],
)
def test_table_g2(nu, printed):
    assert coverage_factor(nu, 0.95) == pytest.approx(printed, abs=0.0051)


@pytest.mark.parametrize(
    ("nu", "printed"),
    # the same table, column 95.45 %
    [(4, 2.87), (9, 2.32), (20, 2.13), (50, 2.05), (math.inf, 2.000)],
)
def test_table_g2_two_sigma(nu, printed):
    assert coverage_factor(nu, 0.9545) == pytest.approx(printed, abs=0.0051)


def gtc_weighing(gtc):
    """The weighing as a model of its own in GTC, which finds every sensitivity by itself."""
    rectangular = lambda half_width, label: gtc.ureal(0, half_width / math.sqrt(3), label=label)  # noqa: E731
    t = 21 + rectangular(2.0, "temperature")
    p = 1000 + rectangular(30.0, "air pressure")
    h = 50 + rectangular(20.0, "humidity")
    air = (0.34848 * p - 0.009 * h * gtc.exp(0.061 * t)) / (273.15 + t)
    tanaka = 999.974950 * (1 - (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881)))
    water = tanaka + gtc.ureal(0, 0.1, label="density of the liquid")
    z = 1000 * (1 - air / 8000) / (water - air)

    def weighing(value, n):
        roundings = [gtc.ureal(0, 0.01 / math.sqrt(12)) for _ in ("zero", "load")]
        mean = gtc.ureal(value, 0.01 / math.sqrt(n))
        return mean + sum(roundings) + rectangular(0.02, "linearity") + rectangular(0.01, "eccentricity")

    gain = weighing(25.06, 5) - weighing(23.26, 5) + rectangular(0.02, "drop") + rectangular(0.005, "evaporation")
    return gain * z


def test_a_weighing_against_a_reference_library():
    # GTC, the uncertainty calculator of a national metrology institute, live; the balance's limits are assumed
    gtc = pytest.importorskip("GTC", reason="GTC is in the test extra")
    ours = capacity_from_weight([23.26] * 5, [25.06] * 5, BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0))
    theirs = gtc_weighing(gtc)
    assert ours.volume_ml == pytest.approx(theirs.x, rel=1e-12)
    assert ours.budget.standard_uncertainty == pytest.approx(theirs.u, rel=1e-6)
    parts = {row.label: row.u for row in gtc.reporting.budget(theirs, trim=0)}
    for name in ("temperature", "air pressure", "humidity", "density of the liquid"):
        [row] = [c for c in ours.budget.components if c.source == name]
        assert row.contribution == pytest.approx(parts[name], rel=1e-3)


def test_scatter_with_few_degrees_of_freedom_against_a_reference_library():
    gtc = pytest.importorskip("GTC", reason="GTC is in the test extra")
    empty, filled = [23.20, 23.28, 23.25], [25.06, 25.02]
    ours = capacity_from_weight(empty, filled, BALANCES["0.01 g"])
    [row] = [c for c in ours.budget.components if c.kind == "repeat readings"]
    # pooled by hand: squares 0.00326667 and 0.0008 over 3 degrees of freedom, means of 3 and of 2
    pooled = math.sqrt((0.0032666667 + 0.0008) / 3)
    assert row.standard_uncertainty == pytest.approx(pooled * math.sqrt(1 / 3 + 1 / 2), rel=1e-6)
    assert row.degrees_of_freedom == 3
    theirs = sum(
        c.sensitivity * gtc.ureal(0, c.standard_uncertainty, c.degrees_of_freedom) for c in ours.budget.components
    )
    assert ours.budget.degrees_of_freedom == pytest.approx(theirs.df, rel=1e-9)
    assert ours.budget.coverage_factor == pytest.approx(gtc.reporting.k_factor(math.floor(theirs.df), 95), rel=1e-6)


def test_gum_h1_against_a_reference_library():
    gtc = pytest.importorskip("GTC", reason="GTC is in the test extra")
    parts = gum_h1()
    result = sum(
        c.sensitivity * gtc.ureal(0, c.standard_uncertainty, c.degrees_of_freedom) for c in parts if c.sensitivity
    )
    budget = combine(parts)
    assert budget.standard_uncertainty == pytest.approx(result.u, rel=1e-12)
    assert budget.degrees_of_freedom == pytest.approx(result.df, rel=1e-9)
    for nu in (1, 2.9, 4, 7, 16.75, 60):
        assert coverage_factor(nu, 0.95) == pytest.approx(gtc.reporting.k_factor(math.floor(nu), 95), rel=1e-6)


def test_a_certified_data_set():
    # NIST StRD, univariate set NumAcc3 (its form from memory): mean 1000000.2 and deviation 0.1, exact by construction
    values = [1000000.2] + [1000000.1, 1000000.3] * 500
    mean, spread = mean_and_spread(values)
    assert mean == pytest.approx(1000000.2, abs=1e-9)
    assert spread == pytest.approx(0.1, rel=1e-8)
