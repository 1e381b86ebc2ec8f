"""Bars and rulers: what they say, and each gate."""

import pytest
from drawn_bars import RULES, drawn
from drawn_lines import codes, whole

from pentools.calc.nib.bar import find_bars

UM = 25400 / 300


def search(said=None, tag=None, **more):
    light = drawn(**more)
    return find_bars(codes(light), whole(light), said, tag)


@pytest.mark.parametrize(("degrees", "rule", "marks"), [(0.0, "mm", 61), (6.0, "mm", 61), (0.0, "half", 121)])
def test_a_ruler_is_told_by_its_longer_strokes(degrees, rule, marks):
    (bar,) = search(marks=RULES[rule], degrees=degrees, dpi=300 if rule == "mm" else 600).bars
    assert (bar.kind, bar.marks, bar.step_mm) == ("ruler", marks, 1.0 if rule == "mm" else 0.5)
    assert bar.um_per_px == pytest.approx(UM if rule == "mm" else UM / 2, rel=0.0003)
    assert bar.long_mm == pytest.approx(60)
    assert 0.003 < bar.u_share < 0.004


def fields(size, count, high):
    return [(2 * size * k, 2 * size * k + size, high) for k in range(count)]


def test_the_sheet_s_own_bar_is_known_by_its_shape():
    (bar,) = search(fields=fields(10, 4, 2)).bars
    assert (bar.kind, bar.marks, bar.long_mm) == ("bar", 7, pytest.approx(70, abs=0.05))
    assert bar.um_per_px == pytest.approx(UM, rel=0.0005)
    assert bar.u_share > 0.005
    (measured,) = search(fields=fields(10, 4, 2), said=69.3).bars
    assert measured.um_per_px == pytest.approx(UM * 0.99, rel=0.0005)
    assert measured.u_share < bar.u_share


def test_even_marks_of_an_unknown_unit_want_the_file_or_a_word():
    assert search(marks=RULES["same"]).nearly == "unit"
    assert search(marks=RULES["same"], tag=UM * 2).nearly == "unit"
    assert search(marks=RULES["same"], tag=UM * 1.01).bars[0].um_per_px == pytest.approx(UM, rel=0.0003)
    assert search(marks=RULES["same"], said=60).bars[0].um_per_px == pytest.approx(UM, rel=0.0003)
    assert search(fields=fields(5, 6, 2)).nearly == "unit"


@pytest.mark.parametrize(("rule", "why"), [("inch", "inch"), ("closing", "aslant")])
def test_what_is_no_scale_is_refused_by_name(rule, why):
    found = search(marks=RULES[rule])
    assert (found.bars, found.nearly) == ((), why)


def test_wandering_marks_and_strokes_alone_are_none():
    assert search(marks=RULES["wandering"]).bars == ()
    assert search().bars == ()
