"""The spaces in a pen, each against its own arithmetic worked by hand."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.weighing.volumes import area_mm2, head_kpa, plunger_volume_ml, pumped_volume_ml, sac_volume_ml
from pentools.errors import InputError


def test_a_ring_is_the_circle_less_the_hole():
    assert area_mm2(8.5, 2.6) == pytest.approx(51.4357, abs=1e-4)
    assert area_mm2(8.5) == pytest.approx(56.7450, abs=1e-4)


def test_a_column_of_water():
    # 998 kg/m³ · 9.80665 m/s² · 0.06 m
    assert head_kpa(60.0) == pytest.approx(0.58722, abs=1e-5)


@pytest.mark.parametrize(("number", "full"), [(14, 0.958), (16, 1.318), (18, 1.734), (20, 2.205), (22, 2.733)])
def test_sacs(number, full):
    # worked by hand: wall 0.5 mm, length 60 mm, a hemisphere at the end
    assert sac_volume_ml(number * 25.4 / 64, 0.5, 60) == pytest.approx(full, abs=6e-4)


def test_a_sphere_is_a_sac_of_two_hemispheres():
    d = 10.0
    half = sac_volume_ml(d + 2, 1.0, 1 + d / 2)
    assert half == pytest.approx(math.pi * d**3 / 12 / 1000)


@pytest.mark.parametrize(("outside", "wall", "length"), [(6.0, 3.0, 60.0), (6.0, 0.5, 2.9)])
def test_a_sac_with_no_inside_or_no_length_is_refused(outside, wall, length):
    with pytest.raises(InputError, match="sac"):
        sac_volume_ml(outside, wall, length)


def plunger(behind, ahead, head=60.0, vapour=0.0):
    return plunger_volume_ml(3.189, behind, ahead, head_mm=head, ambient_kpa=101.325, vapour_kpa=vapour)


def test_a_sound_plunger_fills_almost_all_it_sweeps():
    # worked by hand: 3.349 - 0.16 · 101.325/100.738 = 3.18807 mL dry; over vapour of 2.34 kPa 3.349 - 0.164757
    assert plunger(0.06, 0.10) == pytest.approx(3.18807, abs=5e-6)
    assert plunger(0.06, 0.10, vapour=2.34) == pytest.approx(3.184243, abs=5e-6)
    assert plunger(0.0, 0.0) == pytest.approx(3.189)
    assert plunger(0.16, 0.0) == pytest.approx(plunger(0.0, 0.16))
    for behind, ahead in ((-0.1, 0.0), (0.0, -0.1)):
        with pytest.raises(InputError):
            plunger(behind, ahead)


def test_strokes_of_a_pump():
    # worked by hand: 0.28 mL a stroke, 0.03 mL in the tube, 1.6 mL to its end: 0.25, 0.50 … 1.50 (6), 1.60 (7)
    held = [pumped_volume_ml(n, 0.28, 0.03, 1.6) for n in (0, 1, 2, 6, 7, 20)]
    assert held == pytest.approx([0, 0.25, 0.5, 1.5, 1.6, 1.6])
    with pytest.raises(InputError, match=r"above the 0\.03 mL"):
        pumped_volume_ml(3, 0.03, 0.03, 1.6)


@given(st.floats(0.05, 1.0), st.floats(0.2, 4.0), st.integers(0, 40))
def test_a_pump_never_holds_more_than_its_level(stroke, level, n):
    held, more = (pumped_volume_ml(k, stroke, 0.03, level) for k in (n, n + 1))
    assert 0 <= held <= more <= level
