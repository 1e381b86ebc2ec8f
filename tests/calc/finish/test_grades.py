"""Grades: reading them, refusing what is unclear, spread, neighbours and conversion."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from pentools.calc.finish.conversion import convert_grade, method_ratio, neighbours
from pentools.calc.finish.grades import (
    SCALES,
    GradeRow,
    PasteRow,
    catalogue_from_rows,
    cloth_grade,
    sized_grade,
    with_finish,
)
from pentools.calc.finish.reading import meanings_of, read_grade, read_grades
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("P400", "P400"), ("p 400", "P400"), ("FEPA P400", "P400"), ("P-400", "P400"), ("F400", "F400"),
        ("CAMI 320", "CAMI 320"), ("ansi 320", "CAMI 320"), ("cushioned 4321", "cushioned cloth 4321"),
        ("cushioned cloth 2600", "cushioned cloth 2600"), ("cloth 7000", "cushioned cloth 7000"), ("9 um", "film 9 µm"), ("3 micron", "film 3 µm"), ("JIS 1000 electrical", "JIS 1000 electrical"),
        ("JIS #1000 (sedimentation)", "JIS 1000 sedimentation"), ("film 9 um", "film 9 µm"), ("9 µm film", "film 9 µm"),
        ("film 0,3 micron", "film 0.3 µm"), ("paste 1 um", "paste 1 µm"), ("diamond paste 6 um", "paste 6 µm"),
        ("paste tripoli", "paste tripoli"), ("Tripoli", "paste tripoli"), ("mesh 325", "mesh 325"),
    ],
)  # fmt: skip
def test_grades_are_read_as_people_write_them(text, label):
    assert read_grade(text, catalogue()).label == label


def test_every_label_reads_back():
    assert [grade.label for grade in catalogue().grades if read_grade(grade.label, catalogue()) != grade] == []


@pytest.mark.parametrize("text", ["400", "#400", " 400 grit"])
def test_a_bare_number_is_never_accepted(text):
    with pytest.raises(InputError) as caught:
        read_grade(text, catalogue())
    for part in (
        "Which scale",
        "P400 (35 µm)",
        "CAMI 400 (23 µm)",
        "F400 (17.3 µm)",
        "JIS 400 electrical (30 µm)",
        "mesh 400 (38 µm)",
    ):
        assert part in str(caught.value)


def test_a_bare_2500_lists_both_sizes_of_the_cloth_and_no_cami():
    with pytest.raises(
        InputError,
        match=r"cushioned cloth 2500 \(18 µm, finishes like 12 µm\), P2500 \(8.4 µm\), .*Above 600 a number has no CAMI",
    ):
        read_grade("2500", catalogue())
    assert all(g.scale != "CAMI" for g in meanings_of("2500", catalogue()))
    with pytest.raises(InputError) as caught:
        read_grade("600", catalogue())
    assert "no CAMI" not in str(caught.value)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("CAMI 800", "ends at 600"), ("CAMI 1000", "ends at 600"), ("JIS 1000", "two test methods"), ("cloth 20000", "1000 to 15000"),
        ("P450", "P400 or P500"), ("cloth 900", "own figure"), ("fine", "with its scale"), ("cloth 4000 = soft", "its grain, its finish"),
        ("cloth 4000 = 9 um, 8 um", "its grain, its finish"), ("cloth 4000 = 900 um", "0.05 to 200"),
        ("", "with its scale"), ("777", "which scale"), ("film 9000 um", "0.01 to 5000"),
    ],
)  # fmt: skip
def test_refusals_say_why(text, why):
    with pytest.raises(InputError, match=why):
        read_grade(text, catalogue())


def test_runs_and_repeats():
    labels = [g.label for g in read_grades("P400; F230 to F280; P400; F240", catalogue())]
    assert labels == ["P400", "F230", "F240", "F280"]
    assert [g.label for g in read_grades(["P400-P600"], catalogue())] == ["P400", "P500", "P600"]
    with pytest.raises(InputError, match="by itself"):
        read_grades("cushioned cloth 2000 to 8000", catalogue())
    with pytest.raises(InputError, match="at least one"):
        read_grades(" ; ", catalogue())
    with pytest.raises(InputError, match="Which scale"):
        read_grades("P400; 600", catalogue())


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
    with pytest.raises(InputError):
        with_finish(cloth, 0)


def test_neighbours_of_p400():
    beside = {n.scale: n for n in neighbours(read_grade("P400", catalogue()), catalogue())}
    assert set(beside) == set(SCALES)
    assert (beside["P"].coarser.name, beside["P"].finer.name) == ("360", "500")
    assert (beside["CAMI"].nearest.name, beside["CAMI"].finer.name) == ("320", "360")
    assert (beside["cushioned"].coarser.name, beside["cushioned"].finer.name) == ("1000", "2000")
    with pytest.raises(InputError):
        neighbours(read_grade("P400", catalogue()), catalogue(), by="colour")


@given(st.floats(0.1, 2000))
def test_neighbours_bracket_the_size(size):
    for n in neighbours(sized_grade(size), catalogue()):
        assert n.coarser is None or n.coarser.particle_um > size
        assert n.finer is None or n.finer.particle_um < size
        assert n.nearest in catalogue().in_scale(n.scale)
        others = [abs(math.log(g.particle_um / size)) for g in catalogue().in_scale(n.scale)]
        assert abs(math.log(n.ratio)) == pytest.approx(min(others), abs=1e-9) or n.scale == "film"


def test_conversion_says_nearest_spread_and_like_for_like():
    c = convert_grade(read_grade("P400", catalogue()), "CAMI", catalogue())
    assert c.nearest.name == "320"
    assert c.ratio == pytest.approx(36 / 35)
    assert c.like_for_like_um is None
    assert [g.name for g in c.within] == ["320"]
    # a sedimentation P grade set beside the electrical JIS column: like for like it is finer than printed
    j = convert_grade(read_grade("P1000", catalogue()), "JIS electrical", catalogue())
    assert j.like_for_like_um < 18.3
    assert j.nearest_like_for_like.particle_um < j.nearest.particle_um
    assert "by that scale's own method" in j.text
    back = convert_grade(j.nearest_like_for_like, "JIS sedimentation", catalogue())
    assert back.like_for_like_um > j.nearest_like_for_like.particle_um


def test_conversion_of_cloth_goes_by_finish_unless_told():
    cloth = read_grade("cushioned cloth 2000", catalogue())  # grain 23 µm, finish 15 µm
    assert convert_grade(cloth, "P", catalogue()).nearest.name == "1200"
    assert convert_grade(cloth, "P", catalogue(), by="particle").nearest.name == "800"
    with pytest.raises(InputError):
        convert_grade(cloth, "emery", catalogue())
    with pytest.raises(InputError):
        convert_grade(cloth, "P", catalogue(), by="colour")


def test_method_ratio_runs_from_the_coarse_to_the_fine_end():
    # from the two JIS columns: 60/57 at the coarse end, 5.7/4.0 at the fine end, held beyond
    assert method_ratio(60, catalogue()) == method_ratio(500, catalogue()) == pytest.approx(60 / 57)
    assert method_ratio(5.7, catalogue()) == method_ratio(1, catalogue()) == pytest.approx(5.7 / 4.0)
    assert method_ratio(15.5, catalogue()) == pytest.approx(15.5 / 11.5)
    with pytest.raises(InputError):
        method_ratio(0, catalogue())


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


def test_a_size_of_one_s_own():
    grade = sized_grade(50)
    assert (grade.low_um, grade.high_um, grade.finish_low_um) == pytest.approx((45.5, 54.5, 45.5))
    assert grade.medium == "film"
    for size in (0.009, 5001):
        with pytest.raises(InputError):
            sized_grade(size)
    assert sized_grade(0.01).particle_um == 0.01
