"""What a bench teaches as a notebook shows it: words, charts, tables, plain values."""

from pentools.answers.books import HEADINGS, learned, review
from pentools.books.invented.bench import invent_bench


def test_a_bench_shows_itself_with_its_charts(tmp_path):
    invent_bench(tmp_path / "b", 40, seed=2)
    answer, year = learned(tmp_path / "b"), review(2026, tmp_path / "b")
    assert repr(answer).startswith("40 jobs; ")
    assert len(answer.figures()) == 3
    assert len(year.figures()) == 4
    assert answer._repr_html_().count("<svg") == 3
    titles = [title for title, _ in answer.tables()]
    assert titles[0] == "Minutes by kind of work"
    assert all(len(row) == len(HEADINGS) for _, rows in answer.tables() for row in rows)
    assert year.data["year"] == 2026
    assert learned(tmp_path / "b", year=2026).data["jobs"] == sum(year.data["ended"].values())


def test_an_empty_bench_shows_no_chart(tmp_path):
    (tmp_path / "b").mkdir()
    assert learned(tmp_path / "b").figures() == ()
    assert "0 jobs" in learned(tmp_path / "b")._repr_html_()
