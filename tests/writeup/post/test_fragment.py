"""The fragment to paste: plain HTML with nothing that a site would strip or that would dress the page."""

import re

import pytest
from PIL import Image
from writeup.pages import Parsed, markdown, notebook, stage
from writeup.samples import SAMPLES, made

from pentools.writeup.post.post import post_files

PLAIN = {
    "h2", "h3", "h4", "h5", "h6", "p", "figure", "img", "figcaption", "ul", "ol", "li", "strong", "em", "a", "blockquote",
    "details", "summary", "code", "pre", "table", "thead", "tbody", "tr", "th", "td", "br", "hr", "s", "del", "sub", "sup",
}  # fmt: skip
HOSTILE = '<script>alert("x")</script><img src=x onerror=alert(1)> & "quoted"'


@pytest.mark.parametrize("name", SAMPLES)
def test_no_styles_classes_ids_or_scripts(name):
    text = made(name, "post")["post/post.html"]
    found = Parsed(text)
    assert {tag for tag, _ in found.tags} <= PLAIN
    assert {attribute for _, given in found.tags for attribute in given} <= {
        "src",
        "alt",
        "width",
        "height",
        "href",
        "rel",
    }
    assert found.headings[0] == 2
    assert all(after <= before + 1 for before, after in zip(found.headings, found.headings[1:], strict=False))
    assert not re.search(r"style|class=|data:", text)


@pytest.mark.parametrize("name", SAMPLES)
def test_every_picture_lies_beside_it_and_every_file_is_shown(name):
    files = made(name, "post")
    images = Parsed(files["post/post.html"]).images
    shown = {f"post/{image['src']}" for image in images}
    assert shown <= set(files)
    assert {re.sub(r"\.svg$", ".png", file) for file in files} == shown | {"post/post.html", "post/post.md"}
    assert all(image["alt"].strip() and int(image["width"]) <= 800 for image in images)


def test_what_was_typed_stays_text(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    job.add("intake", "arrival", {"pen": HOSTILE})
    Image.new("RGB", (40, 20)).save(job.folder / "photos" / "a.jpg")
    job.add("pictures", "picture", {"photo": "a.jpg", "moment": "before", "shows": HOSTILE, "public": "yes"})
    files = post_files(
        job, notebook(markdown(f"# {HOSTILE}\n\n{HOSTILE}\n\n[a](javascript:alert(1))"), stage("pictures"))
    )
    found = Parsed(files["post/post.html"])
    assert "script" not in {tag for tag, _ in found.tags}
    assert not [a for _, a in found.tags if "onerror" in a or str(a.get("href", "")).startswith("javascript")]
    assert found.images[0]["alt"] == HOSTILE
    assert '<script>alert("x")</script>' in found.text
