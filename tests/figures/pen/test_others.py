"""Zones on the outside, where to measure, the balance, and the lettering they all use."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest
from figures.pen_reading import SVG, crossing, ids, overlapping, points, texts, tree

from pentools.errors import InputError
from pentools.figures.pen.labels import spread
from pentools.figures.pen.lettering import format_length, text_width_mm, wrap
from pentools.figures.pen.measure_here import measurable, measure_here
from pentools.figures.pen.svg import Picture, element
from pentools.figures.pen.weigh_here import weigh_here
from pentools.figures.pen.zones import ZONE_KINDS, Zone, draw_zones
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape


def zone_box(drawing, index):
    nodes = [n for n in tree(drawing).iter(f"{SVG}path") if (n.get("data-zone") or "").startswith(f"{index} ")]
    xs = [x for node in nodes for x, _ in points(node)]
    return min(xs), max(xs)


def test_a_zone_lies_where_it_was_measured():
    pen = PenShape("lever-sac", barrel_length_mm=70.0, barrel_diameter_mm=12.0)
    drawing = draw_zones(pen, [Zone("plain", "barrel"), Zone("imprint", "barrel", 20.0, 41.0)], capped=False)
    whole, part = zone_box(drawing, 1), zone_box(drawing, 2)
    scale = (whole[1] - whole[0]) / 70.0
    assert part[0] - whole[0] == pytest.approx(20.0 * scale, abs=0.03)
    assert part[1] - whole[0] == pytest.approx(41.0 * scale, abs=0.03)


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_kind_of_zone_has_its_pattern_and_its_words(system):
    zones = [Zone(kind, "barrel", 9.0 + 6.0 * i, 14.0 + 6.0 * i) for i, kind in enumerate(ZONE_KINDS)]
    drawing = draw_zones(PenShape(system), zones, capped=False)
    said = " ".join(texts(drawing))
    fills = {n.get("fill") for n in tree(drawing).iter(f"{SVG}path") if n.get("data-zone")}
    assert all(fill.startswith("url(#") for fill in fills)
    for name, allowed, _ in ZONE_KINDS.values():
        assert all(word in said for word in f"{name} {allowed}".split())
    assert overlapping(drawing) == []
    assert crossing(drawing) == []
    assert len(ids(drawing)) == len(set(ids(drawing)))


def test_zone_titles_count_and_words_can_be_ones_own():
    zones = [Zone("plain", "cap"), Zone("plating", "cap-band"), Zone("gold-filled", "clip", words="4 µm at most")]
    drawing = draw_zones(PenShape("piston"), zones)
    assert drawing.title == "2 of 3 zones are kept from any abrasive."
    assert "4 µm at most" in " ".join(texts(drawing))
    assert "cap band: plating" in drawing.alt


def test_zones_that_cannot_be_are_refused():
    with pytest.raises(InputError):
        Zone("sandpaper", "barrel")
    with pytest.raises(InputError):
        Zone("plain", "barrel", 30.0, 20.0)
    with pytest.raises(InputError, match="cap off"):
        draw_zones(PenShape("piston"), [Zone("plain", "section")])
    with pytest.raises(InputError, match="less than"):
        draw_zones(PenShape("piston"), [Zone("plain", "barrel", 400.0)])


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_measurement_of_every_system_has_its_drawing(system):
    names = measurable(system)
    assert {"bore", "barrel_diameter", "capped_length"} <= set(names)
    for name in names:
        drawing = measure_here(system, name)
        assert drawing.title.startswith("Measure the ")
        root = tree(drawing)
        assert root.get("width") == "80mm"
        height = float(root.get("viewBox").split()[3])
        assert 20.0 < height < 90.0
        arrows = [n for n in root.iter(f"{SVG}polyline") if n.get("data-dimension")]
        assert len(arrows) == 1
        for x, y in points(arrows[0]):
            assert 0.0 <= x <= 80.0
            assert 0.0 <= y <= height


@pytest.mark.parametrize(
    ("system", "asked"),
    [
        ("piston", ("bore", "head", "groove", "groove-width", "rod", "stroke", "feed-tail")),
        ("lever-sac", ("outside", "wall", "sac-length", "nipple", "depth")),
        ("plunger-vacuum", ("bore_mm", "rod", "housing", "stroke")),
        ("diaphragm-pump", ("breather-length", "stroke")),
    ],
)
def test_the_usual_names_are_understood(system, asked):
    for name in asked:
        assert measure_here(system, name).alt


def test_the_jaws_touch_the_two_points_of_an_outside_diameter():
    drawing = measure_here("piston", "rod")
    root = tree(drawing)
    (_, y0), (_, y1) = points(next(n for n in root.iter(f"{SVG}polyline") if n.get("data-dimension")))
    jaws = [points(n) for n in root.iter(f"{SVG}polygon") if n.get("data-tool")]
    assert max(y for _, y in jaws[0]) == pytest.approx(y0, abs=0.02)
    assert min(y for _, y in jaws[1]) == pytest.approx(y1, abs=0.02)


def test_a_measurement_the_pen_has_not_got_is_refused():
    with pytest.raises(InputError, match="one of"):
        measure_here("piston", "sac_outside")
    with pytest.raises(InputError):
        measure_here("piston", "bore", width_mm=10.0)


def test_the_balance_shows_what_was_read_or_that_nothing_was():
    drawing = weigh_here("lever-sac", readings=("18.92 g", ""))
    assert "18.92 g" in texts(drawing)
    assert "Empty: 18.92 g." in drawing.alt
    assert "Filled: not weighed yet." in drawing.alt
    with pytest.raises(InputError):
        weigh_here("rocket")


def test_text_is_never_wider_than_was_reckoned():
    font_manager = pytest.importorskip("matplotlib.font_manager")
    image_font = pytest.importorskip("PIL.ImageFont")
    try:
        path = font_manager.findfont("Liberation Sans", fallback_to_default=False)
    except ValueError:
        pytest.skip("a face with the widths of the drawings' stack is not installed")
    font = image_font.truetype(path, 1000)
    for words in (
        "pressure bar",
        "nib",
        "WAVY illimitable",
        "converter or cartridge",
        "8.40 mm (0.331 in)",
        "Größe fjord",
    ):
        real = font.getlength(words) / 1000.0 * 3.2
        assert real <= text_width_mm(words) <= real * 1.25


def test_lines_break_at_spaces_only_and_long_words_are_cut():
    assert wrap("bore 8.40\u202fmm\u00a0(0.331\u202fin)", 12.0)[0] == "bore"
    assert "".join(wrap("x" * 300, 30.0)) == "x" * 300
    assert max(text_width_mm(line) for line in wrap("x" * 300 + " y", 30.0)) <= 30.0
    assert wrap("", 30.0) == ("",)


def test_lengths_are_shown_in_both_units():
    assert format_length(11.9126).replace("\u202f", " ").replace("\u00a0", " ") == "11.91 mm (0.469 in)"
    assert format_length(136.525, ",").replace("\u202f", " ").replace("\u00a0", " ") == "136,5 mm (5,375 in)"


def test_spread_keeps_order_and_distance_and_moves_as_little_as_it_can():
    places = spread([3.0, 3.5, 40.0], [6.0, 4.0, 2.0], 0.0, 60.0, 1.0)
    assert places == sorted(places)
    assert places[1] - places[0] >= 6.0 - 1e-9
    assert places[2] == 40.0
    assert places[0] >= 3.0


def test_elements_escape_their_attributes():
    node = ET.fromstring(element("text", "a", data_note='"<&>'))
    assert node.get("data-note") == '"<&>'
    picture = Picture(80.0)
    picture.text(1.0, 4.0, "<b> & \x00")
    assert ET.fromstring(picture.finish(10.0, "a < b", "c & d")) is not None
