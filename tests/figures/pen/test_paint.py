"""Pieces on paper: scaled, filled by their style, oxblood where they are brought out."""

import xml.etree.ElementTree as ET

import pytest
from figures.pen_reading import SVG, points

from pentools.figures.pen.paint import View, paint_pieces
from pentools.figures.pen.svg import BRASS, INK, OXBLOOD, Picture
from pentools.systems.anatomy import Piece


def painted(piece, strong=False):
    picture = Picture(80.0)
    paint_pieces(picture, View(2.0, 5.0, 20.0), [piece], lambda part: strong)
    root = ET.fromstring(picture.finish(40.0, "t", "a"))
    return [node for node in root.iter(f"{SVG}path") if node.get("data-part")]


def hatches(piece):
    picture = Picture(80.0)
    paint_pieces(picture, View(2.0, 5.0, 20.0), [piece])
    root = ET.fromstring(picture.finish(40.0, "t", "a"))
    return [node.get("data-hatch") for node in root.iter(f"{SVG}path") if node.get("data-hatch")]


CORNERS = ((0.0, -1.0), (10.0, -1.0), (10.0, 1.0), (0.0, 1.0))


def test_a_point_of_the_pen_is_scaled_and_moved():
    assert View(2.0, 5.0, 20.0).to_paper((10.0, -3.0)) == (25.0, 14.0)


def test_a_piece_lies_where_its_corners_lie():
    under, over = painted(Piece("rod", CORNERS, "metal"))
    assert points(over) == [(5.0, 18.0), (25.0, 18.0), (25.0, 22.0), (5.0, 22.0)]
    assert (over.get("fill"), over.get("fill-opacity"), over.get("stroke")) == (BRASS, "0.38", INK)
    assert under.get("d") == over.get("d")


@pytest.mark.parametrize(
    ("style", "width", "dashed"), [("line", "0.2", False), ("hidden", "0.2", True), ("spring", "0.4", False)]
)
def test_bare_lines_have_no_fill(style, width, dashed):
    (line,) = painted(Piece("spring", CORNERS, style))
    assert line.get("fill") == "none"
    assert line.get("stroke-width") == width
    assert (line.get("stroke-dasharray") is not None) == dashed
    assert line.get("stroke") == (BRASS if style == "spring" else INK)


def test_what_is_brought_out_is_oxblood_and_heavier():
    _, soft = painted(Piece("sac", CORNERS, "soft"), strong=True)
    assert (soft.get("fill"), soft.get("stroke"), soft.get("stroke-width")) == (OXBLOOD, OXBLOOD, "0.6")
    _, metal = painted(Piece("rod", CORNERS, "metal"), strong=True)
    assert (metal.get("fill"), metal.get("stroke")) == (BRASS, OXBLOOD)
    (line,) = painted(Piece("rod", CORNERS, "line"), strong=True)
    assert (line.get("stroke"), line.get("stroke-width")) == (OXBLOOD, "0.52")
    assert painted(Piece("sac", CORNERS, "soft"))[1].get("stroke-width") == "0.26"


def test_ink_has_neither_ground_nor_edge_until_it_is_brought_out():
    (ink,) = painted(Piece("ink-space", CORNERS, "ink"))
    assert ink.get("stroke") == "none"
    assert ink.get("fill") == "none"
    assert hatches(Piece("ink-space", CORNERS, "ink")) == ["ink"]
    (strong,) = painted(Piece("ink-space", CORNERS, "ink"), strong=True)
    assert strong.get("stroke") == OXBLOOD


def test_cut_pieces_are_hatched_and_voids_are_paper():
    for style in ("cut", "cut-back"):
        assert hatches(Piece("barrel", CORNERS, style)) == [style]
        assert painted(Piece("barrel", CORNERS, style))[1].get("fill") == "none"
    assert hatches(Piece("rod", CORNERS, "metal")) == []
    void = painted(Piece("slot", CORNERS, "void"))[1]
    assert void.get("fill-opacity") is None
