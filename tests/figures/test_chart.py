"""Charts: whole, with ids and text of their own, and nothing fetched."""

import re
import xml.etree.ElementTree as ET

import pytest

from pentools.figures.chart import INK, OXBLOOD, head, new_chart, say, to_drawing
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
