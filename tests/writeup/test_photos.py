"""A picture in a page is made anew from its pixels: upright, small enough, and silent about where it was taken."""

import base64
import io
from datetime import datetime

import pytest
from PIL import Image, ImageCms, PngImagePlugin

from pentools.record.entries import new_entry
from pentools.writeup.page import render_page
from pentools.writeup.photos import LONG_SIDE_PX, PhotoBook, embed_bytes, public_files

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


def picture(job, file, public, colour="red", moment="before"):
    image = Image.linear_gradient("L").resize((800, 400)).convert("RGB")
    image.paste(colour, (0, 0, 300, 250))
    image.save(job.folder / "photos" / file)
    return job.add("pictures", "picture", {"photo": file, "moment": moment, "shows": "the pen", "public": public})


@pytest.mark.parametrize("words", [("no", "yes"), ("", "yes"), ("yes", "no"), ("yes", ""), ("no", "yes", "yes")])
def test_no_later_yes_overrules_an_earlier_no_and_no_silence_is_a_yes(new_job, words):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    for word in words:
        picture(job, "side.jpg", word)
    assert not PhotoBook(job, "everybody").allowed("side.jpg")
    assert PhotoBook(job, "owner").allowed("side.jpg")
    picture(job, "other.jpg", "yes")
    assert public_files(job) == {"other.jpg"}


def test_a_no_stands_when_the_clock_went_back(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    for at, public in (("2026-03-20T10:00:00+01:00", False), ("2026-03-19T10:00:00+01:00", True)):
        data = {"photo": "side.jpg", "moment": "before", "shows": "the pen", "public": public}
        job.record.append(new_entry("pictures", "picture", data, at=datetime.fromisoformat(at)))
    assert public_files(job) == frozenset()


def test_only_a_correction_of_the_no_itself_changes_it(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    first = picture(job, "side.jpg", "no")
    said = {"photo": "side.jpg", "moment": "before", "shows": "the pen", "public": "yes"}
    job.add("pictures", "picture", said, replaces=first.id)
    assert public_files(job) == {"side.jpg"}


@pytest.mark.parametrize("agreed", ["no", ""])
def test_without_the_owners_yes_to_pictures_none_is_for_everybody(new_job, agreed):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": agreed})
    picture(job, "side.jpg", "yes")
    book = PhotoBook(job, "everybody")
    assert not book.allowed("side.jpg")
    assert not book.any_allowed()
    assert PhotoBook(job, "owner").any_allowed()


def test_a_link_to_a_picture_with_a_no_shows_nothing(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    picture(job, "kept.jpg", "no")
    picture(job, "open.jpg", "yes")
    path = job.folder / "photos" / "open.jpg"
    path.unlink()
    path.symlink_to(job.folder / "photos" / "kept.jpg")
    assert PhotoBook(job, "everybody").embed("open.jpg") is None
    assert PhotoBook(job, "owner").embed("open.jpg") is not None


def test_a_picture_with_a_no_is_known_again_in_another_size_and_form(new_job):
    job = new_job()
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    picture(job, "kept.jpg", "no", "red")
    picture(job, "open.jpg", "yes", "blue")
    book = PhotoBook(job, "everybody")

    def saved(file, form, size):
        into = io.BytesIO()
        with Image.open(job.folder / "photos" / file) as image:
            image.resize(size).save(into, form)
        return into.getvalue()

    for form, size in (("PNG", (800, 400)), ("JPEG", (1600, 800)), ("PNG", (411, 206)), ("JPEG", (120, 60))):
        assert book.is_kept_back(saved("kept.jpg", form, size))
        assert not PhotoBook(job, "owner").is_kept_back(saved("kept.jpg", form, size))
    assert not book.is_kept_back(saved("open.jpg", "PNG", (800, 400)))
    chart = Image.new("RGB", (80, 40), "white")
    chart.paste("black", (10, 20, 70, 22))
    into = io.BytesIO()
    chart.save(into, "PNG")
    assert not book.is_kept_back(into.getvalue())
    assert not book.is_kept_back(b"no picture")
