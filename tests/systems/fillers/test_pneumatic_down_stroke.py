"""The down-stroke filler: nib and section as a sac pen has them."""

import pytest
from systems.building import built

from pentools.systems.registry import SYSTEMS


def test_it_has_a_nipple_and_the_pressed_sac_but_no_tube_at_the_nib():
    pen, _full, _s = built("pneumatic-down-stroke", nipple=5.0)
    assert pen.spans["nipple"].size == pytest.approx(5.0)
    assert {"sac", "sac-protector", "pneumatic-tube", "tube-ring", "port"} <= set(pen.anchors)
    assert not any(piece.part in {"filling-tube", "front-gasket"} for piece in pen.pieces)
    assert SYSTEMS["pneumatic-down-stroke"].seals_at == "tube-ring"
