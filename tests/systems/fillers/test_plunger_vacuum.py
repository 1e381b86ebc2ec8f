"""The plunger vacuum filler: washer at the end of its stroke, in the wide front of the bore."""

import pytest
from systems.building import box, built


def test_the_washer_stands_in_the_wide_part_with_the_stroke_behind_it():
    pen, _full, s = built("plunger-vacuum", stroke=38.0, barrel_length=72.0, head_diameter=8.2, bore=8.4)
    washer = box(pen, "washer")
    flare = box(pen, "flare")
    assert flare[3] > s.bore
    assert flare[0] < washer[0] < washer[2] < flare[2]
    assert washer[3] == pytest.approx(4.1)
    assert pen.spans["stroke"].size == pytest.approx(38.0)
    assert pen.spans["stroke"].end[0] == pytest.approx(box(pen, "packing-unit")[0])


def test_the_backing_washer_lies_behind_the_washer_and_the_packing_round_the_rod():
    pen, _full, s = built("plunger-vacuum", rod=2.6)
    washer, backing, packing = box(pen, "washer"), box(pen, "backing-washer"), box(pen, "packing")
    assert backing[0] == pytest.approx(washer[2])
    assert backing[3] < washer[3]
    assert packing[3] == pytest.approx(1.3 + 1.7)
    assert pen.spans["housing"].size == pytest.approx(2 * 3.0)
    unit = box(pen, "packing-unit")
    assert unit[0] < packing[0] < packing[2] < unit[2]
    assert box(pen, "rod")[2] > s.end


def test_a_bore_nearly_as_wide_as_the_barrel_keeps_its_walls():
    pen, _, s = built("plunger-vacuum", bore=10.0, barrel_diameter=12.0)
    assert box(pen, "flare")[3] == pytest.approx(6.0 - 0.6)  # the wide place leaves 0.6 mm of wall
    assert box(pen, "packing-unit")[3] <= s.tail - 0.6 + 1e-9
    slim, _, _t = built("plunger-vacuum", bore=7.0, rod=4.8, barrel_diameter=12.0)
    assert box(slim, "packing")[3] == pytest.approx(min(2.4 + 1.7, 3.5 - 0.5))
