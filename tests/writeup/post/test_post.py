"""The post as a whole: what its folder holds, in what order it tells, and the bench's decimal sign throughout."""

import pytest
from writeup.pages import Parsed, code, markdown, notebook, png, stage
from writeup.samples import LEAD, SAMPLES, made

from pentools.record.job import job_in
from pentools.writeup.post.post import post_files


@pytest.mark.parametrize("name", SAMPLES)
def test_a_sample_has_text_twice_photos_and_drawings_in_two_forms(name):
    files = made(name, "post")
    endings = [file.rsplit(".", 1)[1] for file in files]
    assert endings.count("html") == endings.count("md") == 1
    short = name in (
        "button-in-an-evening",
        "lever-back-again",
    )  # little was measured, and one figure carries the story
    assert endings.count("png") == endings.count("svg") >= (1 if short else 2)
    assert endings.count("jpg") >= 2
    assert all(file.startswith("post/") and file.count("/") == 1 for file in files)
    pictures = [content for file, content in files.items() if not file.endswith((".html", ".md", ".svg"))]
    assert max(len(content) for content in pictures) < 400_000  # sized for the web


def test_the_story_leads_and_says_what_the_page_says():
    text = Parsed(made(LEAD, "post")["post/post.html"]).text
    order = ["A green pen in a seed merchant’s envelope", "Before, side, 9", "It came in a stiff", "Nobody’s pen", "In a few facts", "How it was measured"]  # fmt: skip
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    page = Parsed(made(LEAD, "story")["blog.html"]).text
    assert "It draws 1.748 mL" in text.replace("\u202f", " ")
    assert "It draws 1.748 mL" in page.replace("\u202f", " ")


def test_a_sentence_under_a_drawing_is_said_once(small_job):
    files = post_files(small_job, notebook(markdown("## Fill\n\nIt fills."), stage("fill test")))
    assert files["post/post.html"].count("It draws 1.28") == 1
    assert files["post/post.html"].count("<figcaption>It draws 1.28") == 1
    assert "<p>It draws" not in files["post/post.html"]


def test_published_pictures_and_tables_go_along(small_job):
    shown = [
        {
            "output_type": "display_data",
            "data": {"image/png": png()},
            "metadata": {"image/png": {"alt": "a red square"}},
        },
        {"output_type": "display_data", "data": {"text/html": "<table><tr><td>7</td></tr></table>"}, "metadata": {}},
    ]
    files = post_files(small_job, notebook(markdown("## A\n\nx"), code("1", "publish", outputs=shown)))
    assert any(file.endswith("-a-red-square.png") for file in files)
    assert "<td>7</td>" in files["post/post.html"]
    assert "<td>7</td>" in files["post/post.md"]


def test_a_comma_for_the_decimal_sign_in_words_and_drawings(small_job):
    path = small_job.bench.folder / "bench.toml"
    path.write_text(path.read_text().replace('decimal_sign = "."', 'decimal_sign = ","'))
    files = post_files(job_in(small_job.folder), None)
    assert "1,28" in files["post/post.html"]
    assert "1,28" in files["post/post.md"]
    assert any("1,28" in str(content) for file, content in files.items() if file.endswith(".svg"))


def test_a_draft_and_an_open_job_say_so(new_job):
    text = Parsed(post_files(new_job(), None, draft=True)["post/post.html"]).text
    assert "Draft: Not for publication." in text
    assert "Unfinished: This job is not finished." in text
