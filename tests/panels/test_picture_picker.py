"""Thumbnails say what is chosen, and two ends how far they lie apart."""

import pytest

from pentools.panels.picture_picker import EndsPicker, ThumbnailPicker


def test_what_is_chosen_must_be_there_and_usable():
    picker = ThumbnailPicker(pictures=[{"file": "a.jpg", "problem": ""}, {"file": "b.heic", "problem": "It is HEIC."}])
    heard = []
    picker.observe(lambda change: heard.append(change["new"]["file"]), "chosen")
    for file in ("a.jpg", "a.jpg", "b.heic", "gone.jpg", ""):
        picker.choose(file)
        assert picker.file == ("a.jpg" if file == "a.jpg" else "")
    assert heard == ["a.jpg", "a.jpg", "b.heic", "gone.jpg", ""]  # the same one chosen twice is heard twice


def test_two_ends_are_a_length_and_one_is_none():
    picker = EndsPicker(size=[4000, 3000])
    assert picker.apart_px is None
    picker.ends = [[10.0, 20.0]]
    assert picker.apart_px is None
    picker.ends = [[10.0, 20.0], [310.0, 420.0]]
    assert picker.apart_px == pytest.approx(500)  # 3, 4, 5
