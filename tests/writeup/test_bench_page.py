"""The page of a bench: it fetches nothing, escapes what it is handed, and is its owner's alone on disk."""

import pytest

from pentools.errors import InputError, RecordError
from pentools.figures.drawing import Drawing
from pentools.writeup.bench_page import bench_page, write_bench_page


def test_charts_and_tables_stand_on_it_and_nothing_is_fetched(tmp_path):
    text = bench_page(
        "A <year>",
        "It was & is.",
        [Drawing("<svg></svg>", "t", "a", 160)],
        [("Lots", [("<b>bag</b>", "3")])],
        ("lot", "n"),
    )
    assert "A &lt;year&gt;" in text
    assert "It was &amp; is." in text
    assert "&lt;b&gt;bag" in text
    assert "<figure><svg>" in text
    assert "default-src 'none'" in text
    file = write_bench_page(tmp_path / "y.html", text)
    assert file.stat().st_mode & 0o777 == 0o600
    with pytest.raises(InputError, match=r"\.html"):
        write_bench_page(tmp_path / "y.pdf", text)
    with pytest.raises(RecordError, match="cannot be written"):
        write_bench_page(tmp_path / "none" / "y.html", text)
