"""Abrasive scales against what others printed: medians, tolerances, coarse ends, sieve openings, scale against scale."""

import pytest
from outside import Outside

from pentools.calc.finish.reading import read_grade
from pentools.tables.abrasives import catalogue

# ISO 6344-3 / FEPA 43-1 micro grits and ISO 6344-2 macro grits, medians as copied in an encyclopaedia-style table
P_MEDIANS = """12 1815, 16 1324, 20 1000, 24 764, 30 642, 36 538, 40 425, 50 336, 60 269, 80 201, 100 162, 120 125, 150 100, 180 82,
    220 68, 240 58.5, 280 52.2, 320 46.2, 360 40.5, 400 35.0, 500 30.2, 600 25.8, 800 21.8, 1000 18.3, 1200 15.3, 1500 12.6,
    2000 10.3, 2500 8.4"""
# the coarse half on a reference page on sandpaper, an independent list
P_COARSE = "12 1815, 16 1324, 20 1000, 24 764, 30 642, 36 538, 40 425, 50 336, 60 269, 80 201, 100 162, 120 125"
# a finish supplier's comparison in whole micrometres; it rounds as it likes, so within one
P_ROUNDED = "60 270, 80 200, 100 162, 180 82, 220 68, 280 52, 320 46, 360 40, 400 35, 500 30, 600 26, 800 22, 1000 18, 1200 15, 1500 13, 2000 10, 2500 8"
# ISO 6344-3 from memory: tolerance of the median, and the size that three percent exceed
P_MEMORY = """240 2.0 81.7, 280 2.0 74.0, 320 1.5 66.8, 360 1.5 60.3, 400 1.5 53.9, 500 1.5 48.3, 600 1.0 43.0, 800 1.0 38.1, 1000 1.0 33.7,
    1200 1.0 29.7, 1500 1.0 25.8, 2000 0.8 22.4, 2500 0.5 19.3"""
# ISO 8486-2 / FEPA 42-2 from memory: median, tolerance, the size that three percent exceed
F_MEMORY = """230 53.0 3.0 82, 240 44.5 2.0 70, 280 36.5 1.5 59, 320 29.2 1.5 49, 360 22.8 1.5 40, 400 17.3 1.0 32, 500 12.8 1.0 25,
    600 9.3 1.0 19, 800 6.5 1.0 14, 1000 4.5 0.8 10, 1200 3.0 0.5 7"""
# JIS R 6001:1987, micro grits by electrical resistance: median, tolerance, the size that three percent exceed
JIS = """240 57.0 3.0 103, 280 48.0 3.0 87, 320 40.0 2.5 74, 360 35.0 2.0 66, 400 30.0 2.0 58, 500 25.0 2.0 50, 600 20.0 1.5 43,
    700 17.0 1.3 37, 800 14.0 1.0 31, 1000 11.5 1.0 27, 1200 9.5 0.8 23, 1500 8.0 0.6 20, 2000 6.7 0.6 17, 2500 5.5 0.5 14,
    3000 4.0 0.5 11, 4000 3.0 0.4 8.0, 6000 2.0 0.4 5.0, 8000 1.2 0.3 3.5"""
# JIS R 6001:1998 sedimentation column, from memory: median and tolerance
JIS_MEMORY = """240 60 4.0, 280 52 3.0, 320 46 2.5, 360 40 2.0, 400 34 2.0, 500 28 2.0, 600 24 1.5, 700 21 1.3, 800 18 1.0, 1000 15.5 1.0,
    1200 13 1.0, 1500 10.5 1.0, 2000 8.5 0.7, 2500 7.0 0.7, 3000 5.7 0.5"""
CAMI = """24 708, 30 632, 36 530, 40 425, 50 348, 60 265, 80 190, 100 140, 120 115, 150 92, 180 82, 220 68, 240 53.0, 320 36.0, 360 28.0,
    400 23.0, 500 20.0, 600 16.0"""
CAMI_COARSE = "24 715, 30 638, 36 535, 40 428, 50 351, 60 268, 80 192, 100 141"
E11 = "80 180, 100 150, 120 125, 140 106, 170 90, 200 75, 230 63, 270 53, 325 45, 400 38, 450 32, 500 25, 635 20"


def rows(text):
    return [entry.split() for entry in text.replace("\n", " ").split(",")]


def grade(text):
    return read_grade(text, catalogue())


@pytest.mark.parametrize(
    ("source", "what", "scale", "text"),
    [
        ("fepa-copied-table", "median of P grades [µm]", "P", P_MEDIANS),
        ("sandpaper-page", "median of coarse P grades, a second list [µm]", "P", P_COARSE),
        ("fepa-copied-table", "median of CAMI grades [µm]", "CAMI ", CAMI),
    ],
)
def test_medians(source, what, scale, text):
    check = Outside(source, what)
    for number, size in rows(text):
        check.agree(grade(f"{scale}{number}").particle_um, size)


def test_medians_in_whole_micrometres():
    check = Outside("finish-supplier-chart", "median of P grades, rounded [µm]")
    for number, size in rows(P_ROUNDED):
        check.agree(grade(f"P{number}").particle_um, size, within=1.0, because="the chart rounds to one or two figures")


def test_coarse_cami_against_a_second_list():
    check = Outside("sandpaper-page", "median of coarse CAMI grades, a second list [µm]")
    for number, size in rows(CAMI_COARSE):
        ours = grade(f"CAMI {number}")
        check.agree(ours.particle_um, size, within=0.012 * float(size), because="two lists, one percent apart")
        assert ours.low_um <= float(size) <= ours.high_um


@pytest.mark.parametrize(("text", "sizes"), [("CAMI 400", "22 23.6"), ("CAMI 500", "18 19.7"), ("CAMI 600", "15")])
def test_the_spread_covers_what_other_lists_print(text, sizes):
    check, ours = Outside("sandpaper-lists", "CAMI sizes of other lists lie inside the spread"), grade(text)
    for size in sizes.split():
        check.same(ours.low_um <= float(size) <= ours.high_um, True)


def test_jis_by_electrical_resistance():
    median, tolerance, coarsest = (
        Outside("jis-r6001", f"JIS micro grits by electrical resistance: {what} [µm]")
        for what in ("median", "tolerance", "3 percent point")
    )
    for number, size, plus, coarse in rows(JIS):
        ours = grade(f"JIS {number} electrical")
        median.agree(ours.particle_um, size)
        tolerance.agree(ours.high_um - ours.particle_um, plus)
        tolerance.agree(ours.particle_um - ours.low_um, plus)
        coarsest.agree(ours.coarsest_um, coarse)
        assert ours.certainty == "standard"


def test_p_tolerances_from_memory():
    tolerance, coarsest = (
        Outside("grades-memory", f"P micro grits: {what} [µm]")
        for what in ("tolerance of the median", "3 percent point")
    )
    for number, plus, coarse in rows(P_MEMORY):
        ours = grade(f"P{number}")
        tolerance.agree(ours.particle_um - ours.low_um, plus)
        coarsest.agree(ours.coarsest_um, coarse)


def test_f_grades_from_memory():
    median, tolerance, coarsest = (
        Outside("grades-memory", f"F micro grits: {what} [µm]") for what in ("median", "tolerance", "3 percent point")
    )
    for number, size, plus, coarse in rows(F_MEMORY):
        ours = grade(f"F{number}")
        median.agree(ours.particle_um, size)
        tolerance.agree(ours.high_um - ours.particle_um, plus)
        coarsest.agree(ours.coarsest_um, coarse)
        assert ours.certainty == "from memory"


def test_jis_by_sedimentation_from_memory():
    median, tolerance = (
        Outside("grades-memory", f"JIS micro grits by sedimentation: {what} [µm]") for what in ("median", "tolerance")
    )
    for number, size, plus in rows(JIS_MEMORY):
        ours = grade(f"JIS {number} sedimentation")
        median.agree(ours.particle_um, size)
        tolerance.agree(ours.particle_um - ours.low_um, plus)
        assert ours.certainty == "from memory"


def test_f_between_two_published_bounds():
    # FEPA F220: at least half between 50 and 56 µm; a knife page puts F230 and F240 between 45 and 60 µm
    check = Outside("sandpaper-page", "F230 lies in the band given for the F micro grits' coarse end")
    check.same(45 <= grade("F230").particle_um <= 60, True)
    check.same(grade("F240").particle_um <= 60, True)


@pytest.mark.filterwarnings("ignore")
def test_sieve_openings_against_an_open_library():
    sieves = pytest.importorskip("fluids.particle_size_distribution")
    check = Outside("fluids", "ASTM E11 openings that are ISO 3310-1 openings too [µm]")
    iso = [sieve.opening * 1e6 for sieve in sieves.ISO_3310_1_sieves.values()]
    for number, _ in rows(E11):
        ours = grade(f"mesh {number}").particle_um
        near = min(iso, key=lambda size: abs(size - ours))
        check.agree(ours, near, within=1e-6 * near, because="the openings are exact in both series")


def test_sieve_openings():
    check = Outside("astm-e11", "sieve openings by number [µm]")
    for number, size in rows(E11):
        check.agree(grade(f"mesh {number}").particle_um, size)


def test_everyday_japanese_numbers():
    """Papers follow the sedimentation column, waterstones the electrical one: two hobby lists, marked approximate there."""
    papers = Outside("japanese-paper-list", "paper numbers follow the sedimentation column [µm]")
    for number, size in rows("1000 16, 1200 12, 1500 10, 2000 9"):
        why = "marked as approximate there"
        papers.agree(grade(f"JIS {number} sedimentation").particle_um, size, within=1.0, because=why)
    stones = Outside("waterstone-list", "waterstone numbers follow the electrical column [µm]")
    for number, size in rows("4000 3, 6000 2, 8000 1.2"):
        stones.agree(grade(f"JIS {number} electrical").particle_um, size)


def test_a_bare_400_and_a_bare_600_differ_by_the_scale():
    check = Outside("fepa-copied-table", "equal pairs of CAMI and P, as the table prints them side by side [µm]")
    for cami, p in (("400", "800"), ("600", "1200")):
        ours, size = grade(f"CAMI {cami}").particle_um, grade(f"P{p}").particle_um
        check.agree(ours, size, within=0.06 * size, because="the table sets them beside each other, not equal")
