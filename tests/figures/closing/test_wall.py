"""Half a page for the wall: every step and every line is on it, nothing is cut, and the type is no smaller than 9 pt."""

import re
from xml.etree import ElementTree

import pytest

from pentools import care, order
from pentools.figures.closing.wall import WIDTH_MM, care_page, order_page
from pentools.figures.pen.lettering import text_width_mm
from pentools.figures.pen.svg import TEXT_MM
from pentools.systems.registry import SYSTEMS

SVG = "{http://www.w3.org/2000/svg}"


def texts(drawing):
    return ElementTree.fromstring(drawing.svg).findall(f".//{SVG}text")


def words(drawing):
    return " ".join(text.text for text in texts(drawing))


@pytest.mark.parametrize("way", ["close", "open"])
@pytest.mark.parametrize("system", SYSTEMS)
def test_every_step_is_on_the_page_and_nothing_runs_off_it(system, way):
    told = order(system, way, material="celluloid", fitted="silicone sac").result
    drawing = order_page(told)
    shown = words(drawing).replace(" ", "")
    for step in told.steps:
        assert step.action.replace(" ", "") in shown
        for change in step.changes:
            assert change.replace(" ", "") in shown
    height = float(re.search(r'height="([\d.]+)mm"', drawing.svg)[1])
    for text in texts(drawing):
        size = float(text.get("font-size") or TEXT_MM)
        assert size >= 3.175
        if text.get("text-anchor") != "end":
            assert float(text.get("x")) + text_width_mm(text.text, size) / 1.05 <= WIDTH_MM
        assert 0 < float(text.get("y")) < height
    assert height < 275  # one page at the most, mostly half of it


def test_marks_say_what_closes_and_what_does_not_come_back():
    told = order("lever-sac", material="acrylic").result
    drawing = order_page(told)
    bars = [r for r in ElementTree.fromstring(drawing.svg).findall(f"{SVG}rect") if r.get("fill") == "#8c2f39"]
    assert len(bars) == sum(step.closes for step in told.steps) == 3
    assert words(drawing).count("✕") == 1 + sum(step.undone == "no" for step in told.steps)
    boxes = [r for r in ElementTree.fromstring(drawing.svg).findall(f"{SVG}rect") if r.get("fill") == "none"]
    assert len(boxes) == 2 * len(told.steps)
    assert "together" in drawing.title
    assert told.steps[4].action in drawing.alt


def test_care_has_every_line_and_what_is_never_done():
    answer = care("lever-sac", material="casein", fitted="latex sac")
    drawing = care_page(answer, answer.result)
    shown = words(drawing).replace(" ", "")
    assert all(line.line.replace(" ", "") in shown for line in answer.result)
    assert ", ".join(answer.data["never"]).replace(" ", "") in shown
    assert drawing.title == "Care: Lever sac filler, casein"
