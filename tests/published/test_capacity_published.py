"""Capacity, volumes and leaks against what was published."""

import pytest
from outside import Outside

from pentools.calc.weighing.balance import BALANCES
from pentools.calc.weighing.capacity import capacity_from_weight
from pentools.calc.weighing.density import saturation_vapour_pressure_kpa
from pentools.calc.weighing.leak import evaporation_mg_per_day, vacuum_decay_pa_m3_s
from pentools.calc.weighing.setting import Conditions


def test_a_published_piston_filler():
    # a hobby wiki weighs a piston filler with water on a 0.01 g scale: dry 23.26 g, full 25.06 g, emptied 23.57 g;
    # it prints the grams as mL. The masses are theirs, the volume is ours: 1.80 g of water at 21 °C
    dry = capacity_from_weight([23.26], [25.06], BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0))
    wiki = Outside("fill-method", "a piston filler weighed with water")
    wiki.agree(dry.gained_g, "1.80")
    Outside("iso8655-6", "Z at 21 °C and 1000 hPa").agree(dry.z_ml_per_g, "1.0030")
    refill = capacity_from_weight([23.57], [25.06], BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0), start="drained")
    wiki.agree(dry.gained_g - refill.gained_g, "0.31")  # what the feed keeps


def test_evaporation_is_milligrams_a_day():
    # steam tables: the vapour's density at 20 °C is 17.29 g/m³, so diffusion (2.42e-5 m²/s, from memory) through
    # 1 mm² by 5 mm into air of 50 % is 2.42e-5 · 17.29 · 0.5 · 1e-6/5e-3 · 86400 s = 3.6 mg/day
    vapour = saturation_vapour_pressure_kpa(20)
    tables = Outside("steam-tables", "density of water's vapour at 20 °C")
    ours = vapour * 1000 * 18.015 / (8.314462618 * 293.15)
    tables.agree(ours, "17.29", within=0.02, because="the gas law, and the saturation term of CIPM-2007")
    assert evaporation_mg_per_day(1, 5, 0.5, vapour, 20) == pytest.approx(3.61, abs=0.01)


def test_vacuum_decay_of_a_regulation():
    # 40 CFR 1065.644, its example's inputs: 2 L, 25.3 kPa to 50.6 kPa in 70 s at 293.15 K, R = 8.314472 J/(mol K);
    # the formula n = V/R (p2/T - p1/T)/t is from memory, and its result 2.966e-4 mol/s computed from it by hand
    rate = vacuum_decay_pa_m3_s(2000.0, 50.6 - 25.3, 70.0)
    Outside("cfr-1065", "vacuum decay").agree(rate / (8.314472 * 293.15), "2.966e-4")


def test_vacuum_decay_in_other_units():
    # an engineering page's definition Q = V dP/dt; 1.9 mL and 2 kPa in 60 s are 6.3e-4 mbar L/s, or 0.0375 standard
    # cubic centimetres a minute (at 101.325 kPa)
    rate = vacuum_decay_pa_m3_s(1.9, 2.0, 60.0)
    page = Outside("leak-units", "a leak in other units")
    page.agree(rate * 10, "6.3e-4")
    page.agree(rate / 101325 * 1e6 * 60, "0.0375")
