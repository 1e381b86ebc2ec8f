"""The room, the liquid and the handling of a weighing."""

import math

import pytest

from pentools.calc.weighing.setting import Conditions, Handling, Liquid, Setting, ink_against_water
from pentools.errors import InputError


def test_ink_against_water_in_one_syringe():
    ink = ink_against_water(2.040, 2.000, 20.0, 0.002)
    assert ink.density_kg_m3 == pytest.approx(998.207 * 1.02, abs=0.01)
    assert ink.density_uncertainty_kg_m3 == pytest.approx(ink.density_kg_m3 * 0.002 * math.hypot(1 / 2.04, 1 / 2.0))
    for masses in ((4.0, 2.0), (0.0, 2.0), (2.0, 2.5)):
        with pytest.raises(InputError):
            ink_against_water(*masses, 20.0, 0.002)


def test_the_drop_and_the_evaporation_have_a_mean_and_a_doubt():
    # judged: 0.4 of the largest drop, 1/√12 of it; evaporation uniform from nothing to the most
    assert Handling(0.05, 0.02).drop() == pytest.approx((0.020, 0.05 / math.sqrt(12)))
    assert Handling(0.05, 0.02).evaporation() == pytest.approx((0.010, 0.01 / math.sqrt(3)))


def test_an_inks_own_density_makes_the_factor():
    # Z of water at 20 °C 1.0029 mL/g (ISO 8655-6); an ink 2 % denser takes 2 % less room
    water, ink = Setting(), Setting(liquid=Liquid("ink", 998.207 * 1.02, 1.0))
    assert water.z_ml_per_g() == pytest.approx(1.0029, abs=5e-5)
    assert water.z_ml_per_g() / ink.z_ml_per_g() == pytest.approx(1.02, abs=3e-5)


def test_a_start_that_is_not_known_is_refused():
    with pytest.raises(InputError, match="dry or drained"):
        Setting(start="wet")


def test_warmth_counts_for_more_in_ink_than_in_water():
    # water near 20 °C expands by 2.1e-4 a kelvin (handbook value), an ink is taken at 2.5e-4
    wide = Conditions(temperature_half_width_c=2.0)
    [water, ink] = [
        next(c for c in Setting(conditions=wide, liquid=liquid).density_components(2.0) if c.source == "temperature")
        for liquid in (Liquid(), Liquid("ink", 1005.0, 5.0))
    ]
    assert water.contribution == pytest.approx(2 * 1.003 * 2.06e-4 * 2 / math.sqrt(3), rel=0.03)
    assert ink.contribution > 1.1 * water.contribution
    # the warmer, the more room the same mass takes: 2 g of 1.005 g/mL, 2.5e-4 of it a kelvin, less the 4e-6 of thinner air
    assert ink.sensitivity == pytest.approx(2 / 1.0038 * (2.5e-4 - 4e-6), rel=3e-3)
    assert water.sensitivity > 0
