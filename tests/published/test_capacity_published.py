"""Capacity against weighed pens: one published set, and what restorers commonly read."""

import pytest

from pentools.calc.geometry import Measured, expected_volume
from pentools.calc.leak import evaporation_mg_per_day
from pentools.calc.weighing import BALANCES, Conditions, capacity_from_weight
from pentools.units import read_quantity


def test_a_published_piston_filler():
    # a hobby wiki weighs a piston filler with water on a 0.01 g scale: dry 23.26 g, full 25.06 g, emptied 23.57 g;
    # it prints the grams as mL. The masses are theirs, the volume is ours: 1.80 g of water at 21 °C
    dry = capacity_from_weight([23.26], [25.06], BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0))
    assert dry.gained_g == pytest.approx(1.80, abs=0.005)
    assert dry.volume_ml == pytest.approx(1.80 * 1.0030, abs=0.0005)  # Z 1.0030 at 21 °C and 1000 hPa, ISO 8655-6
    refill = capacity_from_weight([23.57], [25.06], BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0), start="drained")
    assert dry.gained_g - refill.gained_g == pytest.approx(0.31, abs=0.005)  # what the feed keeps


@pytest.mark.parametrize(
    ("gain_g", "low", "high"),
    # common practice, no source: refilling one repaired pen gained these; read as "about a sixth, a quarter,
    # and one and a third millilitres"
    [(0.17, 0.16, 0.18), (0.24, 0.23, 0.26), (1.30, 1.28, 1.34)],
)
def test_gains_on_refilling(gain_g, low, high):
    result = capacity_from_weight([18.00], [18.00 + gain_g], BALANCES["0.01 g"], start="drained")
    assert low < result.volume_ml < high


def test_a_converter_holds_less_than_a_millilitre():
    # common practice, no source; a usual converter: bore 6 mm, 30 mm of it usable (from memory)
    converter = expected_volume("cartridge-converter", {"bore": Measured(6.0, 0.1), "length": Measured(30.0, 0.5)})
    assert converter.volume_ml < 1.0


def test_a_barrel_in_inches():
    # common practice, no source: a barrel of 5 3/8 in by 0.469 in
    assert read_quantity("5 3/8 in", "mm").value == pytest.approx(136.525)
    assert read_quantity("0.469 in", "mm").value == pytest.approx(11.9126)


@pytest.mark.parametrize(
    ("number", "outside_mm"),
    # trade sac numbers are 64ths of an inch: 14, 16, 18, 20, 22 -> 5.56 … 8.73 mm (a hobby page)
    [(14, 5.56), (16, 6.35), (18, 7.14), (20, 7.94), (22, 8.73)],
)
def test_sac_numbers(number, outside_mm):
    assert number * 25.4 / 64 == pytest.approx(outside_mm, abs=0.005)


def test_evaporation_is_milligrams_a_day():
    # 1 mm² by 5 mm at 50 % and 20 °C: the vapour's density there is 17.29 g/m³ (steam tables)
    from pentools.calc.density import saturation_vapour_pressure_kpa

    assert saturation_vapour_pressure_kpa(20) * 1000 * 18.015 / (8.314462618 * 293.15) == pytest.approx(17.29, abs=0.02)
    assert 1 < evaporation_mg_per_day(1, 5, 0.5, saturation_vapour_pressure_kpa(20), 20) < 10
