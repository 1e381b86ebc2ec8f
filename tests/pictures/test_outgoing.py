"""A picture on its way out holds its pixels and nothing else."""

import base64
import io
import struct

from PIL import Image

from pentools.pictures.outgoing import encoded


def segments(content):
    """The markers of a JPEG up to its scan (ITU-T T.81, B.1.1)."""
    found, place = [], 2
    while content[place + 1] != 0xDA:
        found.append(content[place + 1])
        place += 2 + struct.unpack(">H", content[place + 2 : place + 4])[0]
    return found


def chunks(content):
    """The chunks of a PNG (ISO/IEC 15948)."""
    found, place = [], 8
    while place < len(content):
        found.append(content[place + 4 : place + 8])
        place += 12 + struct.unpack(">I", content[place : place + 4])[0]
    return found


def full_of_words(size=(120, 60)):
    picture = Image.new("RGB", size, "navy")
    picture.info |= {"comment": b"Secret", "exif": b"Exif\0\0Secret", "icc_profile": b"Secret", "xmp": b"Secret", "dpi": (300, 300)}  # fmt: skip
    return picture


def test_a_jpeg_has_no_segment_that_could_tell_anything():
    made = encoded(full_of_words())
    assert (made.mime, made.width_px, made.height_px) == ("image/jpeg", 120, 60)
    # JFIF's own head (APP0), tables (DQT, DHT) and the frame's head (SOF0); no APP1 to APP15, no comment
    assert set(segments(made.content)) <= {0xE0, 0xDB, 0xC4, 0xC0}
    assert b"Secret" not in made.content


def test_line_art_stays_a_png_without_words():
    made = encoded(full_of_words(), flat_colours=True)
    assert made.mime == "image/png"
    assert set(chunks(made.content)) == {b"IHDR", b"IDAT", b"IEND"}
    noise = Image.effect_noise((200, 200), 90).convert("RGB")
    assert encoded(noise, flat_colours=True).mime == "image/jpeg"


def test_the_address_holds_the_file():
    made = encoded(full_of_words())
    assert base64.b64decode(made.uri.partition(",")[2]) == made.content
    assert made.uri.startswith("data:image/jpeg;base64,")
    assert Image.open(io.BytesIO(made.content)).size == (120, 60)
