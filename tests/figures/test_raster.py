"""Drawings become pixels: the right size, letters and all, and nothing else in the file."""

import io
import struct

import pytest
from PIL import Image

from pentools.errors import InputError
from pentools.figures.raster import PX_PER_MM, png_of

INK = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="50mm" viewBox="0 0 50 20">{}</svg>'
BAR = INK.format('<rect x="0" y="0" width="25" height="20" fill="#1f3a5f"/>')


def chunks(png):
    place, found = 8, []
    while place < len(png):
        size = struct.unpack(">I", png[place : place + 4])[0]
        found.append(png[place + 4 : place + 8].decode())
        place += size + 12
    return found


def test_a_drawing_on_white_at_its_size():
    image = Image.open(io.BytesIO(png_of(BAR, 400)))
    assert image.size[0] == 400
    assert image.size[1] == pytest.approx(160, abs=1)
    assert image.convert("RGB").getpixel((100, 80)) == (0x1F, 0x3A, 0x5F)
    assert image.convert("RGBA").getpixel((300, 80)) == (255, 255, 255, 255)
    assert pytest.approx(3.7795, abs=1e-4) == PX_PER_MM  # 96 px to the inch of 25.4 mm


def test_nothing_but_pixels_is_in_the_file():
    png = png_of(INK.format("<title>Plant001x</title><desc>Plant002x</desc><metadata>Plant003x</metadata>"), 60)
    assert set(chunks(png)) <= {"IHDR", "PLTE", "tRNS", "IDAT", "IEND"}  # PNG, third edition, 11.2 and 11.3
    assert b"Plant" not in png


@pytest.mark.parametrize("face", ["Helvetica, Arial, sans-serif", "sans-serif", "A Face Nobody Has, sans-serif"])
def test_letters_are_drawn(face):
    words = INK.format(f'<text x="2" y="14" font-family="{face}" font-size="10">Hm</text>')
    low, high = Image.open(io.BytesIO(png_of(words, 300))).convert("L").getextrema()
    assert (low < 60, high) == (True, 255)


@pytest.mark.parametrize(
    "words",
    ['&lt;a href="https://example.org/x"&gt;', "url(https://example.org/x)", "@import 'x.css'", "&lt;!ENTITY x&gt;"],
)
def test_words_that_look_like_a_reference_are_words(words):
    label = words.replace('"', "&quot;")
    assert png_of(INK.format(f'<g aria-label="{label}"><text x="1" y="9">{words}</text></g>'), 100)


@pytest.mark.parametrize(
    "inside",
    [
        '<image href="file:///etc/hostname" width="5" height="5"/>',
        '<image xlink:href="photo.jpg" width="5" height="5"/>',
        '<rect fill="url(https://example.org/x)"/>',
        "<style>@import 'x.css'</style>",
    ],
)
def test_a_drawing_that_refers_to_a_file_is_refused(inside):
    with pytest.raises(InputError, match="refers to no other file"):
        png_of(INK.format(inside), 100)


def test_a_foreign_drawing_comes_out_the_same():
    assert png_of(BAR, 200, foreign=True) == png_of(BAR, 200)


@pytest.mark.parametrize(
    "odd",
    [
        '<svg xmlns="http://www.w3.org/2000/svg" width="1" height="900000"><text>a</text></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0L1 900000" stroke="red"/></svg>',
        INK.format('<path d="M0 0L1e9 1e9" stroke="red" stroke-width="1e9"/>'),
        "<svg",
    ],
    ids=["all memory", "no size", "gives up", "cut short"],
)
def test_a_foreign_drawing_that_comes_to_grief_takes_nothing_with_it(odd):
    with pytest.raises(InputError, match="can be drawn within 20 s"):
        png_of(odd, 1200, foreign=True)


def test_a_foreign_drawing_that_does_not_come_to_its_end_is_given_up(monkeypatch):
    monkeypatch.setattr("pentools.figures.raster.LONGEST_S", 0.001)
    with pytest.raises(InputError, match="cannot"):
        png_of(BAR, 200, foreign=True)


def test_what_cannot_be_read_or_is_too_large_is_refused():
    with pytest.raises(InputError, match="an SVG that can be read"):
        png_of("<svg", 100)
    with pytest.raises(InputError, match="1 to 8000"):
        png_of(BAR, 0)
