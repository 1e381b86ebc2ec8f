"""The pictures of a post: which files they become, what they are called, how large they are."""

import base64
import io

import pytest
from PIL import Image

from pentools.figures.chart import new_chart, to_drawing
from pentools.writeup.photos import embed_bytes
from pentools.writeup.post.pictures import WIDEST_PX, PictureFiles, file_words


def photo(width=2400, height=1200, colour="teal"):
    into = io.BytesIO()
    Image.effect_noise((width, height), 60).convert("RGB").save(into, "JPEG")
    return embed_bytes(into.getvalue()) if colour == "noise" else embed_bytes(_flat(width, height, colour))


def _flat(width, height, colour):
    into = io.BytesIO()
    Image.new("RGB", (width, height), colour).save(into, "JPEG")
    return into.getvalue()


def drawing(title="It draws 1.75 mL"):
    figure, axes = new_chart(160, 60)
    axes.set_xlabel("1.5 mL")
    return to_drawing(figure, title, f"{title}, and more")


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Before, side", "before-side"),
        ("Größe & Länge: 9.4 mm", "grosse-lange-9-4-mm"),
        ("../../etc/passwd", "etc-passwd"),
        ("The stroke of the pen on the", "the-stroke-of-the-pen"),
        ("漢字", "picture"),
        ("x" * 200, "x" * 60),
    ],
)
def test_names_are_words_that_every_server_takes(text, name):
    assert file_words(text) == name


def test_a_photo_is_one_file_at_most_a_column_wide():
    files = PictureFiles()
    first = files.add_photo(photo(), "a pen", "Before, side")
    again = files.add_photo(photo(), "a pen", "Other words")
    assert first == again
    assert (first.file, first.alt, first.width_px, first.height_px) == ("01-before-side.jpg", "a pen", WIDEST_PX, 400)
    assert Image.open(io.BytesIO(files.files["01-before-side.jpg"])).size == (1600, 800)
    small = files.add_photo(photo(300, 200, "red"), "small", "small")
    assert (small.file[:3], small.width_px, small.height_px) == ("02-", 300, 200)


def test_a_drawing_is_a_png_of_twice_its_size_and_an_svg():
    files = PictureFiles(",")
    shown = files.add_drawing(drawing())
    assert shown.file == "01-it-draws-1-75-ml.png"
    assert shown.alt == "It draws 1.75 mL, and more"
    assert shown.width_px == 605  # 160 mm at 96 px to the inch
    image = Image.open(io.BytesIO(files.files[shown.file]))
    assert image.size[0] == 1210
    assert image.size[1] == pytest.approx(2 * shown.height_px, abs=1)
    svg = files.files["01-it-draws-1-75-ml.svg"]
    assert svg.startswith("<svg")
    assert "1,5 mL" in svg  # the bench's decimal sign
    assert files.pictures == (shown,)


def test_names_are_numbered_so_that_none_is_there_twice():
    files = PictureFiles()
    names = [files.add_drawing(drawing()).file for _ in range(2)]
    assert names == ["01-it-draws-1-75-ml.png", "02-it-draws-1-75-ml.png"]
    assert len(files.files) == 4
    assert base64.b64decode(photo().uri.partition(",")[2])
