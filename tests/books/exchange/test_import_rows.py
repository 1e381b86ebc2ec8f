"""Rows are numbered as an editor counts them, and the delimiter is found out from the first line."""

import pytest

from pentools.books.exchange.import_mapping import FileSays
from pentools.books.exchange.import_rows import job_name_of, read_table


def read(tmp_path, text, **says):
    (tmp_path / "t.csv").write_text(text, encoding="utf-8", newline="")
    return read_table(tmp_path / "t.csv", FileSays(**says))


@pytest.mark.parametrize("sign", [",", ";", "\t", "|"])
def test_the_delimiter_is_found_out(tmp_path, sign):
    table = read(tmp_path, f'a{sign}"b, ; c"{sign}d\n1{sign}2{sign}3\n')
    assert table.columns == ("a", "b, ; c", "d")
    assert dict(table.rows[0].cells) == {"a": "1", "b, ; c": "2", "d": "3"}


def test_one_column_alone_needs_none(tmp_path):
    assert [row.cells["pen"] for row in read(tmp_path, "pen\nblack; lever\n", delimiter=",").rows] == ["black; lever"]


def test_a_rows_number_is_that_of_the_line_it_begins_on(tmp_path):
    table = read(tmp_path, 'a,b\r\n1,"two\r\nlines"\r\n\r\n3,4\r\n')
    assert [(row.number, row.cells["b"]) for row in table.rows] == [(2, "two\r\nlines"), (5, "4")]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("12/2019", "12-2019"),
        ("  Nr. 7 (blue) ", "Nr-7-blue"),
        ("../up", "up"),
        ("", "old-0007"),
        ("…", "old-0007"),
        ("x" * 90, "x" * 64),
    ],
)
def test_a_jobs_name_is_made_fit_for_a_folder(text, name):
    assert job_name_of(text, 7) == name
