"""Rows as typed structures, with the place of what is wrong in the error."""

from typing import Annotated

import msgspec
import pytest

from pentools import tables
from pentools.errors import RecordError


class Row(msgspec.Struct, frozen=True):
    name: str
    low: float | None
    count: Annotated[int, msgspec.Meta(ge=0)]
    parts: tuple[str, ...] = ()
    safe: bool = False


TEXT = {"name": "a", "low": "", "count": "3", "parts": "cap; clip", "safe": "yes", "unread": "x"}


def test_cells_are_read_as_what_the_structure_wants():
    assert tables.convert_rows(Row, [TEXT], "x.csv") == (Row("a", None, 3, ("cap", "clip"), True),)
    assert tables.convert_rows(Row, [TEXT | {"parts": "", "safe": "", "low": "2.5"}], "x.csv") == (Row("a", 2.5, 3),)


@pytest.mark.parametrize(
    ("cell", "words"),
    [
        ({"low": "2,5"}, "x.csv, row 3, column “low”: .*“2,5”"),
        ({"count": "-1"}, "x.csv, row 3, column “count”: .*“-1”"),
        ({"count": ""}, "x.csv, row 3, column “count”: .*“”"),
        ({"safe": "perhaps"}, "x.csv, row 3, column “safe”: .*“perhaps”"),
    ],
)
def test_an_error_names_file_row_and_column(cell, words):
    with pytest.raises(RecordError, match=words):
        tables.convert_rows(Row, [TEXT, TEXT | cell], "x.csv")


def test_a_missing_column_is_named():
    with pytest.raises(RecordError, match=r"x\.csv has no column “low”"):
        tables.convert_rows(Row, [{"name": "a", "count": "3"}], "x.csv")


def test_a_table_is_read_once():
    class Year(msgspec.Struct, frozen=True):
        year: int
        index: float

    assert tables.read(Year, "cpi_us") is tables.read(Year, "cpi_us")
    assert len(tables.read(Year, "cpi_us")) == len(tables.rows("cpi_us"))
