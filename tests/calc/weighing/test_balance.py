"""A balance: what is usual for its last digit, and what the digits that were typed allow."""

import math

import pytest

from pentools.calc.weighing.balance import BALANCES, FIGURES, Balance, as_read, usual_balance
from pentools.errors import InputError


@pytest.mark.parametrize(
    ("name", "figures"),
    # common practice, no source: readability, repeatability, linearity, eccentric loading
    [
        ("1 g", (1, 1, 2, 1)),
        ("0.1 g", (0.1, 0.1, 0.2, 0.1)),
        ("0.01 g", (0.01, 0.01, 0.02, 0.01)),
        ("0.001 g", (0.001, 0.002, 0.003, 0.002)),
    ],
)
def test_what_balances_commonly_state(name, figures):
    found = BALANCES[name]
    assert (found.readability_g, found.repeatability_g, found.linearity_g, found.eccentricity_g) == pytest.approx(
        figures
    )


def test_the_figures_are_listed_in_the_order_of_the_balance():
    assert [figure.name for figure in FIGURES] == ["readability", "repeatability", "linearity", "eccentricity"]
    assert [figure.label for figure in FIGURES][2:] == ["Linearity", "Eccentric loading"]
    assert all(0 <= figure.low < figure.high <= 5 and figure.hint for figure in FIGURES)


def test_a_figure_of_its_own_sheet_counts_before_the_usual():
    found = usual_balance(0.01, {"linearity": 0.005, "repeatability": None, "eccentricity": 0.0})
    assert (found.repeatability_g, found.linearity_g, found.eccentricity_g) == (0.01, 0.005, 0.0)
    assert usual_balance(0.005).linearity_g == pytest.approx(0.010)
    assert usual_balance(0.004).linearity_g == pytest.approx(0.012)
    with pytest.raises(InputError, match="above 0 g"):
        usual_balance(0.0)


def test_a_weighing_never_scatters_less_than_its_rounding():
    assert Balance(0.01, 0.0, 0.0, 0.0).spread_g == pytest.approx(0.01 / math.sqrt(12))
    assert Balance(0.01, 0.02, 0.0, 0.0).spread_g == 0.02
    assert Balance(0.01, 0.02, 0.0, 0.0).rounding_g == pytest.approx(0.0028868, abs=1e-7)


def test_the_coarsest_digit_typed_bounds_the_readability():
    fine = Balance(0.01, 0.15, 0.02, 0.01)
    taken, (told,) = as_read(fine, [0.1, 0.1])
    assert taken == Balance(0.1, 0.15, 0.2, 0.1)  # what its own sheet says worse is kept
    assert (told.level, told.topic) == ("warning", "digits-typed")
    assert "typed to 0.1 g and the balance is said to read to 0.01 g" in told.text
    taken, (told,) = as_read(fine, [0.01, 0.1, None])
    assert taken.readability_g == 0.1
    assert "Some masses are typed to 0.01 g and some to 0.1 g only" in told.text


@pytest.mark.parametrize("steps", [[], [None, None], [0.01, 0.01], [0.001, 0.01]])
def test_digits_that_bear_the_balance_out_change_nothing(steps):
    assert as_read(BALANCES["0.01 g"], steps) == (BALANCES["0.01 g"], ())
