"""The bellows filler: pleats along the sac, a plunger behind it."""

import pytest
from systems.building import box, built


def test_the_pleats_alternate_between_body_and_waist():
    pen, _full, _s = built("bellows", sac_outside=7.0, sac_length=40.0, barrel_length=75.0)
    assert pen.spans["sac_length"].size == pytest.approx(40.0)
    outline = next(piece for piece in pen.pieces if piece.part == "bellows").points
    heights = [round(abs(y), 3) for _, y in outline]
    assert heights.count(3.5) == 2 * 10  # ten pleats of 3.2 mm in 32 mm, both sides of the axis
    assert heights.count(round(0.62 * 3.5, 3)) >= 2 * 10


def test_the_plunger_pushes_from_the_sacs_end_into_the_blind_cap():
    pen, _full, s = built("bellows")
    plunger, bellows = box(pen, "plunger"), box(pen, "bellows")
    assert plunger[0] == pytest.approx(bellows[2])
    assert s.end < plunger[2] < s.total
    assert plunger[3] == pytest.approx(0.78 * s.bore)
    assert bellows[0] < box(pen, "breather-tube")[2] < bellows[2]


def test_an_assumed_sac_leaves_room_for_the_plunger():
    pen, _full, s = built("bellows", barrel_length=50.0)
    assert box(pen, "bellows")[2] <= s.end - 8.0 + 1e-9
