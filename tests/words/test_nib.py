"""What is said of nibs, where the sentence turns on its values."""

from pentools.words import phrase


def test_said():
    said = phrase("nib.finish-not-reached", {"last": "film 3 µm", "leaves": 3.0, "wanted": 1.0})
    assert said.startswith("The finest owned grade, film 3 µm, leaves a finish like 3 µm")
