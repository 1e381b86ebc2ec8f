"""The syringe filler: a rod through a gland at the barrel's end, under an end cap."""

import pytest
from systems.building import box, built


def test_the_rod_goes_through_the_gland_into_the_end_cap():
    pen, _full, s = built("syringe", rod=2.4, end_length=14.0)
    rod, gland, cap, head = (box(pen, p) for p in ("rod", "gland", "end-cap", "piston-head"))
    assert rod[0] == pytest.approx(head[2])
    assert gland[0] < gland[2] == pytest.approx(s.end)
    assert s.end < rod[2] < cap[2] == pytest.approx(s.end + 14.0)
    assert rod[3] == pytest.approx(1.2)


def test_the_packing_fills_its_housing():
    pen, _full, s = built("syringe", rod=2.4)
    packing, gland = box(pen, "packing"), box(pen, "gland")
    assert packing[3] == pytest.approx(1.2 + 1.4)
    assert pen.spans["housing"].size == pytest.approx(2 * 2.6)
    assert packing[0] == pytest.approx(gland[0] + 0.3)
    assert packing[2] == pytest.approx(s.end - 3.0)


def test_a_measured_stroke_is_shown_as_measured():
    pen, _full, _s = built("syringe", stroke=30.0, barrel_length=80.0)
    assert pen.spans["stroke"].size == pytest.approx(30.0)
    assert pen.spans["stroke"].end[0] < box(pen, "gland")[0]
