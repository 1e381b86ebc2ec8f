"""What a pen should hold, by its filling system's own formula, and how sure that is."""

import pytest

from pentools.calc.weighing.expected import Measured
from pentools.errors import InputError
from pentools.systems.registry import SYSTEMS, system_named
from pentools.systems.volume import system_volume


def volume(system, **dimensions):
    return system_volume(system, {name: Measured(value) for name, value in dimensions.items()}).volume_ml


@pytest.mark.parametrize(
    ("system", "dimensions", "held"),
    # worked by hand
    [
        ("plunger-vacuum", {"bore": 8.5, "rod": 2.6, "stroke": 62}, 3.1890),  # π/4 (8.5² - 2.6²) 62, not the whole bore
        ("piston", {"bore": 8.5, "stroke": 62}, 3.5182),
        ("syringe", {"bore": 8, "stroke": 28}, 1.4074),
        ("syringe", {"bore": 8, "stroke": 28, "rod": 3}, 1.2095),
        ("eyedropper", {"bore": 9, "depth": 55, "nipple": 6, "nipple_length": 6}, 3.3293),  # 3.4990 - 0.1696
        ("diaphragm-pump", {"bore": 8, "reach": 40, "tube": 2}, 1.8850),  # π/4 (8² - 2²) 40
        ("lever-sac", {"outside": 7.14375, "wall": 0.5, "length": 60, "pressed_share": 0.5}, 0.8668),
        ("capillary", {"bore": 7, "depth": 50, "void_share": 0.5}, 0.9621),
        ("cartridge-converter", {"bore": 6, "length": 30}, 0.8482),
    ],
)
def test_volumes_by_hand(system, dimensions, held):
    assert volume(system, **dimensions) == pytest.approx(held, abs=6e-5)


@pytest.mark.parametrize(("system", "usual"), [("lever-sac", 0.75), ("pneumatic-down-stroke", 0.85), ("bellows", 0.9)])
def test_the_share_that_pressing_empties_is_taken_by_family(system, usual):
    sac = {"outside": 7.0, "wall": 0.5, "length": 60.0}
    assert volume(system, **sac) / volume(system, **sac, pressed_share=1.0) == pytest.approx(usual)


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_has_a_formula(system):
    family = system_named(system).family
    some = {"bore": 9.0, "rod": 2.0, "stroke": 30.0, "outside": 7.0, "length": 60.0, "reach": 50.0, "depth": 50.0}
    result = system_volume(system, {name: Measured(some[name], 0.02) for name in family.needs})
    assert 0.2 < result.volume_ml < 6
    assert result.budget.standard_uncertainty > 0
    assert system_volume(system, {}) is None


def test_uncertainty_follows_the_calliper():
    # by hand: (u/V)² = ((2·8.5·0.029)² + (2·2.6·0.012)²)/(8.5² - 2.6²)² + (0.3/62)²: 0.89995 %
    result = system_volume(
        "plunger-vacuum", {"bore": Measured(8.5, 0.029), "rod": Measured(2.6, 0.012), "stroke": Measured(62, 0.3)}
    )
    assert result.budget.standard_uncertainty / result.volume_ml == pytest.approx(0.0089995, abs=2e-7)
    assert [c.kind for c in result.budget.components] == ["instrument limit"] * 3


def test_what_was_not_measured_is_named_and_widens():
    sac = system_volume("lever-sac", {"outside": Measured(7.0, 0.02), "length": Measured(60.0, 0.2)})
    assert sac.assumed == ("wall", "pressed share")
    assert sac.budget.standard_uncertainty / sac.volume_ml > 0.08 / 0.75
    known = {"outside": Measured(7.0, 0.02), "length": Measured(60.0, 0.2), "wall": Measured(0.5, 0.02)}
    assert system_volume("lever-sac", {**known, "pressed_share": Measured(0.75, 0.02)}).assumed == ()


@pytest.mark.parametrize(
    ("dimensions", "said"),
    [
        ({"bore": 8.5, "rod": 9.0, "stroke": 60.0}, "below the bore of 8.5 mm"),
        ({"bore": 8.5, "rod": 8.5, "stroke": 60.0}, "Were the two mixed up"),
        ({"bore": 85.0, "rod": 2.0, "stroke": 60.0}, "another unit"),
        ({"bore": 8.5, "rod": 2.0, "stroke": 0.0}, "mm"),
        ({"bore": 8.5, "rod": 2.0, "stroke": 60.0, "dead_behind": 1.2}, "0 to 1 mL"),
    ],
)
def test_impossible_dimensions_are_refused(dimensions, said):
    with pytest.raises(InputError, match=said):
        volume("plunger-vacuum", **dimensions)


def test_a_space_that_holds_nothing_is_refused():
    with pytest.raises(InputError, match="holds something"):
        volume("eyedropper", bore=6.0, depth=5.0, nipple=5.9, nipple_length=40.0)


def test_dead_volumes_lower_what_a_plunger_should_hold():
    shape = {"bore": Measured(8.5), "rod": Measured(2.6), "stroke": Measured(62.0)}
    tight = system_volume("plunger-vacuum", shape)
    dead = {**shape, "dead_behind": Measured(0.06, 0.01), "dead_ahead": Measured(0.1, 0.01)}
    # by hand: 0.16 (101.325/(101.325 - 0.587 - 2.34) - 1) = 4.76 µL; at 80 kPa 0.16 (80/77.073 - 1) = 6.08 µL
    lost = 1000 * (tight.volume_ml - system_volume("plunger-vacuum", dead).volume_ml)
    assert lost == pytest.approx(4.76, abs=0.01)
    lost = 1000 * (tight.volume_ml - system_volume("plunger-vacuum", dead, ambient_kpa=80.0).volume_ml)
    assert lost == pytest.approx(6.08, abs=0.01)
    unsure = system_volume("plunger-vacuum", {**shape, "dead_behind": Measured(0.0, 0.05)})
    assert unsure.budget.standard_uncertainty > 0


def test_strokes_made_limit_what_a_diaphragm_pump_should_hold():
    shape = {"bore": Measured(8.0, 0.02), "reach": Measured(40.0, 0.2), "stroke_volume": Measured(0.28, 0.02)}
    three = system_volume("diaphragm-pump", {**shape, "strokes": Measured(3)})
    assert three.volume_ml == pytest.approx(3 * 0.25)
    assert three.holds == "what 3 strokes bring"
    assert three.assumed == ("tube volume",)
    full = system_volume("diaphragm-pump", {**shape, "strokes": Measured(40)})
    assert full.volume_ml == pytest.approx(system_volume("diaphragm-pump", shape).volume_ml)
    assert full.assumed == ("tube",)
