"""The eyedropper: the whole bore holds ink."""

import pytest
from systems.building import box, built


def test_the_ink_stands_from_the_section_to_the_floor():
    pen, _full, s = built("eyedropper", barrel_depth=60.0, barrel_length=70.0, bore=9.0)
    x0, y0, x1, y1 = box(pen, "ink-space")
    assert x0 == pytest.approx(s.tenon)
    assert x1 == pytest.approx(s.mouth + 60.0 - 0.2)
    assert (y0, y1) == pytest.approx((-4.5, 4.5))
    assert pen.spans["depth"].size == pytest.approx(x1 - x0)
    assert pen.spans["barrel_depth"].size == pytest.approx(60.0)
