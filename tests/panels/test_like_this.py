"""Pens like this one: nothing is looked for before the press, and what was fitted and failed stands there after it."""

import pytest

from pentools.books.search import search
from pentools.record.job import create_job


@pytest.fixture
def like(job, sheet, tmp_path, monkeypatch):
    monkeypatch.setenv("PENTOOLS_KEPT", str(tmp_path / "kept"))
    asked = []
    looked = search.pens_like
    monkeypatch.setattr(search, "pens_like", lambda job: asked.append(job.name) or looked(job))
    return sheet.panel("seal").like, asked


def test_it_is_looked_for_only_on_a_press(like):
    row, asked = like
    assert (asked, row.table.value, row.button.value) == ([], "", False)
    row.button.value = True
    assert asked == ["test-pen"]
    assert "No other pen on this bench" in row.table.value
    row.button.value = False
    assert (row.table.value, row.button.description) == ("", "pens like this …")


def test_what_was_fitted_there_and_what_failed(like, job):
    job.add("seal", "measure", {"place": "cork", "bore": "8.50 mm", "groove": "4 mm"})
    other = create_job(job.bench, "other")
    other.add("intake", "arrival", {"pen": "a <dun> pen", "system": "piston", "material": "celluloid", "arrived_on": "2026-01-02"})  # fmt: skip
    other.add("seal", "measure", {"place": "cork", "bore": "8.56 mm", "groove": "4 mm"})
    for what, happened in (("cork 9.1", "pulls back"), ("cork 8.9", "no touch")):
        other.add("seal", "trial", {"place": "cork", "what": what, "outside": "9.1 mm", "dry": "yes", "happened": happened, "lot": "bag 3"})  # fmt: skip
    other.add("release", "result", {"ending": "done", "summary": "It writes.", "released_on": "2026-01-12"})
    row, _ = like
    row.button.value = True
    for said in (
        "a &lt;dun&gt; pen", "bore 8.56 mm (+0.06)", "the same material", "cork 9.1, cork on the head (lot bag 3)",
        "cork 8.9 at the cork on the head: no touch", "done 12 Jan 2026, after 10 days",
    ):  # fmt: skip
        assert said in row.table.value, said
