"""Neighbours of a grade, and from one scale to another."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.finish.conversion import convert_grade, method_ratio, neighbours
from pentools.calc.finish.grades import (
    SCALES,
    sized_grade,
)
from pentools.calc.finish.reading import read_grade
from pentools.errors import InputError
from pentools.tables.abrasives import catalogue


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
    assert method_ratio(0.5, catalogue()) == pytest.approx(5.7 / 4.0)
    for size in (0, -1):
        with pytest.raises(InputError):
            method_ratio(size, catalogue())
    # on a straight line over the logarithm: a third of the way from #1000 (15.5/11.5) to #1200
    below, above = (read_grade(f"JIS {n} sedimentation", catalogue()).particle_um for n in (1200, 1000))
    low, high = method_ratio(below, catalogue()), method_ratio(above, catalogue())
    assert method_ratio(above ** (2 / 3) * below ** (1 / 3), catalogue()) == pytest.approx(high + (low - high) / 3)


def test_neighbours_of_a_cloth_by_its_finish():
    """Grain 23 µm, finish 15 µm: P800 (21.8) by the one, P1200 (15.3) by the other; sizes of ISO 6344."""
    cloth = read_grade("cushioned cloth 2000", catalogue())
    by = {how: {n.scale: n for n in neighbours(cloth, catalogue(), by=how)} for how in ("particle", "finish")}
    assert (by["particle"]["P"].nearest.name, by["finish"]["P"].nearest.name) == ("800", "1200")
    assert by["finish"]["P"].ratio == pytest.approx(15.3 / 15)
    assert by["particle"]["P"].ratio == pytest.approx(21.8 / 23)
    assert (by["finish"]["P"].coarser.name, by["finish"]["P"].finer.name) == ("1200", "1500")
    assert (by["particle"]["P"].coarser.name, by["particle"]["P"].finer.name) == ("600", "800")
    # its own scale is judged by the same figure
    assert (by["finish"]["cushioned"].coarser.name, by["finish"]["cushioned"].finer.name) != ("2000", "2000")


# sizes as ISO 6344 (P), ANSI B74.18 (CAMI), ISO 8486 (F), JIS R 6001 and ASTM E11 (mesh) print them; the ratio worked by hand
@pytest.mark.parametrize(
    ("text", "scale", "told"),
    [
        ("P400", "CAMI", "P400 comes nearest to CAMI 320 (1.03 times as coarse as printed)."),  # 36/35
        ("CAMI 320", "P", "CAMI 320 comes nearest to P400 (1.03 times finer as printed); within the spread it could pass for P360 to P400."),
        ("P1500", "F", "P1500 comes nearest to F500 (as coarse as printed)."),  # 12.8/12.6 is within 2 %
        ("P1000", "mesh", "P1000 comes nearest to mesh 635 (1.09 times as coarse as printed); not within the spread of either."),  # 20/18.3
        ("P600", "JIS electrical", "P600 comes nearest to JIS 500 electrical (1.03 times finer as printed); measured by that scale's own method it would "
         "read about 22 µm, JIS 600 electrical."),  # 25/25.8; and 25.8/1.16
    ],
)  # fmt: skip
def test_a_conversion_in_words(text, scale, told):
    assert convert_grade(read_grade(text, catalogue()), scale, catalogue()).text == told


def test_like_for_like_by_the_two_methods_of_jis():
    def like(text, scale):
        return convert_grade(read_grade(text, catalogue()), scale, catalogue()).like_for_like_um

    # #1000 is 15.5 µm by sedimentation and 11.5 µm by electrical resistance, there and back
    assert like("JIS 1000 electrical", "JIS sedimentation") == pytest.approx(15.5)
    assert like("JIS 1000 sedimentation", "JIS electrical") == pytest.approx(11.5)
    # sedimentation beside sedimentation stays; P grades above 60 µm are sieved, below it sedimented
    assert like("P1000", "JIS sedimentation") == 18.3
    assert like("P180", "JIS electrical") is None
    assert like("JIS 240 sedimentation", "P") == 60
    assert like("film 9 um", "JIS electrical") is None
