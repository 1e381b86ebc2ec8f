"""A drawing as a file: what its ending says, whole, and refused in words where it cannot be."""

import pytest

from pentools import order
from pentools.errors import InputError, RecordError
from pentools.writeup.one_drawing import KINDS, write_drawing

DRAWING = order("eyedropper", material="acrylic").figure()


@pytest.mark.parametrize(("ending", "begins"), [(".svg", b"<svg "), (".html", b"<!DOCTYPE html>"), (".PDF", b"%PDF-")])
def test_it_is_written_as_its_ending_says(tmp_path, ending, begins):
    file = write_drawing(DRAWING, tmp_path / f"wall{ending}")
    written = file.read_bytes()
    assert written.startswith(begins)
    if ending == ".html":
        assert DRAWING.svg in written.decode()
        assert "<title>Eyedropper" in written.decode()
    assert set(KINDS) == {".svg", ".html", ".pdf"}


def test_another_ending_and_a_place_that_is_not_there_are_refused(tmp_path):
    with pytest.raises(InputError, match=r"\.svg, \.html or \.pdf"):
        write_drawing(DRAWING, tmp_path / "wall.docx")
    with pytest.raises(RecordError, match="cannot be written"):
        write_drawing(DRAWING, tmp_path / "nowhere" / "wall.svg")
