"""Pages as a real browser prints them: small, with their drawings as lines."""

import os
import shutil

import pytest

pytestmark = pytest.mark.browser

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")


@pytest.fixture(scope="module")
def tab():
    if CHROMIUM is None:
        if os.environ.get("PENTOOLS_NEED_BROWSER"):
            pytest.fail("Chromium is missing, and PENTOOLS_NEED_BROWSER asks for it")
        pytest.skip("Chromium is not installed")
    sync_api = pytest.importorskip("playwright.sync_api")
    with sync_api.sync_playwright() as play:
        browser = play.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        page = browser.new_page()
        page.set_default_timeout(120_000)
        yield page
        browser.close()


def test_the_lead_samples_pages_print_small(tab, tmp_path):
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job
    from pentools.writeup.write import write_pages

    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "lead", sample="green-piston")
    write_pages(job)
    pages = sorted((job.folder / "writeup").glob("*.html"))
    assert len(pages) >= 2
    sizes = {}
    for page in pages:
        tab.goto(page.as_uri())
        sizes[page.name] = len(tab.pdf(prefer_css_page_size=True)) / 1e6
    # with the hatching as SVG patterns the larger of the two had 12 MB
    assert {name: size for name, size in sizes.items() if size > 2.0} == {}
