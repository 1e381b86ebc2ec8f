"""The exporters behind JupyterLab's menu."""

import warnings

import pytest
from writeup.pages import Parsed, markdown, notebook

from pentools.errors import RecordError


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
    client, _ = exporters.LetterExporter().from_notebook_node(nb, resources)
    assert "Unsaved words." in Parsed(client).text
    assert "118 EUR" in client
    blog, _ = exporters.StoryExporter().from_notebook_node(nb, resources)
    assert "Unsaved words." in Parsed(blog).text
    assert "118 EUR" not in blog


def test_an_exporter_reads_a_notebook_from_its_file(small_job, exporters):
    page, _ = exporters.LetterExporter().from_filename(str(small_job.notebook))
    assert "In a glove box." in Parsed(page).text


def test_the_present_folder_stands_for_no_folder(small_job, exporters, monkeypatch):
    monkeypatch.chdir(small_job.folder)
    page, _ = exporters.StoryExporter().from_filename(small_job.notebook.name)
    assert "In a glove box." in Parsed(page).text


def test_the_files_handed_out_are_named_apart(small_job, exporters):
    """JupyterLab and nbconvert name a file after the notebook and put the output extension behind it."""
    nb = as_notebook(markdown("# How it came"))
    names = [
        small_job.name
        + made().from_notebook_node(nb, {"metadata": {"path": str(small_job.folder)}})[1]["output_extension"]
        for made in (exporters.LetterExporter, exporters.RecordExporter, exporters.StoryExporter)
    ]
    assert names == [f"{small_job.name}-{form}.html" for form in ("letter", "record", "story")]


def test_the_menu_labels_and_kinds(exporters):
    for made, label in (
        (exporters.LetterExporter(), "Pen letter for the owner"),
        (exporters.StoryExporter(), "Pen story for everybody"),
    ):
        assert made.export_from_notebook == label
        assert made.file_extension == ".html"
        assert made.output_mimetype == "text/html"


def test_an_exporter_says_in_words_why_there_is_no_page(new_job, exporters, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    job = new_job()
    job.add("intake", "arrival", {"pen": "a pen"})
    held, _ = exporters.StoryExporter().from_notebook_node(as_notebook(), {"metadata": {"path": str(job.folder)}})
    assert "consent to publish is not recorded" in Parsed(held).text
    for resources in (None, {"metadata": {}}, {"metadata": {"path": str(tmp_path)}}):
        stray, _ = exporters.LetterExporter().from_notebook_node(as_notebook(), resources)
        assert "belongs to no job" in Parsed(stray).text

    def refuse(_):
        raise RecordError("record.jsonl cannot be read (the raw words).")

    monkeypatch.setattr("pentools.record.job.job_in", refuse)
    told = {}
    for name in ("LetterExporter", "StoryExporter"):
        where = {"metadata": {"path": str(job.folder)}}
        page, _ = getattr(exporters, name)().from_notebook_node(as_notebook(), where)
        told[name] = Parsed(page).text
        assert "cannot be read" in told[name]
        assert "Traceback" not in page
    assert "the raw words" in told["LetterExporter"]
    assert "the raw words" not in told["StoryExporter"]
    monkeypatch.undo()
    (job.bench.folder / "bench.toml").write_text('[bench]\ncontact = "the raw words"\nname = {"the raw words\n')
    page, _ = exporters.StoryExporter().from_notebook_node(as_notebook(), where)
    assert "the raw words" not in page
