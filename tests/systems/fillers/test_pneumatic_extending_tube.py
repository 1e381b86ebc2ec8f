"""The extending tube: it runs through nib and section, and its drawn-out place is hidden once the cap is on."""

import pytest
from systems.building import box, built


def test_the_tube_runs_from_before_the_sac_to_the_nib_and_shows_where_it_comes_out():
    pen, _full, s = built("pneumatic-extending-tube", nib_length=20.0)
    x0, _, x1, r = box(pen, "filling-tube", "metal")
    assert x0 == pytest.approx(6.0)
    assert x1 == pytest.approx(s.tenon + 11.0)
    assert r <= 0.75
    assert box(pen, "filling-tube", "hidden")[0] == pytest.approx(-7.5)
    capped, _, _ = built("pneumatic-extending-tube", capped=True)
    assert not any(piece.part == "filling-tube" and piece.style == "hidden" for piece in capped.pieces)


def test_gasket_and_spring_lie_round_the_tube_in_front_of_the_sacs_end():
    pen, full, s = built("pneumatic-extending-tube")
    gasket, spring = box(pen, "front-gasket"), box(pen, "spring")
    assert gasket[0] < s.mouth < gasket[2]
    assert s.tenon < spring[0] < spring[2] < box(pen, "sac")[2]
    assert spring[3] < full.radius("sac_outside")
