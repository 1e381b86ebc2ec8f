"""The lead notebook in a real browser: refused, saved by keyboard and mouse, killed, back again, exported."""

import json
import os
import re
import shutil
import signal
import subprocess
import time
import urllib.request
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
TOKEN = "a-token-for-this-test"
NEEDED = bool(os.environ.get("PENTOOLS_NEED_BROWSER"))


@pytest.fixture(scope="module")
def playwright_page():
    if CHROMIUM is None:
        if NEEDED:
            pytest.fail("Chromium is missing, and PENTOOLS_NEED_BROWSER asks for it")
        pytest.skip("Chromium is not installed")
    sync_api = pytest.importorskip("playwright.sync_api")
    with sync_api.sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=CHROMIUM,
            args=[
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
            ],
        )
        page = browser.new_page(viewport={"width": 1400, "height": 1000})
        page.set_default_timeout(120_000)
        yield page
        browser.close()


@pytest.fixture(scope="module")
def job(tmp_path_factory):
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job

    bench = open_bench_folder(tmp_path_factory.mktemp("bench"), create=True)
    job = create_job(bench, "browser-pen")
    job.add("intake", "arrival", {"pen": "a drawn test pen", "system": "piston"})
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    return job


@pytest.fixture(scope="module")
def server(job, tmp_path_factory):
    from pentools.lab import _free_port, lab_command, lab_environment

    held = tmp_path_factory.mktemp("lab")
    port = _free_port()
    environment = lab_environment(held, TOKEN)
    for name in ("JUPYTER_CONFIG_DIR", "JUPYTER_DATA_DIR", "JUPYTER_RUNTIME_DIR", "IPYTHONDIR"):
        environment[name] = str(held / name.lower())
    log = (held / "lab.log").open("wb")
    process = subprocess.Popen(
        lab_command(job.notebook, port=port),
        env=environment, stdout=log, stderr=subprocess.STDOUT,
    )  # fmt: skip
    base = f"http://127.0.0.1:{port}"
    deadline = time.monotonic() + 60
    while True:
        try:
            with urllib.request.urlopen(f"{base}/api/status?token={TOKEN}"):
                break
        except OSError:
            assert process.poll() is None, (held / "lab.log").read_text()
            assert time.monotonic() < deadline
            time.sleep(0.2)
    yield base
    process.terminate()
    process.wait(timeout=20)
    log.close()


def lines(job):
    return [json.loads(line) for line in (job.folder / "record.jsonl").read_text().splitlines()]


def wait_for(condition, what, seconds=30):
    deadline = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < deadline, f"waited in vain for {what}"
        time.sleep(0.1)


def kernel_pids(server_pid_of_parent):
    found = []
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                words = (entry / "cmdline").read_bytes().split(b"\0")
            except OSError:
                continue
            if b"ipykernel_launcher" in words and server_pid_of_parent.encode() in (entry / "environ").read_bytes():
                found.append(int(entry.name))
    return found


def run_all(page):
    page.get_by_role("button", name=re.compile("Python 3.*Idle")).wait_for()
    page.get_by_role("menuitem", name="Run", exact=True).click()
    page.get_by_role("menuitem", name="Run All Cells", exact=True).click()
    try:
        page.locator(".pt-slot-release:not(.jupyter-widgets-disconnected)").wait_for()
    except Exception:
        if os.environ.get("PENTOOLS_SCREENSHOTS"):
            page.screenshot(path=os.environ["PENTOOLS_SCREENSHOTS"])
        raise


def open_fill_test(page):
    """The fill test's place, opened by its line."""
    slot = page.locator(".pt-slot-fill-test")
    slot.get_by_role("button", name="Fill test", exact=True).click()
    slot.locator(".pt-panel").wait_for()
    return slot


def test_one_job_from_weighing_to_pages(playwright_page, server, job):
    page = playwright_page
    outside = []
    page.on(
        "request",
        lambda r: (
            outside.append(r.url)
            if not r.url.startswith((server, "data:", "blob:", server.replace("http", "ws")))
            else None
        ),
    )
    page.goto(f"{server}/lab/workspaces/test/tree/{job.notebook.name}?reset&token={TOKEN}")
    run_all(page)
    assert page.locator(".pt-entry").count() == 0  # every stage is one line until it is opened
    panel = open_fill_test(page)
    assert page.locator(".pt-entry").count() == 1
    mass = panel.get_by_role("textbox", name="Mass *", exact=True)
    save = panel.get_by_role("button", name="Save", exact=True)

    # a bad weighing is refused in words, and its text stays
    before = len(lines(job))
    mass.fill("heavy")
    save.click(delay=80)
    panel.get_by_text("Look again at: Mass", exact=False).wait_for()
    assert mass.input_value() == "heavy"
    assert len(lines(job)) == before

    # a good one by keyboard: type, Enter
    mass.fill("23,26")
    panel.get_by_text("read as 23.26").wait_for()
    mass.press("Enter")
    wait_for(lambda: len(lines(job)) == before + 1, "the weighing saved by keyboard")
    panel.get_by_text(re.compile(r"saved \d\d:\d\d:\d\d")).wait_for()
    assert lines(job)[-1]["data"]["mass"]["value"] == 23.26
    pictures = panel.locator("svg")
    first = pictures.first.inner_html()

    # one by mouse, an instant click after typing
    panel.get_by_role("combobox", name="State of the pen *", exact=True).select_option("filled")
    mass.press_sequentially("25.06 g")
    save.click()
    wait_for(lambda: len(lines(job)) == before + 2, "the weighing saved by an instant click")
    assert lines(job)[-1]["data"] | {"mass": 0} == {"state": "filled", "mass": 0}
    assert lines(job)[-1]["data"]["mass"]["value"] == 25.06
    panel.locator(".pt-sentence", has_text=re.compile(r"draws 1\.79\smL")).wait_for()
    assert pictures.first.inner_html() != first

    if os.environ.get("PENTOOLS_SCREENSHOTS"):
        panel.screenshot(path=os.environ["PENTOOLS_SCREENSHOTS"])

    # the kernel is killed: it is said, "saved" is gone, and what was typed is there after Run All
    mass.fill("15.55 g")
    panel.locator(".pt-saved").first.wait_for()
    [pid] = kernel_pids(str(job.folder)) or kernel_pids("")
    os.kill(pid, signal.SIGKILL)
    page.locator(".pt-slot-fill-test.jupyter-widgets-disconnected").wait_for(timeout=5_000)
    said = page.evaluate("() => getComputedStyle(document.querySelector('.pt-slot-fill-test'), '::before').content")
    assert "nothing is being saved" in said
    assert panel.locator(".pt-saved:visible").count() == 0
    page.locator(".jp-Dialog", has_text="appears to have died").locator("button.jp-mod-accept").click()
    run_all(page)
    panel = open_fill_test(page)
    panel.locator(".pt-sentence", has_text=re.compile(r"draws 1\.79\smL")).wait_for()
    mass = panel.get_by_role("textbox", name="Mass *", exact=True)
    wait_for(lambda: mass.input_value() == "15.55 g", "the draft that was not saved")
    assert pid not in kernel_pids("")
    assert len(lines(job)) == before + 2

    # the letter, the record and the story come out of the menu, each with a name of its own
    for label, form in (
        ("Pen_letter_for_owner", "letter"),
        ("Pen_record_for_owner", "record"),
        ("Pen_story_for_everybody", "story"),
    ):
        page.get_by_role("menuitem", name="File", exact=True).click()
        page.locator(".lm-Menu-item", has_text="Save and Export Notebook As").click()
        with page.expect_download() as coming:
            page.locator(".lm-Menu-item", has_text=label).click()
        assert coming.value.suggested_filename == f"{job.name}-{form}.html"
        text = Path(coming.value.path()).read_text(encoding="utf-8")
        assert "mL" in text
        assert "<script" not in text
    assert outside == []
