"""Pages as a real browser prints them: small, with their drawings as lines."""

import io
import re

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.record.layout import sample_names
from pentools.writeup.pdf import PdfError, engine
from pentools.writeup.write import write_pages

pytestmark = pytest.mark.browser


def test_the_lead_samples_pages_print_small(tab, tmp_path):
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


PAPERS = ("proposal", "care", "parts", "packing")
POINTS = {"A4": (595, 842), "Letter": (612, 792)}


@pytest.mark.parametrize("paper", POINTS)
def test_every_paper_of_every_sample_is_one_page(tab, tmp_path, paper):
    pypdf = pytest.importorskip("pypdf")
    bench = open_bench_folder(tmp_path / "bench", create=True)
    settings = bench.folder / "bench.toml"
    settings.write_text(settings.read_text().replace('paper = "A4"', f'paper = "{paper}"'))
    bench = open_bench_folder(bench.folder)
    samples = sample_names()
    assert len(samples) >= 6
    for sample in samples:
        for page in write_pages(create_job(bench, sample, sample=sample), PAPERS):
            tab.goto(page.as_uri())
            printed = pypdf.PdfReader(io.BytesIO(tab.pdf(prefer_css_page_size=True)))
            assert len(printed.pages) == 1, (sample, page.name)
            assert tuple(round(float(side)) for side in printed.pages[0].mediabox[2:]) == POINTS[paper]
            words = re.sub(r"\s+", " ", printed.pages[0].extract_text())
            assert "1 of 1" in words
            assert f"Job {sample}" in words


def test_every_form_of_the_lead_sample_is_small_as_a_tagged_pdf(tmp_path):
    pypdf = pytest.importorskip("pypdf")
    try:
        engine()
    except PdfError as error:
        pytest.skip(str(error))
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "lead", sample="green-piston")
    write_pages(job, pdf=True)
    made = sorted((job.folder / "writeup").rglob("*.pdf"))
    assert {"client.pdf", "record.pdf", "blog.pdf"} <= {path.name for path in made}
    for path in made:
        assert path.stat().st_size < 2e6, path.name
        printed = pypdf.PdfReader(path)
        assert printed.trailer["/Root"]["/MarkInfo"]["/Marked"] == True, path.name  # noqa: E712 - a boolean object
        assert printed.metadata.title


@pytest.mark.parametrize("width", [1100, 360])
def test_papers_have_no_violation_and_nothing_wider_than_the_window(tab, tmp_path, width):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "lead", sample="mixed-dates")
    page = tab.context.browser.new_context(bypass_csp=True, viewport={"width": width, "height": 900}).new_page()
    for path in write_pages(job, PAPERS):
        page.goto(path.as_uri())
        found = axe.run(page).response["violations"]
        assert [(one["id"], one["nodes"][0]["html"]) for one in found] == [], path.name
        assert page.evaluate("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), path.name
    page.context.close()
