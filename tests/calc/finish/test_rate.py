"""Rates learned from a log: median, line, interval, and not too soon."""

import math
import random

import pytest
from ranges import takes_only

from pentools.calc.finish.limits import Interval
from pentools.calc.finish.rate import (
    LogRow,
    calibrate_rates,
    estimate_rate,
    rule_of_thumb_rate,
    time_needed,
)
from pentools.calc.finish.reading import read_grade, read_grades
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue, media

GRADES = read_grades("P600; P1000; P1500; P2500", catalogue())


def log_of(c, n, spread, count, seed, grades=GRADES, minutes=5.0):
    chance = random.Random(seed)
    rows = []
    for i in range(count):
        grade = grades[i % len(grades)]
        rate = c * grade.particle_um**n * math.exp(chance.gauss(0, spread))
        rows.append(LogRow("celluloid", grade, rate * minutes, minutes))
    return rows


@pytest.mark.parametrize("count", [0, 1, 2])
def test_not_calibrated_under_three_rows(count):
    line = calibrate_rates(log_of(0.2, 0.6, 0.1, count, 1), "celluloid", media())
    assert not line.calibrated
    assert line.finding.text.startswith(f"Not calibrated: {count} of 3 measured stages on celluloid so far.")
    assert {
        line.coefficient,
        line.exponent,
        line.spread_log,
        line.degrees_of_freedom,
        line.exponent_u,
        line.middle_log,
    } == {0}
    estimate = estimate_rate(line, GRADES[0])
    assert not estimate.calibrated
    assert estimate == rule_of_thumb_rate(GRADES[0], 1.0)


@pytest.mark.parametrize(("c", "n"), [(0.2, 0.6), (0.05, 1.0), (1.0, 0.0)])
def test_a_known_law_is_found_again(c, n):
    line = calibrate_rates(log_of(c, n, 0, 12, 1), "celluloid", media())
    assert line.exponent == pytest.approx(n, abs=1e-6)
    told = f"Calibrated for celluloid from 12 measured stages: rate goes with size to the power {n:.1f}."
    assert (line.finding.level, line.finding.text) == ("ok", told)
    assert line.coefficient == pytest.approx(c, rel=1e-6)
    unseen = read_grade("P800", catalogue())
    assert estimate_rate(line, unseen).rate.typical == pytest.approx(c * 21.8**n, rel=1e-6)


def test_the_exponent_is_held_between_0_and_1():
    assert calibrate_rates(log_of(0.01, 2.0, 0, 12, 1), "celluloid", media()).exponent == 1
    assert calibrate_rates(log_of(9, -1.0, 0, 12, 1), "celluloid", media()).exponent == 0
    one_size = calibrate_rates(log_of(0.2, 0.6, 0.1, 5, 1, GRADES[:1]), "celluloid", media())
    assert one_size.exponent == 0.5


def test_a_median_is_pulled_to_the_line_the_less_the_more_rows_it_has():
    rows = log_of(0.2, 0.5, 0, 12, 1)
    odd = read_grade("P800", catalogue())
    on_line = 0.2 * 21.8**0.5

    def estimate(count):
        more = [LogRow("celluloid", odd, on_line * 2 * 5, 5.0)] * count
        return estimate_rate(calibrate_rates(rows + more, "celluloid", media()), odd).rate.typical / on_line

    one, many = estimate(1), estimate(10)
    assert 1 < one < many < 2.01
    assert one == pytest.approx(2 ** (1 / 3), rel=0.1)  # one row of its own against two of the line


def test_an_outlier_hardly_moves_a_median():
    rows = log_of(0.2, 0.5, 0.05, 20, 3)
    spoiled = [*rows, LogRow("celluloid", GRADES[0], 1000.0, 1.0)]
    a, b = (estimate_rate(calibrate_rates(r, "celluloid", media()), GRADES[0]).rate.typical for r in (rows, spoiled))
    assert b == pytest.approx(a, rel=0.1)


@pytest.mark.parametrize("spread", [0.25, 0.5])
@pytest.mark.parametrize("count", [3, 5, 8, 16])
def test_the_stated_95_percent_hold_the_next_stage(count, spread):
    """The true next stage, drawn from the same law, is inside 93 to 99 times in 100; 500 logs, the seeds fixed."""
    inside, trials = 0, 500
    for seed in range(trials):
        line = calibrate_rates(log_of(0.2, 0.6, spread, count, seed), "celluloid", media())
        grade = GRADES[seed % 4]
        nxt = 0.2 * grade.particle_um**0.6 * math.exp(random.Random(10000 + seed).gauss(0, spread))
        rate = estimate_rate(line, grade).rate
        inside += rate.low <= nxt <= rate.high
    assert 0.93 <= inside / trials <= 0.99


def test_the_interval_from_a_log_of_one_grade():
    """Four stages of 1, 2, 4 and 8 µm in 1 min, worked by hand: t(3) = 3.182, s = 0.8948, √(1 + 1/4)."""
    rows = [LogRow("celluloid", GRADES[0], r, 1.0) for r in (1, 2, 4, 8)]
    line = calibrate_rates(rows, "celluloid", media())
    assert (line.degrees_of_freedom, line.exponent) == (3, 0.5)
    assert line.spread_log == pytest.approx(0.8948, abs=5e-5)
    rate = estimate_rate(line, GRADES[0]).rate
    assert rate.typical == pytest.approx(math.sqrt(8))
    assert math.log(rate.high / rate.typical) == pytest.approx(3.182 * 0.8948 * math.sqrt(1.25), rel=2e-4)
    assert rate.high / rate.typical == pytest.approx(rate.typical / rate.low)


def test_the_interval_from_a_fitted_line():
    """Six stages on two grades, so a slope is fitted: n - 2 degrees, and the slope's uncertainty beyond the middle."""
    coarse, fine = GRADES[0], GRADES[3]  # 25.8 and 8.4 µm
    values = [(coarse, 2.0), (coarse, 2.2), (coarse, 2.42), (fine, 1.0), (fine, 1.1), (fine, 1.21)]
    line = calibrate_rates([LogRow("celluloid", g, r, 1.0) for g, r in values], "celluloid", media())
    x = math.log(25.8 / 8.4) / 2  # half the distance of the two sizes, on the logarithm
    assert line.degrees_of_freedom == 4
    assert line.exponent == pytest.approx(math.log(2) / (2 * x))
    # residuals 0, ±ln 1.1 on either grade: s² = 4 ln² 1.1 / 4
    assert line.spread_log == pytest.approx(math.log(1.1))
    assert line.exponent_u == pytest.approx(math.log(1.1) / math.sqrt(6 * x * x))
    half = 2.776 * math.log(1.1) * math.sqrt(1 + 1 / 6 + 1 / 6)  # t(4); leverage x²/(6x²) at either grade
    rate = estimate_rate(line, coarse).rate
    assert math.log(rate.high / rate.typical) == pytest.approx(half, rel=1e-3)
    assert rate.typical == pytest.approx(2.2)


def test_four_rows_or_one_size_fit_no_slope():
    assert calibrate_rates(log_of(0.2, 0.9, 0, 4, 1), "celluloid", media()).exponent == 0.5
    assert calibrate_rates(log_of(0.2, 0.9, 0, 5, 1), "celluloid", media()).exponent == pytest.approx(0.9)


def test_two_grades_of_one_size_fit_no_slope():
    """A paper and a film of 25.8 µm cut alike fast: their rates say nothing of how rate goes with size."""
    film = read_grade("film 25.8 um", catalogue())
    rows = [
        LogRow("celluloid", g, r, 1.0) for g, r in ((GRADES[0], 2), (GRADES[0], 2), (film, 3), (film, 3), (film, 3))
    ]
    assert calibrate_rates(rows, "celluloid", media()).exponent == 0.5
    both = [*rows, LogRow("celluloid", GRADES[3], 1.0, 1.0)]
    assert calibrate_rates(both, "celluloid", media()).exponent > 0.5


def test_hands_never_repeat_better_than_a_twentieth():
    """Judged: three stages alike to the last digit still leave 5 % of spread; t(2) = 4.303, √(1 + 1/3)."""
    line = calibrate_rates([LogRow("celluloid", GRADES[0], 10.0, 5.0)] * 3, "celluloid", media())
    rate = estimate_rate(line, GRADES[0]).rate
    assert math.log(rate.high / rate.typical) == pytest.approx(4.303 * 0.05 * math.sqrt(4 / 3), rel=2e-3)
    assert estimate_rate(line, GRADES[0]).text == "from 3 stages with this grade and 3 in all"
    other = estimate_rate(line, GRADES[3])
    assert (other.calibrated, other.rows, other.text) == (True, 0, "from the general line of 3 stages")
    # the exponent is anything between 0 and 1: 0.5 ± 1/√12, times the way from P600 to P2500 on the logarithm
    # (JCGM 100, G.4: it weighs so much more than the scatter that t is that of very many degrees, 1.96)
    stage, away = 0.05 * math.sqrt(4 / 3), math.log(25.8 / 8.4) / math.sqrt(12)
    assert math.log(other.rate.high / other.rate.typical) == pytest.approx(1.96 * math.hypot(stage, away), rel=2e-3)


def test_a_soft_backing_counts_by_its_cut():
    rows = log_of(0.2, 1.0, 0, 8, 1)
    cloth = read_grade("cushioned cloth 2000 = 25.8 um", catalogue())
    line = calibrate_rates(rows, "celluloid", media())
    assert estimate_rate(line, cloth).rate.typical == pytest.approx(0.2 * 25.8 * 0.5)
    assert rule_of_thumb_rate(cloth, 0.5).rate.typical == pytest.approx(25.8 * 0.5 / 12)


def test_beyond_the_logged_sizes_it_is_less_sure():
    line = calibrate_rates(log_of(0.2, 0.6, 0.1, 12, 2), "celluloid", media())

    def width(text):
        rate = estimate_rate(line, read_grade(text, catalogue())).rate
        return rate.high / rate.low

    assert width("P800") < width("film 3 um") < width("film 1 um")


def test_rows_of_another_kind_do_not_count():
    rows = log_of(0.2, 0.6, 0.1, 4, 1)
    strokes = [LogRow("celluloid", GRADES[0], 1.0, 40.0, "stroke")] * 3
    other = [LogRow("acrylic", GRADES[0], 1.0, 4.0)] * 3
    dry = [LogRow("celluloid", GRADES[0], 50.0, 4.0, wet=False)] * 3
    assert calibrate_rates(rows + strokes + other, "celluloid", media()).rows == 4
    assert calibrate_rates(strokes, "celluloid", media(), basis="stroke").calibrated
    assert calibrate_rates(rows + dry, "celluloid", media(), wet=False).rows == 3


@pytest.mark.parametrize(("removed", "amount"), [(0, 5), (-1, 5), (5, 0), (float("nan"), 5)])
def test_bad_rows_are_refused(removed, amount):
    rows = [*log_of(0.2, 0.6, 0.1, 4, 1), LogRow("celluloid", GRADES[0], removed, amount)]
    with pytest.raises(InputError, match="above 0"):
        calibrate_rates(rows, "celluloid", media())


def test_other_refusals():
    with pytest.raises(InputError):
        calibrate_rates([], "celluloid", media(), basis="hour")
    takes_only(lambda share: rule_of_thumb_rate(GRADES[0], share), 0, 2, above=True)
    with pytest.raises(InputError):
        time_needed(Interval(-1e-9, 0, 0), rule_of_thumb_rate(GRADES[0], 1))
    assert time_needed(Interval(0, 0, 0), rule_of_thumb_rate(GRADES[0], 1)) == Interval(0, 0, 0)


def test_time_is_long_where_the_rate_is_low():
    time = time_needed(Interval(10, 20, 30), rule_of_thumb_rate(GRADES[0], 1))
    assert time.typical == pytest.approx(20 / (25.8 / 12))
    assert time.low == pytest.approx(10 / (25.8 / 4))
    assert time.high == pytest.approx(30 / (25.8 / 36))
