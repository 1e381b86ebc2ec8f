"""The lever filler: the lever stands in its slot, its pin in it, and the bar between sac and wall."""

import pytest
from systems.building import box, built


def test_the_lever_has_its_measured_length_and_its_pin_lies_within():
    pen, _full, s = built("lever-sac", lever_length=20.0, barrel_length=70.0)
    x0, _, x1, _ = box(pen, "lever")
    assert pen.spans["lever_length"].size == pytest.approx(20.0)
    assert x1 - x0 == pytest.approx(20.0, abs=0.05)
    pin = box(pen, "lever-pin")
    assert x0 < pin[0] < pin[2] < x1
    assert s.bore < pin[3] < s.outer
    # the lever's foot reaches down to the bar
    assert box(pen, "lever")[1] < box(pen, "pressure-bar", "metal")[3] + 0.1


def test_the_bar_lies_between_the_sac_and_the_wall():
    pen, _full, s = built("lever-sac", sac_outside=7.0, bore=9.0, barrel_diameter=12.0)
    _, top, _, bottom = box(pen, "pressure-bar", "metal")
    assert 3.5 < top < bottom < 4.5
    x0, _, _x1, _ = box(pen, "sac")
    bar = box(pen, "pressure-bar")
    assert x0 < bar[0]
    assert bar[2] < s.end
