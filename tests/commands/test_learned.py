"""`pentools learned` in lines, as JSON and as a page."""

import json

from pentools.books.invented.bench import invent_bench
from pentools.cli import main


def test_lines_json_and_a_page_that_names_no_pen(tmp_path, capsys):
    folder = str(tmp_path / "b")
    truth = invent_bench(folder, 40, seed=2)
    assert main(["learned", "--bench", folder]) == 0
    out = capsys.readouterr().out
    assert "Minutes by kind of work:" in out
    assert "too few to say" in out
    assert main(["learned", "--json", "--bench", folder, "--year", "2026"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert all("n" in row and ("said" in row or "low" in row) for row in data["minutes_by_work"])
    page = tmp_path / "page.html"
    assert main(["learned", "--bench", folder, "--page", str(page)]) == 0
    text = page.read_text(encoding="utf-8")
    assert text.count("<svg") == 3
    assert not any(pen.job in text or pen.owner in text for pen in truth.pens)
    assert main(["learned", "--bench", folder, "--page", str(tmp_path / "page.txt")]) == 2
    assert ".html" in capsys.readouterr().err
