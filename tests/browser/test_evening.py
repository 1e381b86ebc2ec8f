"""An ordinary pen in an evening: a new sac from the first entry to release, by keyboard once and by mouse once, in a real browser.

What it takes is printed: entries, boxes touched, seconds, heights.
"""

import json
import os
import re
import signal
import subprocess
import sys
import time

import pytest
from PIL import Image, ImageDraw

from pentools.record.bench import open_bench_folder
from pentools.record.holds import held
from pentools.record.job import create_job, open_job
from pentools.record.owed import owed_by
from pentools.record.stages.job.release import ending

pytestmark = pytest.mark.browser

MOST_ENTRIES, MOST_BOXES = 14, 60
CLOSED_PX, OPEN_PX = 2000, 3500
HEIGHT = """() => Math.max(...[...document.querySelectorAll(
  '.jp-NotebookPanel .jp-WindowedPanel-outer, .jp-NotebookPanel .jp-Notebook')].map(e => e.scrollHeight))"""
REDRAWN = """() => { let t0 = 0; window.redrawn = new Promise((done) => {
  for (const act of ['keydown', 'pointerup']) addEventListener(act, () => { t0 = performance.now(); }, {capture: true});
  const before = document.querySelector('.pt-next').innerText;
  const look = () => document.querySelector('.pt-next').innerText !== before ? done(performance.now() - t0) : requestAnimationFrame(look);
  look(); }); }"""


def picture(job, name):
    (job.folder / "photos").mkdir(exist_ok=True)
    drawn = Image.new("RGB", (640, 240), "#e9e4d6")
    pen = ImageDraw.Draw(drawn)
    pen.rounded_rectangle((40, 90, 600, 150), 28, fill="#1c1c1f" if "after" in name else "#4a3f33")
    pen.text((40, 200), f"drawn for a test: {name}", fill="#333")
    drawn.save(job.folder / "photos" / name)


@pytest.fixture
def job(tmp_path):
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "re-sac")
    for name in ("before.png", "after.png"):
        picture(job, name)
    return job


class Sheet:
    """A person at the sheet, who counts what is touched."""

    def __init__(self, page, job):
        self.page, self.job, self.boxes = page, job, 0
        self.heights = {}

    def entries(self):
        record = self.job.folder / "record.jsonl"  # it is there from the first entry on
        return len(record.read_text(encoding="utf-8").splitlines()) if record.exists() else 0

    def wait_for_entry(self, count):
        until = time.monotonic() + 60
        while self.entries() < count:
            assert time.monotonic() < until, f"waited in vain for entry {count}: {self.said()}"
            time.sleep(0.05)

    def said(self):
        return self.page.locator(".pt-is-open").inner_text()[-1500:]

    def measure(self, name):
        self.heights[name] = self.page.evaluate(HEIGHT)

    def focused(self):
        """What has the cursor: the label of a box, or the words on a button."""
        return self.page.evaluate(
            """() => { const e = document.activeElement;
              const label = e.id && document.querySelector(`label[for="${e.id}"]`);
              return (label?.innerText || e.closest?.('.widget-text, .widget-textarea, .widget-dropdown, .widget-combobox')
                ?.querySelector('.widget-label, label')?.innerText || e.closest?.('.widget-checkbox')?.innerText || e.innerText || e.title || e.tagName).replace(/\u200b/g, '').trim(); }"""
        )


@pytest.fixture
def opened(job, tmp_path, chromium):
    command = [sys.executable, "-m", "pentools.cli", "open", job.name, "--no-browser", "--bench", str(job.bench.folder)]
    own = {
        n: str(tmp_path / n.lower())
        for n in ("JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR")
    }
    begun = time.monotonic()
    lab = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env={**os.environ, **own})
    address = next(m[0] for line in lab.stdout if (m := re.search(r"http://127\.0\.0\.1:\d+/\S+", line)))
    page = chromium.new_page(viewport={"width": 1400, "height": 900})
    page.set_default_timeout(120_000)
    page.goto(address)
    page.locator(".pentools .pt-owed button").first.wait_for()
    sheet = Sheet(page, job)
    sheet.seconds = time.monotonic() - begun
    yield sheet
    page.close()
    lab.send_signal(signal.SIGINT)
    lab.wait(30)
    lab.stdout.close()


def redrawn(sheet, act):
    """Milliseconds from an act to the sheet's head redrawn after it, in the browser's own frames."""
    sheet.page.wait_for_timeout(1000)  # the letters typed at once before it have arrived, as a hand's have
    sheet.page.evaluate(REDRAWN)
    act()
    return sheet.page.evaluate("() => window.redrawn")


def report(sheet, how):
    job = open_job(sheet.job.name, bench=sheet.job.bench)
    assert ending(job) in ("done", "done with limits")
    assert [o.key for o in owed_by(job) if not o.done] == []
    assert held(job, "release") == ""
    print(
        f"\n{how}: {sheet.entries()} entries, {sheet.boxes} boxes touched, live after {sheet.seconds:.1f} s, "
        f"from Enter to redrawn {sheet.redrawn:.0f} ms, heights {json.dumps(sheet.heights)}"
    )
    assert sheet.entries() <= MOST_ENTRIES
    assert sheet.boxes <= MOST_BOXES
    assert sheet.heights["closed"] <= CLOSED_PX
    assert max(sheet.heights.values()) <= OPEN_PX


class ByKeyboard:
    """Every box is reached by keys alone."""

    def __init__(self, sheet):
        self.sheet, self.keys = sheet, sheet.page.keyboard

    def at(self, words):
        """Wait until the cursor stands there."""
        until = time.monotonic() + 60
        while not self.sheet.focused().startswith(words):
            assert time.monotonic() < until, f"the cursor is at {self.sheet.focused()!r}, not at {words!r}"
            time.sleep(0.05)

    def reach(self, words, key="Tab", most=14):
        """Press a key until the cursor stands there."""
        for _ in range(most):
            if self.sheet.focused().startswith(words):
                return
            self.keys.press(key)
        raise AssertionError(f"no {words!r} within {most} of {key}; the cursor is at {self.sheet.focused()!r}")

    def put(self, words, text):
        self.reach(words)
        self.keys.type(text)
        self.sheet.boxes += 1

    def tick(self, words):
        self.reach(words, most=20)
        self.keys.press("Space")
        self.sheet.boxes += 1

    def save(self, by="Control+Enter"):
        count = self.sheet.entries() + 1
        self.keys.press(by)
        self.sheet.wait_for_entry(count)

    def onward(self, words, first):
        """Over the button that says what is next, into its form."""
        self.at(f"Next: {words}")
        self.keys.press("Enter")
        self.at(first)


def test_an_ordinary_pen_by_keyboard(opened):
    sheet, hand = opened, ByKeyboard(opened)
    hand.at("· who")
    sheet.measure("closed")
    hand.keys.press("Enter")
    hand.at("Owner")
    hand.put("Owner", "Adela Quist")
    hand.put("Contact", "adela@quist.example")
    hand.save("Enter")
    hand.at("The pen in a few words")
    hand.put("The pen in a few words", "black hard-rubber lever filler")
    hand.put("Filling system", "lever")
    hand.put("Material", "black hard rubber")
    hand.save("Enter")
    hand.at("What the owner asks")
    hand.put("What the owner asks", "let it write again")
    hand.put("Kind of work", "a new sac")
    hand.save()
    hand.onward("take a picture before", "File")
    hand.put("File", "before.png")
    hand.put("When", "before")
    hand.save()
    hand.onward("look at it", "Part")
    hand.put("Part", "seals")
    hand.put("What is seen", "the sac is hard as glass and in crumbs")
    hand.put("How serious", "4")
    hand.save()
    hand.onward("get the owner", "heat")
    sheet.measure("the yes")
    for what in ("heat", "sealant or glue", "replacing a part", "publishing"):
        hand.tick(what)
    hand.put("For at most", "60 EUR")
    hand.put("How", "by telephone")
    hand.save("Enter")
    hand.onward("do the work", "Activity")
    hand.put("Activity", "seals")
    hand.put("Time taken", "40")
    hand.put("What was done", "old sac out, nipple clean, new sac on with shellac, talc")
    hand.save()
    for number, (what, way) in enumerate((("sac, size 16", "added"), ("old sac", "removed"))):
        if number == 0:
            hand.onward("enter what went in", "What")
        else:
            hand.at("Next: let it rest filled")
            hand.reach("What", "Shift+Tab")
        hand.put("What", what)
        hand.put("Which way", way)
        hand.save()
    hand.reach("Next: let it rest filled", most=30)  # a log keeps the cursor for its next entry
    hand.onward("let it rest filled", "How long")
    sheet.measure("the fill test")
    hand.put("How long", "12")
    hand.put("Was it dry", "yes")
    hand.save()
    hand.onward("write what was left", "Part")
    hand.put("Part", "imprint")
    hand.put("What could not be", "the imprint is worn")
    hand.put("Why", "nothing brings it back")
    hand.save()
    hand.onward("take a picture after", "File")
    hand.put("File", "after.png")
    hand.put("When", "after")
    hand.save()
    hand.onward("end the job", "Result")
    hand.put("Result", "done with")
    hand.put("In a few sentences", "It has a new sac, fills and stayed dry for a night.")
    hand.put("Price", "55 EUR")
    sheet.redrawn = redrawn(sheet, lambda: hand.keys.press("Control+Enter"))
    report(sheet, "by keyboard")


class ByMouse:
    """Every box is clicked into, every choice is chosen, every button pressed."""

    def __init__(self, sheet):
        self.sheet, self.page = sheet, sheet.page

    @property
    def open(self):
        return self.page.locator(".pt-is-open")

    def owed(self, words, stage):
        self.page.locator(".pt-owed").get_by_role("button", name=words).click()
        self.page.locator(f".pt-slot-{stage}.pt-is-open .pt-form").wait_for()

    def fill(self, label, text):
        self.open.locator(".pt-form").get_by_label(label).fill(text)
        self.sheet.boxes += 1

    def choose(self, label, text):
        self.open.locator(".pt-form").get_by_label(label).select_option(label=text)
        self.sheet.boxes += 1

    def press(self, name):
        count = self.sheet.entries() + 1
        self.open.get_by_role("button", name=name, exact=True).click()
        self.sheet.wait_for_entry(count)

    def picture(self, file, moment):
        self.open.locator(".pt-thumb").filter(has_text=file).click()
        self.sheet.boxes += 1
        self.press(moment)


def test_an_ordinary_pen_by_mouse(opened):
    sheet, hand = opened, ByMouse(opened)
    sheet.measure("closed")
    hand.owed("· who", "intake")
    hand.fill("Owner *", "Adela Quist")
    hand.fill("Contact", "adela@quist.example")
    hand.press("Save")
    hand.fill("The pen in a few words *", "black hard-rubber lever filler")
    hand.choose("Filling system", "lever sac filler")
    hand.fill("Material of barrel and cap", "black hard rubber")
    hand.press("Save")
    hand.fill("What the owner asks for *", "let it write again")
    hand.choose("Kind of work", "a new sac")
    hand.press("Save")
    hand.owed("· picture before", "pictures")
    sheet.measure("pictures")
    hand.picture("before.png", "before")
    hand.owed("· what is seen", "condition")
    hand.choose("Part *", "seals and sac")
    hand.fill("What is seen *", "the sac is hard as glass and in crumbs")
    hand.choose("How serious *", "4 lost: the part cannot be saved")
    hand.press("Save")
    hand.owed("· the yes", "agree")
    hand.open.get_by_role("button", name="all of these").first.click()
    hand.fill("For at most", "60 EUR")
    hand.fill("How *", "by telephone")
    hand.press("Save")
    minutes = hand.open.get_by_label(re.compile("^Minutes"))
    minutes.fill("40 old sac out, new sac on with shellac")
    minutes.press("Enter")
    sheet.wait_for_entry(7)
    sheet.boxes += 1
    hand.owed("· in and out", "work-log")
    for what, way in (("sac, size 16", "added"), ("old sac", "removed")):
        hand.fill("What *", what)
        hand.choose("Which way *", way)
        hand.press("Save")
    hand.owed("· a night filled", "fill-test")
    hand.fill("How long it rested, filled *", "12")
    hand.choose("Was it dry all over? *", "yes")
    hand.press("Save")
    hand.owed("· what is left", "limits")
    hand.open.get_by_role("button", name="Nothing was left", exact=True).click()
    hand.choose("Is it true that nothing was left unmended? *", "yes")
    hand.press("Save")
    hand.owed("· picture after", "pictures")
    hand.picture("after.png", "after")
    hand.owed("· the end", "release")
    hand.choose("Result *", "done")
    hand.fill("In a few sentences *", "It has a new sac, fills and stayed dry for a night.")
    hand.fill("Price", "55 EUR")
    sheet.measure("the end")
    sheet.redrawn = redrawn(sheet, lambda: hand.open.get_by_role("button", name="Save", exact=True).click())
    report(sheet, "by mouse")
