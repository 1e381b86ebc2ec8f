"""What to cut where no ring goes: sizes to the tenth, ladders, cautions."""

import pytest
from ranges import refuses, takes_only

from pentools.calc.seal.washers import cork_ring, head_washer, rod_packing


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


# 8.5 mm across: it stands out by half of what the backing washer is smaller; 2 · 0.64 and 0.15 mm are judged
@pytest.mark.parametrize(
    ("backing", "words"),
    [(5.0, "1.75 mm out over the backing washer: it will flip"), (5.93, "1.29 mm out over the backing washer: it will flip"), (5.95, ""), (8.19, ""), (8.21, "cannot flex")],
)  # fmt: skip
def test_overhang(backing, words):
    fit = head_washer(8.3, 1.6, backing_mm=backing)
    if words:
        assert words in text(fit, "overhang")
        assert level(fit, "overhang") == "warning"
    else:
        assert level(fit, "overhang") is None


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


def test_a_stack_is_pressed_by_eight_per_cent_and_warned_of_above_a_quarter():
    # 1.08 · 25 = 27 mm is 18 rings of 1.5 mm, a hair more is 19
    assert (rod_packing(3, 6, 25).count, rod_packing(3, 6, 25.01).count) == (18, 19)
    # two rings of 2 mm on 3.01 and on 2.99 mm
    assert level(rod_packing(3, 6, 3.01, thickness_mm=2), "pressed") is None
    assert text(rod_packing(3, 6, 2.99, thickness_mm=2), "pressed").startswith(
        "2 rings of 2 mm would be pressed by 25\u202f%"
    )


def test_felt_wants_grease():
    felt = rod_packing(3, 6, 6, kind="felt")
    assert level(felt, "felt") == "note"
    assert level(felt, "slits") is None
    assert level(rod_packing(3, 6, 6), "felt") is None


@pytest.mark.parametrize(
    ("call", "low", "high"),
    [
        (lambda x: head_washer(x, 1.6), 2, 20), (lambda x: head_washer(12, x), 0.5, 10),
        (lambda x: cork_ring(x, 1.2), 3, 25), (lambda x: cork_ring(9.0, x), 1, 8), (lambda x: cork_ring(25, x), 1, 24),
        (lambda x: rod_packing(x, 20, 6), 0.5, 12), (lambda x: rod_packing(3, 6, x), 1, 30),
        (lambda x: rod_packing(3, 6, 5, thickness_mm=x), 0.3, 5),
    ],
)  # fmt: skip
def test_ranges(call, low, high):
    takes_only(call, low, high)


def test_what_cannot_go_together():
    refuses(lambda rod: head_washer(8.3, rod), 8.3, 9.0)
    refuses(lambda backing: head_washer(8.3, 1.6, backing_mm=backing), 1.6, 8.3, 8.5)
    refuses(lambda ovality: head_washer(8.3, 1.6, ovality_mm=ovality), -0.01, 1)
    assert head_washer(8.3, 1.6, ovality_mm=0.99).outside_high_mm == pytest.approx(8.3 + 0.3 + 0.495)
    refuses(lambda kind: head_washer(8.3, 1.6, kind=kind), "lip")
    refuses(lambda kind: rod_packing(3, 6, 5, kind=kind), "cork")
    refuses(lambda housing: rod_packing(3, housing, 5), 3.99)
    assert rod_packing(3, 4, 5).outside_mm == 4.1
