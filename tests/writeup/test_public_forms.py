"""What goes out to everybody: no owner, no bench, no camera; in no text, no picture, no alternative text and no file's name."""

import base64
import importlib
import io
import re

import exifread
import pytest
from PIL import Image, PngImagePlugin
from writeup.pages import CONTACT, Parsed, markdown, notebook, stage
from writeup.test_private import full_of_plants  # noqa: F401 - a fixture

from pentools.errors import HoldError
from pentools.record.job import RECORD_NAME
from pentools.writeup.forms import PAGE_FORMS, files_of
from pentools.writeup.write import write_pages

PUBLIC = [form.key for form in PAGE_FORMS.values() if form.audience == "everybody"]
SECRET = "Secretplace51N"
XMP = f'<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF>{SECRET}xmp</rdf:RDF></x:xmpmeta>'.encode()


def everything(files):
    """Every name and every content, pictures in a page taken out of their addresses."""
    for name, content in files.items():
        raw = content.encode() if isinstance(content, str) else content
        yield "a name", name.encode()
        yield name, raw
        for kind, found in re.findall(rb"data:([\w/+]+);base64,([\w+/=]+)", raw):
            yield f"{name} {kind.decode()}", base64.b64decode(found)


@pytest.mark.parametrize("key", PUBLIC)
def test_planted_strings_of_owner_and_bench_are_nowhere(full_of_plants, key):  # noqa: F811
    job, cells, public, private, bench = full_of_plants
    files = files_of(PAGE_FORMS[key], job, cells)
    hidden = {where: text.encode() for where, text in (private | bench).items()} | {"contact": CONTACT.encode()}
    assert len(hidden) >= 60
    found = [(where, name) for name, raw in everything(files) for where, text in hidden.items() if text in raw]
    assert found == []
    shown = [text for text in public.values() if any(text.encode() in raw for _, raw in everything(files))]
    assert shown  # the check can fail


def test_a_name_in_a_files_name_or_in_a_private_cell_goes_nowhere(small_job):
    Image.new("RGB", (60, 30), "navy").save(small_job.folder / "photos" / "adela-quist-desk.jpg")
    small_job.add("pictures", "picture", {"photo": "adela-quist-desk.jpg", "moment": "during", "shows": "the cork", "public": "yes"})  # fmt: skip
    cells = notebook(
        markdown("## A\n\nx ![](photos/adela-quist-desk.jpg)"),
        markdown("for Adela Quist", "private"),
        stage("pictures"),
    )
    for key in PUBLIC:
        module, name = PAGE_FORMS[key].maker.split(":")
        files = getattr(importlib.import_module(module), name)(small_job, cells)
        for name, raw in everything(files):
            assert not re.search(rb"adela|quist", raw, re.IGNORECASE), name


@pytest.mark.parametrize("key", PUBLIC)
def test_the_owners_name_in_the_words_of_a_picture_or_the_pen_holds_the_form(small_job, key):
    field = {"pen": "green pen of Adela Quist"}
    small_job.add("intake", "arrival", field)
    with pytest.raises(HoldError, match="the owner’s name"):
        files_of(PAGE_FORMS[key], small_job, None)


def test_the_owners_name_in_what_a_picture_shows_holds_story_and_post(small_job):
    Image.new("RGB", (60, 30), "navy").save(small_job.folder / "photos" / "desk.jpg")
    small_job.add("pictures", "picture", {"photo": "desk.jpg", "moment": "during", "shows": "the desk of Adela Quist", "public": "yes"})  # fmt: skip
    for key in ("story", "post"):
        with pytest.raises(HoldError, match="the owner’s name"):
            files_of(PAGE_FORMS[key], small_job, None)


def telltale(form):
    """A picture that tells where it was taken in every way its format knows."""
    image = Image.effect_noise((90, 60), 40).convert("RGB")
    exif = Image.Exif()
    exif[0x010F], exif[0x013B] = f"{SECRET}make", f"{SECRET}artist"
    exif.get_ifd(0x8825)[29] = f"{SECRET}gps"
    into = io.BytesIO()
    more = {"exif": exif.tobytes()} if form in ("JPEG", "PNG", "WEBP") else {"exif": exif}
    if form == "JPEG":
        more |= {"comment": f"{SECRET}comment", "xmp": XMP}
    if form == "PNG":
        words = PngImagePlugin.PngInfo()
        words.add_text("Author", f"{SECRET}author")
        words.add_itxt("XML:com.adobe.xmp", XMP.decode())
        more |= {"pnginfo": words}
    if form == "WEBP":
        more |= {"xmp": XMP, "lossless": True}
    if form == "TIFF":
        more |= {"tiffinfo": {270: f"{SECRET}words", 700: XMP}}
        del more["exif"]
    image.save(into, form, **more)
    return into.getvalue()


@pytest.mark.parametrize("form", ["JPEG", "PNG", "WEBP", "TIFF"])
def test_what_a_camera_wrote_is_gone(small_job, form):
    raw = telltale(form)
    assert SECRET.encode() in raw
    with Image.open(io.BytesIO(raw)) as image:
        told = [*exifread.process_file(io.BytesIO(raw)).values(), *image.getexif().values()]
    assert [value for value in told if SECRET in str(value)]
    file = f"during.{form.lower()}"
    (small_job.folder / "photos" / file).write_bytes(raw)
    small_job.add("pictures", "picture", {"photo": file, "moment": "during", "shows": "the cork", "public": "yes"})
    cells = notebook(markdown("## Look\n\nx"), stage("pictures"))
    looked = 0
    for key in ("story", "post"):
        for name, content in everything(files_of(PAGE_FORMS[key], small_job, cells)):
            if name.endswith(("jpg", "png", "jpeg")):
                assert SECRET.encode() not in content, name
                # read by a library of others: exifread 3, and Pillow's own reading of Exif, XMP, comment and text
                assert exifread.process_file(io.BytesIO(content), details=False) == {}, name
                with Image.open(io.BytesIO(content)) as image:
                    assert dict(image.getexif()) == {}
                    assert not {"comment", "exif", "xmp", "icc_profile", "Author"} & set(image.info)
                looked += 1
    assert looked >= 6


def test_no_form_for_everybody_without_consent(small_job):
    small_job.add("intake", "consent", {"publish": "no", "pictures": "yes"})
    for key in PUBLIC:
        with pytest.raises(HoldError, match="said no"):
            files_of(PAGE_FORMS[key], small_job, None)
    with pytest.raises(HoldError, match="said no"):
        write_pages(small_job, PUBLIC)
    assert not (small_job.folder / "writeup").exists()
    assert (small_job.folder / RECORD_NAME).exists()


@pytest.mark.parametrize("key", PUBLIC)
def test_pictures_without_a_yes_are_left_out(small_job, key):
    small_job.add("intake", "consent", {"publish": "yes", "pictures": "no"})
    files = files_of(PAGE_FORMS[key], small_job, None)
    assert not [name for name in files if name.endswith(".jpg")]
    assert "data:image/jpeg" not in str(list(files.values()))


def test_the_post_is_a_folder_of_its_own_pictures(small_job):
    [page] = write_pages(small_job, ["post"])
    assert page == small_job.folder / "writeup" / "post" / "post.html"
    (page.parent / "mine.jpg").write_bytes(b"mine")
    before = {path.name for path in page.parent.iterdir()}
    assert {"01-before-side.jpg", "02-after-side.jpg", "mine.jpg"} <= before
    small_job.add("pictures", "picture", {"photo": "side-a.jpg", "moment": "before", "shows": "x", "view": "side", "public": "no"})  # fmt: skip
    write_pages(small_job, ["post"])
    after = {path.name for path in page.parent.iterdir()}
    assert "01-before-side.jpg" not in after  # what may no longer be shown is gone
    assert {"01-after-side.jpg", "mine.jpg"} <= after
    shown = {image["src"] for image in Parsed(page.read_text()).images}
    assert shown <= after
