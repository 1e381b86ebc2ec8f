"""Stored outputs of cells tagged for publishing: made harmless, and nothing of the machine."""

import base64
import io

from PIL import Image
from writeup.pages import png

from pentools.writeup.outputs import published_html, published_output
from pentools.writeup.photos import PhotoBook


def test_published_outputs():
    def output(**data):
        return {"output_type": "display_data", "data": data, "metadata": {"image/png": {"alt": "a red square"}}}

    assert 'alt="a red square"' in published_html(output(**{"image/png": png(), "text/plain": "x"}))
    assert "data:image/svg+xml;base64," in published_html(output(**{"image/svg+xml": "<svg onload='x()'/>"}))
    table = published_html(
        output(**{"text/html": "<table border=1><tr><td>1<script>x()</script></td></tr></table>", "text/plain": "x"})
    )
    assert "<td>1</td>" in table
    assert "script" not in table
    assert "&lt;b&gt;" in published_html(output(**{"text/plain": "<b>"}))
    assert published_html(output(**{"application/vnd.jupyter.widget-view+json": {}, "text/plain": "Box()"})) == ""
    assert published_html({"output_type": "error", "ename": "E", "traceback": ["/home/x"]}) == ""
    assert published_html({"output_type": "stream", "name": "stderr", "text": "/home/x"}) == ""
    assert published_html(output(**{"image/png": "no picture"})) == ""


def telling():
    """A picture that can be known again: no plain colour."""
    into = io.BytesIO()
    Image.linear_gradient("L").rotate(30).convert("RGB").save(into, "PNG")
    return into.getvalue()


def test_an_output_for_everybody_is_pixels_or_harmless(small_job):
    book = PhotoBook(small_job, "everybody")

    def output(**data):
        return {"output_type": "display_data", "data": data, "metadata": {"image/svg+xml": {"alt": "a red square"}}}

    svg = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" width="9mm"><desc>Plant001x</desc><rect width="9" height="9"/></svg>'
    found = published_output(output(**{"image/svg+xml": svg}), book)
    assert found.alt == "a red square"
    assert found.picture.uri.startswith("data:image/png;base64,")
    assert published_output(output(**{"image/svg+xml": "<svg"}), book) is None
    made = published_output(output(**{"text/html": '<p class="x" style="y">1<script>z()</script></p>'}), book)
    assert made.html == "<p>1</p>"
    assert published_output(output(**{"image/png": "no picture"}), book) is None
    assert published_output({"output_type": "error"}, book) is None
    assert (
        published_output({"output_type": "stream", "name": "stdout", "text": "a < b"}, book).html
        == "<pre>a &lt; b</pre>"
    )
    own = {"image/png": base64.b64encode(telling()).decode()}
    assert published_output(output(**own), book).picture is not None
    (small_job.folder / "photos" / "kept.png").write_bytes(telling())
    small_job.add("pictures", "picture", {"photo": "kept.png", "moment": "during", "shows": "x", "public": "no"})
    assert published_output(output(**own), PhotoBook(small_job, "everybody")) is None  # by another way in
    small_job.add("intake", "consent", {"publish": "yes", "pictures": "no"})
    for data in ({"image/svg+xml": svg}, {"image/png": png()}):
        assert published_output(output(**data), PhotoBook(small_job, "everybody")) is None


def test_pictures_in_outputs_need_the_owners_yes(new_job):
    job = new_job()
    svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><path d="M0 0L9 9"/></svg>'
    outputs = [
        {"output_type": "display_data", "data": {mime: content, "text/plain": "words"}, "metadata": {}}
        for mime, content in (("image/png", png()), ("image/svg+xml", svg))
    ]
    html = {"output_type": "display_data", "data": {"text/html": f'<img src="data:image/png;base64,{png()}">'}}
    for agreed in ("no", "", "yes"):
        job.add("intake", "consent", {"publish": "yes", "pictures": agreed})
        for audience in ("everybody", "owner"):
            book = PhotoBook(job, audience)
            shown = ["<img" in published_html(output, book) for output in outputs]
            assert shown == [agreed == "yes" or audience == "owner"] * 2
            assert "<img" not in published_html(html, book)
            assert "words" not in "".join(published_html(output, book) for output in outputs)


def test_an_output_that_shows_a_picture_with_a_no_stays_out(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    content = base64.b64decode(png("navy"))
    (job.folder / "photos" / "kept.png").write_bytes(content)
    output = {"output_type": "display_data", "data": {"image/png": png("navy")}, "metadata": {}}
    assert published_html(output, PhotoBook(job, "everybody")) == ""
    assert "<img" in published_html(output, PhotoBook(job, "owner"))
    inside = f'<svg xmlns="http://www.w3.org/2000/svg"><image href="data:image/png;base64,{png("navy")}" width="9" height="9"/></svg>'
    drawing = {"output_type": "display_data", "data": {"image/svg+xml": inside}, "metadata": {}}
    drawn = {
        who: published_html(drawing, PhotoBook(job, who)).partition("base64,")[2] for who in ("everybody", "owner")
    }
    assert ["<image" in base64.b64decode(part.partition('"')[0]).decode() for part in drawn.values()] == [False, True]


def test_a_drawing_that_cannot_be_made_harmless_stays_out():
    broken = {"output_type": "display_data", "data": {"image/svg+xml": "<svg", "text/plain": "words"}, "metadata": {}}
    assert published_html(broken) == ""


def test_a_drawing_that_would_take_all_memory_stays_out_and_the_page_goes_on(small_job):
    tall = '<svg xmlns="http://www.w3.org/2000/svg" width="1" height="900000"><text>a</text></svg>'
    output = {"output_type": "display_data", "data": {"image/svg+xml": tall}, "metadata": {}}
    small_job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    assert published_output(output, PhotoBook(small_job, "everybody")) is None
