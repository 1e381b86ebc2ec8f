"""The printed sheet: its size, and that it is no scale trap."""

import re
from io import BytesIO

import pytest

from pentools import write_sheet
from pentools.cli import main
from pentools.errors import InputError
from pentools.figures.nib.sheet import PAPERS_MM, sheet_file


@pytest.mark.parametrize("paper", PAPERS_MM)
def test_it_is_printed_at_true_size(paper):
    from pypdf import PdfReader

    box = PdfReader(BytesIO(sheet_file(paper, "pdf"))).pages[0].mediabox
    assert (float(box.width) / 72 * 25.4, float(box.height) / 72 * 25.4) == pytest.approx(PAPERS_MM[paper], abs=0.1)
    svg = sheet_file(paper, "svg").decode()
    size = re.search(r'width="([\d.]+)pt" height="([\d.]+)pt"', svg)
    assert (float(size[1]) / 72 * 25.4, float(size[2]) / 72 * 25.4) == pytest.approx(PAPERS_MM[paper], abs=0.1)
    assert "70 mm" in svg


def test_the_command_writes_it(tmp_path, capsys):
    assert main(["sheet", str(tmp_path / "a.svg"), "--paper", "letter"]) == 0
    assert "100 %" in capsys.readouterr().out
    assert (tmp_path / "a.svg").stat().st_size > 5000
    assert write_sheet(tmp_path / "b.pdf").read_bytes()[:4] == b"%PDF"


def test_what_cannot_be_written_is_refused(tmp_path, capsys):
    assert main(["sheet", str(tmp_path / "a.docx")]) == 2
    with pytest.raises(InputError, match="one of A4, Letter"):
        write_sheet(tmp_path / "a.pdf", paper="A5")
    with pytest.raises(InputError, match="can be written"):
        write_sheet(tmp_path / "nothing" / "a.pdf")
    capsys.readouterr()
