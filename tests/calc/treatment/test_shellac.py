"""Shellac cuts: laws and ranges."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.treatment.shellac import G_L_PER_POUND_CUT, check_chart, flakes_g, shellac_cut, thinning_parts
from pentools.errors import InputError


@given(st.floats(0.2, 6), st.floats(0.1, 1))
def test_thinning_gives_the_cut_it_says(start, share):
    end = max(start * share, 0.1)
    parts = thinning_parts(start, end)
    # one part of solution: flakes and alcohol in it, from the finished solution; then alcohol is added
    flakes = shellac_cut(start).lb_per_gal_finished
    alcohol = 1 / (1 + 0.1 * start)
    assert flakes / (alcohol + parts) == pytest.approx(end, rel=1e-9)


def test_flakes_follow_the_alcohol():
    assert flakes_g(2, 60) == pytest.approx(2 * flakes_g(2, 30)) == pytest.approx(0.06 * 2 * G_L_PER_POUND_CUT)


@pytest.mark.parametrize(
    "call",
    [
        lambda: shellac_cut(0),
        lambda: shellac_cut(7),
        lambda: thinning_parts(1, 2),
        lambda: flakes_g(2, 0),
        lambda: check_chart([], 2),
        lambda: check_chart([{"mix": "shellac thinning, printed", "property": "2", "low": "1"}]),
    ],
)
def test_shellac_out_of_range(call):
    with pytest.raises(InputError):
        call()
