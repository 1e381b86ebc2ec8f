"""Ink on a metre: the number, the round number and the bound, and what is a slip."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.nib.flow import Flow, Span, Weighed, flow_change, ink_flow, weighed
from pentools.errors import InputError

SPAN = Span(2.4, 5.0, 14.0, 16.0)
NONE = Weighed(0.0, 0.0)
HUNDREDTH = 0.01 / math.sqrt(12)


def flow(lost_mg, length_m, u_g=HUNDREDTH, *, dried=NONE, share=0.0, **more):
    return ink_flow(Weighed(20 + lost_mg / 1000, u_g), Weighed(20, u_g), length_m, share, SPAN, density_g_ml=1.0, dried=dried, **more)  # fmt: skip


@pytest.mark.parametrize(
    ("lost", "length", "verdict", "share"),
    [(189, 37.8, "number", 0.0432), (25, 5, "about", 0.3266), (5, 1, "bound", 1.633)],
)
def test_what_a_balance_of_a_hundredth_can_tell(lost, length, verdict, share):
    # by hand: U = 2 √2 · 10 mg/√12 = 8.165 mg on the difference
    found = flow(lost, length)
    assert (found.verdict, found.findings[0].key) == (verdict, f"nib.flow:{verdict}")
    assert found.expanded_mg_per_m / found.mg_per_m == pytest.approx(share, abs=2e-4)
    assert found.mg_per_m == pytest.approx(5.0)
    assert found.bound_mg_per_m == pytest.approx(5 + 8.165 / length, abs=1e-3)


def test_a_bound_says_how_far_to_write_and_gives_no_metres():
    found = flow(5, 1)
    assert (found.m_per_ml, found.m_per_ml_low, found.m_per_ml_high) == (None, None, None)
    # 8.165 mg is a fifth of what 8.165 m take at 5 mg
    assert found.needed_m == pytest.approx(8.165, abs=1e-3)
    assert "less than 13 mg" in found.findings[0].text
    assert found.findings[0].level == "warning"


def test_metres_from_a_millilitre_have_both_ends():
    found = flow(189, 37.8)
    low, high = found.m_per_ml_low, found.m_per_ml_high
    assert found.m_per_ml == pytest.approx(200)
    assert low == pytest.approx(1000 / (5 + 0.216), rel=1e-4)
    assert high == pytest.approx(1000 / (5 - 0.216), rel=1e-4)
    assert low < found.m_per_ml < high


def test_density_makes_a_volume_of_a_mass():
    light, heavy = (
        ink_flow(Weighed(20.1, 0), Weighed(20, 0), 20, 0, SPAN, density_g_ml=d, dried=NONE).m_per_ml for d in (1.0, 1.2)
    )
    assert heavy / light == pytest.approx(1.2)


def test_what_dries_is_taken_off_with_its_own_doubt():
    dried = Weighed(0.010, 0.004)
    found, plain = flow(100, 10, 0.0, dried=dried), flow(100, 10, 0.0)
    assert (plain.mg_per_m, found.mg_per_m, found.dried_mg) == pytest.approx((10, 9, 10))
    assert found.lost_uncertainty_mg == pytest.approx(4)
    assert found.expanded_mg_per_m == pytest.approx(0.8, rel=1e-4)  # 2 · 4 mg / 10 m


def test_the_lengths_own_doubt_counts_as_a_share_of_the_flow():
    assert flow(100, 10, 0.0, share=0.03).uncertainty_mg_per_m == pytest.approx(0.3)


def test_more_weighings_help_as_far_as_the_balance_scatters():
    one, four = (weighed([20.0] * n, 0.001, 0.01) for n in (1, 4))
    assert one.uncertainty_g == pytest.approx(math.hypot(0.001, 0.01))
    assert four.uncertainty_g == pytest.approx(math.hypot(0.001, 0.005))
    wild = weighed([20.0, 20.2, 19.8, 20.3], 0.001, 0.01)
    assert wild.uncertainty_g > 0.1, "readings that fly apart are not believed to a hundredth"
    assert weighed([20.0, 20.2], 0.001, 0.5).mass_g == pytest.approx(20.1)


def test_a_pen_that_gained_was_not_written_with():
    with pytest.raises(InputError, match="each other's place"):
        flow(-9, 5)
    assert flow(-8, 5).verdict == "bound", "within its doubt nothing is told"
    assert flow(-8, 5).bound_mg_per_m == pytest.approx(8.165 / 5, abs=1e-3)


@pytest.mark.parametrize(("width", "level"), [(0.5, "stop"), (0.9, None)])
def test_more_ink_than_a_line_takes_is_a_slip(width, level):
    # 16 mg/m for each millimetre: 8 for a line of half a millimetre
    found = [f for f in flow(200, 20, 0.0, width_mm=width).findings if f.key == "nib.flow-ceiling"]
    assert [f.level for f in found] == ([level] if level else [])


def test_within_its_doubt_nothing_is_called_a_slip():
    # 10 ± 4.2 mg on a metre: 8 is what half a millimetre takes, 14 the end of what is known
    wide = flow(200, 20, 0.03, width_mm=0.5)
    assert (wide.verdict, len(wide.findings)) == ("about", 1)
    assert [f.key for f in flow(200, 20, 0.005, width_mm=0.5).findings] == ["nib.flow:number", "nib.flow-ceiling"]


@pytest.mark.parametrize(("mg", "told"), [(14.5, True), (13.9, False), (2.5, False), (2.3, True)])
def test_outside_the_span_it_is_asked_again(mg, told):
    assert any(f.key == "nib.flow-span" for f in flow(mg * 20, 20, 0.0).findings) is told


def made(mg, u):
    return Flow(0, 0, 0, 1, mg, u, 2 * u, mg, "number", 1, 1, 1, 1, ())


@pytest.mark.parametrize(("after", "told"), [(6.0, "wetter"), (4.0, "drier"), (5.5, "same"), (4.5, "same")])
def test_wetter_or_drier_only_where_it_can_be_told(after, told):
    # 2 √(0.2² + 0.2²) = 0.566
    assert flow_change(made(5, 0.2), made(after, 0.2)).key == f"nib.flow-change:{told}"


def test_a_bound_is_not_compared():
    assert flow_change(flow(5, 1), flow(189, 37.8)) is None


@given(st.floats(0.1, 500), st.floats(0.1, 500), st.floats(1e-5, 0.05))
def test_the_verdict_never_says_more_than_its_doubt(lost, length, u):
    found = flow(lost, length, u)
    share = found.expanded_mg_per_m / found.mg_per_m
    assert found.verdict == ("number" if share <= 0.2 else "about" if share <= 0.5 else "bound")
    assert (found.m_per_ml is None) == (found.verdict == "bound")
    assert found.bound_mg_per_m >= found.mg_per_m


@pytest.mark.parametrize("bad", [{"length_m": 0}, {"length_m": math.nan}, {"width_mm": 0.0}, {"share": -0.1}])
def test_nonsense_is_refused(bad):
    with pytest.raises(InputError):
        flow(50, **{"length_m": 10, **bad})
