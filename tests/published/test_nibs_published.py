"""What print gives of nibs: a dealer's series, a table in wrong newtons, a sum that should be a product, metres a millilitre."""

import pytest
from outside import Outside

from pentools.calc.nib.flex import G0, Ceiling, flex_stiffness, opening_ratio, printed_stiffness
from pentools.calc.nib.flow import Span, Weighed, ink_flow
from pentools.unit_table import convert

STEEL = Ceiling(150, 100, gold=False)


def test_a_dealers_series_of_loads_and_widths():
    check = Outside("flex-series", "stiffness of a dip nib by least squares [N/mm]")
    flex = flex_stiffness([15, 50, 150, 200], [0.2, 0.5, 1.4, 1.85], STEEL)
    check.agree(flex.n_per_mm, "1.0969")
    check.agree(flex.n_per_mm / G0, "111.9")
    check.agree(flex.width_at_rest_mm, "0.060")
    assert flex.straight
    assert flex.straight_share < 0.03


@pytest.mark.parametrize(
    ("rest", "wide", "gram", "printed", "true"),
    [(0.5, 2.0, 300, "2.0", "1.9613"), (0.7, 2.5, 230, "1.28", "1.2531"), (0.5, 3.0, 200, "0.8", "0.7845")],
)
def test_a_table_that_takes_a_hundred_grams_as_one_newton_is_refused(rest, wide, gram, printed, true):
    flex = flex_stiffness([0, gram], [rest, wide], STEEL, width_u_mm=0)
    Outside("flex-table", "load over extra width, with the newton as it is defined [N/mm]").agree(flex.n_per_mm, true)
    found = printed_stiffness(flex, float(printed))
    assert (found.level, found.key) == ("warning", "nib.flex-printed:unit")


def test_what_thins_a_tine_multiplies_where_the_page_adds():
    check = Outside("flex-tines", "opening of a tine, thinner or narrower [mm]")
    thin, narrow = opening_ratio(thickness=0.35 / 0.4), opening_ratio(width=3.0 / 3.5)
    check.agree(0.84 * thin, "1.2", within=0.06, because="the page draws its values by eye")
    check.agree(0.84 * narrow, "1.0")
    both = 0.84 * opening_ratio(width=3.0 / 3.5, thickness=0.35 / 0.4)
    assert both == pytest.approx(0.84 * thin * narrow)
    # the page adds the two changes and prints 1.36
    added = 0.84 + (1.2 - 0.84) + (1.0 - 0.84)
    assert added == pytest.approx(1.36)
    assert abs(both - added) > 0.09


@pytest.mark.parametrize(("metres", "printed"), [(500, "417"), (400, "333")])
def test_metres_of_a_makers_cartridge(metres, printed):
    # 1.2 mL, as water: what leaves the pen over so many metres
    check = Outside("flow-cartridge", "metres from a millilitre")
    span, none = Span(2.4, 5, 14, 16), Weighed(0, 0)
    flow = ink_flow(Weighed(21.2, 0.0), Weighed(20, 0.0), metres, 0, span, density_g_ml=1.0, dried=none)
    check.agree(flow.m_per_ml, printed)


def test_a_gel_ball_pens_ink_by_area_as_a_ceiling():
    check = Outside("gel-patent", "ink of a gel ball-pen for a line 1 mm wide [mg/m]")
    # mg/cm² on 1 m by 1 mm, through the unit table
    area_cm2 = convert(1, "m", "cm") * convert(1, "mm", "cm")
    check.agree(0.64 * area_cm2, "6.4")
    check.agree(1.6 * area_cm2, "16")
    from pentools.sums.nib.flow import known_span

    check.agree(known_span().ceiling_mg_m_mm, "16")


def test_the_gram_force():
    Outside("standard-gravity", "one gram-force [N]").agree(convert(1, "gf", "N"), "0.00980665")
    assert convert(1, "gf", "N") == pytest.approx(G0)
