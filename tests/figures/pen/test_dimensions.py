"""Lengths under a drawing: arrows from end to end, with figures or “not measured”."""

import xml.etree.ElementTree as ET

import pytest
from figures.pen_reading import SVG, points

from pentools.errors import InputError
from pentools.figures.pen.dimensions import arrow, draw_lengths, length_words, spans_to_show
from pentools.figures.pen.paint import View
from pentools.figures.pen.svg import OXBLOOD, Picture
from pentools.systems.anatomy import Anatomy, Span
from pentools.systems.proportions import Proportions


def test_only_dimensions_that_the_pen_has_are_shown():
    anatomy = Anatomy()
    anatomy.length("stroke", 10.0, 38.0, 0.0)
    anatomy.length("housing", 10.0, 12.0, 0.0)
    assert spans_to_show(anatomy, ["stroke"]) == {"stroke": Span((10.0, 0.0), (38.0, 0.0))}
    for name in ("bore", "housing", "rocket"):
        with pytest.raises(InputError, match="one of stroke"):
            spans_to_show(anatomy, [name])


def test_words_have_the_figure_or_say_that_there_is_none():
    full = Proportions({"stroke": 28.3, "bore": 8.0}, frozenset({"bore"}))
    assert (
        length_words("stroke", full, ".").replace("\u202f", " ").replace("\u00a0", " ") == "stroke 28.30 mm (1.114 in)"
    )
    assert length_words("bore", full, ".") == "bore, not measured"
    assert "28,30" in length_words("stroke", full, ",")


def test_arrows_go_from_end_to_end_and_lengths_stand_in_rows_of_their_own():
    full = Proportions({"stroke": 28.0, "barrel_length": 60.0}, frozenset())
    spans = {"stroke": Span((20.0, 0.0), (48.0, 0.0)), "barrel_length": Span((10.0, 0.0), (70.0, 0.0))}
    picture = Picture(160.0)
    view = View(2.0, 5.0, 20.0)
    end = draw_lengths(picture, view, spans, y=40.0, foot=30.0, full=full, decimal_sign=".")
    root = ET.fromstring(picture.finish(end + 5.0, "t", "a"))
    lines = {n.get("data-dimension"): points(n) for n in root.iter(f"{SVG}polyline") if n.get("data-dimension")}
    assert [x for x, _ in lines["stroke"]] == [45.0, 101.0]
    assert [x for x, _ in lines["barrel_length"]] == [25.0, 145.0]
    assert len({y for line in lines.values() for _, y in line}) == 2
    assert end > max(y for line in lines.values() for _, y in line)


def test_nothing_to_show_takes_no_room():
    picture = Picture(160.0)
    full = Proportions({}, frozenset())
    assert draw_lengths(picture, View(1.0, 0.0, 0.0), {}, y=40.0, foot=30.0, full=full, decimal_sign=".") == 40.0


def test_an_arrow_head_points_where_it_is_told():
    picture = Picture(80.0)
    arrow(picture, (10.0, 5.0), (1.0, 0.0), OXBLOOD)
    tip, *wings = points(ET.fromstring(picture.finish(10.0, "t", "a")).find(f"{SVG}polygon"))
    assert tip == (10.0, 5.0)
    assert all(x > 10.0 for x, _ in wings)
    assert sum(y - 5.0 for _, y in wings) == pytest.approx(0.0)
