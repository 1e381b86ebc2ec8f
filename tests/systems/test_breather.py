"""The breather tube: as long as measured, never as wide as the bore."""

import pytest
from systems.building import box, built


def test_a_measured_tube_has_its_length_and_diameter():
    pen, _, s = built("bulb", breather_length=27.4, breather_diameter=2.2)
    tube = box(pen, "breather-tube")
    assert tube[0] == pytest.approx(s.tenon + 0.8)
    assert tube[2] - tube[0] == pytest.approx(27.4)
    assert tube[3] == pytest.approx(1.1)
    assert pen.spans["breather_length"].size == pytest.approx(27.4)
    assert pen.spans["breather_diameter"].size == pytest.approx(2.2)
    assert min(abs(y) for p in pen.pieces if p.part == "breather-tube" for _, y in p.points) == pytest.approx(
        0.55 * 1.1
    )


def test_a_tube_as_wide_as_the_bore_is_drawn_inside_it():
    pen, _full, _ = built("bulb", bore=4.0, breather_diameter=3.9, barrel_diameter=12.0)
    assert box(pen, "breather-tube")[3] == pytest.approx(0.8 * 2.0)
