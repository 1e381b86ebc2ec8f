"""Every table has a sidecar, and no row stands without a source."""

import pytest

from pentools import tables
from pentools.errors import RecordError

KINDS = {
    "standard",
    "handbook",
    "paper",
    "open data",
    "measured here",
    "computed",
    "common practice",
    "from memory",
    "judged",
}


@pytest.mark.parametrize("name", tables.names())
def test_the_sidecar_says_what_the_table_is(name):
    about = tables.sidecar(name)
    assert about["title"]
    assert about["edition"]
    columns = set(tables.rows(name)[0])
    assert set(about["columns"]) == columns, "the sidecar names exactly the table's columns"
    assert about["sources"]
    for source in about["sources"]:
        assert source["kind"] in KINDS
        assert source["text"]


@pytest.mark.parametrize("name", tables.names())
def test_every_row_has_a_source(name):
    keys = {source["key"] for source in tables.sidecar(name)["sources"]}
    for row in tables.rows(name):
        used = {part.strip() for part in row["source"].split(";")}
        assert used <= keys, f"{name}: {row} names a source the sidecar does not list"
        assert None not in row.values(), f"{name}: {row} is too short"


def test_an_unknown_table_is_refused_in_words():
    with pytest.raises(RecordError, match="There are"):
        tables.rows("nothing")
