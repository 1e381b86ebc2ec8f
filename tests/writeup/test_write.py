"""The pages on disk, and the two exporters behind JupyterLab's menu."""

import warnings

import pytest
from writeup.pages import Parsed, markdown, notebook

from pentools.errors import HoldError, InputError, RecordError
from pentools.writeup.write import write_pages


def test_both_pages_are_written_with_a_line_each(small_job):
    lines = []
    pages = write_pages(small_job, ("client", "blog"), lines.append)
    assert [page.relative_to(small_job.folder).as_posix() for page in pages] == [
        "writeup/client.html",
        "writeup/blog.html",
    ]
    assert all(page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>") for page in pages)
    assert len(lines) == 2
    assert sorted(p.name for p in (small_job.folder / "writeup").iterdir()) == ["blog.html", "client.html"]


def test_a_page_is_replaced_in_one_piece(small_job, monkeypatch):
    [page] = write_pages(small_job, ("client",))
    before = page.read_bytes()
    monkeypatch.setattr(
        "pathlib.Path.replace", lambda *_: (_ for _ in ()).throw(OSError(28, "No space left on device"))
    )
    with pytest.raises(RecordError, match="could not be written"):
        write_pages(small_job, ("client",))
    assert page.read_bytes() == before
    assert [p.name for p in page.parent.iterdir()] == ["client.html"]


def test_without_consent_the_clients_page_is_written_and_the_other_is_held(new_job):
    job = new_job()
    lines = []
    with pytest.raises(HoldError, match="consent to publish is not recorded"):
        write_pages(job, ("blog", "client"), lines.append)
    assert [p.name for p in (job.folder / "writeup").iterdir()] == ["client.html"]
    assert "was not written" in lines[0]
    (job.folder / "writeup" / "blog.html").write_text("older")
    with pytest.raises(HoldError, match=r"An older blog\.html still lies in writeup/"):
        write_pages(job, ("blog",))


def test_an_audience_that_is_not_known_is_refused_before_anything_is_written(new_job):
    job = new_job()
    with pytest.raises(InputError):
        write_pages(job, ("client", "press"))
    assert not (job.folder / "writeup").exists()


@pytest.fixture(scope="module")
def exporters():
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # what other people's import does is not ours to judge
        from pentools.writeup import exporters as found
    return found


def as_notebook(*cells):
    import nbformat

    return nbformat.from_dict(notebook(*cells))


def test_the_exporters_make_the_same_pages(small_job, exporters):
    import nbformat

    nb = nbformat.from_dict(notebook(markdown("# How it came\n\nUnsaved words.")))
    resources = {"metadata": {"name": small_job.name, "path": str(small_job.folder)}}
    client, told = exporters.ClientPageExporter().from_notebook_node(nb, resources)
    assert told["output_extension"] == ".html"
    assert "Unsaved words." in Parsed(client).text
    assert "118 EUR" in client
    blog, _ = exporters.BlogPageExporter().from_notebook_node(nb, resources)
    assert "Unsaved words." in Parsed(blog).text
    assert "118 EUR" not in blog


def test_an_exporter_reads_a_notebook_from_its_file(small_job, exporters):
    page, _ = exporters.ClientPageExporter().from_filename(str(small_job.notebook))
    assert "In a glove box." in Parsed(page).text


def test_the_present_folder_stands_for_no_folder(small_job, exporters, monkeypatch):
    monkeypatch.chdir(small_job.folder)
    page, _ = exporters.BlogPageExporter().from_filename(small_job.notebook.name)
    assert "In a glove box." in Parsed(page).text


def test_the_menu_labels_and_kinds(exporters):
    for made, label in (
        (exporters.ClientPageExporter(), "Pen page for the client"),
        (exporters.BlogPageExporter(), "Pen page for publication"),
    ):
        assert made.export_from_notebook == label
        assert made.file_extension == ".html"
        assert made.output_mimetype == "text/html"


def test_an_exporter_says_in_words_why_there_is_no_page(new_job, exporters, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen"})
    held, _ = exporters.BlogPageExporter().from_notebook_node(as_notebook(), {"metadata": {"path": str(job.folder)}})
    assert "consent to publish is not recorded" in Parsed(held).text
    for resources in (None, {"metadata": {}}, {"metadata": {"path": str(tmp_path)}}):
        stray, _ = exporters.ClientPageExporter().from_notebook_node(as_notebook(), resources)
        assert "belongs to no job" in Parsed(stray).text
    job.record.path.with_name("record.jsonl").write_bytes(b"")
    (job.bench.folder / "bench.toml").write_text("[bench")
    broken, _ = exporters.ClientPageExporter().from_notebook_node(
        as_notebook(), {"metadata": {"path": str(job.folder)}}
    )
    assert "cannot be read" in Parsed(broken).text
    assert "Traceback" not in broken
