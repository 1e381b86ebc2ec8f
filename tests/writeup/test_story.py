"""The restorer's text becomes HTML that can do no harm, with its headings and the job's own pictures."""

import pytest
from PIL import Image
from writeup.pages import Parsed, png

from pentools.writeup.photos import PhotoBook
from pentools.writeup.story import clean_html, tell


@pytest.fixture
def book(new_job):
    job = new_job()
    Image.new("RGB", (50, 25), "navy").save(job.folder / "photos" / "a.jpg")
    Image.new("RGB", (50, 25), "navy").save(job.folder / "secret.jpg")
    return PhotoBook(job, "owner")


def test_headings_are_kept_and_lowered(book):
    story = tell("# One\n\n## Two\n\n### Three", book, lift=1)
    assert Parsed(story.html).headings == [2, 3, 4]
    assert story.last_level == 4
    assert Parsed(tell("# One\n\n## Two", book, lift=0).html).headings == [2, 2]


def test_no_level_is_skipped(book):
    assert Parsed(tell("#### Deep\n\n###### Deeper", book, lift=1, level_before=2).html).headings == [3, 4]


def test_markup_in_the_text_stays_text(book):
    html = tell('Hello <b onclick="x()">you</b> <script>alert(1)</script>', book).html
    assert "<script" not in html
    assert "<b" not in html
    assert "alert(1)" in html


@pytest.mark.parametrize(
    "address",
    ["javascript:alert(1)", "data:text/html,x", "vbscript:x", "file:///etc/passwd", "//evil.example/x", "photos/a.jpg"],
)
def test_only_plain_links_are_kept(book, address):
    assert "href" not in tell(f"[words]({address})", book).html


@pytest.mark.parametrize("address", ["https://example.org/a?b=1", "http://example.org", "mailto:me@example.org"])
def test_a_plain_link_keeps_its_address_and_tells_nothing_about_the_reader(book, address):
    html = tell(f"[words]({address})", book).html
    assert f'href="{address}"' in html
    assert "noreferrer" in html


def test_a_picture_from_the_photos_folder_is_embedded(book):
    html = tell("![The cork, *split*](photos/a.jpg)", book).html
    assert html.startswith('<figure class="photo"><img src="data:image/jpeg;base64,')
    assert 'alt="The cork, *split*"' in html or 'alt="The cork, split"' in html
    assert "<figcaption>" in html
    inline = tell("See ![it](a.jpg) here.", book).html
    assert inline.startswith("<p>See <img")


@pytest.mark.parametrize(
    "source",
    [
        "../secret.jpg",
        "photos/../../secret.jpg",
        "/etc/passwd",
        "http://example.org/x.jpg",
        "none.jpg",
        "..%2Fsecret.jpg",
        "data:image/png;base64,AAAA",
    ],
)
def test_a_picture_from_anywhere_else_is_left_out_in_words(book, source):
    story = tell(f"Words ![x]({source})", book)
    assert "<img" not in story.html
    assert len(story.left_out) == 1


def test_a_picture_without_a_description_says_so(book):
    assert 'alt="a picture without a description"' in tell("![](a.jpg)", book).html


def test_a_link_out_of_the_photos_folder_is_not_followed(book):
    (book.job.folder / "photos" / "sly.jpg").symlink_to(book.job.folder / "secret.jpg")
    assert book.embed("sly.jpg") is None


def test_a_pasted_picture_is_shown_to_the_client_only(book):
    kept = {"image.png": {"image/png": png()}}
    assert "data:image/" in tell("![pasted](attachment:image.png)", book, attachments=kept).html
    assert (
        "<img" not in tell("![pasted](attachment:image.png)", PhotoBook(book.job, "everybody"), attachments=kept).html
    )


def test_tables_lists_and_emphasis_survive(book):
    html = tell("| a | b |\n| --- | --- |\n| 1 | 2 |\n\n- one\n- *two* **three** `four` ~~five~~\n\n> said", book).html
    for tag in ("<table>", "<li>", "<em>", "<strong>", "<code>", "<blockquote>"):
        assert tag in html


def test_clean_html_drops_what_is_not_on_the_list():
    html = clean_html(
        '<h2>Keep</h2><style>p{}</style><div class="x"><p style="color:red" id="y">text</p></div><img src="http://e.example/x"><iframe src="x"></iframe>'
    )
    assert html == "<h2>Keep</h2><p>text</p>"
