"""The job's notebook read as data: which cells count, for whom, and what is said of a file that is none."""

import json
import os

import pytest
from writeup.pages import Parsed, code, markdown, notebook, stage

from pentools.errors import RecordError
from pentools.writeup.notebook import PublishedCell, StageCell, StoryCell, cells_for, read_notebook, stages_named
from pentools.writeup.page import render_page


@pytest.mark.parametrize(
    ("source", "keys"),
    [
        ('bench.stage("fill test")', ("fill test",)),
        ('bench.stage("open", "clean")', ("open", "clean")),
        ('bench.stage("open", clean)', ()),
        ("job.stage('intake')", ("intake",)),
        ('bench.stage("intake")  # the panel', ("intake",)),
        ('bench.stage("intake");', ("intake",)),
        ('x = bench.stage("intake")', ()),
        ("bench.stage(name)", ()),
        ('bench.stage("a"); bench.stage("b")', ()),
        ("bench.check()", ()),
        ('other.stage("intake")', ()),
        ('bench.stage("intake', ()),
        ('print("stage")', ()),
    ],
)
def test_a_stage_cell_is_known_by_its_code(source, keys):
    assert stages_named(source) == keys


def test_cells_in_order_with_their_tags():
    shown = code("1", "publish", outputs=[{"output_type": "stream", "name": "stdout", "text": "x"}])
    nb = notebook(
        markdown(["# He", "llo"]),
        markdown("how", "how-to"),
        markdown("own", "private"),
        code("1+1"),
        stage("intake"),
        shown,
    )
    assert [type(cell) for cell in cells_for(nb, "owner")] == [StoryCell, StoryCell, StageCell, PublishedCell]
    assert [type(cell) for cell in cells_for(nb, "everybody")] == [StoryCell, StageCell, PublishedCell]
    assert next(iter(cells_for(nb, "everybody"))).text == "# Hello"
    assert list(cells_for(notebook(code('bench.stage("intake")', "private")), "everybody")) == []


def test_prompts_that_came_with_the_kit_are_left_out():
    import msgspec

    from pentools.record.job import shipped_folder

    shipped = msgspec.json.decode((shipped_folder("notebooks") / "pen_job.ipynb").read_bytes())
    assert not [cell for cell in cells_for(shipped, "owner") if isinstance(cell, StoryCell)]
    first = next(cell for cell in shipped["cells"] if "template" in cell["metadata"].get("tags", []))
    first["source"] = "".join(first["source"]) + "\n\nMy own words."
    told = next(cell for cell in cells_for(shipped, "owner") if isinstance(cell, StoryCell))
    assert "My own words." in told.text
    assert "*" not in told.text


def test_a_notebook_that_cannot_be_read_is_said(small_job):
    small_job.notebook.write_text("{")
    with pytest.raises(RecordError, match="cannot be read"):
        render_page(small_job, "owner")
    small_job.notebook.write_text(json.dumps([1]))
    with pytest.raises(RecordError, match="not a notebook"):
        render_page(small_job, "owner")


def test_a_byte_order_mark_before_a_notebook_is_passed_over(small_job):
    content = small_job.notebook.read_bytes()
    small_job.notebook.write_bytes(b"\xef\xbb\xbf" + content)
    assert read_notebook(small_job.notebook) == json.loads(content)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes in its folders")
def test_what_is_no_file_is_not_waited_for(small_job):
    small_job.notebook.unlink()
    os.mkfifo(small_job.notebook)
    with pytest.raises(RecordError, match="it is no file"):
        read_notebook(small_job.notebook)


@pytest.mark.parametrize("audience", ["owner", "everybody"])
def test_a_job_without_its_notebook_is_made_from_the_record(small_job, audience):
    small_job.notebook.unlink()
    assert "A hairline at the lip." in Parsed(render_page(small_job, audience)).text


@pytest.mark.parametrize(
    ("source", "told"),
    [
        ("Before <!-- hidden --> after", "Before  after"),
        ("One\n\n<!-- hidden\n\nstill hidden -->\n\ntwo", "One\n\n\n\ntwo"),
        ("Words <!-- hidden without an end\n\nto the last", "Words"),
        ("<!-- nothing else -->", None),
        ("a `<!-- shown as code -->` b", "a `<!-- shown as code -->` b"),
        ("```html\n<!-- shown as code -->\n```\n<!-- hidden -->", "```html\n<!-- shown as code -->\n```"),
        ("~~~\n<!-- shown -->\n~~~", "~~~\n<!-- shown -->\n~~~"),
        ("a ` lone tick <!-- hidden --> b", "a ` lone tick  b"),
        ("a ` tick\n\nnew ` <!-- hidden --> b", "a ` tick\n\nnew `  b"),
        ("<!-- ` --> b ` <!-- hidden -->", "b `"),
        ("<!-- one --> b <!-- two --> c", "b  c"),
    ],
)
def test_a_comment_in_a_story_cell_is_not_told(source, told):
    cells = list(cells_for(notebook(markdown(source)), "everybody"))
    assert [cell.text for cell in cells] == ([] if told is None else [told])
