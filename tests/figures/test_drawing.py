"""The one result of every figure: kept as it was made."""

import dataclasses

import pytest

from pentools.figures.drawing import Drawing


def test_a_drawing_is_its_picture_and_its_words_and_cannot_be_changed():
    drawing = Drawing("<svg/>", "The finding", "The finding with its numbers", 160.0)
    assert [getattr(drawing, field.name) for field in dataclasses.fields(drawing)][:4] == [
        "<svg/>", "The finding", "The finding with its numbers", 160.0,
    ]  # fmt: skip
    with pytest.raises(dataclasses.FrozenInstanceError):
        drawing.title = "Another"
