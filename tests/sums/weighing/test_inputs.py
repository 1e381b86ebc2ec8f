"""From what was typed to what the calculations take."""

import pytest

from pentools.calc.weighing.balance import FIGURES, Balance
from pentools.calc.weighing.setting import Handling
from pentools.errors import InputError
from pentools.sums.base import Inputs
from pentools.sums.weighing.fields import BALANCE_FIELDS
from pentools.sums.weighing.inputs import (
    balance_of,
    conditions_of,
    handling_of,
    kept_of,
    liquid_of,
    masses_of,
    usual_of,
)
from pentools.systems.registry import SYSTEMS
from pentools.tables.fillers import usual_fill
from pentools.units import Reading, read_quantity


def grams(text):
    return read_quantity(text, "g")


def test_a_box_for_every_figure_of_a_balance():
    assert [field.name for field in BALANCE_FIELDS] == [figure.name for figure in FIGURES]
    assert [field.default for field in BALANCE_FIELDS] == ["0.01 g", "", "", ""]
    assert all((f.unit, f.low, f.high) == ("g", g.low, g.high) for f, g in zip(BALANCE_FIELDS, FIGURES, strict=True))


def test_what_the_sheet_does_not_say_is_usual_for_the_readability():
    assert balance_of(Inputs({}), ())[0] == Balance(0.01, 0.01, 0.02, 0.01)
    own = Inputs({"readability": grams("0.001 g"), "linearity": grams("0.002 g")})
    assert balance_of(own, ())[0] == Balance(0.001, 0.002, 0.002, 0.002)


def test_numbers_carry_no_digits():
    # what comes as a number is read on the balance as it is said to be
    given = Inputs({"masses": (Reading(23.2, "g"), Reading(25.0, "g"))})
    assert balance_of(given, ("masses",)) == (Balance(0.01, 0.01, 0.02, 0.01), ())


def test_only_the_masses_named_bound_it_and_a_typed_doubt_raises_the_scatter():
    given = Inputs({"empty": (grams("23.26 ± 0.05 g"), grams("23.25 ± 0.03 g")), "filled": (grams("25.1 g"),)})
    assert balance_of(given, ("empty",)) == (Balance(0.01, 0.05, 0.02, 0.01), ())
    assert balance_of(given, ("empty", "filled"))[0] == Balance(0.1, 0.1, 0.2, 0.1)


def test_the_room_and_its_half_widths():
    room = conditions_of(Inputs({"temperature": Reading(18.0, "degC", 1.0), "humidity": Reading(0.4, "1")}))
    assert (room.temperature_c, room.temperature_half_width_c) == (18.0, pytest.approx(1.7320508))
    assert (room.pressure_kpa, room.pressure_half_width_kpa) == (101.3, 3.0)
    assert (room.humidity_share, room.humidity_half_width_share) == (0.4, 0.2)
    air = conditions_of(Inputs({"pressure": Reading(98.0, "kPa", 0.5)}))
    assert (air.pressure_kpa, air.pressure_half_width_kpa) == (98.0, pytest.approx(0.8660254))


def test_drop_and_evaporation():
    assert handling_of(Inputs({})) == Handling(0.04, 0.005)
    assert handling_of(Inputs({"drop": grams("0 g"), "evaporation": grams("0.02 g")})) == Handling(0.0, 0.02)


def test_what_a_pen_keeps():
    assert kept_of(Inputs({})) is None
    assert kept_of(Inputs({"kept": Reading(0.31, "ml", 0.02)})) == pytest.approx((0.27, 0.35))
    assert kept_of(Inputs({"kept": Reading(0.01, "ml")})) == pytest.approx((0.0, 0.07))


def test_no_mass_is_refused():
    with pytest.raises(InputError, match="Type it like"):
        masses_of(Inputs({}), "empty")


def test_every_system_has_a_usual_share_that_it_can_hold():
    for system in SYSTEMS:
        share = usual_of(system)
        assert 0.3 < share.low < share.typical < share.high < 1.15, system
        assert share.certainty == "judged"


def test_a_sacs_share_is_of_what_is_pressed():
    table, told = usual_fill("bellows"), usual_of("bellows")
    assert (told.low, told.typical, told.high) == pytest.approx(
        (table.low / 0.9, table.typical / 0.9, table.high / 0.9)
    )
    assert usual_of("piston") == usual_fill("piston")


def liquid(**said):
    given = Inputs({"liquid": "ink", **said})
    return liquid_of(given, conditions_of(given), balance_of(given, ())[0])


@pytest.mark.parametrize("weighed", ["ink_mass", "water_mass"])
def test_a_syringe_weighed_with_one_liquid_only_is_refused(weighed):
    with pytest.raises(InputError, match="only one of the two"):
        liquid(**{weighed: grams("2.013 g")})


def test_a_density_typed_without_a_doubt_is_taken_as_rough():
    assert (liquid().density_kg_m3, liquid().density_uncertainty_kg_m3) == pytest.approx((1005.0, 10 / 3**0.5))
    typed = liquid(ink_density=read_quantity("1.012 g/ml", "g/ml"))
    assert (typed.density_kg_m3, typed.density_uncertainty_kg_m3) == pytest.approx((1012.0, 5.0))
    sure = liquid(ink_density=read_quantity("1.012 ± 0.002 g/ml", "g/ml"))
    assert sure.density_uncertainty_kg_m3 == pytest.approx(2.0)
