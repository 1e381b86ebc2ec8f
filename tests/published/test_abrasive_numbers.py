"""Worked numbers for ladders, removal and gold layers, with where each comes from."""

import math

import pytest

from pentools.calc.finish.ladder import optimal_ratio, stock_plan_um, time_penalty
from pentools.calc.finish.rate import preston_constant_per_pa, specific_wear_mm3_n_m
from pentools.calc.finish.removal import (
    fine_gold_um,
    gold_layer_um,
    mass_per_um_mg,
    read_gold_mark,
    removed_by_diameter_um,
    side_area_mm2,
)

LADDER = [25.8, 15.3, 9, 5, 3, 2]  # P600, P1200, then film


@pytest.mark.parametrize(("cost", "ratio"), [(0, math.e), (0.25, 2.958), (0.5, 3.181), (1, 3.591), (2, 4.319)])
def test_time_optimal_ratio(cost, ratio):
    # least of (r + c)/ln r, derived from "time of a stage goes as d_before/d_after"; figures worked outside this program
    assert optimal_ratio(cost) == pytest.approx(ratio, abs=0.0006)
    grid = [1.5 + 0.001 * i for i in range(4000)]
    assert min(grid, key=lambda r: (r + cost) / math.log(r)) == pytest.approx(optimal_ratio(cost), abs=0.001)


@pytest.mark.parametrize(
    ("ratio", "penalty"), [(1.2, 2.421), (1.45, 1.436), (1.65, 1.212), (2, 1.061), (2.5, 1.004), (3, 1.005), (4, 1.061)]
)
def test_time_penalty(ratio, penalty):
    # r/(e ln r), worked outside this program: 1.65 costs 21 percent
    assert time_penalty(ratio) == pytest.approx(penalty, abs=0.0006)


@pytest.mark.parametrize(("k", "s", "stages", "total"), [
    (0.10, 2, [20, 5.16, 3.06, 1.80, 1.00, 0.60], 31.62),
    (0.15, 3, [20, 11.61, 6.885, 4.05, 2.25, 1.35], 46.14),
])  # fmt: skip
def test_stock_plan(k, s, stages, total):
    # 20 um scratch; later stages s k d_before; worked by hand (46.145, printed as 46.14)
    stock = stock_plan_um(20, LADDER, scratch_share=k, stock_factor=s)
    assert list(stock) == pytest.approx(stages, abs=0.0051)
    assert sum(stock) == pytest.approx(total, abs=0.0051)


@pytest.mark.parametrize(("ratio", "times"), [(1.45, 3.222), (1.6, 2.667), (2, 2.0), (3, 1.5)])
def test_endless_ladder(ratio, times):
    # geometric series d0/(1 - 1/r): with s k = 1 all later stages of a long ladder
    sizes = [1000 / ratio**i for i in range(80)]
    later = sum(stock_plan_um(0, sizes, scratch_share=0.5, stock_factor=2)[1:])
    assert later / 1000 == pytest.approx(times, abs=0.0006)


def test_barrel_of_12_by_70_mm():
    # geometry; densities from memory: celluloid 1.40, acrylic 1.18, hard rubber 1.15, casein 1.35
    area = side_area_mm2(12, 70)
    assert area == pytest.approx(2638.94, abs=0.005)
    for density, mass in ((1.40, 3.695), (1.18, 3.114), (1.15, 3.035), (1.35, 3.563)):
        assert mass_per_um_mg(area, density) == pytest.approx(mass, abs=0.0006)
    assert 10 / mass_per_um_mg(area, 1.40) == pytest.approx(2.71, abs=0.005)
    assert 1 / mass_per_um_mg(area, 1.40) == pytest.approx(0.27, abs=0.005)
    assert removed_by_diameter_um(12.020, 12.000) == pytest.approx(10)


@pytest.mark.parametrize(("mark", "density", "one", "both"), [
    ("1/20 12K", 12.7, 8.51, 4.25), ("1/10 14K", 13.3, 16.58, 8.29), ("1/40 12K", 12.7, 4.22, 2.11),
])  # fmt: skip
def test_gold_layer_from_its_mark(mark, density, one, both):
    # mass balance on 250 um of stock, base 8.5 g/ml; densities from memory
    share = read_gold_mark(mark).mass_share
    assert gold_layer_um(250, share, density) == pytest.approx(one, abs=0.0051)
    assert gold_layer_um(250, share, density, sides=2) == pytest.approx(both, abs=0.0051)


def test_fine_gold_of_a_mark():
    assert read_gold_mark("1/20 12K GF").fine_gold_per_mille == pytest.approx(25)


@pytest.mark.parametrize(
    ("fineness", "layer", "density"),
    [(375, 2.3, 11.2), (417, 1.9, 12.2), (585, 1.2, 13.8), (667, 1.0, 14.5), (750, 0.835, 15.4)],
)
def test_iso_10713_alloy_equivalents(fineness, layer, density):
    # ISO 10713:1992 gives these alloy thicknesses as equal to 0.5 um of fine gold; the densities are the ones implied,
    # all plausible for the alloys. Printed to two figures, hence 3 percent.
    assert fine_gold_um(layer, fineness, density) == pytest.approx(0.5, rel=0.03)


def test_preston():
    # 5 N on 1 cm2 (50 kPa), 0.2 m/s, 2 um/min: 3.333e-12 1/Pa, 3.333e-3 mm3/(N m)
    k = preston_constant_per_pa(2, 5 / 1e-4, 0.2)
    assert k == pytest.approx(3.333e-12, rel=2e-4)
    assert specific_wear_mm3_n_m(k) == pytest.approx(3.333e-3, rel=2e-4)
