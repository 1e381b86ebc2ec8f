"""The hand at the sheet: the sheet's own front end in a real browser, with a kernel that answers when the test says so."""

from pathlib import Path

import pytest

import pentools.panels.desk

pytestmark = pytest.mark.browser

SHEET = """<div id="above"></div><div class="pentools">
  <div class="pt-form"><input type="text" id="minutes"><button class="widget-button" id="save">Save</button></div>
  <div class="next" style="margin-top:40px"><input type="text" id="next"></div>
  <button class="widget-button" id="yes" style="display:block;margin-top:40px">the yes</button></div>"""
START = """(source) => {
  window.presses = []; window.sent = []; window.hear = {}; window.state = {job: "pen", look_at: {}, saved: {}, go_to: ""};
  for (const b of document.querySelectorAll("button")) b.addEventListener("click", () => window.presses.push(b.id));
  const model = { get: (n) => window.state[n], set() {}, save_changes() {}, send: (m) => window.sent.push(m),
    on: (n, f) => (window.hear[n] ??= new Set()).add(f), off: (n, f) => window.hear[n]?.delete(f) };
  window.ask = (selector) => { window.state.look_at = {selector}; window.hear["change:look_at"].forEach((f) => f()); };
  window.settle = () => window.sent.splice(0).forEach((m) => window.hear["msg:custom"].forEach((f) => f({settled: m.settle})));
  const address = URL.createObjectURL(new Blob([source], {type: "text/javascript"}));
  return import(address).then((desk) => { window.leave = desk.default.render({model, el: document.createElement("div")}); });
}"""


@pytest.fixture
def sheet(chromium):
    page = chromium.new_page()
    page.set_content(SHEET)
    page.evaluate(START, Path(pentools.panels.desk.__file__).with_name("desk.js").read_text(encoding="utf-8"))
    yield page
    page.close()


def over(page, name):
    box = page.locator(f"#{name}").bounding_box()
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)


def presses(page):
    page.evaluate("() => new Promise((done) => setTimeout(done, 50))")
    return page.evaluate("() => window.presses")


def cursor(page):
    page.evaluate("() => new Promise((done) => setTimeout(done, 120))")
    return page.evaluate("() => document.activeElement.id")


def redraw(page):
    """What a save does: something comes in above, and all below moves down under the pointer."""
    page.evaluate("() => { document.getElementById('above').style.height = '300px'; }")


def test_a_press_counts_where_it_began_though_the_sheet_moves_under_it(sheet):
    over(sheet, "yes")
    sheet.mouse.down()
    redraw(sheet)
    sheet.mouse.up()
    assert presses(sheet) == ["yes"]


def test_a_press_counts_once_and_one_that_is_drawn_away_does_not_count(sheet):
    over(sheet, "yes")
    sheet.mouse.down()
    sheet.mouse.up()
    assert presses(sheet) == ["yes"]
    sheet.mouse.down()
    sheet.mouse.move(400, 5)
    sheet.mouse.up()
    assert presses(sheet) == ["yes"]


def test_the_cursor_waits_for_a_press_under_way(sheet):
    over(sheet, "yes")
    sheet.mouse.down()
    sheet.evaluate("() => window.ask('.next')")
    assert cursor(sheet) != "next"
    sheet.mouse.up()
    assert presses(sheet) == ["yes"]
    assert cursor(sheet) == "next"


def test_the_cursor_is_not_taken_from_a_box_that_is_typed_into_but_follows_a_press(sheet):
    sheet.locator("#minutes").click()
    sheet.keyboard.type("12")
    sheet.evaluate("() => window.ask('.next')")
    assert cursor(sheet) == "minutes"
    sheet.locator("#save").click()
    sheet.evaluate("() => window.settle()")
    sheet.evaluate("() => window.ask('.next')")
    assert cursor(sheet) == "next"


def test_a_press_waits_until_what_was_typed_has_arrived(sheet):
    sheet.locator("#minutes").click()
    sheet.keyboard.type("12")
    sheet.locator("#save").click()
    assert presses(sheet) == []
    sheet.evaluate("() => window.settle()")
    assert presses(sheet) == ["save"]
    sheet.locator("#save").click()
    assert presses(sheet) == ["save", "save"]


def test_a_press_after_a_rest_waits_for_nothing(sheet):
    sheet.locator("#minutes").click()
    sheet.keyboard.type("12")
    sheet.wait_for_timeout(300)
    sheet.keyboard.type("3")
    sheet.evaluate("() => window.settle()")
    sheet.locator("#save").click()
    assert presses(sheet) == []
    sheet.evaluate("() => window.settle()")
    assert presses(sheet) == ["save"]
    sheet.locator("#minutes").click()
    sheet.keyboard.type("4")
    sheet.wait_for_timeout(300)
    sheet.evaluate("() => window.settle()")
    sheet.locator("#save").click()
    assert presses(sheet) == ["save", "save"]


def test_a_sheet_that_is_taken_away_hears_nothing_more(sheet):
    sheet.evaluate("() => window.leave()")
    assert sheet.evaluate("() => Object.values(window.hear).every((heard) => heard.size === 0)")
    over(sheet, "yes")
    sheet.mouse.down()
    redraw(sheet)
    sheet.mouse.up()
    assert presses(sheet) == []
