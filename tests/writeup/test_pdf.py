"""Pages as PDF: read back by another library; nothing fetched; a plain sentence where the machine cannot."""

import builtins
import io
import subprocess
import sys

import pytest
from writeup.pages import png

from pentools.writeup.pdf import PdfError, engine, pdf_of
from pentools.writeup.write import write_pages

pypdf = pytest.importorskip("pypdf")


@pytest.fixture
def makes_pdfs():
    try:
        engine()
    except PdfError as error:
        pytest.skip(str(error))


def read(content):
    return pypdf.PdfReader(io.BytesIO(content))


def tags(reader):
    """Every structure element: its type and its alternative text."""
    found, waiting = [], [reader.trailer["/Root"]["/StructTreeRoot"]]
    while waiting:
        node = waiting.pop().get_object()
        if isinstance(node, pypdf.generic.ArrayObject):
            waiting += node
        elif isinstance(node, pypdf.generic.DictionaryObject):
            if "/S" in node:
                found.append((str(node["/S"]), str(node.get("/Alt", ""))))
            if "/K" in node:
                waiting.append(node["/K"])
    return found


DRAWN = '<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="20mm" viewBox="0 0 80 20" role="img"><title>T</title><desc>A rod of 3 &amp; 4 mm</desc><path d="M0 0L80 20" stroke="#1f3a5f"/><text x="5" y="10" font-size="4">drawnword</text></svg>'


def test_a_page_is_tagged_with_its_language_title_paper_and_alternative_texts(makes_pdfs):
    page = f'<!DOCTYPE html><html lang="en"><head><title>A letter</title><style>@page {{ size: letter }} .d svg {{ width: 60mm }}</style></head><body><h1>Your pen writes</h1><p>1.24 mL ± 0.05</p><div class="d">{DRAWN}</div><img alt="a red square" src="data:image/png;base64,{png()}"></body></html>'
    reader = read(pdf_of(page))
    root = reader.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"] == True  # noqa: E712 - a boolean object of the reader
    assert root["/ViewerPreferences"]["/DisplayDocTitle"] == True  # noqa: E712
    assert reader.metadata.title == "A letter"
    assert b"pdfuaid" in root["/Metadata"].get_object().get_data()
    assert tuple(round(float(side)) for side in reader.pages[0].mediabox[2:]) == (612, 792)
    found = tags(reader)
    assert {"/H1", "/P", "/Figure"} <= {tag for tag, _ in found}
    assert {alt for tag, alt in found if tag == "/Figure"} == {"A rod of 3 & 4 mm", "a red square"}
    words = " ".join(reader.pages[0].extract_text().split())
    assert "Your pen writes" in words
    assert "1.24 mL ± 0.05" in words
    assert "drawnword" in words  # the drawing's letters stay letters
    fonts = reader.pages[0]["/Resources"]["/Font"].values()
    descriptors = [font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"] for font in fonts]
    assert descriptors
    assert all({"/FontFile2", "/FontFile3"} & set(descriptor) for descriptor in descriptors)


def test_nothing_is_fetched_from_the_disk_or_outside(makes_pdfs, tmp_path):
    secret = tmp_path / "secret.txt"
    secret.write_text("secretword")
    (tmp_path / "own.svg").write_text('<svg xmlns="http://www.w3.org/2000/svg"><text y="9">secretword</text></svg>')
    asked = []
    real = builtins.open

    def watched(file, *args, **kwargs):
        asked.append(str(file))
        return real(file, *args, **kwargs)

    page = f'<html lang="en"><head><title>t</title><link rel="stylesheet" href="{secret.as_uri()}"><style>@import "http://127.0.0.1:9/x.css";</style></head><body><img alt="a" src="{(tmp_path / "own.svg").as_uri()}"><img alt="b" src="http://127.0.0.1:9/b.png"><object data="{secret.as_uri()}">none</object>words</body></html>'
    builtins.open = watched
    try:
        words = read(pdf_of(page)).pages[0].extract_text()
    finally:
        builtins.open = real
    assert "words" in words
    assert "secretword" not in words
    assert not [file for file in asked if str(tmp_path) in file]


def test_a_pages_pdf_lies_beside_it(makes_pdfs, small_job):
    lines = []
    [page] = write_pages(small_job, ("packing",), lines.append, pdf=True)
    reader = read(page.with_suffix(".pdf").read_bytes())
    assert len(reader.pages) == 1
    assert "Adela Quist" in reader.pages[0].extract_text()
    assert any("packing.pdf" in line for line in lines)
    lines.clear()
    write_pages(small_job, ("packing",), lines.append)
    assert any("packing.pdf beside it is older" in line for line in lines)


def test_where_it_is_not_installed_the_pages_are_written_and_a_sentence_says_what_to_do(small_job, monkeypatch):
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    with pytest.raises(PdfError, match=r"pip install 'pentools\[pdf\]'"):
        write_pages(small_job, ("letter", "packing"), pdf=True)
    there = {
        path.relative_to(small_job.folder / "writeup").as_posix()
        for path in (small_job.folder / "writeup").rglob("*.*")
    }
    assert there == {"client.html", "papers/packing.html"}


def test_where_the_systems_library_is_missing_it_is_named(small_job, monkeypatch, tmp_path):
    (tmp_path / "weasyprint.py").write_text("raise OSError(\"cannot load library 'libpango-1.0-0'\")")
    monkeypatch.syspath_prepend(str(tmp_path))
    for name in [name for name in sys.modules if name.partition(".")[0] == "weasyprint"]:
        monkeypatch.delitem(sys.modules, name)
    lines = []
    with pytest.raises(PdfError, match="Pango library"):
        write_pages(small_job, ("packing",), lines.append, pdf=True)
    assert (small_job.folder / "writeup" / "papers" / "packing.html").is_file()


def test_the_lead_samples_papers_are_small_whole_pages_on_both_papers(makes_pdfs, tmp_path):
    from pentools.record.bench import open_bench_folder
    from pentools.record.job import create_job, open_job

    bench = open_bench_folder(tmp_path / "bench", create=True)
    create_job(bench, "lead", sample="green-piston")
    forms = {"letter": 4, "proposal": 1, "care": 1, "parts": 1, "packing": 1}
    for paper, size in (("Letter", (612, 792)), ("A4", (595, 842))):
        pages = write_pages(open_job("lead", bench=bench.on_paper(paper)), forms, pdf=True)
        for page, most in zip(pages, forms.values(), strict=True):
            content = page.with_suffix(".pdf").read_bytes()
            reader = read(content)
            assert len(content) < 2e6
            assert len(reader.pages) <= most, page
            assert tuple(round(float(side)) for side in reader.pages[0].mediabox[2:]) == size
            assert all(alt for tag, alt in tags(reader) if tag == "/Figure")
    # no drawing became a picture made of dots: those there are, are the photographs of the letter
    care = next(page for page in pages if page.stem == "care")
    assert not read(care.with_suffix(".pdf").read_bytes()).pages[0].images


def test_making_a_pdf_leaves_half_a_picture_unreadable(makes_pdfs):
    asked = "from pentools.writeup.pdf import engine; engine(); from PIL import ImageFile; print(ImageFile.LOAD_TRUNCATED_IMAGES)"
    told = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "False"  # elsewhere a copy that stopped half way must still be said to be one
