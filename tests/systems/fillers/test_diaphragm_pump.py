"""The diaphragm pump: diaphragm, cone, pump body, spring and plunger in this order."""

import pytest
from systems.building import box, built


def test_the_pump_is_put_together_in_its_order():
    pen, _full, s = built("diaphragm-pump")
    diaphragm, cone, body, plunger = (box(pen, part) for part in ("diaphragm", "cone", "pump-body", "plunger"))
    pellet = box(pen, "pellet")
    assert diaphragm[0] < pellet[0] < pellet[2] < cone[0] < body[0] < plunger[2] < s.total
    assert diaphragm[0] < plunger[0] < diaphragm[2]  # the plunger pushes inside the diaphragm
    assert body[2] > s.end
    spring = box(pen, "spring")
    assert body[0] < spring[0] < spring[2] < body[2]
    assert plunger[3] < body[3] < s.tail


def test_the_tube_ends_clear_of_the_diaphragm():
    pen, _full, _s = built("diaphragm-pump", barrel_length=61.9)
    assert box(pen, "diaphragm")[0] - box(pen, "breather-tube")[2] == pytest.approx(2.5)


def test_a_measured_stroke_is_shown_as_measured_and_an_assumed_one_within_the_pen():
    assert built("diaphragm-pump", stroke=7.5)[0].spans["stroke"].size == pytest.approx(7.5)
    pen, full, _s = built("diaphragm-pump")
    assert pen.spans["stroke"].size == pytest.approx((0.78 - 0.34) * full["end_length"])
