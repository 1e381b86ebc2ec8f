"""A picture file read strictly: taken as it is, or refused in a sentence that says why and what to do."""

import contextlib
import datetime as dt
import io
import struct
import zlib

import numpy as np
import pytest
from PIL import Image, ImageFile, TiffImagePlugin

from pentools.errors import InputError
from pentools.pictures.reading import LARGEST_BYTES, glance, look_at, read_picture

GREY = Image.effect_noise((160, 90), 60)


def saved(image=GREY, form="JPEG", **options):
    held = io.BytesIO()
    image.save(held, form, **options)
    return held.getvalue()


def png_that_promises(width, height):
    """A PNG whose head promises a size and that holds next to nothing (the chunks of ISO/IEC 15948)."""

    def chunk(name, content):
        return struct.pack(">I", len(content)) + name + content + struct.pack(">I", zlib.crc32(name + content))

    head = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + chunk(b"IDAT", zlib.compress(b"\0" * 100)) + chunk(b"IEND", b"")


def dng():
    tags = TiffImagePlugin.ImageFileDirectory_v2()
    tags[0xC612] = b"\x01\x04\x00\x00"  # DNGVersion
    return saved(form="TIFF", tiffinfo=tags)


REFUSED = {
    "empty": (b"", "It is empty, 0 bytes."),
    "text": (b"no picture at all", "It is no picture of these kinds. Save it as JPEG"),
    "half a PNG": (saved(form="PNG")[:3000], "It is cut off or damaged. Copy it anew"),
    "half a WebP": (saved(form="WEBP")[:900], "cut off or damaged|no picture"),
    "half a TIFF": (saved(form="TIFF")[:5000], "It is cut off or damaged."),
    "half a GIF": (saved(form="GIF")[:4000], "It is cut off or damaged."),
    "a bomb": (png_that_promises(60_000, 60_000), "It holds more pixels than a camera takes"),
    "a large promise": (png_that_promises(13_000, 12_000), "It promises 156 million pixels, more than 120."),
    "a film": (b"\0\0\0\x18ftypmp42" + bytes(64), "It is a film"),
    "raw by its tag": (dng(), "It is a camera’s raw file. Develop it"),
    "too large": (b"\xff\xd8" + bytes(LARGEST_BYTES), "It has 80 MB, more than 80. Save it as JPEG."),
}  # fmt: skip


@pytest.mark.parametrize(("content", "why"), REFUSED.values(), ids=REFUSED)
def test_what_cannot_be_used_is_refused_with_its_reason(content, why):
    for read in (look_at, read_picture):
        with pytest.raises(InputError, match=why):
            read(content, "a.jpg")


def test_a_raw_file_is_known_by_its_ending():
    with pytest.raises(InputError, match="camera’s raw file"):
        look_at(saved(form="TIFF"), "DSC_1.NEF")


@pytest.mark.parametrize("brand", [b"heic", b"mif1"])
def test_a_heic_file_is_named_and_what_to_do_is_said(brand):
    content = struct.pack(">I", 24) + b"ftyp" + brand + b"\0\0\0\0mif1heic" + bytes(200)
    try:
        import pillow_heif  # noqa: F401
    except ImportError:
        with pytest.raises(InputError, match=r"It is a HEIC file.*export it as JPEG.*pentools\[heic\]"):
            look_at(content, "IMG_1.HEIC")
    else:
        with pytest.raises(InputError, match=r"cut off or damaged|no picture"):
            look_at(content, "IMG_1.HEIC")


@pytest.mark.parametrize("lenient", [False, True])
@pytest.mark.parametrize("progressive", [False, True])
def test_a_jpeg_cut_off_anywhere_is_refused_whatever_another_library_allowed(monkeypatch, lenient, progressive):
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", lenient)
    whole = saved(quality=92, progressive=progressive)
    for share in (0.1, 0.3, 0.5, 0.7, 0.9, 0.97):
        for read in (look_at, lambda content, name: read_picture(content, name, 64)):
            with pytest.raises(InputError):
                read(whole[: int(share * len(whole))], "a.jpg")
    assert look_at(whole, "a.jpg").width_px == 160
    assert ImageFile.LOAD_TRUNCATED_IMAGES is lenient


def test_every_byte_of_the_head_may_be_wrong_and_nothing_else_is_raised():
    rng = np.random.default_rng(3)
    for form in ("JPEG", "PNG", "GIF", "WEBP", "TIFF"):
        whole = saved(GREY.resize((24, 16)), form)
        for _ in range(60):
            broken = bytearray(whole)
            for place in rng.integers(0, min(len(whole), 400), 3):
                broken[place] = int(rng.integers(0, 256))
            with contextlib.suppress(InputError):
                assert read_picture(bytes(broken), "a").mode == "RGB"


def test_a_wrong_ending_is_said_and_the_picture_is_taken():
    looked = look_at(saved(form="PNG"), "side.jpg")
    assert (looked.form, looked.ending, looked.notes) == ("PNG", ".png", ("Its name ends with .jpg, and it is a PNG.",))
    assert look_at(saved(), "SIDE.JPEG").notes == ()


def test_what_moves_is_shown_by_its_first_picture():
    red, blue = Image.new("RGB", (20, 10), "red"), Image.new("RGB", (20, 10), "blue")
    content = saved(red, "GIF", save_all=True, append_images=[blue])
    assert look_at(content, "a.gif").notes == ("It moves (2 pictures); the first of them is shown.",)
    assert read_picture(content).getpixel((5, 5))[0] > 200


def test_a_phones_jpeg_with_a_second_picture_in_it_is_a_jpeg():
    looked = look_at(saved(GREY, "MPO", save_all=True, append_images=[GREY]), "IMG.jpg")
    assert (looked.ending, looked.notes) == (".jpg", ())


def test_the_colours_of_a_press_become_those_of_a_screen():
    cyan = Image.new("CMYK", (20, 20), (255, 0, 0, 0))
    for form in ("JPEG", "TIFF"):
        content = saved(cyan, form)
        assert "CMYK" in look_at(content, "a.tif" if form == "TIFF" else "a.jpg").notes[0]
        red, green, blue = read_picture(content).getpixel((9, 9))
        assert red < 60
        assert min(green, blue) > 150


@pytest.mark.parametrize("form", ["PNG", "TIFF"])
def test_sixteen_bits_keep_their_lights(form):
    ramp = np.linspace(0, 65535, 256).astype(np.uint16)[None].repeat(8, 0)
    made = np.asarray(read_picture(saved(Image.fromarray(ramp), form)).convert("L")).astype(int)[4]
    assert np.abs(made - np.arange(256)).max() <= 1


@pytest.mark.parametrize("top", [255, 65535, 40000, 80000])
def test_thirty_two_bits_keep_their_lights(top):
    ramp = np.linspace(0, top, 256).astype(np.int32)[None].repeat(8, 0)
    made = np.asarray(read_picture(saved(Image.fromarray(ramp), "TIFF")).convert("L")).astype(int)[4]
    full = 255 if top == 255 else max(top, 65535)  # how bright the brightest could be is not said: 8 bits, else 16
    assert np.abs(made - ramp[0] * 255 / full).max() <= 1


def test_what_is_kept_beside_the_pixels_is_gone():
    exif = Image.Exif()
    exif[0x010E] = "Secretplace"
    made = read_picture(saved(exif=exif, comment=b"Secretplace", dpi=(300, 300)))
    assert made.info == {}
    assert made.getexif() == {}


def test_the_size_is_that_of_the_picture_upright_and_the_day_is_the_cameras():
    exif = Image.Exif()
    exif[0x0112] = 6  # Exif (CIPA DC-008): the 0th row is the right-hand side
    exif.get_ifd(0x8769)[0x9003] = "2026:03:09 10:14:45"
    looked = look_at(saved(exif=exif), "a.jpg")
    assert (looked.width_px, looked.height_px, looked.taken_on) == (90, 160, dt.date(2026, 3, 9))
    for written in ("0000:00:00 00:00:00", "1970:01:01 00:00:00", "yesterday"):
        exif.get_ifd(0x8769)[0x9003] = written
        assert look_at(saved(exif=exif), "a.jpg").taken_on is None


def test_it_is_made_smaller_and_never_larger():
    assert read_picture(saved(), "a", 80).size == (80, 45)
    assert read_picture(saved(), "a", 4000).size == (160, 90)


def test_a_glance_says_why_and_looks_again_when_the_file_changes(tmp_path):
    path = tmp_path / "a.jpg"
    assert "cannot be read" in glance(path)
    path.write_bytes(b"")
    assert glance(path) == "It is empty, 0 bytes. Copy it anew from the camera."
    path.write_bytes(saved())
    assert glance(path) == ""
