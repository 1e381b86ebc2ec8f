"""Grades: their spread, their own figures, and the curve of the cloth."""

import itertools
import math

import pytest
from msgspec.structs import replace
from ranges import takes_only

from pentools.calc.finish.grades import (
    SCALES,
    GradeRow,
    PasteRow,
    catalogue_from_rows,
    cloth_grade,
    sized_grade,
    with_finish,
)
from pentools.calc.finish.reading import read_grade
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue


def test_every_grade_holds_together():
    for g in catalogue().grades:
        assert 0 < g.low_um <= g.particle_um <= g.high_um
        assert 0 < g.finish_low_um <= g.finish_um <= g.finish_high_um
        assert g.coarsest_um is None or g.coarsest_um > g.high_um
        assert g.scale in SCALES
        assert g.source
        assert g.certainty
        assert g.soft_backed == (g.medium == "cushioned")


def test_two_medians_of_one_grade_are_refused():
    row = GradeRow("P", "400", "median", 35, None, "", "paper", "x", "judged", "")
    with pytest.raises(InputError, match="one median"):
        catalogue_from_rows([row, replace(row, size_um=23)])


def test_own_finish_figure():
    cloth = with_finish(read_grade("cushioned cloth 2000", catalogue()), 18)
    assert (cloth.particle_um, cloth.finish_um, cloth.finish_overridden) == (23, 18, True)
    assert (cloth.finish_low_um, cloth.finish_high_um, cloth.finish_certainty) == (
        18 * 0.91,
        18 * 1.09,
        "measured here",
    )
    takes_only(lambda um: with_finish(cloth, um), 0.01, 500)


def test_any_number_lies_on_the_curve_of_the_cloth():
    points = {g.name: g for g in catalogue().in_scale("cushioned")}
    middle = read_grade("cushioned cloth 8367", catalogue())  # √(7000·10000): halfway on the logarithmic axis
    for size in ("particle_um", "low_um", "high_um", "finish_um", "finish_low_um", "finish_high_um"):
        low, high = getattr(points["7000"], size), getattr(points["10000"], size)
        assert getattr(middle, size) == pytest.approx(math.sqrt(low * high), rel=0.02)
    assert middle.certainty == middle.finish_certainty == "judged"
    sizes = [read_grade(f"cloth {n}", catalogue()) for n in range(1000, 15001, 250)]
    for one, other in itertools.pairwise(sizes):
        assert one.particle_um >= other.particle_um
        assert one.finish_um >= other.finish_um


def test_the_bench_s_own_figures_of_a_cloth():
    both = read_grade("cushioned cloth 4000 = 9.5 um, finish 7 um", catalogue())
    assert (both.label, both.particle_um, both.finish_um) == ("cushioned cloth 4000", 9.5, 7)
    assert (both.low_um, both.high_um) == (9.5 * 0.91, 9.5 * 1.09)
    assert both.certainty == "stated by the bench"
    only_finish = read_grade("cloth 4000 = finish 7 um", catalogue())
    assert (only_finish.particle_um, only_finish.finish_um) == (9, 7)
    # a grain alone: its finish is read off the curve where the curve has that grain, whatever the number says
    odd = read_grade("cloth 800 = 14 um", catalogue())
    assert (odd.particle_um, odd.finish_um) == (14, 10)  # 10.5 to two figures
    assert (odd.finish_low_um, odd.finish_high_um) == (6.8, 14)
    takes_only(lambda um: cloth_grade(4000, catalogue(), particle_um=um), 0.05, 200)
    with pytest.raises(InputError, match="from 1000 to 15000"):
        cloth_grade(20000, catalogue())
    # at the ends of the curve its own finish: 45 and 1.5 µm of grain
    assert cloth_grade(500, catalogue(), particle_um=45).finish_um == 29
    assert cloth_grade(20000, catalogue(), particle_um=1.5).finish_um == 2.6
    # beyond the curve in the ratio of its end: 29/45 at the coarse one, 2.6/1.5 at the fine one
    assert cloth_grade(500, catalogue(), particle_um=90).finish_um == 58
    assert cloth_grade(20000, catalogue(), particle_um=0.75).finish_um == 1.3


def test_a_spread_is_its_tolerance_and_what_others_print():
    row = GradeRow("P", "9", "median", 20, 3, "m", "paper", "s", "judged", "n")
    rows = [row, replace(row, figure="median also seen", size_um=25), replace(row, figure="coarsest", size_um=40)]
    [grade] = catalogue_from_rows(rows).grades
    assert (grade.low_um, grade.particle_um, grade.high_um, grade.coarsest_um) == (17, 20, 25, 40)
    assert (grade.finish_low_um, grade.finish_um, grade.finish_high_um) == (17, 20, 25)
    assert grade.note == "n"
    paste = PasteRow("soap", 4, None, None, "s", "judged", "")
    [soap] = catalogue_from_rows([], [paste]).grades
    assert (soap.low_um, soap.high_um, soap.medium, soap.label) == (2, 6, "paste", "paste soap")


def test_a_paste_spreads_as_its_row_says_or_by_half():
    rows = [PasteRow("a", 4, 3, 7, "s", "judged", ""), PasteRow("0.25", 0.25, None, 0.3, "s", "judged", "x")]
    one, other = catalogue_from_rows([], rows).grades
    assert (one.low_um, one.high_um, one.finish_low_um, one.finish_high_um, one.label) == (3, 7, 3, 7, "paste a")
    assert (other.low_um, other.high_um, other.label, other.note, other.soft_backed) == (
        0.125,
        0.3,
        "paste 0.25 µm",
        "x",
        False,
    )


def test_a_size_of_one_s_own():
    grade = sized_grade(50)
    assert (grade.low_um, grade.high_um, grade.finish_low_um) == pytest.approx((45.5, 54.5, 45.5))
    assert grade.medium == "film"
    takes_only(sized_grade, 0.01, 5000)
    wide = sized_grade(10, scale="ladder", medium="paper", spread_share=0.2, label="red")
    assert (wide.low_um, wide.high_um, wide.medium, wide.name, wide.label) == (8, 12, "paper", "red", "ladder red")
    assert (grade.method, grade.certainty, grade.finish_certainty, grade.coarsest_um) == (
        "nominal",
        "judged",
        "judged",
        None,
    )
