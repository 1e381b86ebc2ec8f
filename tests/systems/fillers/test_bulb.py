"""The bulb filler: the bulb over the barrel's end, the tube free in the ink."""

import pytest
from systems.building import box, built, size

from pentools.systems.registry import SYSTEMS


def test_the_bulb_sits_on_the_barrels_end_under_the_blind_cap():
    pen, _full, s = built("bulb", end_length=24.0)
    bulb, cap, barrel = box(pen, "bulb"), box(pen, "blind-cap"), box(pen, "barrel")
    assert s.end < bulb[0] < barrel[2] < bulb[2] < cap[2]
    assert bulb[3] < cap[3]
    assert cap[2] == pytest.approx(s.end + 24.0)


def test_length_is_that_of_the_tube_and_ink_stands_to_the_barrels_floor():
    pen, _full, s = built("bulb", breather_length=33.0)
    assert size(pen, "breather-tube")[0] == pytest.approx(33.0)
    assert box(pen, "ink-space")[2] == pytest.approx(s.end - 3.5)
    assert pen.spans["depth"].size == pytest.approx(s.end - 3.5 - s.tenon)
    assert SYSTEMS["bulb"].length == "breather_length"
