"""The safety pen: no section, the nib in a carrier that winds out of the barrel."""

import pytest
from systems.building import box, built

from pentools.systems.registry import SYSTEMS


def test_it_has_no_section_and_the_nib_starts_the_barrel():
    pen, full, s = built("safety")
    assert full["section_length"] == 0.0
    assert "section_length" not in full.assumed
    assert s.nib == s.mouth
    assert not any(piece.part == "section" for piece in pen.pieces)
    assert SYSTEMS["safety"].has_section is False


def test_carrier_pin_and_helix_lie_one_in_the_other():
    pen, _full, s = built("safety")
    carrier, pin, helix = box(pen, "nib-carrier"), box(pen, "carrier-pin"), box(pen, "helix")
    assert helix[0] < carrier[0] < carrier[2] < helix[2]
    assert carrier[0] < pin[0] < pin[2] < carrier[2]
    assert carrier[3] < pin[3] == pytest.approx(s.bore - 0.35)
    assert helix[3] == pytest.approx(s.bore - 0.35)


def test_the_packing_is_behind_the_helix_and_the_knob_turns_the_spindle():
    pen, _full, s = built("safety", rod=3.0, end_length=13.0)
    packing, helix, spindle, knob = (box(pen, p) for p in ("packing", "helix", "spindle", "knob"))
    assert helix[2] < packing[0] < packing[2] < s.end < spindle[2] < knob[2]
    assert pen.spans["rod"].size == pytest.approx(3.0)
    assert box(pen, "cap-seat")[0] == pytest.approx(s.mouth)
