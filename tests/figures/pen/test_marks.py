"""Tags of a survey: their shape says how grave, their words stand in a list."""

import itertools
import xml.etree.ElementTree as ET

import pytest
from figures.pen_reading import SVG, points

from pentools.errors import InputError
from pentools.figures.pen.lettering import LINE_MM
from pentools.figures.pen.marks import TAG_MM, draw_mark_list, draw_tag, mark_of
from pentools.figures.pen.svg import BRASS, JADE, OXBLOOD, Picture


def drawn(marks, width=80.0):
    picture = Picture(width)
    end = draw_mark_list(picture, marks, 10.0)
    return ET.fromstring(picture.finish(end + 5.0, "t", "a")), end


@pytest.mark.parametrize(
    ("word", "form", "colour"),
    [
        ("0 sound", "circle", JADE), ("slight", "circle", JADE), ("2 moderate", "diamond", BRASS),
        ("worn", "diamond", BRASS), ("3 serious", "square", OXBLOOD), (" Lost", "square", OXBLOOD),
    ],
)  # fmt: skip
def test_shape_and_colour_say_how_grave(word, form, colour):
    assert mark_of(1, "sac", "hard", word).form == (form, colour)


def test_a_mark_needs_words_and_a_part():
    with pytest.raises(InputError, match="what was found"):
        mark_of(1, "sac", "  ", "slight")
    with pytest.raises(InputError, match="rocket"):
        mark_of(1, "rocket", "hard", "slight")
    assert mark_of(2, "sac", " hard ", " slight ").text == "hard"


def test_the_list_has_a_line_each_and_no_tag_touches_the_next():
    marks = [mark_of(n, "nib", "bent", "2 moderate") for n in (1, 2, 3)]
    root, end = drawn(marks)
    tags = [[y for _, y in points(node)] for node in root.iter(f"{SVG}polygon")]
    assert len(tags) == 3
    for above, below in itertools.pairwise(tags):
        assert min(below) - max(above) > 0.3
    assert end == pytest.approx(10.0 + 3 * TAG_MM)
    assert "nib: bent (2\u00a0moderate)" in ["".join(n.itertext()) for n in root.iter(f"{SVG}text")]


def test_long_words_take_more_lines():
    _, short = drawn([mark_of(1, "nib", "bent", "1")])
    _, long = drawn([mark_of(1, "nib", "bent at the tip " * 12, "1")])
    assert long > short + 3 * LINE_MM


def test_a_tag_stands_round_its_middle():
    picture = Picture(80.0)
    draw_tag(picture, 20.0, 12.0, mark_of(7, "nib", "bent", "4 lost"))
    root = ET.fromstring(picture.finish(30.0, "t", "a"))
    corners = points(root.find(f"{SVG}polygon"))
    assert {x for x, _ in corners} == {17.5, 22.5}
    assert {y for _, y in corners} == {9.5, 14.5}
    assert root.find(f"{SVG}text").text == "7"
