"""Stiffness: the slope with its doubt, the load for half a millimetre, and what is never done."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.nib.flex import G0, Ceiling, flex_stiffness, opening_ratio, printed_stiffness
from pentools.errors import InputError

GOLD, NOT_SAID, STEEL = Ceiling(150, 100, gold=True), Ceiling(150, 100), Ceiling(150, 100, gold=False)


def keys(flex):
    return [f.key for f in flex.findings]


@pytest.mark.parametrize(("width_u", "share"), [(0.005, 0.0812), (0.025, 0.1068)])
def test_two_readings_carry_the_doubt_of_hand_and_width(width_u, share):
    # by hand: √(0.08² + 2 (u_w/0.5)²); the line at rest bears no load
    flex = flex_stiffness([0, 100], [0.5, 1.0], GOLD, width_u_mm=width_u)
    assert flex.n_per_mm == pytest.approx(200 * G0)
    assert flex.uncertainty_n_per_mm / flex.n_per_mm == pytest.approx(share, abs=1e-4)
    assert flex.expanded_n_per_mm == pytest.approx(2 * flex.uncertainty_n_per_mm, rel=1e-4)
    assert (flex.straight, flex.straight_share, flex.width_at_rest_mm) == (None, None, pytest.approx(0.5))
    assert (flex.extra_gf, flex.extra_expanded_gf) == pytest.approx((100, 200 * share), abs=0.05)


def test_the_load_for_another_extra_width_is_in_proportion():
    half, fifth = (flex_stiffness([10, 60], [0.5, 1.0], GOLD, extra_mm=extra) for extra in (0.5, 0.2))
    assert fifth.extra_gf / half.extra_gf == pytest.approx(0.4)
    assert fifth.n_per_mm == half.n_per_mm


def test_a_series_that_bends_is_named_and_its_scatter_counts():
    straight = flex_stiffness([20, 40, 60, 80], [0.5, 0.7, 0.9, 1.1], GOLD)
    bent = flex_stiffness([20, 40, 60, 80, 120], [0.5, 0.7, 0.9, 1.1, 1.3], STEEL, load_share=0.02, width_u_mm=0.005)
    assert (straight.straight, bent.straight) == (True, False)
    assert keys(straight) == ["nib.flex"]
    assert keys(bent) == ["nib.flex", "nib.flex-bent"]
    # by hand: slope 120 gf/mm, off by 4, 0, 4, 8, 8 gf: √(160/3)/√0.4 = 11.55 gf/mm, Student's t of three at 95.45 % 3.31
    assert bent.n_per_mm == pytest.approx(120 * G0)
    assert bent.uncertainty_n_per_mm == pytest.approx(11.547 * G0, rel=1e-4)
    assert bent.expanded_n_per_mm / bent.uncertainty_n_per_mm == pytest.approx(3.307, abs=2e-3)
    assert bent.straight_share == pytest.approx(8 / 120)


@pytest.mark.parametrize(
    ("most", "ceiling", "expected"),
    [
        (100, GOLD, []), (101, GOLD, [("warning", "nib.flex-load:near")]), (150, GOLD, [("warning", "nib.flex-load:near")]),
        (151, GOLD, [("stop", "nib.flex-load:past")]), (151, NOT_SAID, [("stop", "nib.flex-load:past-taken")]),
        (120, NOT_SAID, [("warning", "nib.flex-load:near-taken")]), (200, STEEL, []),
    ],
)  # fmt: skip
def test_how_far_a_nib_may_be_loaded(most, ceiling, expected):
    flex = flex_stiffness([10, most], [0.5, 1.4], ceiling)
    assert [(f.level, f.key) for f in flex.findings[1:]] == expected


def test_a_nail_is_not_given_a_stiffness():
    with pytest.raises(InputError, match="widens under load"):
        flex_stiffness([20, 90], [0.50, 0.52], GOLD)
    with pytest.raises(InputError, match="widens under load"):
        flex_stiffness([20, 90], [1.0, 0.5], GOLD)


@pytest.mark.parametrize(
    ("loads", "widths"),
    [([10], [0.5]), ([10, 20], [0.5]), ([10, 10], [0.5, 0.9]), ([10, 50], [0.5, 0.5]), ([-1, 50], [0.5, 0.9])],
)
def test_what_makes_no_line_is_refused(loads, widths):
    with pytest.raises(InputError):
        flex_stiffness(loads, widths, GOLD)
    for bad in ({"load_share": -0.1}, {"width_u_mm": -0.1}, {"extra_mm": 0}, {"extra_mm": math.nan}):
        with pytest.raises(InputError):
            flex_stiffness([10, 60], [0.5, 1.0], GOLD, **bad)


@pytest.mark.parametrize(
    ("factor", "told"),
    [(1.0, "agrees"), (1.008, "agrees"), (1.0197, "unit"), (1.05, "other"), (0.98, "other"), (0.5, "other")],
)
def test_a_printed_stiffness_is_held_to_its_own_readings(factor, told):
    flex = flex_stiffness([10, 60], [0.5, 1.0], GOLD)
    assert printed_stiffness(flex, factor * flex.n_per_mm).key == f"nib.flex-printed:{told}"
    with pytest.raises(InputError):
        printed_stiffness(flex, 0)


def test_what_changes_a_tine_multiplies():
    both = opening_ratio(width=3 / 3.5, thickness=0.35 / 0.4)
    assert both == pytest.approx(opening_ratio(width=3 / 3.5) * opening_ratio(thickness=0.35 / 0.4))
    assert opening_ratio(length=2) == 8
    with pytest.raises(InputError):
        opening_ratio(thickness=0)


@given(st.floats(20, 400), st.floats(0.2, 0.8), st.floats(0.3, 1.5))
def test_a_line_drawn_is_the_line_found(k_gf, rest, span):
    widths = [rest, rest + span / 2, rest + span]
    flex = flex_stiffness([k_gf * (w - rest) for w in widths], widths, STEEL, load_share=0.01, width_u_mm=0.001)
    assert flex.n_per_mm == pytest.approx(G0 * k_gf, rel=1e-9)
    assert flex.width_at_rest_mm == pytest.approx(rest, rel=1e-6)
    assert flex.straight is True
