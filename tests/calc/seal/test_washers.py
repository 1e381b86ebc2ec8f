"""What to cut where no ring goes: sizes to the tenth, ladders, cautions."""

import pytest

from pentools.calc.seal.washers import cork_ring, head_washer, rod_packing
from pentools.errors import InputError


def level(found, topic):
    return next((f.level for f in found.findings if f.topic == topic), None)


def text(found, topic):
    return next(f.text for f in found.findings if f.topic == topic)


def test_a_flat_washer_by_hand():
    fit = head_washer(8.3, 1.6, backing_mm=7.9)
    assert (fit.outside_low_mm, fit.outside_high_mm) == pytest.approx((8.4, 8.6))
    assert (fit.outside_mm, fit.cut_mm, fit.hole_mm, fit.thickness_mm) == (8.5, 8.5, 1.5, 0.64)
    assert fit.ladder_mm == (8.3, 8.4, 8.5, 8.6, 8.7)
    assert level(fit, "overhang") is None
    assert "no suction means one size up" in text(fit, "trial")
    assert "0.64 mm sheet is best; 0.79 mm" in text(fit, "thickness")


def test_a_cup_stands_further_out_and_half_the_ovality_is_added():
    assert head_washer(8.3, 1.6, kind="cup").outside_mm == pytest.approx(8.6)
    assert (
        head_washer(8.3, 1.6, kind="cup").outside_low_mm,
        head_washer(8.3, 1.6, kind="cup").outside_high_mm,
    ) == pytest.approx((8.5, 8.8))
    oval = head_washer(8.3, 1.6, ovality_mm=0.2)
    assert oval.outside_low_mm == pytest.approx(8.5)
    assert oval.outside_mm == pytest.approx(8.6)
    assert level(oval, "ovality") == "warning"
    assert level(head_washer(8.3, 1.6, ovality_mm=0.1), "ovality") is None


@pytest.mark.parametrize(
    ("backing", "words"), [(5.0, "1.75 mm out over the backing washer: it will flip"), (5.92, "flip"), (5.98, ""), (8.18, ""), (8.22, "cannot flex")]
)  # fmt: skip
def test_overhang(backing, words):
    fit = head_washer(8.3, 1.6, backing_mm=backing)
    if words:
        assert words in text(fit, "overhang")
        assert level(fit, "overhang") == "warning"
    else:
        assert level(fit, "overhang") is None if backing != 5.98 else True


def test_a_cork_is_cut_large_and_carries_its_caution():
    fit = cork_ring(9.0, 5.0, length_mm=6)
    assert (fit.outside_low_mm, fit.outside_high_mm) == pytest.approx((9.1, 9.3))
    assert (fit.outside_mm, fit.cut_mm, fit.hole_mm, fit.thickness_mm) == (9.2, 9.6, 4.7, 6)
    assert fit.ladder_mm == (9.0, 9.1, 9.2, 9.3, 9.4)
    assert "licensed professional" in text(fit, "hot-wax")
    assert "Cut it to 9.6 mm" in text(fit, "sanding")
    assert level(cork_ring(9.0, 7.1), "thin") == "warning"
    assert level(cork_ring(9.0, 7.0), "thin") is None


@pytest.mark.parametrize(("length", "thickness", "count"), [(6, 1.5, 5), (5, 1.5, 4), (1, 2, 1), (10, 1, 11)])
def test_a_packing_is_pressed_when_it_is_closed(length, thickness, count):
    packing = rod_packing(3, 6, length, thickness_mm=thickness)
    assert packing.count == count
    assert packing.pressed_share == pytest.approx(1 - length / (count * thickness))
    assert (packing.hole_mm, packing.outside_mm) == (3, 6.1)
    assert level(packing, "slits") == ("note" if count > 1 else None)
    assert level(packing, "pressed") == ("warning" if packing.pressed_share > 0.25 else None)


def test_felt_wants_grease():
    felt = rod_packing(3, 6, 6, kind="felt")
    assert level(felt, "felt") == "note"
    assert level(felt, "slits") is None
    assert level(rod_packing(3, 6, 6), "felt") is None


@pytest.mark.parametrize(
    "call",
    [
        lambda: head_washer(8.3, 9.0),
        lambda: head_washer(8.3, 1.6, backing_mm=8.5),
        lambda: head_washer(8.3, 1.6, backing_mm=1.5),
        lambda: head_washer(8.3, 1.6, kind="lip"),
        lambda: head_washer(0.83, 0.5),
        lambda: head_washer(8.3, 0.4),
        lambda: head_washer(8.3, 1.6, ovality_mm=2),
        lambda: cork_ring(9, 8.5),
        lambda: cork_ring(2.5, 1.2),
        lambda: rod_packing(3, 3.9, 5),
        lambda: rod_packing(3, 6, 5, kind="cork"),
        lambda: rod_packing(3, 6, 50),
        lambda: rod_packing(0.4, 6, 5),
        lambda: rod_packing(3, 6, 5, thickness_mm=6),
    ],
)
def test_refusals(call):
    with pytest.raises(InputError, match="must be"):
        call()
