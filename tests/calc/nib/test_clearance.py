"""Will the nib touch the inner cap."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pentools.calc.nib.clearance import cap_clearance
from pentools.errors import InputError


def room(reach, inner, **more):
    given_ = {"reach_u_mm": 0.1, "inner_cap_u_mm": 0.1, "least_mm": 0.5, "good_mm": 1.0}
    return cap_clearance(reach, inner, **{**given_, **more})


@pytest.mark.parametrize(
    ("inner", "verdict", "level", "capped"),
    [
        # known to 2 √2 · 0.1 = 0.283 mm
        (19.7, "touches", "stop", False), (19.8, "may touch", "stop", False), (20.2, "may touch", "stop", False),
        (20.3, "too near", "stop", False), (20.6, "near", "warning", True), (21.01, "clear", "ok", True),
    ],
)  # fmt: skip
def test_each_verdict(inner, verdict, level, capped):
    found = room(20.0, inner)
    assert (found.verdict, found.finding.level, found.may_be_capped) == (verdict, level, capped)
    assert found.clearance_mm == pytest.approx(inner - 20.0)
    assert found.expanded_mm == pytest.approx(0.2828, abs=1e-3)


def test_a_section_that_goes_past_the_mouth_tells_nothing():
    assert room(20.0, 25.0, seated=False).verdict == "cannot tell"
    assert not room(20.0, 25.0, seated=False).may_be_capped
    assert room(20.0, 25.0, seated=True).verdict == room(20.0, 25.0).verdict == "clear"


def test_the_words_give_the_room_or_how_much_it_is_too_long():
    assert "0.40 mm too long" in room(20.4, 20.0).finding.text
    assert "stays 1.20 mm clear" in room(18.8, 20.0).finding.text
    assert "below 0.5 mm" in room(19.6, 20.0).finding.text


@given(st.floats(5, 40), st.floats(-3, 3), st.floats(0, 0.5))
def test_what_may_be_capped_does_not_touch(reach, gap, u):
    found = room(reach, reach + gap, reach_u_mm=u)
    if found.may_be_capped:
        assert found.clearance_mm >= 0.5 - 1e-9
        assert found.clearance_mm - found.expanded_mm >= 0


@pytest.mark.parametrize("bad", [{"reach": 0}, {"inner": -1}, {"reach": math.nan}, {"reach_u_mm": -0.1}])
def test_nonsense_is_refused(bad):
    with pytest.raises(InputError):
        room(**{"reach": 20.0, "inner": 21.0, **bad})
