"""Where to measure: jaws at the points, one arrow, nothing outside the picture."""

import pytest
from figures.pen_reading import SVG, points, texts, tree

from pentools.errors import InputError
from pentools.figures.pen.measure_here import measurable, measure_here
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import PenShape


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


def jaws(drawing):
    root = tree(drawing)
    arrow = points(next(n for n in root.iter(f"{SVG}polyline") if n.get("data-dimension")))
    return arrow, [points(n) for n in root.iter(f"{SVG}polygon") if n.get("data-tool")]


def test_inside_jaws_touch_the_bore_from_within():
    ((_, y0), (_, y1)), (upper, lower) = jaws(measure_here("piston", "bore"))
    assert min(y for _, y in upper) == pytest.approx(y0, abs=0.02)
    assert max(y for _, y in lower) == pytest.approx(y1, abs=0.02)


def test_a_depth_rod_reaches_from_the_mouth_to_the_floor():
    ((x0, _), (x1, _)), (rod, foot) = jaws(measure_here("lever-sac", "barrel_depth"))
    assert max(x for x, _ in rod) == pytest.approx(x1, abs=0.02)
    assert max(x for x, _ in foot) == pytest.approx(x0, abs=0.02)


def test_jaws_for_a_length_stand_at_both_ends():
    ((x0, _), (x1, _)), (left, right) = jaws(measure_here("lever-sac", "sac_length"))
    assert max(x for x, _ in left) == pytest.approx(x0, abs=0.02)
    assert min(x for x, _ in right) == pytest.approx(x1, abs=0.02)


def test_thin_blades_go_to_the_bottom_of_the_groove():
    ((_, y0), (_, y1)), (upper, lower) = jaws(measure_here("piston", "groove"))
    assert max(y for _, y in upper) == pytest.approx(y0, abs=0.02)
    assert min(y for _, y in lower) == pytest.approx(y1, abs=0.02)
    assert {round(x1 - x0, 2) for x0, x1 in [(min(x for x, _ in b), max(x for x, _ in b)) for b in (upper, lower)]} == {
        1.6
    }


def test_a_stroke_has_no_tool_and_a_step_only_its_arrow():
    assert jaws(measure_here("piston", "stroke"))[1] == []


def test_the_pens_own_size_is_told_where_it_is_known():
    own = " ".join(texts(measure_here("piston", "bore", shape=PenShape("piston", bore_mm=8.4))))
    assert "not to scale with your pen" not in own
    assert "not to scale with your pen" in " ".join(texts(measure_here("piston", "bore")))


def test_the_title_can_be_left_to_the_page():
    drawing = measure_here("piston", "bore", show_title=False)
    assert drawing.title == "Measure the bore here."
    assert "Measure the bore here." not in texts(drawing)
    assert "A drawing of barrel of a piston filler." in drawing.alt
