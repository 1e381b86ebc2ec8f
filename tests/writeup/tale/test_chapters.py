"""The notebook becomes chapters: one title, a chapter a heading, the stages with the words they follow."""

import pytest
from PIL import Image
from writeup.pages import code, markdown, notebook, png, stage

from pentools.record.registry import STAGES
from pentools.writeup.photos import PhotoBook
from pentools.writeup.story import text_html
from pentools.writeup.tale.chapters import Output, outline


@pytest.fixture
def book(new_job):
    return PhotoBook(new_job(), "everybody")


def laid_out(book, *cells, top=2):
    return outline(notebook(*cells), "everybody", book, top=top)


def told(chapter):
    return " ".join(text_html(part.tokens, lambda picture, alone: f"[{picture.file}]") for part in chapter.words)


def test_a_first_heading_alone_is_the_title_and_stands_nowhere_else(book):
    plan = laid_out(
        book, markdown("# A *green* pen\n\nIt came.\n\n### Deep"), stage("intake"), markdown("## Two\n\nMore.")
    )
    assert text_html(plan.title, lambda picture, alone: "") == "A <em>green</em> pen"
    assert [told(c) for c in plan.chapters] == [["<p>It came.</p>", "<h2>Deep</h2>"][0], "<h2>Deep</h2>", "<h2>Two</h2>\n<p>More.</p>"]  # fmt: skip
    assert plan.chapters[1].stages == ("intake",)


@pytest.mark.parametrize(
    ("texts", "headings"),
    [
        (("# One", "# Two\n\n## Under"), ["h2", "h2", "h3"]),  # several first headings are chapters, not titles
        (("Words first.\n\n# Late", "## Two"), ["h2", "h2"]),
        (("#### Deep",), ["h3"]),
    ],
)
def test_without_a_title_every_heading_stands_in_the_story(book, texts, headings):
    plan = laid_out(book, *(markdown(text) for text in texts))
    assert plan.title == ()
    assert [t.tag for c in plan.chapters for w in c.words for t in w.tokens if t.type == "heading_open"] == headings


def test_below_another_heading_all_go_one_level_down(book):
    plan = laid_out(book, markdown("# T\n\nWords.\n\n## A\n\n### B"), top=3)
    assert [t.tag for c in plan.chapters for w in c.words for t in w.tokens if t.type == "heading_open"] == ["h3", "h4"]


def test_stages_of_one_cell_belong_to_the_words_before_them(book):
    two = code('bench.stage("open", "clean")')
    plan = laid_out(book, markdown("## A\n\na"), two, stage("seal"), markdown("more"), stage("limits"), stage("open"))
    assert [(bool(c.words), c.stages) for c in plan.chapters] == [
        (True, ("open", "clean")),
        (False, ("seal",)),
        (True, ("limits",)),
    ]


def test_words_without_a_heading_go_on_with_the_chapter(book):
    plan = laid_out(book, markdown("## A\n\na"), stage("open"), markdown("b"), stage("clean"))
    assert len(plan.chapters) == 1
    assert plan.chapters[0].stages == ("open", "clean")


def test_what_is_private_or_unknown_or_published(book):
    plan = laid_out(
        book,
        markdown("secret", "private"),
        code('bench.stage("polishing wheel")'),
        code("1", "publish", outputs=[{"output_type": "display_data", "data": {"image/png": png()}, "metadata": {}}]),
    )
    assert plan.unknown == ("polishing wheel",)
    assert [isinstance(part, Output) for c in plan.chapters for part in c.parts] == [True]


def test_without_a_notebook_every_stage_is_a_chapter(book):
    assert [c.stages for c in outline(None, "everybody", book).chapters] == [(key,) for key in STAGES]


def test_pictures_of_the_text_are_those_that_may_be_seen(small_job):
    Image.new("RGB", (60, 30)).save(small_job.folder / "photos" / "mine.jpg")
    cells = notebook(markdown("## A\n\n![x](photos/side-a.jpg)\n\n![y](photos/mine.jpg)"))
    [chapter] = outline(cells, "everybody", PhotoBook(small_job, "everybody")).chapters
    assert [picture.file for picture in chapter.pictures] == ["side-a.jpg"]
    assert "[side-a.jpg]" in told(chapter)
