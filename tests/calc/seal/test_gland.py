"""A ring in its groove: edges, invariants and what is refused."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ranges import refuses, takes_only

from pentools.calc.seal.gland import Gland, Halves, Ring, fit_ring, squeeze_slopes
from pentools.errors import InputError

RING = Ring("008", 4.47, 1.78, 0.13, 0.08)
EXACT = Ring("x", 4.6, 1.78)


@settings(deadline=None)
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
        (("piston", 4.5, 7.4, 2.4, None, 0.8), "calliper's uncertainty"),
        (("piston", 4.5, 7.4, 2.4, None, 0.03, -0.1), "ovality"),
    ],
)
def test_what_cannot_be_a_gland(values, words):
    with pytest.raises(InputError, match=words):
        Gland(*values)


def test_ranges():
    Gland("piston", 0.3, 200)
    refuses(lambda x: Gland("piston", x, 200), 0.2999)
    refuses(lambda x: Gland("piston", 0.3, x), 200.001)
    takes_only(lambda x: Gland("piston", 4.5, 7.4, x), 0.2, 50)
    refuses(lambda x: Gland("piston", 4.5, 7.4, 2.4, x), 4.5, 7.4)
    refuses(lambda x: Gland("piston", x, 7.4), 7.4)
    # depth 1.45 mm: a reading may be wrong by less than half of that
    for spread in ("half_width_mm", "ovality_mm"):
        Gland("piston", 4.5, 7.4, **{spread: 0.7249})
        refuses(lambda x, name=spread: Gland("piston", 4.5, 7.4, **{name: x}), 0.7251, -0.001)
    Gland("piston", 4.5, 7.4, 2.4, halves=Halves(width_mm=2.399))
    Ring("x", 4.0, 1.78, 3.99, 1.77)
    refuses(lambda x: Ring("x", 4.0, 1.78, x), 4.0, -0.01)
    refuses(lambda x: Ring("x", 4.0, 1.78, 0.0, x), 1.78, -0.01)
    refuses(lambda x: Ring("x", x, 1.78), 0.0)


@pytest.mark.parametrize(
    "values", [("x", 0.0, 1.78), ("x", 4.0, -1.0), ("x", 4.0, 1.78, 4.5), ("x", 4.0, 1.78, 0.1, 2.0)]
)
def test_what_cannot_be_a_ring(values):
    with pytest.raises(InputError, match="ring x"):
        Ring(*values)


def test_each_dimension_brings_its_own_half_width():
    halves = Halves(inner_mm=0.01, outer_mm=0.02, width_mm=0.1, guide_mm=0.03)
    gland = Gland("piston", 4.5, 7.4, 2.4, 7.2, 0.05, 0.04, halves)
    fit = fit_ring(EXACT, gland)
    assert (fit.least.inner_mm, fit.least.outer_mm) == pytest.approx((4.49, 7.44))
    assert (fit.most.inner_mm, fit.most.outer_mm) == pytest.approx((4.51, 7.36))
    assert fit.least.squeeze_share == pytest.approx(1 - 1.475 / 1.78)
    # fill: pi/4 · 1.78² in 1.425 by 2.3 mm
    assert fit.fill_most_share == pytest.approx(2.488456 / (1.425 * 2.3), abs=1e-6)
    assert fit.fill_share == pytest.approx(2.488456 / (1.45 * 2.4), abs=1e-6)
    # the head may stand off by the gap of 0.1 with half of its own half-width and half of the bore's spread
    assert fit.eccentric_least.offset_mm == pytest.approx(0.1 + 0.015 + 0.02)
    assert fit.eccentric_most.offset_mm == pytest.approx(-(0.1 + 0.015 - 0.02))
    assert fit.eccentric_least.depth_mm == pytest.approx(1.475 + 0.135)
    assert fit.eccentric_share == pytest.approx(1 - 1.55 / 1.78)
    # root-sum-square of rectangular half-widths: 0.02 and 0.02 on the bore, 0.01 on the groove, slope 1/(2 · 1.78)
    assert fit.squeeze_uncertainty_share == pytest.approx((0.0009 / 3) ** 0.5 / 3.56)


def test_a_width_that_is_unsure_leaves_bore_and_groove_as_they_are():
    sure, unsure = (fit_ring(RING, Gland("piston", 4.5, 7.4, 2.4, halves=h)) for h in (Halves(), Halves(width_mm=0.17)))
    assert unsure.least == sure.least
    assert unsure.most == sure.most
    assert unsure.squeeze_uncertainty_share == sure.squeeze_uncertainty_share
    assert unsure.fill_most_share > sure.fill_most_share


def test_a_packing_stands_off_by_rod_and_guide():
    halves = Halves(inner_mm=0.02, guide_mm=0.04)
    fit = fit_ring(Ring("x", 3.1, 1.78), Gland("packing", 3.0, 6.1, 2.4, 3.2, 0.05, 0.0, halves))
    assert fit.eccentric_least.offset_mm == pytest.approx(0.1 + 0.02 + 0.01)
    assert fit.eccentric_most.offset_mm == pytest.approx(-(0.1 + 0.02 - 0.01))


def test_the_pessimist():
    fit = fit_ring(RING, Gland("packing", 4.5, 7.4, 2.4))
    # ID/CS 2.51 at 0.67 % stretch: 100 X/(315·e^-2.51 + 165 + X) of the section goes
    assert fit.pessimist_share == pytest.approx(1 - 1.45 / (1.78 * (1 - 0.003508)), abs=1e-4)
    # least: 4.34 x 1.70 on 4.47, 3.00 % stretched, ID/CS 2.553: 3.00/(315·e^-2.553 + 165 + 3.00) = 1.556 % of 1.70 mm, in 1.48 mm of room
    assert fit.pessimist_least_share == pytest.approx(1 - 1.48 / (1.70 * (1 - 0.015557)), abs=5e-5)
    assert fit.section_loss_share == pytest.approx(1 - 1.7763 / 1.78, abs=1e-4)


@pytest.mark.parametrize(
    ("halves", "words"),
    [
        (Halves(inner_mm=0.8), "uncertainty of the groove diameter"),
        (Halves(outer_mm=0.8), "uncertainty of the bore"),
        (Halves(width_mm=2.4), "uncertainty of the groove width"),
    ],
)
def test_a_spread_without_room_is_refused(halves, words):
    with pytest.raises(InputError, match=words):
        Gland("piston", 4.5, 7.4, 2.4, halves=halves)


# worked by hand for a pen's sizes, half-widths 0.03 mm on bore and groove: stretch, section on the groove, squeeze nominal,
# least and most, slopes with bore, groove, section and inside, standard uncertainty, interval [%, mm]
PEN = {
    "008 in a 7.40 mm bore": (
        Ring("008", 4.47, 1.78, 0.13, 0.08), Gland("piston", 4.50, 7.40, 2.4), 0.671, 1.7763, 18.37, 12.12, 23.66,
        (-0.2815, 0.2245, 0.459, 0.0572), 2.25, (13.87, 22.87),
    ),
    "6x1.0 in an 8.00 mm bore": (
        Ring("6x1.0", 6.0, 1.0, 0.16, 0.08), Gland("piston", 6.10, 8.00, 1.4), 1.667, 0.9934, 4.37, -8.21, 14.81,
        (-0.5033, 0.4403, 0.9576, 0.0638), 4.61, (-4.85, 13.59),
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", PEN)
def test_pen_sizes_worked_by_hand(case):
    ring, gland, stretch, section, nominal, least, most, slopes, u, interval = PEN[case]
    fit = fit_ring(ring, gland)
    assert 100 * fit.stretch_share == pytest.approx(stretch, abs=0.0006)
    assert fit.nominal.section_mm == pytest.approx(section, abs=0.00006)
    assert 100 * fit.nominal.squeeze_share == pytest.approx(nominal, abs=0.006)
    assert 100 * fit.least.squeeze_share == pytest.approx(least, abs=0.006)
    assert 100 * fit.most.squeeze_share == pytest.approx(most, abs=0.006)
    assert squeeze_slopes(ring, gland, fit.nominal) == pytest.approx(slopes, abs=0.0006)
    assert 100 * fit.squeeze_uncertainty_share == pytest.approx(u, abs=0.006)
    assert [100 * s for s in fit.squeeze_interval] == pytest.approx(interval, abs=0.02)
    assert fit.stretch_least_share == pytest.approx(
        (gland.inner_mm - 0.03) / (ring.inside_mm + ring.inside_half_width_mm) - 1
    )
    assert fit.stretch_most_share == pytest.approx(
        (gland.inner_mm + 0.03) / (ring.inside_mm - ring.inside_half_width_mm) - 1
    )
