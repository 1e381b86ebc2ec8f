"""What is said of nibs, where the sentence turns on its values."""

from pentools.words import phrase


def test_said():
    said = phrase("nib.finish-not-reached", {"last": "film 3 µm", "leaves": 3.0, "wanted": 1.0})
    assert said.startswith("The finest owned grade, film 3 µm, leaves a finish like 3 µm")


def test_numbers_of_a_line_too_fine():
    told = phrase("nib.too-fine", {"width": 0.18, "blur": 41.2, "px": 42.33})
    assert told.startswith("Lines of 0.18 mm and less are too fine for this picture: its blur is 41 µm")
