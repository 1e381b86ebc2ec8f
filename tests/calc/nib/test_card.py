"""Cards found, and other things refused, each by its own gate."""

import pytest
from drawn_lines import codes, whole, with_card

from pentools.calc.nib.card import find_cards


def search(**more):
    light = with_card(**more)
    return find_cards(codes(light), whole(light))


@pytest.mark.parametrize("degrees", [0.0, 7.0, 90.0, -40.0])
@pytest.mark.parametrize("ink", [0.1, 0.65])
def test_a_card_gives_the_scale(degrees, ink):
    (card,) = search(degrees=degrees, ink=ink).cards
    assert card.um_per_px == pytest.approx(1000 / 6, rel=0.0005)
    assert not card.aslant
    assert 0.0008 < card.u_share < 0.003


@pytest.mark.parametrize(
    ("more", "why"),
    [
        ({"radius_mm": 0.05}, "corners"),
        ({"size_mm": (87.3, 53.98)}, "shape"),
        ({"size_mm": (85, 55)}, "shape"),
        ({"middle": (110, 60), "degrees": 0.0}, ""),
    ],
)
def test_what_is_no_card_is_refused(more, why):
    found = search(**more)
    assert found.cards == ()
    assert not why or found.nearly == why
