"""The pen in section: valid, to scale, every part named, labels and leaders clear of each other."""

from __future__ import annotations

from dataclasses import replace

import pytest
from figures.pen_reading import SVG, boxes, crossing, extent, ids, leaders, overlapping, texts, through_labels, tree
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from pentools.errors import InputError
from pentools.figures.drawing import Drawing
from pentools.figures.pen import labels
from pentools.figures.pen.marks import mark_of
from pentools.figures.pen.section_view import PenOptions, draw_pen
from pentools.systems.assembly import anatomy_of
from pentools.systems.dimensions import DIMENSIONS, dimension_words
from pentools.systems.parts import CAP_PARTS, part_name, parts_of
from pentools.systems.registry import SYSTEMS
from pentools.systems.shape import DRAWN, PenShape
from pentools.systems.typical import proportions_of

MEASURED = {
    "barrel_length_mm": 66.0, "barrel_diameter_mm": 12.4, "bore_mm": 8.6, "section_length_mm": 16.0,
    "section_diameter_mm": 10.2, "nib_length_mm": 20.5,
}  # fmt: skip


@pytest.mark.parametrize("capped", [False, True])
@pytest.mark.parametrize("system", SYSTEMS)
def test_every_system_draws_with_every_part_drawn_and_named(system, capped):
    drawing = draw_pen(PenShape(system), PenOptions(capped=capped))
    assert isinstance(drawing, Drawing)
    wanted = set(parts_of(system, cap=capped))
    assert set(boxes(drawing)) == wanted
    assert set(leaders(drawing)) == wanted
    drawn = {node.get("data-part") for node in tree(drawing).iter(f"{SVG}path")} - {None}
    assert wanted <= drawn
    said = " ".join(texts(drawing))
    for part in wanted:
        assert all(word in said for word in part_name(part).split())


@pytest.mark.parametrize("width_mm", [80.0, 160.0])
@pytest.mark.parametrize("capped", [False, True])
@pytest.mark.parametrize("system", SYSTEMS)
def test_no_label_lies_on_another_and_no_leader_crosses(system, capped, width_mm):
    drawing = draw_pen(PenShape(system), PenOptions(capped=capped, width_mm=width_mm))
    assert overlapping(drawing) == []
    assert crossing(drawing) == []
    assert through_labels(drawing) == []
    _, _, width, height = (float(v) for v in tree(drawing).get("viewBox").split())
    for x0, y0, x1, y1 in boxes(drawing).values():
        assert 0.0 <= x0 < x1 <= width
        assert 0.0 <= y0 < y1 <= height


@pytest.mark.parametrize("system", [key for key in SYSTEMS if key != "safety"])
def test_the_drawing_has_the_pens_own_proportions(system):
    drawing = draw_pen(PenShape(system, **MEASURED))
    x0, y0, x1, y1 = extent(drawing, "barrel")
    scale = (y1 - y0) / 12.4
    rear = 0.3 * MEASURED["barrel_length_mm"]  # a barrel's reduced rear end may reach into the blind cap
    if system in {"button-sac", "bulb", "bellows"}:
        assert 66.0 * scale - 0.03 <= x1 - x0 <= (66.0 + rear) * scale
    else:
        assert x1 - x0 == pytest.approx(66.0 * scale, abs=0.05)
    n0, _, _, _ = extent(drawing, "nib")
    s0, t0, _, t1 = extent(drawing, "section")
    assert s0 - n0 == pytest.approx(20.5 * scale, abs=0.05)
    assert x0 - s0 == pytest.approx(16.0 * scale, abs=0.05)
    assert 10.2 * scale - 0.05 <= t1 - t0 <= 12.4 * scale


def test_doubling_one_dimension_doubles_it_on_paper_against_the_others():
    def ratio(length, diameter):
        x0, y0, x1, y1 = extent(
            draw_pen(PenShape("eyedropper", barrel_length_mm=length, barrel_diameter_mm=diameter)), "barrel"
        )
        return (x1 - x0) / (y1 - y0)

    assert ratio(80.0, 10.0) == pytest.approx(8.0, rel=2e-3)
    assert ratio(80.0, 20.0) == pytest.approx(4.0, rel=2e-3)
    assert ratio(40.0, 10.0) == pytest.approx(4.0, rel=2e-3)


def test_a_sac_a_rod_and_a_bore_are_to_scale_too():
    sac = draw_pen(
        PenShape("lever-sac", **MEASURED, sac_outside_mm=6.9, sac_length_mm=41.0, nipple_mm=5.6, sac_wall_mm=0.5)
    )
    x0, y0, x1, y1 = extent(sac, "sac")
    assert (x1 - x0) / (y1 - y0) == pytest.approx(41.0 / 6.9, rel=3e-3)
    piston = draw_pen(
        PenShape("piston", **MEASURED, rod_mm=3.1, head_diameter_mm=8.3), PenOptions(dimensions=("bore", "rod"))
    )
    lines = {node.get("data-dimension"): node for node in tree(piston).iter(f"{SVG}polyline")}
    high = {name: [float(v.split(",")[1]) for v in lines[name].get("points").split()] for name in ("bore", "rod")}
    assert (high["bore"][1] - high["bore"][0]) / (high["rod"][1] - high["rod"][0]) == pytest.approx(8.6 / 3.1, rel=3e-3)


def test_two_drawings_on_one_page_share_no_id_and_refer_only_to_their_own():
    one, two = draw_pen(PenShape("piston")), draw_pen(PenShape("piston"))
    assert not set(ids(one)) & set(ids(two))
    assert len(ids(one)) == len(set(ids(one)))
    for drawing in (one, two):
        root = tree(drawing)
        assert root.get("role") == "img"
        named = {node.get("id"): "".join(node.itertext()) for node in root if node.get("id")}
        first, second = root.get("aria-labelledby").split()
        assert (named[first], named[second]) == (drawing.title, drawing.alt)
        assert "url(" not in drawing.svg


def test_width_and_text_size_on_paper():
    root = tree(draw_pen(PenShape("bulb"), PenOptions(width_mm=160.0)))
    assert root.get("width") == "160mm"
    assert root.get("viewBox").split()[2] == "160"
    sizes = [float(node.get("font-size") or root.get("font-size")) for node in root.iter(f"{SVG}text")]
    assert min(sizes) * 72.0 / 25.4 >= 9.0


def test_a_highlight_is_told_by_line_weight_and_word_as_well_as_colour():
    drawing = draw_pen(PenShape("piston"), PenOptions(highlight=("head-seal",), highlight_word="first suspect"))
    paths = [node for node in tree(drawing).iter(f"{SVG}path") if node.get("stroke") and node.get("stroke") != "none"]
    strong = [n for n in paths if n.get("data-part") == "head-seal"]
    others = [float(n.get("stroke-width")) for n in paths if n.get("data-part") != "head-seal"]
    assert strong
    assert all(n.get("stroke") == "#8c2f39" and float(n.get("stroke-width")) > max(others) for n in strong)
    assert "first suspect" in " ".join(texts(drawing))


def test_marks_are_numbered_and_said_in_words_and_user_text_is_escaped():
    nasty = '<script>alert("x")</script> & more\x07'
    drawing = draw_pen(
        PenShape("lever-sac"),
        PenOptions(
            title=f"Two things: {nasty}", marks=(("sac", nasty, "severe"), ("clip", "brassed at the ball", "slight"))
        ),
    )
    assert "<script" not in drawing.svg
    said = " ".join(texts(drawing))
    assert '<script>alert("x")</script> & more' in said
    assert "clip: brassed at the ball (slight)" in said
    assert {"1", "2"} <= set(texts(drawing))
    assert set(CAP_PARTS) <= set(boxes(drawing)), "a mark on the clip puts the cap on"
    assert "Tag 2, clip: brassed at the ball (slight)" in drawing.alt


def test_dimensions_show_figures_or_say_not_measured():
    shape = PenShape("piston", bore_mm=8.4, stroke_mm=31.0)
    drawing = draw_pen(shape, PenOptions(dimensions=("bore", "stroke", "rod")))
    said = " ".join(texts(drawing)).replace("\u202f", " ").replace("\u00a0", " ")
    assert "⌀ 8.40 mm (0.331 in)" in said
    assert "stroke 31.00 mm (1.220 in)" in said
    assert "not measured" in said
    assert overlapping(drawing) == []
    comma = " ".join(texts(draw_pen(shape, PenOptions(dimensions=("bore",), decimal_sign=",")))).replace("\u202f", " ")
    assert "8,40 mm" in comma
    assert "8.40 mm (0.331 in)" in drawing.alt.replace("\u202f", " ").replace("\u00a0", " ")


def test_the_caption_says_what_the_drawing_rests_on():
    assert "proportions assumed where not measured" in " ".join(texts(draw_pen(PenShape("piston"))))
    some = " ".join(texts(draw_pen(PenShape("piston", **MEASURED))))
    assert "to scale from measurements; smaller parts not measured are typical" in some


def test_measurements_that_do_not_fit_together_are_named_not_hidden():
    torn = PenShape("lever-sac", **MEASURED, open_length_mm=160.0)
    said = " ".join(texts(draw_pen(torn)))
    assert "do not fit together" in said
    assert "uncapped length" in said
    sound = PenShape("lever-sac", **MEASURED, open_length_mm=66.0 + 16.0 + 20.5)
    assert "do not fit" not in " ".join(texts(draw_pen(sound)))


@pytest.mark.parametrize(
    ("severity", "tag"), [("0 sound", "circle"), ("moderate", "diamond"), ("3 serious: it does not work", "square")]
)
def test_a_tag_tells_how_grave_by_its_shape(severity, tag):
    assert mark_of(1, "sac", "hard", severity).form[0] == tag
    drawing = draw_pen(PenShape("piston"), PenOptions(marks=(("seals", "shrunken cork", severity),)))
    assert f"head seal: shrunken cork ({severity})" in " ".join(texts(drawing)).replace("\u00a0", " ")


@pytest.mark.parametrize(
    "options",
    [
        {"highlight": ("sac",)}, {"dimensions": ("sac_outside",)}, {"dimensions": ("feed_tail",)},
        {"marks": (("lever", "bent", "slight"),)}, {"marks": (("rod", "  ", "slight"),)}, {"width_mm": 12.0},
        {"labels": ("helix",)},
    ],
)  # fmt: skip
def test_what_a_piston_pen_does_not_have_is_refused(options):
    with pytest.raises(InputError):
        draw_pen(PenShape("piston"), PenOptions(**options))


SHAPES = st.builds(
    lambda system, diameter, wall, length, nib, section: PenShape(
        system,
        barrel_diameter_mm=diameter,
        bore_mm=max(diameter - wall, 2.5),
        barrel_length_mm=length,
        nib_length_mm=nib,
        section_length_mm=section,
    ),
    st.sampled_from(tuple(SYSTEMS)),
    st.floats(6.0, 22.0),
    st.floats(1.3, 4.0),
    st.floats(30.0, 110.0),
    st.floats(5.0, 30.0),
    st.floats(8.0, 28.0),
)


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(SHAPES, st.booleans())
def test_odd_proportions_still_draw_clear_of_each_other(shape, capped):
    drawing = draw_pen(shape, PenOptions(capped=capped))
    assert "nan" not in drawing.svg
    assert overlapping(drawing) == []
    assert crossing(drawing) == []
    width, height = (float(v) for v in tree(drawing).get("viewBox").split()[2:])
    for part in parts_of(shape.system, cap=capped):
        x0, y0, x1, y1 = extent(drawing, part)
        assert x0 >= 0.0
        assert y0 >= 0.0
        assert x1 <= width
        assert y1 <= height


@st.composite
def _measured_anyhow(draw):
    system = draw(st.sampled_from(tuple(SYSTEMS)))
    typical = proportions_of(PenShape(system)).values
    chosen = {}
    for name in DRAWN:
        low, high = DIMENSIONS[name].low, DIMENSIONS[name].high
        if typical.get(name) and draw(st.booleans()):
            chosen[f"{name}_mm"] = min(max(typical[name] * draw(st.floats(0.5, 1.8)), low), high)
    return system, chosen


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(_measured_anyhow(), st.booleans())
def test_whatever_was_measured_is_drawn_so_or_said_not_to_fit(drawn, capped):
    system, chosen = drawn
    try:
        shape = PenShape(system, **chosen)
    except InputError:
        return
    drawing = draw_pen(shape, PenOptions(capped=capped))
    caption = " ".join(texts(drawing))
    spans = anatomy_of(system, proportions_of(shape), capped=capped)[0].spans
    for name in set(spans) & set(DRAWN):
        measured = shape.measured(name)
        if measured is not None and abs(spans[name].size - measured) > 0.1:
            assert dimension_words(name) in caption
    assert overlapping(drawing) == []
    assert crossing(drawing) == []
    width, height = (float(v) for v in tree(drawing).get("viewBox").split()[2:])
    for part in parts_of(system, cap=capped):
        x0, y0, x1, y1 = extent(drawing, part)
        assert min(x0, y0) >= 0.0
        assert x1 <= width
        assert y1 <= height


def test_the_checks_for_overlap_and_crossing_can_fail(monkeypatch):
    monkeypatch.setattr(labels, "spread", lambda wanted, *_rest, **_options: list(wanted))
    assert overlapping(draw_pen(PenShape("diaphragm-pump"), PenOptions(capped=True)))
    monkeypatch.undo()
    true_rows = labels._rows

    def swapped(ordered, rows, low, high):
        placed, depth = true_rows(ordered, rows, low, high)
        ends = [item.leader[-1] for item in placed]
        return [replace(p, leader=(p.leader[0], end)) for p, end in zip(placed, reversed(ends), strict=True)], depth

    monkeypatch.setattr(labels, "_rows", swapped)
    assert crossing(draw_pen(PenShape("diaphragm-pump"), PenOptions(capped=True)))
