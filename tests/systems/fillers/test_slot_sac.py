"""The slot filler: an opening in the wall over the bar, and nothing that sticks out."""

import pytest
from systems.building import box, built


def test_the_slot_goes_through_the_wall_over_the_bar():
    pen, _full, s = built("slot-sac", bore=9.0, barrel_diameter=12.0, barrel_length=50.0)
    x0, y0, x1, y1 = box(pen, "slot")
    assert x1 - x0 == pytest.approx(8.0)
    assert y0 == pytest.approx(4.48)
    assert y1 == pytest.approx(6.0)
    bar = box(pen, "pressure-bar")
    assert bar[0] < x0 < x1 < bar[2]
    assert max(piece_y for piece in pen.pieces for _, piece_y in piece.points) == pytest.approx(s.outer)
