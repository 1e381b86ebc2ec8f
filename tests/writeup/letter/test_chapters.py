"""The story with its figures: one a chapter, a sentence under it, none twice."""

import re

import pytest
from writeup.pages import markdown, notebook, stage

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job
from pentools.writeup.letter.chapters import WORDS_A_FIGURE, chapters
from pentools.writeup.notebook import read_notebook

SAMPLES = ("green-piston", "lever-with-limits", "casein-returned", "mixed-dates", "short-breather", "syringe-ladder")


def test_the_owners_story_with_what_is_for_the_owner_alone(small_job):
    cells = notebook(
        markdown("# How it came\n\nIn a box."),
        markdown("For you alone.", "private"),
        stage("limits"),
        markdown("How to use it.", "how-to"),
        markdown("## Home\n\nGone."),
    )
    first, last = chapters(small_job, cells, frozenset())
    assert "In a box." in first.html
    assert "For you alone." in first.html
    assert first.stages == ["limits"]
    assert last.html.startswith("<h2>Home</h2>")
    assert "How to use it." not in first.html + last.html


def test_a_picture_that_stands_on_the_page_is_not_shown_again(small_job):
    cells = notebook(markdown("# Story\n\nTold."), stage("pictures"))
    small_job.add(
        "pictures", "picture", {"photo": "side-a.jpg", "moment": "during", "shows": "The pen at work. And more."}
    )
    [chapter] = chapters(small_job, cells, frozenset())
    assert chapter.photo.file == "side-a.jpg"
    assert chapter.caption == "The pen at work."
    assert chapter.drawing is None
    [chapter] = chapters(small_job, cells, frozenset({"side-a.jpg"}))
    assert chapter.photo is None


def test_a_picture_that_was_said_to_belong_to_a_stage_stands_in_its_chapter(small_job):
    cells = notebook(markdown("# Story\n\nTold."), stage("fill test"), markdown("## Home\n\nGone."), stage("release"))
    said = {"photo": "side-b.jpg", "moment": "during", "shows": "Filling it.", "belongs_to": "release"}
    small_job.add("pictures", "picture", said)
    first, last = chapters(small_job, cells, frozenset())
    assert first.photo is None
    assert (last.photo.file, last.caption) == ("side-b.jpg", "Filling it.")


def test_a_chapter_with_a_picture_of_its_own_gets_no_other(small_job):
    cells = notebook(markdown("# Story\n\n![a pen](photos/side-a.jpg)"), stage("fill test"))
    [chapter] = chapters(small_job, cells, frozenset())
    assert chapter.drawing is None


def test_a_chart_stands_where_it_was_weighed_with_a_sentence_that_is_not_its_title(small_job):
    cells = notebook(markdown("# Story\n\nTold."), stage("fill test"))
    [chapter] = chapters(small_job, cells, frozenset())
    assert chapter.drawing is not None
    assert chapter.caption
    assert chapter.caption != chapter.drawing.title


@pytest.mark.parametrize("name", SAMPLES)
def test_figures_keep_to_the_words_they_belong_to(name, tmp_path):
    job = create_job(open_bench_folder(tmp_path, create=True), name, sample=name)
    found = chapters(job, read_notebook(job.notebook), frozenset())
    words = sum(len(re.sub(r"<[^>]*>", " ", chapter.html).split()) for chapter in found)
    shown = [chapter for chapter in found if chapter.photo or chapter.drawing]
    photos = [chapter.photo.file for chapter in shown if chapter.photo]
    assert len(photos) == len(set(photos))
    drawings = [chapter for chapter in shown if chapter.drawing]
    assert len(drawings) <= max(1, words // WORDS_A_FIGURE)
    assert all(chapter.caption for chapter in shown)
    assert not any(chapter.photo and chapter.drawing for chapter in shown)
