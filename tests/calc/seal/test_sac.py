"""Sac numbers, materials, and one size held against a pen."""

import pytest
from ranges import takes_only

from pentools.calc.seal.sac import MATERIALS, SacChoice, SacSize, sac_number, sac_outside_mm


def test_a_number_and_its_diameter_are_each_others_inverse():
    assert sac_number(sac_outside_mm(17)) == pytest.approx(17)
    assert sac_outside_mm(16) == pytest.approx(6.35)


def test_ranges():
    takes_only(sac_outside_mm, 5, 40)
    takes_only(sac_number, 2, 16)


@pytest.mark.parametrize(
    ("air", "stretch", "grade"),
    [
        (0.25, 0.10, 0), (0.25, None, 0), (0.249, 0.10, 1), (0.05, 0.10, 1), (0.049, 0.10, 3), (0.0, 0.10, 3),
        (-0.001, 0.10, 4), (0.3, 0.02, 0), (0.3, 0.019, 2), (0.3, 0.25, 0), (0.3, 0.251, 2), (0.1, 0.3, 2),
    ],
)  # fmt: skip
def test_grades(air, stretch, grade):
    assert SacChoice(SacSize("number 16", 6.35, 16), air, stretch).grade == grade


def test_silicone_wants_another_adhesive_and_pleats_are_not_cut():
    assert MATERIALS["latex"].adhesive == "shellac"
    assert "silicone adhesive" in MATERIALS["silicone"].adhesive
    assert "thread" in MATERIALS["silicone"].adhesive
    assert [name for name, material in MATERIALS.items() if not material.cut] == ["pleated"]
