"""Densities of water and air, and Z: what they refuse, and which way they go."""

import pytest

from pentools.calc.weighing.density import air_density_simple, saturation_vapour_pressure_kpa, water_density, z_factor
from pentools.errors import InputError


@pytest.mark.parametrize(
    "call",
    [
        lambda: water_density(-1),
        lambda: water_density(41),
        lambda: air_density_simple(20, 1013, 0.5),
        lambda: air_density_simple(20, 101, 50),
        lambda: saturation_vapour_pressure_kpa(41),
        lambda: z_factor(1.0, 1.2),
        lambda: z_factor(998.0, 1.2, 800.0),
    ],
)
def test_out_of_range_is_refused(call):
    with pytest.raises(InputError):
        call()


def test_the_ends_of_the_range_are_let_in():
    assert water_density(0) > water_density(40)
    assert water_density(4) > max(water_density(3), water_density(5))  # densest near 4 °C, a textbook fact
    assert air_density_simple(0, 60, 0) > 0
    assert air_density_simple(20, 101.3, 1) < air_density_simple(20, 101.3, 0)  # vapour is lighter than air


def test_buoyancy_counts_the_weights_too():
    # worked by hand: 1000 (1 - 1.2/8000) / (1000 - 1.2); weights as dense as the liquid cancel the air's lift
    assert z_factor(1000, 1.2) == pytest.approx(999.85 / 998.8, rel=1e-12)
    assert z_factor(1400, 1.2, 7000) == pytest.approx(1000 * (1 - 1.2 / 7000) / 1398.8, rel=1e-12)


def test_a_refusal_says_range_and_value():
    with pytest.raises(InputError, match=r"60 to 110 kPa.*1013 kPa"):
        air_density_simple(20, 1013, 0.5)
