"""Pieces, anchors and spans: mirrored where a part is turned, closed where it closes."""

import pytest

from pentools.systems.anatomy import Anatomy, Span


def area(points):
    """Shoelace."""
    return 0.5 * abs(
        sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, [*points[1:], points[0]], strict=True))
    )


def test_a_solid_is_mirrored_on_the_axis():
    a = Anatomy()
    a.solid("rod", [(0.0, 2.0), (10.0, 2.0)], "metal")
    assert a.pieces[0].points == ((0.0, -2.0), (10.0, -2.0), (10.0, 2.0), (0.0, 2.0))
    assert area(a.pieces[0].points) == pytest.approx(40.0)


def test_an_open_shell_is_two_walls_and_a_closed_one_a_single_piece():
    tube, cup = Anatomy(), Anatomy()
    tube.ring("washer", (3.0, 2.0), (4.0, 1.5), "soft")
    assert len(tube.pieces) == 2
    assert [area(piece.points) for piece in tube.pieces] == pytest.approx([5.0, 5.0])
    assert {y for _, y in tube.pieces[0].points} == {-4.0, -1.5}
    assert {y for _, y in tube.pieces[1].points} == {4.0, 1.5}
    assert {x for x, _ in tube.pieces[1].points} == {3.0, 5.0}
    cup.shell("cap", [(0.0, 3.0), (5.0, 3.0), (5.0, 0.0)], [(0.0, 2.0), (4.0, 2.0), (4.0, 0.0)], "cut")
    assert len(cup.pieces) == 1
    assert area(cup.pieces[0].points) == pytest.approx(5 * 6 - 4 * 4)


def test_an_o_ring_is_cut_on_both_sides():
    a = Anatomy()
    a.o_ring("ring", 4.0, 5.0, 3.0)
    for piece, middle in zip(a.pieces, (-4.0, 4.0), strict=True):
        assert max(y for _, y in piece.points) == pytest.approx(middle + 1.0)
        assert min(y for _, y in piece.points) == pytest.approx(middle - 1.0)
        assert max(x for x, _ in piece.points) == pytest.approx(5.0)


def test_a_spring_has_its_coils_between_its_ends():
    a = Anatomy()
    a.spring("spring", 2.0, 10.0, 1.5, coils=4)
    points = a.pieces[0].points
    assert (points[0], points[-1]) == ((2.0, -1.5), (10.0, -1.5))
    assert sum(1 for _, y in points if y == 1.5) == 4


def test_spans_know_their_way_and_size():
    a = Anatomy()
    a.length("stroke", 3.0, 31.0, 0.5)
    a.diameter("bore", 12.0, 4.5)
    assert (a.spans["stroke"].along, a.spans["stroke"].size) == (True, 28.0)
    assert (a.spans["bore"].along, a.spans["bore"].size) == (False, 9.0)
    assert a.spans["bore"] == Span((12.0, -4.5), (12.0, 4.5))


def test_an_anchor_is_fixed_only_where_it_is_said():
    a = Anatomy()
    a.anchor("rod", 1.0, 2.0)
    a.anchor("lever", 3.0, 4.0, fixed=True)
    assert a.anchors == {"rod": (1.0, 2.0), "lever": (3.0, 4.0)}
    assert a.fixed == {"lever"}
