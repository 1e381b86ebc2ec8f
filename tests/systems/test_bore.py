"""Pens whose barrel holds the ink: the ink's place, and the section that closes it."""

import pytest
from systems.building import box, built


@pytest.mark.parametrize("system", ["eyedropper", "bulb", "diaphragm-pump", "piston", "syringe"])
def test_the_ink_fills_the_bore_behind_a_threaded_section(system):
    pen, full, s = built(system)
    ink = box(pen, "ink-space")
    assert ink[0] == pytest.approx(s.tenon)
    assert ink[3] == pytest.approx(full.radius("bore"))
    assert pen.spans["depth"].size == pytest.approx(ink[2] - ink[0])
    assert box(pen, "section")[2] == pytest.approx(s.tenon)
    assert box(pen, "feed")[2] == pytest.approx(s.tenon + 0.8)
