"""One line of a record: what is no entry is refused in words."""

import datetime as dt

import pytest

from pentools.errors import RecordError
from pentools.record.entries import decode_entry, new_entry


@pytest.mark.parametrize(
    "line",
    [
        b"[]",
        b"{}",
        b'{"id":1,"at":"2026-01-01T00:00:00+00:00","stage":"a","kind":"b","data":{}}',
        b'{"id":"1","at":"2026-01-01T00:00:00","stage":"a","kind":"b","data":{}}',
        b'{"id":"1","at":"never","stage":"a","kind":"b","data":{}}',
    ],
)
def test_a_line_that_is_no_entry_is_refused_in_words(line):
    with pytest.raises(RecordError):
        decode_entry(line)


def test_a_time_needs_a_zone():
    with pytest.raises(RecordError, match="zone"):
        new_entry("fill test", "weighing", {}, at=dt.datetime(2026, 3, 1, 9))
