"""Removal by diameter and by mass."""

import pytest
from ranges import takes_only

from pentools.calc.finish.removal import (
    compare_removal,
    mass_per_um_mg,
    removed_by_diameter_um,
    removed_by_mass_um,
    side_area_mm2,
)
from pentools.errors import InputError


def test_two_ways_agree_on_a_celluloid_barrel():
    # 10 µm a side off 12 x 70 mm: 20 µm on the diameter, 36.95 mg (3.695 mg per µm, worked by hand)
    by_mass = removed_by_mass_um(8.50000, 8.46305, mass_per_um_mg(side_area_mm2(12, 70), 1.40))
    by_diameter = removed_by_diameter_um(12.020, 12.000)
    check = compare_removal(by_diameter, by_mass, diameter_u_um=2, mass_u_um=2.7)
    assert by_mass == pytest.approx(10, abs=0.01)
    assert check.agrees
    assert check.finding.level == "ok"


@pytest.mark.parametrize(("mass", "words"), [(20.0, "wet or dirty"), (2.0, "still damp")])
def test_a_difference_is_a_finding(mass, words):
    check = compare_removal(10.0, mass, diameter_u_um=1.0, mass_u_um=1.0)
    assert not check.agrees
    assert check.difference_um == mass - 10
    assert check.difference_u_um == pytest.approx(2**0.5)
    assert check.finding.level == "warning"
    assert words in check.finding.text
    assert f"10 µm a side by diameter, {mass:.0f} µm by mass" in check.finding.text


def test_the_limit_is_twice_the_uncertainty():
    assert compare_removal(10.0, 14.9, diameter_u_um=1.5, mass_u_um=2.0).agrees  # u = 2.5
    assert not compare_removal(10.0, 15.1, diameter_u_um=1.5, mass_u_um=2.0).agrees
    assert compare_removal(10.0, 15.0, diameter_u_um=1.5, mass_u_um=2.0).agrees
    for bad in ((-1, 3), (3, -1), (0, 0)):
        with pytest.raises(InputError):
            compare_removal(1, 1, diameter_u_um=bad[0], mass_u_um=bad[1])
    assert compare_removal(1, 1, diameter_u_um=0, mass_u_um=1).difference_u_um == 1


# judged: sizes of parts and balances, wide; the densest metal is osmium at 22.6 g/ml (a handbook's figure, from memory)
@pytest.mark.parametrize(
    ("call", "low", "high"),
    [
        (lambda x: side_area_mm2(x, 70), 0.5, 100), (lambda x: side_area_mm2(12, x), 0.5, 500),
        (lambda x: mass_per_um_mg(x, 1.4), 1e-6, 100000), (lambda x: mass_per_um_mg(100, x), 0.5, 25),
        (lambda x: removed_by_diameter_um(x, 12), 0.5, 100), (lambda x: removed_by_diameter_um(12, x), 0.5, 100),
        (lambda x: removed_by_mass_um(x, 1, 3.7), 0, 1000), (lambda x: removed_by_mass_um(1, x, 3.7), 0, 1000),
        (lambda x: removed_by_mass_um(1, 1, x), 1e-6, 1e6),
    ],
)  # fmt: skip
def test_ranges(call, low, high):
    takes_only(call, low, high)
