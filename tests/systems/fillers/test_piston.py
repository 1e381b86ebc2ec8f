"""The piston filler: ink in front of the head, rod, spindle and knob behind it."""

import pytest
from systems.building import box, built


def test_ink_head_rod_spindle_and_knob_follow_one_another():
    pen, _full, s = built("piston", rod=3.0, bore=8.6, barrel_diameter=12.0, barrel_length=68.0)
    ink, head, rod, spindle, knob = (box(pen, p) for p in ("ink-space", "piston-head", "rod", "spindle", "knob"))
    assert ink[2] == pytest.approx(head[0])
    assert rod[0] == pytest.approx(head[2])
    assert rod[2] == pytest.approx(spindle[0])
    assert s.end < spindle[2] < knob[2] == pytest.approx(s.total)
    assert rod[3] == pytest.approx(1.5)
    assert spindle[3] == pytest.approx(1.5)
    sleeve = box(pen, "screw-sleeve")
    assert sleeve[2] == pytest.approx(s.end)
    assert sleeve[2] - sleeve[0] == pytest.approx(14.0)
    assert head[2] < sleeve[0]


def test_a_measured_stroke_stands_as_it_is_and_ends_at_the_sleeve():
    pen, _full, _s = built("piston", stroke=28.0, barrel_length=68.0, head_length=5.0)
    span = pen.spans["stroke"]
    assert span.size == pytest.approx(28.0)
    assert span.end[0] == pytest.approx(box(pen, "screw-sleeve")[0] - 1.0 - 5.0)
    assumed, _, t = built("piston", barrel_length=40.0, head_length=5.0)
    assert assumed.spans["stroke"].start[0] >= t.tenon
