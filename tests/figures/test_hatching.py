"""Hatching: lines inside the outline and nowhere else, as dense as they should be, and never an SVG pattern."""

import re
from itertools import pairwise

import pytest
from matplotlib.path import Path

from pentools.figures.hatching import TEXTURES, hatch_path, hatched
from pentools.figures.pen.section_view import PenOptions, draw_pen
from pentools.figures.pen.zones import ZONE_KINDS, Zone, draw_zones
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape

NOTCHED = [(10.0, 10.03), (60.0, 10.03), (60.0, 40.03), (40.0, 40.03), (35.0, 20.03), (30.0, 40.03), (10.0, 40.03)]
AREA = 50.0 * 30.0 - 0.5 * 10.0 * 20.0
# square millimetres that a millimetre of line stands for: its share of one repeat of the texture
PER_LINE = {
    "cut": 1.2 / 2**0.5, "cut-back": 1.2 / 2**0.5, "cut-soft": 1.2 / (1 + 2 * 2**0.5), "ink": 1.6 * 3.0 / (1.3 + 1.1),
    "bars": 2.0, "cross": 1.0, "slant": 2.0 / 2**0.5, "saltire": 1.8 / 2 / 2**0.5,
}  # fmt: skip


def lines(text):
    for part in text.split("M")[1:]:
        numbers = [float(v) for v in re.findall(r"-?\d+\.?\d*", part)]
        yield list(zip(numbers[::2], numbers[1::2], strict=True))


def length(path):
    return sum(((xb - xa) ** 2 + (yb - ya) ** 2) ** 0.5 for (xa, ya), (xb, yb) in pairwise(path))


@pytest.mark.parametrize("name", TEXTURES)
@pytest.mark.parametrize("outline", [NOTCHED, NOTCHED[::-1]], ids=["one way round", "the other"])
def test_every_line_lies_inside_and_goes_to_the_edge(name, outline):
    """Held against the point-in-polygon test of a plotting library."""
    shape = Path([*outline, outline[0]], closed=True)
    found = list(lines(hatch_path(outline, TEXTURES[name])))
    assert len(found) > 10
    for line in found:
        for (xa, ya), (xb, yb) in pairwise(line):
            assert shape.contains_point(((xa + xb) / 2, (ya + yb) / 2))
    if name in ("cut", "cut-back", "bars", "cross", "slant", "saltire", "cut-soft"):  # unbroken: no line stops short
        for (xa, ya), (xb, yb) in found:
            size = length([(xa, ya), (xb, yb)])
            beyond = (xb + 0.1 * (xb - xa) / size, yb + 0.1 * (yb - ya) / size)
            assert not shape.contains_point(beyond)


@pytest.mark.parametrize("name", PER_LINE)
def test_lines_are_as_dense_as_their_steps(name):
    """All lines together times their distance give the area (Cavalieri)."""
    total = sum(length(line) for line in lines(hatch_path(NOTCHED, TEXTURES[name])))
    assert total * PER_LINE[name] == pytest.approx(AREA, rel=0.03)


def test_dots_are_whole_and_two_stand_in_every_square():
    dots = [line[0] for line in lines(hatch_path(NOTCHED, TEXTURES["dots"]))]
    assert len(dots) == pytest.approx(AREA / 2.0, rel=0.08)
    assert min(x for x, _ in dots) >= 10.2
    assert hatch_path([(0.45, 0.0), (0.6, 0.0), (0.6, 5.0), (0.45, 5.0)], TEXTURES["dots"]) == ""


def test_a_chart_in_points_has_the_same_lines_in_millimetres():
    factor = 72 / 25.4
    drawn = [(factor * x, factor * y) for x, y in NOTCHED]
    here, there = (
        list(lines(hatch_path(*given))) for given in ((NOTCHED, TEXTURES["cut"]), (drawn, TEXTURES["cut"], factor))
    )
    assert len(here) == len(there)
    assert there[5][0] == pytest.approx([factor * v for v in here[5][0]], abs=0.02)


def test_an_outline_that_goes_round_twice_is_filled_once():
    twice = [*NOTCHED, *NOTCHED]
    assert sum(map(length, lines(hatch_path(twice, TEXTURES["bars"])))) == pytest.approx(
        sum(map(length, lines(hatch_path(NOTCHED, TEXTURES["bars"]))))
    )


def test_only_ink_has_a_ground_and_a_sliver_has_no_lines():
    assert hatched(NOTCHED, "ink").count("<path") == 2
    assert hatched(NOTCHED, "cut").count("<path") == 1
    assert hatched([(0.1, 0.1), (0.2, 0.1), (0.2, 0.2)], "bars") == ""


@pytest.mark.parametrize("system", SYSTEMS)
def test_no_drawing_of_a_pen_holds_what_a_printer_turns_into_dots(system):
    shape = PenShape(system)
    zones = [Zone(kind, "barrel", 9.0 + 3.0 * i, 11.5 + 3.0 * i) for i, kind in enumerate(ZONE_KINDS)]
    for drawing in (draw_pen(shape, PenOptions(capped=True)), draw_zones(shape, zones, capped=False)):
        assert "data-hatch" in drawing.svg
        assert not re.search(r"<(pattern|mask|filter|image)\b", drawing.svg)
