"""The Markdown of a post, rendered by a CommonMark parser, says what the HTML says; whatever the restorer typed.

The parser is markdown-it-py with its "commonmark" rules (CommonMark 0.31).
"""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from writeup.pages import Parsed, markdown, notebook
from writeup.samples import SAMPLES, made

from pentools.writeup.outputs import PublishedOutput
from pentools.writeup.post.commonmark import commonmark
from pentools.writeup.post.fragment import fragment
from pentools.writeup.post.parts import Caption, FactsList, Fold, Image, Mark, Said, Title
from pentools.writeup.post.pictures import PostPicture
from pentools.writeup.tale.chapters import Words, outline

READER = MarkdownIt("commonmark", {"html": True})
PICTURE = PostPicture("01-side.jpg", "the pen, *side* [on]", 800, 400)


class NoPhotos:
    audience = "everybody"

    def embed(self, file):
        return None


def read(md):
    return Parsed(READER.render(md))


def both(*parts):
    return read(commonmark(parts, lambda picture: PICTURE)), Parsed(fragment(parts, lambda picture: PICTURE))


def words(text):
    plan = outline(notebook(markdown(text)), "everybody", NoPhotos(), top=3)
    return [part for chapter in plan.chapters for part in chapter.parts]


@pytest.mark.parametrize("name", SAMPLES)
def test_a_sample_says_the_same_in_both(name):
    files = made(name, "post")
    as_md, as_html = read(files["post/post.md"]), Parsed(files["post/post.html"])
    assert as_md.text == as_html.text
    assert [i["src"] for i in as_md.images] == [i["src"] for i in as_html.images]
    assert [i["alt"] for i in as_md.images] == [i["alt"] for i in as_html.images]
    assert set(as_md.headings) == {2, 3}


@pytest.mark.parametrize(
    "text",
    [
        "Words *soft* and **hard**, `code`, [a link](https://example.org/a_b_c), a break  \nhere.",
        "1. one\n2. two\n   - deep\n\n> said\n> again\n\n---\n\n    indented\n\n```\nfenced *x*\n```",
        "| a | b |\n|---|---|\n| 1 *x* | 2 |\n\nafter",
        "It was ~~gone~~ found, <b>not</b> bold, 5 < 6 & 7 > 2, \\*no star\\*.",
        "1930\\. A year\n\n\\# no heading\n\n\\- no list\n\n\\+ nor this",
        "### Deep _down_\n\ntext\n\n#### deeper",
        "a_b_c and *a*b and __init__ and 2*3*4",
    ],
)
def test_what_a_restorer_may_write_says_the_same_in_both(text):
    as_md, as_html = both(*words(text))
    assert as_md.text == as_html.text
    assert as_md.headings == as_html.headings
    tags = {"em", "strong", "code", "a", "li", "blockquote", "pre", "table", "del", "br"}
    assert sorted(t for t, _ in as_md.tags if t in tags) == sorted({"s": "del"}.get(t, t) for t, _ in as_html.tags if {"s": "del"}.get(t, t) in tags)  # fmt: skip


TYPED = st.text(st.sampled_from(list("ab 19.*_#+-<>&[]()!`~|\\:/\n“’")), max_size=40)


@settings(max_examples=120)
@example("~~~ three tildes")
@example("~~~~")
@given(TYPED)
@example("<b>")
@example("&amp;")
@example("![x](y)")
def test_whatever_stands_in_a_sentence_stays_words(text):
    line = " ".join(text.split())
    if line:
        as_md, as_html = both(
            Said(line), Mark("Note", line), Title(3, line), FactsList((("A", line),)), Fold("B", (line,))
        )
        assert as_md.text == as_html.text


@settings(max_examples=200)
@given(TYPED)
def test_whatever_a_restorer_types_says_the_same_in_both(text):
    parts = words(text)
    if parts:
        as_md, as_html = both(*parts)
        assert as_md.text == as_html.text


@settings(max_examples=100)
@given(TYPED)
def test_whatever_a_picture_shows_is_read_aloud_the_same_in_both(text):
    line = " ".join(text.split())
    as_md, as_html = both(Image(PostPicture("a.jpg", line, 8, 4)))
    assert [i["alt"] for i in as_md.images] == [i["alt"] for i in as_html.images] == [line]


def test_every_sort_of_part():
    image = Image(PICTURE)
    as_md, as_html = both(
        Title(2, "T_t"), Said("S"), Mark("M", "m"), image, Caption(image, "under *it*"), FactsList((("L", "v"),)),
        Fold("How", ("one", "two")), PublishedOutput("<table>\n\n<tr><td>1</td></tr>\n\n</table>"), Said("end"),
    )  # fmt: skip
    assert as_md.text == as_html.text == "T_t S M: m under *it* L: v How one two 1 end"
    assert [i["alt"] for i in as_md.images] == ["the pen, *side* [on]"] * 2
    assert as_md.headings == [2, 3]
    assert [t for t, _ in as_md.tags].count("td") == 1
    assert isinstance(words("x")[0], Words)
