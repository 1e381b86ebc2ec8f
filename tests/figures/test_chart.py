"""Charts: whole, with ids and text of their own, and nothing fetched."""

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from pentools import figures
from pentools.figures.chart import INK, OXBLOOD, head, new_chart, say, texture, to_drawing
from pentools.figures.job import work_log
from pentools.figures.weighing import filling, leak, series
from pentools.record.stages.weighing.filling import capacity_of
from pentools.record.stages.weighing.rest import leak_of

SVG = "{http://www.w3.org/2000/svg}"


def all_drawings(job):
    answer = capacity_of(job)
    found = [filling.capacity_figure(answer), filling.budget_figure(answer), series.fill_series_figure(job)]
    return [*found, leak.leak_figure(leak_of(job)), work_log.minutes_figure(job)]


def test_nothing_to_draw_is_none(empty):
    assert series.fill_series_figure(empty) is None
    assert work_log.minutes_figure(empty) is None


def test_every_chart_is_whole_and_its_ids_are_its_own(weighed):
    seen = set()
    for drawing in [*all_drawings(weighed), *all_drawings(weighed)]:
        assert drawing.svg.startswith("<svg ")
        root = ET.fromstring(drawing.svg)
        assert root.get("role") == "img"
        assert root.get("width") == f"{drawing.width_mm:g}mm"
        ids = {node.get("id") for node in root.iter() if node.get("id")}
        assert not ids & seen
        seen |= ids
        named = root.get("aria-labelledby").split()
        texts = [next(node.text for node in root.iter() if node.get("id") == name) for name in named]
        assert texts == [drawing.title, drawing.alt]
        links = re.findall(r'(?:href="|url\()#([^")]+)', drawing.svg)
        assert set(links) <= ids


def test_text_stays_text_and_is_nine_points_or_more(weighed):
    for drawing in all_drawings(weighed):
        root = ET.fromstring(drawing.svg)
        words = " ".join("".join(node.itertext()) for node in root.iter(f"{SVG}text"))
        assert drawing.title.split(",")[0].split(" (")[0][:12] in words
        # the picture's own unit is the point: 160 mm are 453.5 of them
        assert float(root.get("viewBox").split()[2]) == pytest.approx(drawing.width_mm / 25.4 * 72, rel=1e-3)
        sizes = [float(s) for s in re.findall(r"font(?:-size)?:[^;\"]*?([\d.]+)px", drawing.svg)]
        assert sizes
        assert min(sizes) >= 9


def test_nothing_is_fetched_and_no_date_is_kept(weighed):
    for drawing in all_drawings(weighed):
        assert "<metadata" not in drawing.svg
        assert not re.findall(r'(?:href|src)="(?!#)', drawing.svg)


def test_words_stand_beside_their_point():
    figure, axes = new_chart(100, 50)
    axes.set(xlim=(0, 10), ylim=(0, 10))
    say(axes, "to the right", (2, 5), colour=OXBLOOD, right=8)
    say(axes, "over it", (2, 5), up=5)
    say(axes, "under it", (2, 5), up=-9)
    right, over, under = axes.texts
    assert [text.xyann for text in axes.texts] == [(8, 0), (0, 5), (0, -9)]
    assert [text.get_color() for text in axes.texts] == [OXBLOOD, INK, INK]
    assert (right.get_va(), over.get_va(), under.get_va()) == ("center", "bottom", "top")
    assert (over.get_ha(), under.get_ha()) == ("center", "center")
    drawing = to_drawing(figure, "A < B", "1 & 2", 100.0)
    assert "to the right" in drawing.svg
    assert 'width="100mm"' in drawing.svg
    assert "<title" in drawing.svg
    assert "A &lt; B" in drawing.svg
    assert (drawing.title, drawing.alt, drawing.width_mm) == ("A < B", "1 & 2", 100.0)


def test_a_chart_has_its_printed_size_and_no_frame():
    figure, axes = new_chart(127.0, 50.8)
    assert tuple(figure.get_size_inches()) == pytest.approx((5.0, 2.0))
    assert [axes.spines[side].get_visible() for side in ("top", "right", "bottom", "left")] == [
        False,
        False,
        True,
        True,
    ]
    head(axes, "The finding")
    assert axes.get_title(loc="left") == "The finding"


def test_a_bar_is_hatched_in_its_own_colour_with_lines_inside_its_edges():
    figure, axes = new_chart(160, 40, bars_only=True)
    axes.barh(0, 3, height=0.5, edgecolor=OXBLOOD, linewidth=0.8, **texture("slant"))
    axes.barh(1, 2, height=0.5, edgecolor=INK, linewidth=0.8, **texture("fine-dots"))
    axes.set(xlim=(0, 4), ylim=(-1, 2))
    drawing = to_drawing(figure, "A title", "Words.")
    assert not re.search(r"<(pattern|mask|image)\b|hatched-", drawing.svg)
    paths = [node for node in ET.fromstring(drawing.svg).iter(f"{SVG}path") if node.get("clip-path")]
    for colour, ends in ((OXBLOOD, False), (INK, True)):
        lines, edge = (node for node in paths if f"stroke: {colour}" in node.get("style"))
        assert "fill: none" in lines.get("style")
        assert ("round" in lines.get("style")) == ends
        (x0, x1), (y0, y1) = (
            sorted(set(values))[:: len(set(values)) - 1] for values in zip(*numbers(edge), strict=True)
        )
        inside = numbers(lines)
        assert len(inside) > 40
        assert all(x0 - 0.01 <= x <= x1 + 0.01 and y0 - 0.01 <= y <= y1 + 0.01 for x, y in inside)
        assert max(x for x, _ in inside) > x1 - 9  # all along the bar, in points as the chart is


def numbers(node):
    found = [float(v) for v in re.findall(r"-?\d+\.?\d*", node.get("d"))]
    return list(zip(found[::2], found[1::2], strict=True))


def test_no_figure_asks_for_a_hatch_that_becomes_a_picture_in_print():
    sources = {path.name: path.read_text(encoding="utf-8") for path in Path(figures.__file__).parent.rglob("*.py")}
    assert [name for name, text in sources.items() if re.search(r"\bhatch=|<pattern|\"(pattern|mask)\"", text)] == []
