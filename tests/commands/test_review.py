"""`pentools review`: a year in lines, as JSON, as a page; a year that is none is refused."""

import json

import pytest

from pentools.books.invented.bench import invent_bench
from pentools.cli import main


def test_a_year_in_every_form(tmp_path, capsys):
    folder = str(tmp_path / "b")
    invent_bench(folder, 30, seed=2)
    assert main(["review", "2026", "--bench", folder]) == 0
    assert capsys.readouterr().out.startswith("2026: ")
    assert main(["review", "2026", "--json", "--bench", folder]) == 0
    assert len(json.loads(capsys.readouterr().out)["months"]) == 12
    assert main(["review", "2026", "--page", str(tmp_path / "y.html"), "--bench", folder]) == 0
    assert "The year 2026 at the bench" in (tmp_path / "y.html").read_text(encoding="utf-8")
    assert main(["review", "3026", "--bench", folder]) == 2
    with pytest.raises(SystemExit) as stop:
        main(["review", "soon", "--bench", folder])
    assert stop.value.code == 2
