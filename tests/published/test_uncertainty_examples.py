"""Worked examples of uncertainty guides, against their unrounded figures; and a reference library, live."""

import math

import pytest
from outside import Outside

from pentools.calc.base.line import fit_line
from pentools.calc.base.uncertainty import Component, combine, coverage_factor, from_half_width, mean_and_spread
from pentools.calc.weighing.balance import BALANCES
from pentools.calc.weighing.capacity import capacity_from_weight
from pentools.calc.weighing.setting import Conditions

QUAM = Outside("quam", "examples A1 and A2")


def test_quam_a1():
    # EURACHEM/CITAC QUAM:2012, example A1 (a calibration standard); unrounded as reproduced by four libraries
    m, p, v = 100.28, 0.9999, 100.0
    flask = [
        Component("flask", from_half_width(0.1, "triangular")),
        Component("filling", 0.02),
        Component("temperature", from_half_width(0.084)),
    ]
    volume = combine(flask)
    QUAM.agree(volume.standard_uncertainty, "0.06647305218407")
    c = 1000 * m * p / v
    u = combine([
        Component("mass", 0.05, 1000 * p / v),
        Component("purity", from_half_width(0.0001), 1000 * m / v),
        Component("volume", volume.standard_uncertainty, -c / v),
    ])  # fmt: skip
    QUAM.agree(c, "1002.69972")
    for row, printed in zip(u.components, ("0.49995", "0.0578967", "0.666525"), strict=True):
        QUAM.agree(row.contribution, printed)
    QUAM.agree(u.standard_uncertainty, "0.8351992267684")
    # the guide prints 0.9 after rounding in between
    assert round(u.standard_uncertainty, 1) == 0.8


def test_quam_a2_counts_linearity_twice():
    # QUAM:2012, example A2: ±0.15 mg, rectangular, for tare and gross
    QUAM.agree(math.sqrt(2) * from_half_width(0.00015), "1.2247448713916e-4")


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
    cut = "the last digit shown is cut off, not rounded"
    QUAM.agree(c, "0.102136159706", within=1e-12, because=cut)
    QUAM.agree(budget.standard_uncertainty, "0.000100500722124", within=1e-15, because=cut)
    printed = ("7.47292e-05", "5.10681e-05", "3.21735e-05", "2.94842e-05", "1.88312e-06")
    for row, value in zip(budget.components, printed, strict=True):
        QUAM.agree(row.contribution, value)
    assert math.fsum(budget.shares()) == pytest.approx(1.0, abs=1e-12)


def test_our_budget_counts_linearity_as_quam_does():
    result = capacity_from_weight([23.26], [25.06], BALANCES["0.01 g"])
    [row] = [c for c in result.budget.components if c.source.startswith("linearity")]
    assert row.standard_uncertainty == pytest.approx(math.sqrt(2) * 0.02 / math.sqrt(3), rel=1e-12)


H1 = Outside("jcgm100", "example H.1, end gauge calibration")


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
    H1.agree(budget.standard_uncertainty, "31.66388")
    H1.agree(budget.degrees_of_freedom, "16.75186")
    H1.agree(budget.coverage_factor, "2.92078")
    H1.agree(budget.expanded_uncertainty, "92.4833")
    for row, printed in zip(budget.components, ("25", "5.8", "3.9", "6.7", "0", "2.88679", "16.599", "0"), strict=True):
        H1.agree(row.contribution, printed)


def test_ea_4_02_s2():
    # EA-4/02 M:2022, example S2 (a 10 kg weight): 29.2617 mg before rounding, 29.2 printed
    budget = combine([
        Component("standard", 45 / 2),
        Component("drift", from_half_width(15)),
        Component("repeatability", 25 / math.sqrt(3)),
        Component("eccentric loading", from_half_width(10)),
        Component("buoyancy", from_half_width(10)),
    ])  # fmt: skip
    Outside("ea402", "example S2, a 10 kg weight").agree(budget.standard_uncertainty, "29.2617")


# JCGM 100:2008, table G.2, from memory: degrees of freedom to the factors for 68.27, 90, 95, 95.45, 99 and 99.73 %
SIGMAS = [math.erf(n / math.sqrt(2)) for n in (1, 2, 3)]  # 68.27, 95.45 and 99.73 % are these
TABLE_G2 = """
1 1.84 6.31 12.71 13.97 63.66 235.80
2 1.32 2.92 4.30 4.53 9.92 19.21
3 1.20 2.35 3.18 3.31 5.84 9.22
4 1.14 2.13 2.78 2.87 4.60 6.62
5 1.11 2.02 2.57 2.65 4.03 5.51
6 1.09 1.94 2.45 2.52 3.71 4.90
7 1.08 1.89 2.36 2.43 3.50 4.53
8 1.07 1.86 2.31 2.37 3.36 4.28
9 1.06 1.83 2.26 2.32 3.25 4.09
10 1.05 1.81 2.23 2.28 3.17 3.96
11 1.05 1.80 2.20 2.25 3.11 3.85
12 1.04 1.78 2.18 2.23 3.05 3.76
13 1.04 1.77 2.16 2.21 3.01 3.69
14 1.04 1.76 2.14 2.20 2.98 3.64
15 1.03 1.75 2.13 2.18 2.95 3.59
16 1.03 1.75 2.12 2.17 2.92 3.54
17 1.03 1.74 2.11 2.16 2.90 3.51
18 1.03 1.73 2.10 2.15 2.88 3.48
19 1.03 1.73 2.09 2.14 2.86 3.45
20 1.03 1.72 2.09 2.13 2.85 3.42
25 1.02 1.71 2.06 2.11 2.79 3.33
30 1.02 1.70 2.04 2.09 2.75 3.27
40 1.01 1.68 2.02 2.06 2.70 3.20
50 1.01 1.68 2.01 2.05 2.68 3.16
100 1.005 1.660 1.984 2.025 2.626 3.077
inf 1.000 1.645 1.960 2.000 2.576 3.000
"""


def test_table_g2():
    table = Outside("jcgm100-g2", "Student's t")
    for line in TABLE_G2.split("\n"):
        for level, printed in zip(
            (*SIGMAS[:1], 0.90, 0.95, SIGMAS[1], 0.99, SIGMAS[2]), line.split()[1:], strict=False
        ):
            table.agree(coverage_factor(float(line.split()[0]), level), printed)


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

    # a drop of up to 0.04 g with the mean at 0.4 of it and the spread of any size alike; up to 0.005 g dried away
    drop = 0.4 * 0.04 + gtc.ureal(0, 0.04 / math.sqrt(12), label="drop")
    dried = 0.0025 + gtc.ureal(0, 0.005 / math.sqrt(12), label="evaporation")
    return (weighing(25.06, 5) - weighing(23.26, 5) - drop + dried) * z


def test_a_weighing_against_a_reference_library():
    # GTC, the uncertainty calculator of a national metrology institute, live; the balance's limits are assumed
    gtc = pytest.importorskip("GTC", reason="GTC is in the test extra")
    ours = capacity_from_weight([23.26] * 5, [25.06] * 5, BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0))
    theirs = gtc_weighing(gtc)
    library = Outside("gtc", "a weighing as a model of its own")
    library.agree(ours.volume_ml, theirs.x, within=1e-12, because="the same arithmetic")
    library.agree(ours.budget.standard_uncertainty, theirs.u, within=1e-7, because="our sensitivities are differences")
    parts = {row.label: row.u for row in gtc.reporting.budget(theirs, trim=0)}
    for name in ("temperature", "air pressure", "humidity", "density of the liquid"):
        [row] = [c for c in ours.budget.components if c.source == name]
        library.agree(row.contribution, parts[name], within=1e-3 * parts[name], because="central differences")


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
    library = Outside("gtc", "Welch-Satterthwaite and Student's t")
    library.agree(ours.budget.degrees_of_freedom, theirs.df, within=1e-9 * theirs.df, because="the same arithmetic")
    k = gtc.reporting.k_factor(math.floor(theirs.df), 95)
    library.agree(ours.budget.coverage_factor, k, within=1e-6 * k, because="two ways to the same quantile")


def test_gum_h1_against_a_reference_library():
    gtc = pytest.importorskip("GTC", reason="GTC is in the test extra")
    parts = gum_h1()
    result = sum(
        c.sensitivity * gtc.ureal(0, c.standard_uncertainty, c.degrees_of_freedom) for c in parts if c.sensitivity
    )
    budget = combine(parts)
    library = Outside("gtc", "example H.1, and Student's t")
    library.agree(budget.standard_uncertainty, result.u, within=1e-10, because="the same arithmetic")
    library.agree(budget.degrees_of_freedom, result.df, within=1e-8, because="the same arithmetic")
    for nu in (*range(1, 31), 60, 200):
        for level in (90, 95, 99):
            k = gtc.reporting.k_factor(nu, level)
            library.agree(coverage_factor(nu, level / 100), k, within=1e-6 * k, because="two ways to the same quantile")


def test_a_certified_data_set():
    # NIST StRD, univariate set NumAcc3 (its form from memory): mean 1000000.2 and deviation 0.1, exact by construction
    values = [1000000.2] + [1000000.1, 1000000.3] * 500
    mean, spread = mean_and_spread(values)
    certified = Outside("nist-strd", "NumAcc3: mean and deviation")
    certified.agree(mean, "1000000.2", within=1e-9, because="certified exactly")
    certified.agree(spread, "0.1", within=1e-9, because="certified exactly")


# NIST StRD, Norris: 36 readings of an ozone monitor, certified to fifteen digits
NORRIS_X = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5]  # fmt: skip
NORRIS_Y = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2]  # fmt: skip


def test_a_certified_line():
    line = fit_line(NORRIS_X, NORRIS_Y)
    certified = Outside("nist-strd", "Norris: a straight line")
    certified.agree(
        line.intercept, "-0.26232307377", within=1e-10, because="certified to fifteen digits; doubles give twelve"
    )
    certified.agree(line.slope, "1.002116818020")
    certified.agree(line.slope_uncertainty, "0.42979684820e-03")
    certified.agree(line.residual_spread, "0.88479639614437", within=1e-12, because="certified to fifteen digits")
    assert line.degrees_of_freedom == 34


def test_gum_h3():
    # JCGM 100:2008, H.3, a thermometer's correction against its reading less 20 °C
    readings = (21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511)
    corrections = (-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160)
    line = fit_line([t - 20 for t in readings], corrections)
    guide = Outside("jcgm100", "example H.3, a thermometer's line")
    guide.agree(line.intercept, "-0.1712")
    guide.agree(line.slope, "0.00218")
    guide.agree(line.slope_uncertainty, "0.00067")
    guide.agree(line.residual_spread, "0.0035")
    assert line.degrees_of_freedom == 9
