"""The capillary filler: a cell of layers in the bore, and a vent behind it."""

import pytest
from systems.building import box, built


def test_the_cell_lies_in_the_bore_with_room_in_front_and_behind():
    pen, _full, s = built("capillary", bore=9.0, barrel_diameter=12.0)
    x0, _, x1, r = box(pen, "capillary-cell", "ink")
    assert x0 == pytest.approx(s.tenon + 2.5)
    assert x1 == pytest.approx(s.end - 7.0)
    assert r == pytest.approx(0.86 * 4.5)
    layers = {round(p.points[0][1], 3) for p in pen.pieces if p.part == "capillary-cell" and len(p.points) == 2}
    assert len(layers) == 2 * 7 - 1  # seven layers of 0.55 mm on each side of the axis, and the axis
    assert max(layers) < r


def test_the_vent_goes_through_the_end():
    pen, _full, s = built("capillary", bore=9.0, barrel_diameter=12.0)
    x0, _y0, x1, y1 = box(pen, "vent")
    assert (x0, x1) == pytest.approx((s.end - 3.0, s.end))
    assert y1 == pytest.approx(0.22 * 4.5)
