"""What sac fillers share: the sac on its nipple, and the bar beside it."""

import pytest
from systems.building import box, built

from pentools.systems.sac import tailed


def test_the_sac_has_its_measured_size_and_wall():
    pen, _, s = built("slot-sac", sac_outside=7.0, sac_length=44.0, sac_wall=0.6, nipple=5.6)
    sac, ink = box(pen, "sac"), box(pen, "ink-space")
    assert sac[2] - sac[0] == pytest.approx(44.0)
    assert sac[0] == pytest.approx(s.tenon + 0.3)
    assert sac[3] == pytest.approx(3.5)
    assert ink[3] == pytest.approx(3.5 - 0.6)
    assert sac[2] - ink[2] == pytest.approx(0.6)
    spans = pen.spans
    assert [spans[n].size for n in ("sac_outside", "sac_length", "sac_wall")] == pytest.approx([7.0, 44.0, 0.6])


def test_its_neck_sits_on_the_nipple():
    pen, _, s = built("slot-sac", nipple=5.6, sac_wall=0.6, sac_outside=7.4, bore=9.0, barrel_diameter=12.0)
    outline = next(piece for piece in pen.pieces if piece.part == "sac").points
    neck = [abs(y) for x, y in outline if x <= s.tenon + 0.3 + 1e-6]
    assert min(neck) == pytest.approx(2.8)
    assert max(neck) == pytest.approx(3.4)


def test_the_bar_keeps_clear_of_sac_and_wall():
    pen, _, _ = built("slot-sac", sac_outside=7.0, bore=9.0, barrel_diameter=12.0)
    _, top, _, bottom = box(pen, "pressure-bar")
    assert top == pytest.approx(3.5 + 0.15)
    assert bottom == pytest.approx(3.65 + 0.6)


def test_a_tail_is_a_step_of_its_own_radius():
    _, _, s = built("button-sac")
    assert tailed(s, 3.0, 4.0) == [(s.end, 4.0), (s.end + 3.0, 4.0)]
