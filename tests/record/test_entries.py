"""One line of a record: what is no entry is refused in words."""

import datetime as dt

import pytest
from record.odd_values import ODD_PARTS, line_with

from pentools.errors import RecordError
from pentools.record.entries import OddEntry, decode_entry, encode_entry, new_entry


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


@pytest.mark.parametrize("name", ODD_PARTS)
def test_an_entry_that_can_be_placed_stands_with_its_reason(name):
    parts, reason = ODD_PARTS[name]
    line = line_with(**parts)
    entry = decode_entry(line)
    assert isinstance(entry, OddEntry)
    assert (entry.id, entry.stage, entry.kind, entry.data) == ("a", "intake", "arrival", {})
    assert reason in entry.reason
    assert encode_entry(entry) == line  # as it stands, not as it was understood


def test_an_odd_correction_keeps_its_target():
    assert decode_entry(line_with(data="[]", replaces='"b"')).replaces == "b"


@pytest.mark.parametrize(
    "parts",
    [
        *({name: part, "data": data} for name in ("id", "at", "stage", "kind") for part in ("", "5", "null", '["a"]') for data in ("{}", "[]")),
        {"at": '"0001-01-01T00:00:00+14:00"'},
        {"at": '"9999-12-31T23:59:59-14:00"', "data": "[]"},
        {"at": '"2026-03-01"'},
    ],
)  # fmt: skip
def test_a_line_without_its_place_is_no_entry(parts):
    with pytest.raises(RecordError, match=r"^This line is not an entry: .+\.$"):
        decode_entry(line_with(**parts))


def test_whole_pairs_and_what_looks_like_half_a_character_are_read():
    assert decode_entry(line_with(data='{"pen":"\\ud83d\\ude00 \\\\ud83d"}')).data == {"pen": "😀 \\ud83d"}


def test_a_text_with_half_a_character_is_not_written():
    with pytest.raises(RecordError, match="half a character"):
        encode_entry(new_entry("intake", "arrival", {"pen": "\ud83d"}))
