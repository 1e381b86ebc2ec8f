"""Removal by diameter and by mass, and gold marks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.finish.removal import (
    compare_removal,
    fine_gold_um,
    gold_layer_um,
    mass_per_um_mg,
    read_gold_mark,
    removed_by_diameter_um,
    removed_by_mass_um,
    side_area_mm2,
)
from pentools.errors import InputError


def test_two_ways_agree_on_a_celluloid_barrel():
    # 10 µm a side off 12 x 70 mm: 20 µm on the diameter, 36.95 mg (3.695 mg per µm, worked by hand)
    by_mass = removed_by_mass_um(8.50000, 8.46305, side_area_mm2(12, 70), 1.40)
    by_diameter = removed_by_diameter_um(12.020, 12.000)
    check = compare_removal(by_diameter, by_mass, diameter_u_um=2, mass_u_um=2.7)
    assert by_mass == pytest.approx(10, abs=0.01)
    assert check.agrees
    assert check.finding.level == "ok"


@pytest.mark.parametrize(("mass", "words"), [(20.0, "wet or dirty"), (2.0, "still damp")])
def test_a_difference_is_a_finding(mass, words):
    check = compare_removal(10.0, mass, diameter_u_um=1.0, mass_u_um=1.0)
    assert not check.agrees
    assert check.finding.level == "warning"
    assert words in check.finding.text


def test_the_limit_is_twice_the_uncertainty():
    assert compare_removal(10.0, 14.9, diameter_u_um=1.5, mass_u_um=2.0).agrees  # u = 2.5
    assert not compare_removal(10.0, 15.1, diameter_u_um=1.5, mass_u_um=2.0).agrees
    for bad in ((-1, 1), (0, 0)):
        with pytest.raises(InputError):
            compare_removal(1, 1, diameter_u_um=bad[0], mass_u_um=bad[1])


@given(st.floats(20, 5000), st.floats(0.001, 0.5), st.floats(8, 20))
def test_the_gold_layer_weighs_its_share(total, share, density):
    layer = gold_layer_um(total, share, density)
    gold, base = layer * density, (total - layer) * 8.5
    assert gold / (gold + base) == pytest.approx(share)


@pytest.mark.parametrize(
    ("text", "share", "karat"),
    [("1/20 12K GF", 1 / 20, 12), ("1/10 14 ct", 1 / 10, 14), (" 1 / 40 , 12 karat rolled plate", 1 / 40, 12)],
)
def test_marks(text, share, karat):
    mark = read_gold_mark(text)
    assert (mark.mass_share, mark.karat) == (share, karat)


@pytest.mark.parametrize("text", ["14K", "1/20", "1/1 14K", "1/20 30K", "gold filled", ""])
def test_marks_refused(text):
    with pytest.raises(InputError, match="1/20 12K"):
        read_gold_mark(text)


@pytest.mark.parametrize(
    "call",
    [
        lambda: side_area_mm2(0, 70), lambda: side_area_mm2(12, -1), lambda: mass_per_um_mg(0, 1.4), lambda: mass_per_um_mg(100, 0),
        lambda: removed_by_diameter_um(0, 12), lambda: removed_by_diameter_um(12, float("nan")), lambda: removed_by_mass_um(-1, 1, 100, 1.4),
        lambda: gold_layer_um(250, 0, 12.7), lambda: gold_layer_um(250, 1, 12.7), lambda: gold_layer_um(250, 0.05, 12.7, sides=3),
        lambda: gold_layer_um(1, 0.05, 12.7), lambda: fine_gold_um(0, 585, 13), lambda: fine_gold_um(1, 0, 13), lambda: fine_gold_um(1, 585, 1),
    ],
)  # fmt: skip
def test_refusals(call):
    with pytest.raises(InputError):
        call()
