"""The squeeze filler: the sleeve lies between sac and wall, its bar in a gap of it."""

import pytest
from systems.building import box, built, size


def test_sac_sleeve_and_wall_lie_one_in_the_other():
    pen, _full, s = built("sleeve-squeeze", sac_outside=6.5, bore=9.0, barrel_diameter=12.0)
    _, _, end, sleeve = box(pen, "sac-sleeve")
    assert 3.25 < sleeve < 4.5 + 0.04
    assert box(pen, "sac")[2] < end < s.end
    bar = box(pen, "press-bar")
    assert bar[1] == pytest.approx(3.25)
    assert box(pen, "sac-sleeve")[0] < bar[0] < bar[2] < end


def test_its_breather_tube_ends_inside_the_sac():
    pen, _, _ = built("sleeve-squeeze")
    tube, sac = box(pen, "breather-tube"), box(pen, "sac")
    assert sac[0] < tube[2] < sac[2]
    longer, _, _ = built("sleeve-squeeze", breather_length=31.0)
    assert size(longer, "breather-tube")[0] == pytest.approx(31.0)
