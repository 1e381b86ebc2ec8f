"""Shellac cuts: laws and ranges."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.treatment.mixtures import MixtureRow
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
        lambda: check_chart([MixtureRow("shellac thinning, printed", "2", 1, None, "parts", "")]),
    ],
)
def test_shellac_out_of_range(call):
    with pytest.raises(InputError):
        call()


@pytest.mark.parametrize(
    ("call", "low", "high", "off"),
    [(shellac_cut, 0.1, 6, 0.01), (lambda x: flakes_g(2, x), 0.001, 10_000, 0.1), (lambda x: thinning_parts(6, x), 0.1, 6, 0.01), (lambda x: check_chart([], x), 0, 1, 0.01)],
)  # fmt: skip
def test_both_ends_of_every_range(call, low, high, off):
    call(low)
    call(high)
    for x in (low - off, high + off):
        with pytest.raises(InputError):
            call(x)


def test_a_chart_is_off_by_its_sign_and_agrees_within_the_tolerance():
    rows = [MixtureRow("shellac thinning, printed", "2 to 1", low, None, "parts", "") for low in (0.6667, 0.81, 1.0)]
    less, near, more = check_chart([*rows, MixtureRow("other", "x", 1, None, "", "")])
    assert (less.agrees, near.agrees, more.agrees) == (False, True, False)
    assert less.off_share == pytest.approx(-0.2, abs=0.001)
    assert more.off_share == pytest.approx(0.2, abs=0.001)
    assert (less.from_pounds, less.to_pounds, less.reckoned_parts) == (2, 1, pytest.approx(0.8333, abs=1e-4))
    assert check_chart(rows, 0.25)[0].agrees
