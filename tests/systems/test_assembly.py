"""A whole pen: open or capped, and how far it reaches."""

import pytest

from pentools.systems.assembly import anatomy_of
from pentools.systems.parts import parts_of
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape
from pentools.systems.typical import proportions_of


@pytest.mark.parametrize("capped", [False, True])
@pytest.mark.parametrize("system", SYSTEMS)
def test_every_declared_part_has_a_piece_and_an_anchor_and_nothing_else_has(system, capped):
    anatomy, front, back = anatomy_of(system, proportions_of(PenShape(system)), capped=capped)
    wanted = set(parts_of(system, cap=capped))
    assert {piece.part for piece in anatomy.pieces} >= wanted
    assert set(anatomy.anchors) >= wanted
    xs = [x for piece in anatomy.pieces for x, _ in piece.points]
    assert (front, back) == pytest.approx((min(0.0, *xs), max(xs)))


@pytest.mark.parametrize("system", SYSTEMS)
def test_each_anchor_lies_in_the_box_of_its_part(system):
    anatomy, _, _ = anatomy_of(system, proportions_of(PenShape(system)), capped=True)
    for part, (x, y) in anatomy.anchors.items():
        if part not in parts_of(system):
            continue
        points = [p for piece in anatomy.pieces if piece.part == part for p in piece.points]
        assert min(px for px, _ in points) - 0.3 <= x <= max(px for px, _ in points) + 0.3, part
        assert min(py for _, py in points) - 0.3 <= y <= max(py for _, py in points) + 0.3, part


@pytest.mark.parametrize("system", SYSTEMS)
def test_nothing_but_crescent_clip_and_cap_stands_out_of_the_barrel(system):
    full = proportions_of(PenShape(system))
    anatomy, _, _ = anatomy_of(system, full)
    outer = full.radius("barrel_diameter")
    out = {piece.part for piece in anatomy.pieces for _, y in piece.points if abs(y) > outer + 0.5}
    assert out <= {"crescent", "lock-ring"}
