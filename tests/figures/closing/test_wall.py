"""Half a page for the wall: every step and every line is on it, nothing is cut, and the type is no smaller than 8 pt."""

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


def cared_for(system, **more):
    told = care(system, **more)
    return care_page(told, told.result)


PAGES = {
    "the longest": lambda: order_page(order("pneumatic-extending-tube", material="hard rubber; celluloid; casein", fitted="silicone sac").result),
    "an order": lambda: order_page(order("lever-sac", material="celluloid").result),
    "an opening": lambda: order_page(order("plunger-vacuum", "open", material="acrylic").result),
    "care": lambda: cared_for("lever-sac", material="hard rubber; casein", fitted="latex sac; wax"),
}  # fmt: skip


def placed(text):
    """Left, right and baseline of a text [mm], and its size."""
    size = float(text.get("font-size") or TEXT_MM)
    wide = text_width_mm(text.text, size, bold=bool(text.get("font-weight"))) / 1.05
    left = float(text.get("x")) - (wide if text.get("text-anchor") == "end" else 0.0)
    return left, left + wide, float(text.get("y")), size


def shapes(drawing, tag):
    return ElementTree.fromstring(drawing.svg).findall(f"{SVG}{tag}")


@pytest.fixture(params=PAGES)
def page(request):
    return PAGES[request.param]()


def test_no_text_lies_on_another_or_off_the_page(page):
    stands_on_half_a_page(page)
    found = [placed(text) for text in texts(page)]
    for number, (left, right, base, size) in enumerate(found):
        for other_left, other_right, other_base, other_size in found[number + 1 :]:
            beside = right <= other_left or other_right <= left
            apart = abs(base - other_base) >= 0.99 * min(size, other_size)
            assert beside or apart, (number, base, other_base)


def test_rules_run_between_the_lines_and_across_what_they_part(page):
    lines = [placed(text) for text in texts(page)]
    for rule in shapes(page, "polyline"):
        (left, y), (right, same) = (tuple(map(float, point.split(","))) for point in rule.get("points").split())
        assert y == same
        assert 0 <= left < right <= WIDTH_MM
        assert right - left > 0.45 * WIDTH_MM
        for start, end, base, size in lines:
            crosses = base - 0.72 * size < y < base + 0.1 * size
            assert not crosses or end < left or start > right, (y, base)


def test_the_foot_of_a_page_lies_just_under_its_last_line(page):
    last = max(base for _, _, base, _ in map(placed, texts(page)))
    assert 0.5 <= height(page) - last <= 4.0
    assert min(base - size for _, _, base, size in map(placed, texts(page))) <= 0.5


def test_a_box_stands_before_its_first_line_and_a_bar_beside_its_step():
    page = PAGES["an order"]()
    lines = [placed(text) for text in texts(page)]
    numbers = {
        text.text: placed(text) for text in texts(page) if text.get("text-anchor") == "end" and text.text.isdigit()
    }
    boxes = [
        (float(r.get("x")), float(r.get("y")), float(r.get("width")))
        for r in shapes(page, "rect")
        if r.get("fill") == "none"
    ]
    for x, y, side in boxes:
        own = [line for line in lines if abs(line[2] - (y + side)) < 0.5 and 0.5 <= line[0] - (x + side) <= 1.5]
        assert len(own) == 1, (x, y)
        assert any(abs(base - own[0][2]) < 0.01 for _, _, base, _ in numbers.values())
    assert len({x for x, _, _ in boxes}) == 2
    bars = [(float(r.get("y")), float(r.get("height"))) for r in shapes(page, "rect") if r.get("fill") == "#8c2f39"]
    told = order("lever-sac", material="celluloid").result
    for (top, high), step in zip(bars, [step for step in told.steps if step.closes], strict=True):
        base = numbers[str(step.number)][2]
        following = numbers[str(step.number + 1)][2]
        assert top < base < top + high < following
        rules = sorted(float(rule.get("points").split(",")[-1]) for rule in shapes(page, "polyline"))
        above = max(y for y in rules if y < base)
        assert above < top < top + high < next(y for y in rules if y > above)


def test_the_columns_say_what_they_are_and_title_and_numbers_are_bold():
    for way, words_of_it in (("close", "test before the next"), ("open", "so before the next")):
        page = order_page(order("lever-sac", way, material="celluloid").result)
        heads = [text for text in texts(page) if text.get("font-style") == "italic"]
        assert [text.text for text in heads] == ["do", words_of_it]
        bold = [text for text in texts(page) if text.get("font-weight") == "700"]
        assert [text.text for text in bold] == [page.title, *(str(n + 1) for n in range(len(bold) - 1))]
        assert len(bold) > 5
        assert float(bold[0].get("font-size")) > 4  # the title is the largest


def test_what_a_page_is_for_stands_beside_its_title_or_below_where_it_is_long():
    beside = order_page(order("piston", material="celluloid").result)
    under = next(text for text in texts(beside) if text.text == "for celluloid")
    assert under.get("text-anchor") == "end"
    assert under.get("y") == texts(beside)[0].get("y")
    several = "hard rubber; celluloid; casein; acrylic; cellulose acetate"
    below = order_page(order("pneumatic-extending-tube", "open", material=several).result)
    long = next(text for text in texts(below) if text.text.startswith("for hard rubber"))
    assert long.get("text-anchor") is None
    assert placed(long)[2] - placed(long)[3] > placed(texts(below)[0])[2]
    assert "a body that is not named" in words(order_page(order("piston").result))


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
