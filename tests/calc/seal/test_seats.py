"""Seats that no table has sizes for: told only where the callipers leave no doubt."""

import pytest

from pentools.calc.seal.seats import closed_by, pressed_in, stretched_over
from pentools.errors import InputError


def said(seat):
    return seat.verdict, seat.findings[0].level, seat.findings[0].key.removeprefix("seal.seat-")


@pytest.mark.parametrize(
    ("neck", "mouth", "verdict"),
    [
        (6.6, 6.0, "fits"),  # 10 %
        (6.0, 6.0, "cannot tell"),  # 0 %, within the callipers up to 1 %: hardly stretched, but under 2 % either way
        (6.0, 6.2, "too loose"),
        (7.9, 6.0, "too tight"),  # 32 %
        (6.1, 6.0, "cannot tell"),  # 1.7 %: between 0.7 and 2.7 %
        (7.5, 6.0, "cannot tell"),  # 25 %, on the limit
    ],
)
def test_a_mouth_over_its_neck(neck, mouth, verdict):
    seat = stretched_over(neck, mouth, half_width_mm=0.03)
    if verdict == "cannot tell" and neck == mouth:
        assert seat.verdict == "too loose"  # worked by hand: (6.03/5.97 - 1) is 1.005 %, still under 2 %
    else:
        assert seat.verdict == verdict
    assert seat.low < seat.value < seat.high


def test_stretch_is_worked_as_by_hand():
    seat = stretched_over(6.6, 6.0, half_width_mm=0.03)
    assert seat.value == pytest.approx(0.1)
    assert (seat.low, seat.high) == (pytest.approx(6.57 / 6.03 - 1), pytest.approx(6.63 / 5.97 - 1))
    assert said(seat) == ("fits", "ok", "stretch:fits")
    assert said(stretched_over(6.0, 6.2)) == ("too loose", "warning", "stretch:loose")
    assert said(stretched_over(7.9, 6.0)) == ("too tight", "warning", "stretch:tight")
    assert said(stretched_over(6.1, 6.0)) == ("cannot tell", "note", "stretch:open")


@pytest.mark.parametrize(
    ("outside", "hole", "verdict", "key"),
    [
        (2.10, 2.00, "fits", "pressed:fits"),
        (1.90, 2.00, "too loose", "pressed:loose"),
        (2.05, 2.00, "cannot tell", "pressed:open"),
        (1.95, 2.00, "cannot tell", "pressed:open"),
    ],
)
def test_a_tube_in_its_hole(outside, hole, verdict, key):
    seat = pressed_in(outside, hole, half_width_mm=0.03)
    assert (seat.verdict, said(seat)[2]) == (verdict, key)
    assert seat.value == pytest.approx(outside - hole)
    assert seat.high - seat.low == pytest.approx(0.12)


@pytest.mark.parametrize(
    ("sizes", "verdict", "key"),
    [
        ((8.2, 7.6, 14.5, 14.0), "fits", "liner:fits"),
        ((7.4, 7.6, 14.5, 14.0), "too loose", "liner:loose"),
        ((8.2, 7.6), "cannot tell", "liner:reach"),
        ((8.2, 7.6, 14.5, None), "cannot tell", "liner:reach"),
        ((8.2, 7.6, 13.4, 14.0), "too loose", "liner:short"),
        ((8.2, 7.6, 14.03, 14.0), "cannot tell", "liner:open"),
        ((7.62, 7.6, 14.5, 14.0), "cannot tell", "liner:open"),
    ],
)
def test_a_lip_that_closes_a_liner(sizes, verdict, key):
    seat = closed_by(*sizes, half_width_mm=0.03)
    assert (seat.verdict, said(seat)[2]) == (verdict, key)


def test_better_callipers_never_turn_a_verdict_round():
    for seats in (
        [pressed_in(2.05, 2.0, half_width_mm=half) for half in (0.05, 0.03, 0.01)],
        [stretched_over(6.1, 6.0, half_width_mm=half) for half in (0.05, 0.03, 0.001)],
    ):
        told = [seat.verdict for seat in seats if seat.verdict != "cannot tell"]
        assert len(set(told)) <= 1
        assert seats[-1].verdict != "cannot tell"


def test_what_is_no_size_is_refused():
    for wrong in (lambda: stretched_over(0, 6), lambda: pressed_in(2, -1), lambda: closed_by(8, 0)):
        with pytest.raises(InputError, match="above 0 mm"):
            wrong()
