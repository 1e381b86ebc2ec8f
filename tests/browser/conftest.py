"""The real browser that the pages are opened in."""

import os
import shutil

import pytest

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")


@pytest.fixture(scope="module")
def chromium():
    if CHROMIUM is None:
        if os.environ.get("PENTOOLS_NEED_BROWSER"):
            pytest.fail("Chromium is missing, and PENTOOLS_NEED_BROWSER asks for it")
        pytest.skip("Chromium is not installed")
    sync_api = pytest.importorskip("playwright.sync_api")
    with sync_api.sync_playwright() as play:
        browser = play.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        yield browser
        browser.close()


@pytest.fixture(scope="module")
def tab(chromium):
    page = chromium.new_page()
    page.set_default_timeout(120_000)
    return page
