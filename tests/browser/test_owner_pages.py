"""The letter and the record in a real browser: printed pages counted, page numbers read, nothing cut, no barrier found."""

import io

import pytest
from writeup.samples import LEAD, SAMPLES, made

pytestmark = pytest.mark.browser

RE_SACS = ("lever-with-limits", "short-breather", "syringe-ladder", "casein-returned")
"""Jobs of one seal or sac, and the one that went home unopened; the two others have a story with more to it."""
FILES = {"letter": "client.html", "record": "record.html"}


@pytest.fixture
def shown(tab, tmp_path):
    """Opens a form of a sample as a file, on paper of a size."""

    def show(name, form, paper="A4"):
        text = made(name, form)[FILES[form]].replace("size: A4", f"size: {paper}")
        path = tmp_path / f"{name}-{form}-{paper}.html"
        path.write_text(text, encoding="utf-8")
        tab.set_viewport_size({"width": 1200, "height": 900})
        tab.goto(path.as_uri())
        return tab

    return show


def printed(tab):
    pypdf = pytest.importorskip("pypdf")
    content = tab.pdf(prefer_css_page_size=True)
    return pypdf.PdfReader(io.BytesIO(content)), len(content)


@pytest.mark.parametrize("paper", ["A4", "letter"])
@pytest.mark.parametrize("name", SAMPLES)
def test_the_letter_keeps_to_its_pages_and_the_first_is_whole(shown, name, paper):
    pdf, size = printed(shown(name, "letter", paper))
    assert len(pdf.pages) <= (2 if name in RE_SACS else 4)
    first = " ".join(pdf.pages[0].extract_text().split())
    for label in ("What was done", "Price", "Care", "stands in the record"):
        assert label in first, label
    assert size < 2e6


@pytest.mark.parametrize("form", FILES)
def test_every_sheet_has_the_jobs_number_and_its_own(shown, form):
    pdf, _ = printed(shown(LEAD, form))
    for number, page in enumerate(pdf.pages, 1):
        text = page.extract_text().replace(" ", "")
        assert f"Job{LEAD}" in text
        assert f"{number}of{len(pdf.pages)}" in text or f"{number}/{len(pdf.pages)}" in text


def test_what_is_folded_on_the_screen_is_open_in_print_and_no_table_begins_at_the_foot(shown):
    pdf, _ = printed(shown("lever-with-limits", "record"))
    texts = [page.extract_text() for page in pdf.pages]
    assert any("Weighings in the order they were taken" in text for text in texts)
    for text in texts:
        lines = [line.strip() for line in text.splitlines() if line.strip()]
        assert not lines[-3:][0].endswith("What was entered")


@pytest.mark.parametrize("form", FILES)
@pytest.mark.parametrize("name", [LEAD, "casein-returned"])
def test_no_barrier_and_nothing_sideways_on_a_telephone(shown, name, form):
    from axe_playwright_python.sync_playwright import Axe

    tab = shown(name, form)
    found = Axe().run(tab).response["violations"]
    assert [(v["id"], v["nodes"][0]["html"][:120]) for v in found] == []
    tab.set_viewport_size({"width": 390, "height": 844})
    assert tab.evaluate("document.documentElement.scrollWidth") <= 390
