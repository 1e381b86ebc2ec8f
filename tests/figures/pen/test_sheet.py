"""What every sheet has: title, captions, centre line, labels with their leaders."""

import xml.etree.ElementTree as ET

import pytest
from figures.pen_reading import SVG, points

from pentools.figures.pen.labels import Label, place_row
from pentools.figures.pen.marks import TAG_MM, mark_of
from pentools.figures.pen.paint import View
from pentools.figures.pen.sheet import caption_words, draw_axis, draw_caption, draw_side, draw_title, with_article
from pentools.figures.pen.svg import Picture
from pentools.systems.anatomy import Span
from pentools.systems.proportions import Proportions


def test_a_caption_says_what_was_measured():
    measured = {"barrel_length": Span((0.0, 0.0), (66.0, 0.0)), "bore": Span((5.0, -4.2), (5.0, 4.2))}
    values = {"barrel_length": 66.0, "bore": 8.4}
    assert caption_words(Proportions(values, frozenset()), measured) == "Drawn to scale from measurements."
    assumed = caption_words(Proportions(values, frozenset({"barrel_length"})), measured)
    assert assumed == "Drawn; proportions assumed where not measured."
    torn = caption_words(Proportions({**values, "bore": 8.6}, frozenset()), measured)
    assert torn.endswith("They do not fit together, so not as measured: bore.")
    assert "fit together" not in caption_words(Proportions({**values, "bore": 8.45}, frozenset()), measured)


def test_the_scale_stands_in_the_caption():
    picture = Picture(160.0)
    foot = draw_caption(picture, "Drawn.", 20.0, 1.234)
    words = "".join(ET.fromstring(picture.finish(30.0, "t", "a")).find(f"{SVG}text").itertext())
    assert words == "Drawn. 1.23\u00a0:\u00a01 at 160\u202fmm\u00a0wide."
    assert foot == 20.0


def test_a_long_title_is_broken_and_moves_the_drawing_down():
    short, long = draw_title(Picture(80.0), "One."), draw_title(Picture(80.0), "A long finding " * 8)
    assert long > short > 0.0


def test_the_axis_goes_from_edge_to_edge():
    picture = Picture(100.0)
    draw_axis(picture, View(1.0, 2.0, 30.0))
    line = ET.fromstring(picture.finish(40.0, "t", "a")).find(f"{SVG}polyline")
    assert points(line) == [(0.4, 30.0), (99.6, 30.0)]


@pytest.mark.parametrize("sign", [-1.0, 1.0])
def test_a_label_lies_beyond_its_rail_with_its_tag_before_its_words(sign):
    mark = mark_of(3, "sac", "hard", "3 serious")
    placed, height = place_row([Label("sac", ("sac",), (40.0, sign * 3.0), marks=(mark,))], 2.0, 78.0)
    picture = Picture(80.0)
    rail = 30.0 + sign * 8.0
    draw_side(picture, View(1.0, 0.0, 30.0), placed, rail, sign)
    root = ET.fromstring(picture.finish(60.0, "t", "a"))
    x0, y0, x1, y1 = (float(v) for v in root.find(f"{SVG}g").get("data-box").split())
    assert abs(y1 - y0 - TAG_MM) < 1e-6
    assert y0 > rail if sign > 0 else y1 < rail
    tag = points(root.find(f"{SVG}polygon"))
    words = next(n for n in root.iter(f"{SVG}text") if n.text == "sac")
    assert x0 <= min(x for x, _ in tag) < max(x for x, _ in tag) < float(words.get("x")) < x1
    leader = points(next(n for n in root.iter(f"{SVG}polyline") if n.get("data-leader") == "sac"))
    assert leader[0] == (40.0, 30.0 + sign * 3.0)
    assert leader[1] == (40.0, rail)
    assert height == pytest.approx(abs((y1 if sign > 0 else y0) - rail))


@pytest.mark.parametrize(("words", "said"), [("eyedropper", "an eyedropper"), ("piston filler", "a piston filler")])
def test_articles(words, said):
    assert with_article(words) == said
