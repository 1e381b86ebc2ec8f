"""Worked gland examples in print, each to the digits it prints."""

import math

import pytest
from outside import Outside

from pentools.calc.seal.formulas import (
    aerospace_loss_share,
    constant_volume_section_mm,
    gland_fill_share,
    outside_compression_share,
    squeeze_share,
    stretch_share,
)
from pentools.calc.seal.gland import Gland, Halves, Ring, fit_ring
from pentools.calc.seal.judge import judge_fit
from pentools.tables.seals import duty, rings

IN = 25.4
AS568 = {ring.designation: ring for ring in rings("as568")}


def test_supplier_example_of_a_moving_piston_seal():
    # 3.000 ± 0.002 in bore, four-lobe ring 0.103 ± 0.003 in, gland depth 0.094, groove 0.115 wide: worst case
    check = Outside("gland-supplier", "a four-lobe ring on a moving piston, worst case")
    groove = Ring("four lobes", IN * 2.816, IN * 0.103, 0.0, IN * 0.003)
    halves = Halves(inner_mm=IN * 0.001, outer_mm=IN * 0.002, width_mm=0.0, guide_mm=IN * 0.002)
    fit = fit_ring(groove, Gland("piston", IN * 2.815, IN * 3.0, IN * 0.115, IN * 2.992, 0.0, 0.0, halves))
    check.agree(fit.least.inner_mm / IN, "2.814")
    check.agree(fit.most.inner_mm / IN, "2.816")
    check.agree(fit.most.depth_mm / IN, "0.091")
    check.agree(fit.least.depth_mm / IN, "0.094")
    check.agree(fit.most.squeeze_share, "0.141", within=0.0006, because="14.15 %, printed cut off instead of rounded")
    check.agree(fit.least.squeeze_share, "0.060")
    check.agree(fit.eccentric_least.offset_mm / IN, "0.006")
    check.agree(0.8215 * 0.106**2, "0.0092")
    check.agree(fit.most.depth_mm / IN * 0.115, "0.0105")
    fill = gland_fill_share(0.106, fit.most.depth_mm / IN, 0.115, 0.8215)
    check.agree(fill, 0.0092 / 0.0105, within=0.01, because="the areas are printed to 0.0001 in²")


def test_machinist_page_rod_seal():
    # 1/2 in rod, ring 112 (0.487 x 0.103 in), depth 0.090 -0.001, groove 0.144
    check = Outside("gland-machinist", "a moving rod seal with ring 112")
    fit = fit_ring(AS568["112"], Gland("packing", IN * 0.5, IN * (0.5 + 2 * 0.090), IN * 0.144, None, 0.0))
    check.agree(fit.gland.outer_mm / IN, "0.680")
    why = "the table's millimetres are rounded to 0.01"
    check.agree(100 * fit.stretch_share, "2.669", within=0.06, because=why)
    check.agree(100 * stretch_share(0.487, 0.5), "2.669")
    check.agree(100 * squeeze_share(0.090, 0.103), "12.621")
    check.agree(100 * squeeze_share(0.090, 0.100), "10.0")
    check.agree(100 * squeeze_share(0.089, 0.106), "16.038")
    check.agree(100 * gland_fill_share(0.103, 0.090, 0.144), "64.29")
    check.agree(100 * fit.fill_share, "64.29", within=0.4, because=why)
    check.agree(100 * outside_compression_share(0.487, 0.103, 0.680), "1.876")
    check.agree(0.487 + 2 * 0.103, "0.693")


def test_machinist_page_static_piston_raises_a_stretch_finding():
    # 1 in bore, ring 210, depth 0.114
    check = Outside("gland-machinist", "a static piston seal with ring 210")
    groove = 1.0 - 2 * 0.114
    check.agree(groove, "0.772")
    fit = fit_ring(AS568["210"], Gland("piston", IN * groove, IN, 4.7))
    check.agree(100 * fit.stretch_share, "5.177", within=0.06, because="the table's millimetres are rounded to 0.01")
    check.agree(100 * squeeze_share(0.114, 0.139), "17.986")
    stretch = [f for f in judge_fit(fit, duty("static")).findings if f.topic == "stretch"]
    assert [f.level for f in stretch] == ["warning"]
    assert "5.2\u202f%" in stretch[0].text


@pytest.mark.parametrize(
    ("source", "depth", "section", "percent"),
    [
        ("gland-repositories", 2.9, 3.53, "17.8"),
        ("gland-repositories", 1.4, 1.78, "21.35"),
        ("gland-general", 1.6, 2.0, "20.0"),
    ],
)
def test_printed_squeezes(source, depth, section, percent):
    Outside(source, "squeeze from depth and section [%]").agree(100 * squeeze_share(depth, section), percent)


def test_printed_stretch_area_and_fill():
    Outside("gland-repositories", "stretch of a 10 mm ring on 10.5 mm [%]").agree(
        100 * stretch_share(10.0, 10.5), "5.0"
    )
    check = Outside("gland-general", "areas and fill of a 2 mm ring in 1.6 by 3.2 mm")
    check.agree(math.pi / 4 * 2.0**2, "3.142")
    fit = fit_ring(Ring("x", 10.0, 2.0), Gland("piston", 10.0, 13.2, 3.2, None, 0.0))
    check.agree(100 * fit.fill_share, "61.36")
    check.agree(100 * fit.nominal.squeeze_share, "20.0")
    check.agree(fit.nominal.depth_mm * 3.2, "5.12")


def test_two_charts_of_a_moving_gland():
    check = Outside("gland-charts", "squeeze of a 0.070 in ring at a depth of 0.055 to 0.057 in")
    halves = Halves(inner_mm=0.0, outer_mm=IN * 0.002)
    fit = fit_ring(
        Ring("x", IN * 0.2, IN * 0.070, 0.0, IN * 0.003),
        Gland("piston", IN * 0.2, IN * 0.312, 2.4, None, 0.0, 0.0, halves),
    )
    check.agree(100 * fit.least.squeeze_share, "15")
    check.agree(100 * fit.most.squeeze_share, "25")
    check.agree((fit.least.section_mm - fit.least.depth_mm) / IN, "0.010")
    check.agree((fit.most.section_mm - fit.most.depth_mm) / IN, "0.018")


def test_section_loss_of_the_aerospace_curve():
    check = Outside("as4716", "section lost by stretching, ring 247 over 4.653 in")
    stretch = stretch_share(4.609, 4.653)
    loss = aerospace_loss_share(stretch, 4.609 / 0.139)
    check.agree(100 * stretch, "0.9547")
    check.agree(100 * loss, "0.9308")
    check.agree(0.139 * (1 - loss), "0.13771")
    meets = Outside("as4716", "its two branches at 3 % of stretch [%]")
    meets.agree(100 * aerospace_loss_share(0.03, 10), "2.290")
    meets.agree(100 * aerospace_loss_share(0.0300001, 10), "2.289")


@pytest.mark.parametrize(("ratio", "volume", "curve"), [(1.63, "1.28", "2.16"), (5.2, "1.89", "3.40")])
def test_section_losses_at_five_per_cent(ratio, volume, curve):
    # notes on that standard; the small-ring line is used up to a ratio of 2.95
    check = Outside("as4716", "section lost at 5 % of stretch by both models [%]")
    used = constant_volume_section_mm(ratio, 1.0, 1.05 * ratio)
    why = "the notes round each step to 0.01 %"
    check.agree(100 * (1 - used), volume, within=0.011, because=why)
    check.agree(100 * aerospace_loss_share(0.05, ratio), curve, within=0.011, because=why)
