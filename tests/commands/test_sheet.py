"""The sheet to write on, as a file; a name of another ending is refused in words."""

from pentools.cli import main


def test_the_sheet_is_written_and_another_ending_refused(tmp_path, capsys):
    assert main(["sheet", str(tmp_path / "sheet.svg"), "--paper", "Letter"]) == 0
    assert "Print it at 100 %" in capsys.readouterr().out
    assert (tmp_path / "sheet.svg").is_file()
    assert main(["sheet", str(tmp_path / "sheet.doc")]) == 2
    assert ".pdf" in capsys.readouterr().err
