"""Half a page for the wall: every step and every line is on it, nothing is cut, and the type is no smaller than 8 pt."""

import itertools
import re
from xml.etree import ElementTree

import pytest

from pentools import care, order
from pentools.figures.closing.wall import WIDTH_MM, care_page, order_page
from pentools.figures.pen.lettering import text_width_mm
from pentools.figures.pen.svg import TEXT_MM
from pentools.systems.registry import SYSTEMS

SVG = "{http://www.w3.org/2000/svg}"
A4_MM = (210.0, 297.0)  # ISO 216
MARGIN_MM = 10.0  # judged: what home printers leave white, and a little more
POINT_MM = 25.4 / 72  # by definition of the point that printers' programs use


def texts(drawing):
    return ElementTree.fromstring(drawing.svg).findall(f".//{SVG}text")


def words(drawing):
    return " ".join(text.text for text in texts(drawing))


def run_on(text):
    return text.replace(" ", "")


def height(drawing):
    return float(re.search(r'height="([\d.]+)mm"', drawing.svg)[1])


def stands_on_half_a_page(drawing):
    high = height(drawing)
    assert high <= (A4_MM[1] - 2 * MARGIN_MM) / 2
    assert drawing.width_mm <= A4_MM[0] - 2 * MARGIN_MM
    for text in texts(drawing):
        size = float(text.get("font-size") or TEXT_MM)
        assert size >= 8 * POINT_MM
        wide = text_width_mm(text.text, size) / 1.05
        left = float(text.get("x")) - (wide if text.get("text-anchor") == "end" else 0.0)
        assert left >= 0
        assert left + wide <= WIDTH_MM
        assert size <= float(text.get("y")) <= high


@pytest.mark.parametrize("made", [("celluloid", "silicone sac"), ("hard rubber; casein", "latex sac"), ("unknown", "")])
@pytest.mark.parametrize("system", SYSTEMS)
def test_every_step_is_on_half_a_page(system, made):
    for way in ("close", "open"):
        told = order(system, way, material=made[0], **({"fitted": made[1]} if made[1] else {})).result
        drawing = order_page(told)
        shown = run_on(words(drawing))
        for step in told.steps:
            assert run_on(step.action) in shown
            assert all(run_on(change) in shown for change in step.changes)
        stands_on_half_a_page(drawing)


def test_no_line_lies_on_another():
    """In each column every line has its own height, a type size apart at least."""
    made = {"material": "hard rubber; celluloid; casein", "fitted": "silicone sac"}
    drawing = order_page(order("pneumatic-extending-tube", **made).result)
    stands_on_half_a_page(drawing)
    found = {}
    for text in texts(drawing):
        if text.get("text-anchor") != "end":
            found.setdefault(text.get("x"), []).append((float(text.get("y")), float(text.get("font-size") or TEXT_MM)))
    for column in found.values():
        column.sort()
        for (above, _), (below, size) in itertools.pairwise(column):
            assert below - above >= size


def test_the_largest_type_that_fits_is_taken():
    small, large = order_page(order("capillary").result), order_page(order("pneumatic-extending-tube").result)
    assert {text.get("font-size") for text in texts(small)} <= {None, "4.2"}  # 9 pt and the title
    assert min(float(text.get("font-size") or TEXT_MM) for text in texts(large)) < TEXT_MM


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


@pytest.mark.parametrize("system", SYSTEMS)
def test_care_has_every_line_on_half_a_page_and_what_is_never_done(system):
    fitted = "latex sac; shellac joint; rubber ring; glued crack; wax; ink window; inner cap"
    answer = care(system, material="hard rubber; celluloid; casein", nib="gold nib", fitted=fitted)
    drawing = care_page(answer, answer.result)
    shown = run_on(words(drawing))
    assert all(run_on(line.line) in shown for line in answer.result)
    assert run_on(", ".join(answer.data["never"])) in shown
    stands_on_half_a_page(drawing)


def test_care_stands_in_two_columns_of_like_height():
    answer = care("lever-sac", material="casein", fitted="latex sac")
    drawing = care_page(answer, answer.result)
    assert drawing.title == "Care: Lever sac filler, casein"
    lefts = {}
    for text in texts(drawing)[1:]:
        lefts.setdefault(float(text.get("x")) > WIDTH_MM / 2, []).append(float(text.get("y")))
    assert abs(max(lefts[True]) - max(lefts[False])) < 12
