"""What a system should hold goes through its own formula with the limits of its own dimensions."""

import pytest

from pentools.calc.weighing.expected import Measured
from pentools.errors import InputError
from pentools.systems.volume import system_volume


def test_the_formula_is_that_of_the_system():
    # worked by hand: π/4 (8.5² - 2.6²) 62 = 3189 mm³ beside the rod of a plunger; 3518 for a piston
    dimensions = {"bore": Measured(8.5), "rod": Measured(2.6), "stroke": Measured(62.0)}
    assert system_volume("plunger-vacuum", dimensions).volume_ml == pytest.approx(3.189, abs=5e-4)
    assert system_volume("piston", {**dimensions, "rod": None}).volume_ml == pytest.approx(3.518, abs=5e-4)


def test_nothing_is_said_where_a_needed_dimension_is_missing():
    assert system_volume("lever-sac", {"outside": Measured(7.0)}) is None


def test_a_dimension_out_of_range_is_named_in_the_words_of_its_box():
    with pytest.raises(InputError, match=r"sac outside diameter must be 2 to 20 mm: got “70”"):
        system_volume("lever-sac", {"outside": Measured(70.0), "length": Measured(50.0)})


def test_the_air_is_handed_on():
    dimensions = {name: Measured(value) for name, value in (("bore", 8.5), ("rod", 2.6), ("stroke", 62.0))}
    dead = {**dimensions, "dead_behind": Measured(0.2), "dead_ahead": Measured(0.2)}
    high, low = (system_volume("plunger-vacuum", dead, ambient_kpa=kpa).volume_ml for kpa in (101.3, 75.0))
    assert low < high
    dry = system_volume("plunger-vacuum", dead, 101.3, 0.5).volume_ml
    assert dry != pytest.approx(high, abs=1e-6)


def test_an_unknown_system_is_refused():
    with pytest.raises(InputError, match="magic"):
        system_volume("magic", {})
