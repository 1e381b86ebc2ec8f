"""Zones on the outside: where they were measured, each kind with its hatching and words."""

import pytest
from figures.pen_reading import SVG, crossing, ids, overlapping, points, texts, tree

from pentools.errors import InputError
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
def test_every_kind_of_zone_has_its_hatching_and_its_words(system):
    kinds = list(ZONE_KINDS)
    for some in (kinds[:7], kinds[7:]):
        zones = [Zone(kind, "barrel", 9.0 + 6.0 * i, 14.0 + 6.0 * i) for i, kind in enumerate(some)]
        drawing = draw_zones(PenShape(system), zones, capped=False)
        said = " ".join(texts(drawing))
        hatches = [n.get("data-hatch") for n in tree(drawing).iter(f"{SVG}path") if n.get("data-hatch")]
        assert [name for name in hatches if name != "cut"] == [ZONE_KINDS[kind][2] for kind in some]
        for name, allowed, _ in (ZONE_KINDS[kind] for kind in some):
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
