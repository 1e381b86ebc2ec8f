"""A ring in its groove: edges, invariants and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.seal.formulas import (
    aerospace_loss_share,
    class_b_tolerance_mm,
    constant_volume_section_mm,
    flattened_width_mm,
    gland_fill_share,
)
from pentools.calc.seal.friction import gent_modulus_mpa, ring_friction, suction_force_n
from pentools.calc.seal.gland import Gland, Ring, bore_from_readings, fit_ring, squeeze_slopes
from pentools.errors import InputError

RING = Ring("008", 4.47, 1.78, 0.13, 0.08)


@given(st.floats(1, 30), st.floats(0.8, 4), st.floats(0, 0.4))
def test_stretching_keeps_the_volume(inside, section, stretch):
    seat = inside * (1 + stretch)
    used = constant_volume_section_mm(inside, section, seat)
    assert (seat + used) * used**2 == pytest.approx((inside + section) * section**2, rel=1e-9)
    assert used <= section * (1 + 1e-12)


def test_a_loose_ring_keeps_its_section():
    assert constant_volume_section_mm(5.0, 1.78, 4.0) == 1.78
    assert aerospace_loss_share(-0.02, 5) == 0.0


@given(st.floats(4.0, 5.2), st.floats(6.9, 8.1), st.floats(0, 0.05), st.floats(0, 0.1))
def test_worst_cases_enclose_the_nominal_one(groove, bore, caliper, ovality):
    fit = fit_ring(RING, Gland("piston", groove, bore, 2.4, half_width_mm=caliper, ovality_mm=ovality))
    assert fit.least.squeeze_share < fit.nominal.squeeze_share < fit.most.squeeze_share
    assert fit.pessimist_share <= fit.nominal.squeeze_share + 1e-12
    low, high = fit.squeeze_interval
    # root-sum-square at k = 2 stays inside the worst case plus the curvature of the formula
    assert low > fit.least.squeeze_share - 0.02
    assert high < fit.most.squeeze_share + 0.02


@pytest.mark.parametrize("groove", [4.2, 4.5, 4.7])
def test_slopes_are_the_slopes(groove):
    gland = Gland("piston", groove, 7.4, 2.4)
    step = 1e-6
    slopes = squeeze_slopes(RING, gland, fit_ring(RING, gland).nominal)

    def squeeze(bore=7.4, seat=groove, section=1.78, inside=4.47):
        return fit_ring(Ring("x", inside, section), Gland("piston", seat, bore, 2.4)).nominal.squeeze_share

    changed = (
        squeeze(bore=7.4 + step),
        squeeze(seat=groove + step),
        squeeze(section=1.78 + step),
        squeeze(inside=4.47 + step),
    )
    assert [(c - squeeze()) / step for c in changed] == pytest.approx(slopes, abs=1e-4)


def test_ovality_widens_the_worst_case():
    round_bore, oval = (fit_ring(RING, Gland("piston", 4.5, 7.4, 2.4, ovality_mm=o)) for o in (0.0, 0.1))
    assert oval.least.squeeze_share < round_bore.least.squeeze_share - 0.01
    assert oval.squeeze_uncertainty_share > round_bore.squeeze_uncertainty_share


def test_a_head_on_the_wall_takes_squeeze_from_one_side_and_gives_it_to_the_other():
    fit = fit_ring(RING, Gland("piston", 4.5, 7.4, 2.4, 7.2))
    assert fit.gland.clearance_mm == pytest.approx(0.1)
    assert fit.eccentric_least.squeeze_share < fit.least.squeeze_share
    assert fit.eccentric_most.squeeze_share > fit.most.squeeze_share
    # with every reading exact the offset is the gap itself
    exact = fit_ring(Ring("x", 4.47, 1.78), Gland("piston", 4.5, 7.4, 2.4, 7.2, half_width_mm=0.0))
    assert exact.eccentric_least.depth_mm == pytest.approx(1.45 + 0.1)
    assert exact.eccentric_most.depth_mm == pytest.approx(1.45 - 0.1)
    assert fit_ring(RING, Gland("piston", 4.5, 7.4, 2.4)).eccentric_least is None


def test_a_packing_is_guided_by_its_hole():
    exact = fit_ring(Ring("x", 2.9, 1.78), Gland("packing", 3.0, 6.1, 2.4, 3.2, half_width_mm=0.0))
    assert exact.eccentric_least.offset_mm == pytest.approx(0.1)
    assert exact.stretch_share == pytest.approx(0.1 / 2.9)
    assert exact.outside_share == pytest.approx((6.46 - 6.1) / 6.46)


def test_no_width_no_fill():
    fit = fit_ring(RING, Gland("piston", 4.5, 7.4))
    assert (fit.fill_share, fit.fill_most_share, fit.side_clearance_mm) == (None, None, None)


def test_a_flattened_ring_keeps_its_area():
    width, depth = flattened_width_mm(1.78, 1.5), 1.5
    area = depth * (width - depth) + 3.141592653589793 / 4 * depth**2
    assert area == pytest.approx(3.141592653589793 / 4 * 1.78**2)
    assert flattened_width_mm(1.78, 2.0) == 1.78


def test_bore_from_readings():
    assert bore_from_readings((6.3,)) == (6.3, 0.0)
    with pytest.raises(InputError, match="at least one reading"):
        bore_from_readings(())


@pytest.mark.parametrize(
    ("values", "words"),
    [
        (("piston", 7.4, 4.5), "mixed up"),
        (("lip", 4.5, 7.4), "piston or packing"),
        (("piston", 0.1, 7.4), "groove diameter must be 0.3"),
        (("packing", 3.0, 300.0), "housing bore must be"),
        (("piston", 4.5, 7.4, 0.1), "groove width"),
        (("piston", 4.5, 7.4, 2.4, 7.5), "head diameter must be between"),
        (("packing", 3.0, 6.2, 2.4, 2.9), "guide hole must be between"),
        (("piston", 4.5, 7.4, 2.4, None, 0.8), "caliper uncertainty"),
        (("piston", 4.5, 7.4, 2.4, None, 0.03, -0.1), "ovality"),
    ],
)
def test_what_cannot_be_a_gland(values, words):
    with pytest.raises(InputError, match=words):
        Gland(*values)


@pytest.mark.parametrize(
    "values", [("x", 0.0, 1.78), ("x", 4.0, -1.0), ("x", 4.0, 1.78, 4.5), ("x", 4.0, 1.78, 0.1, 2.0)]
)
def test_what_cannot_be_a_ring(values):
    with pytest.raises(InputError, match="ring x"):
        Ring(*values)


def test_formulas_refuse_nonsense():
    for call in (
        lambda: class_b_tolerance_mm(0),
        lambda: constant_volume_section_mm(0, 1, 2),
        lambda: gland_fill_share(1.78, 0, 2),
        lambda: gent_modulus_mpa(95),
        lambda: ring_friction(0, 1, 0.1),
        lambda: ring_friction(6, 1.78, 0.6),
        lambda: suction_force_n(2, rod_mm=3),
        lambda: suction_force_n(8, 200),
    ):
        with pytest.raises(InputError, match="must be"):
            call()


def test_drag_grows_with_squeeze_and_hardness_and_is_nothing_without_touch():
    drags = [ring_friction(6.25, 1.78, s).running_n for s in (0.05, 0.1, 0.2)]
    assert drags == sorted(drags)
    assert ring_friction(6.25, 1.78, -0.03).running_n == 0
    assert ring_friction(6.25, 1.78, 0.1, 80).running_n > ring_friction(6.25, 1.78, 0.1, 60).running_n
    assert suction_force_n(8, rod_mm=3) < suction_force_n(8)
