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
    with pytest.raises(InputError):
        method_ratio(0, catalogue())
