"""A picture in a page is made anew from its pixels: upright, small enough, and silent about where it was taken."""

import base64
import io

import pytest
from PIL import Image, ImageCms, PngImagePlugin

from pentools.writeup.page import render_page
from pentools.writeup.photos import LONG_SIDE_PX, PhotoBook, embed_bytes

SECRET = "Secretplace51N"
XMP = f'<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF>{SECRET}xmp</rdf:RDF></x:xmpmeta>'.encode()


def telltale_jpeg(orientation=1, size=(80, 40)):
    image = Image.new("RGB", size, "white")
    image.paste("red", (0, 0, size[0] // 4, size[1]))
    exif = Image.Exif()
    exif[0x010F] = f"{SECRET}make"
    exif[0x0112] = orientation
    exif.get_ifd(0x8825)[29] = f"{SECRET}gps"
    into = io.BytesIO()
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    image.save(into, "JPEG", exif=exif.tobytes(), comment=f"{SECRET}comment", xmp=XMP, icc_profile=profile, quality=95)
    return into.getvalue()


def content(photo):
    return base64.b64decode(photo.uri.split(",", 1)[1])


def test_the_source_really_holds_what_must_go():
    raw = telltale_jpeg()
    for word in ("make", "gps", "comment", "xmp"):
        assert f"{SECRET}{word}".encode() in raw


def test_nothing_the_camera_wrote_goes_along():
    made = content(embed_bytes(telltale_jpeg()))
    assert SECRET.encode() not in made
    for mark in (b"Exif", b"http://ns.adobe.com", b"ICC_PROFILE", b"Photoshop", b"xmpmeta", b"\xff\xfe"):
        assert mark not in made[:400]
    with Image.open(io.BytesIO(made)) as image:
        assert dict(image.getexif()) == {}
        assert "comment" not in image.info


def test_a_png_loses_its_text_too():
    words = PngImagePlugin.PngInfo()
    words.add_text("Author", SECRET)
    words.add_itxt("XML:com.adobe.xmp", XMP.decode())
    into = io.BytesIO()
    Image.new("RGBA", (30, 20), (0, 0, 0, 0)).save(into, "PNG", pnginfo=words)
    assert SECRET.encode() in into.getvalue()
    made = content(embed_bytes(into.getvalue()))
    assert SECRET.encode() not in made
    with Image.open(io.BytesIO(made)) as image:
        assert image.convert("RGB").getpixel((5, 5)) == (255, 255, 255)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_the_picture_is_turned_upright(orientation):
    made = embed_bytes(telltale_jpeg(orientation))
    assert (made.width_px, made.height_px) == ((80, 40) if orientation < 5 else (40, 80))
    with Image.open(io.BytesIO(content(made))) as image:
        # where the red edge of the stored picture belongs, by the orientation's definition in the EXIF standard
        red_at = {1: "left", 4: "left", 2: "right", 3: "right", 5: "top", 6: "top", 7: "bottom", 8: "bottom"}[
            orientation
        ]
        w, h = image.size
        spot = {"left": (3, h // 2), "right": (w - 3, h // 2), "top": (w // 2, 3), "bottom": (w // 2, h - 3)}[red_at]
        red, green, _ = image.convert("RGB").getpixel(spot)
    assert red > 200
    assert green < 90


def test_a_large_picture_is_made_smaller_and_a_small_one_is_left():
    made = embed_bytes(telltale_jpeg(size=(4000, 1000)))
    assert (made.width_px, made.height_px) == (LONG_SIDE_PX, LONG_SIDE_PX // 4)
    assert embed_bytes(telltale_jpeg(size=(90, 30))).width_px == 90


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGB", "RGBA", "CMYK", "I;16"])
def test_every_kind_of_picture_can_be_shown(mode):
    form = "TIFF" if mode in ("CMYK",) else "PNG"
    into = io.BytesIO()
    Image.new(mode, (10, 10)).save(into, form)
    assert embed_bytes(into.getvalue()) is not None


@pytest.mark.parametrize("raw", [b"", b"no picture", b"\xff\xd8\xff", telltale_jpeg()[:200], b"%PDF-1.4", b"<svg/>"])
def test_what_is_no_picture_is_refused_in_silence(raw):
    assert embed_bytes(raw) is None


def test_no_picture_on_either_page_tells_where_it_was_taken(small_job):
    for name in ("side-a.jpg", "side-b.jpg"):
        (small_job.folder / "photos" / name).write_bytes(telltale_jpeg())
    for audience in ("owner", "everybody"):
        page = render_page(small_job, audience)
        pictures = [part.split('"', 1)[0] for part in page.split("base64,")[1:]]
        assert len(pictures) >= 2
        assert not [p for p in pictures if SECRET.encode() in base64.b64decode(p)]


def test_a_changed_file_is_read_anew(small_job):
    book = PhotoBook(small_job, "owner")
    before = book.embed("side-a.jpg")
    Image.new("RGB", (61, 30), "red").save(small_job.folder / "photos" / "side-a.jpg")
    assert book.embed("side-a.jpg") != before
