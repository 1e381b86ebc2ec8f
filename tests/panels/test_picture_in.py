"""A picture on its way into the photos folder."""

import io

import pytest
from PIL import Image

from pentools.errors import InputError, RecordError
from pentools.panels.picture_in import lay_in


def png(colour="grey", format_="PNG"):
    held = io.BytesIO()
    Image.new("RGB", (4, 4), colour).save(held, format_)
    return held.getvalue()


def test_it_keeps_its_name_and_gets_the_ending_of_what_it_is(tmp_path):
    assert lay_in(tmp_path / "photos", "Side view (1).PNG", png()) == "Side-view--1.png"
    assert lay_in(tmp_path / "photos", "named.png", png(format_="JPEG")) == "named.jpg"
    assert (tmp_path / "photos" / "named.jpg").read_bytes() == png(format_="JPEG")


def test_another_picture_of_that_name_is_never_overwritten(tmp_path):
    assert lay_in(tmp_path, "a.png", png("grey")) == "a.png"
    assert lay_in(tmp_path, "a.png", png("green")) == "a-2.png"
    assert lay_in(tmp_path, "a.png", png("grey")) == "a.png"
    assert (tmp_path / "a.png").read_bytes() == png("grey")
    assert len(list(tmp_path.iterdir())) == 2


@pytest.mark.parametrize("content", [b"", b"text", png()[:40]])
def test_what_is_no_picture_is_refused_and_nothing_is_stored(tmp_path, content):
    with pytest.raises(InputError, match="that can be read"):
        lay_in(tmp_path, "a.png", content)
    assert list(tmp_path.iterdir()) == []


def test_a_name_cannot_lead_out_of_the_folder(tmp_path):
    assert lay_in(tmp_path / "photos", "..", png()) == "picture.png"
    assert [p.name for p in tmp_path.iterdir()] == ["photos"]


def test_a_folder_that_cannot_be_written_is_said(tmp_path):
    (tmp_path / "photos").write_text("a file in its place")
    with pytest.raises(RecordError, match="could not be stored"):
        lay_in(tmp_path / "photos", "a.png", png())


def test_a_disk_that_fills_up_leaves_no_half_picture(tmp_path, monkeypatch):
    def full(handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(RecordError, match="No space left"):
        lay_in(tmp_path, "a.png", png())
    assert list(tmp_path.iterdir()) == []


def test_a_phones_file_is_named_and_what_to_do_is_said(tmp_path):
    with pytest.raises(InputError, match="film"):
        lay_in(tmp_path, "a.mov", b"\0\0\0\x18ftypqt  " + bytes(90))
    held = io.BytesIO()
    Image.effect_noise((64, 64), 50).save(held, "MPO", save_all=True, append_images=[Image.new("L", (9, 9))])
    assert lay_in(tmp_path, "IMG_1.JPG", held.getvalue()) == "IMG_1.jpg"
