"""The button filler: the button comes out of the barrel's end, under the blind cap."""

import pytest
from systems.building import box, built


def test_the_button_reaches_from_the_barrel_into_the_blind_cap():
    pen, _full, s = built("button-sac", end_length=12.0)
    x0, _, x1, y1 = box(pen, "button")
    assert x0 < s.end < x1 < s.total
    cap = box(pen, "blind-cap")
    assert cap[2] == pytest.approx(s.end + 12.0)
    assert y1 < cap[3]


def test_the_bar_is_bowed_towards_the_sac_and_ends_before_the_button():
    pen, _full, _s = built("button-sac", sac_outside=7.0, bore=9.0, barrel_diameter=12.5)
    bar = next(piece for piece in pen.pieces if piece.part == "pressure-bar" and piece.style == "metal")
    ends, middle = bar.points[0][1], bar.points[1][1]
    assert middle < ends
    assert ends - middle == pytest.approx(1.0)
    assert bar.points[2][0] <= box(pen, "button")[0] + 0.5
