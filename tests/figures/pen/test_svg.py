"""Elements and pictures: escaped, numbered, with ids of their own."""

import xml.etree.ElementTree as ET

from figures.pen_reading import SVG

from pentools.figures.pen.svg import OXBLOOD, Picture, element, number


def test_elements_escape_their_attributes():
    node = ET.fromstring(element("text", "a", data_note='"<&>'))
    assert node.get("data-note") == '"<&>'
    picture = Picture(80.0)
    picture.text(1.0, 4.0, "<b> & \x00")
    assert ET.fromstring(picture.finish(10.0, "a < b", "c & d")) is not None


def test_numbers_are_short_and_never_minus_nought():
    assert [number(v) for v in (1.0, 1.5, 0.12345, -0.0001, 12.999)] == ["1", "1.5", "0.12", "0", "13"]


def test_a_picture_has_its_size_and_its_words():
    picture = Picture(80.0, "demo")
    root = ET.fromstring(picture.finish(32.5, "Finding", "Numbers"))
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("80mm", "32.5mm", "0 0 80 32.5")
    assert root.find(f"{SVG}title").text == "Finding"
    assert root.find(f"{SVG}desc").text == "Numbers"
    assert Picture(80.0, "demo").prefix != picture.prefix


def test_lines_and_words_are_where_they_are_put():
    picture = Picture(80.0)
    picture.line([(1.0, 2.0), (3.5, 4.25)], stroke=OXBLOOD)
    picture.text(5.0, 6.0, "rod", anchor="middle", bold=True, italic=True)
    root = ET.fromstring(picture.finish(10.0, "t", "a"))
    line, words = root.find(f"{SVG}polyline"), root.find(f"{SVG}text")
    assert (line.get("points"), line.get("stroke"), line.get("fill")) == ("1,2 3.5,4.25", OXBLOOD, "none")
    assert (words.get("x"), words.get("y"), words.get("text-anchor"), words.text) == ("5", "6", "middle", "rod")
    assert (words.get("font-weight"), words.get("font-style")) == ("700", "italic")
