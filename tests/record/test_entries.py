"""One line of a record: what is no entry is refused in words."""

import datetime as dt

import pytest

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


def line_with(**parts):
    """A line whose members are given as they would stand in the file."""
    usual = {"id": '"a"', "at": '"2026-03-01T09:00:00+01:00"', "stage": '"intake"', "kind": '"arrival"',
             "data": "{}", "note": '""', "replaces": "null", "format": "1"}  # fmt: skip
    usual |= parts
    return ("{" + ",".join(f'"{name}":{part}' for name, part in usual.items() if part) + "}").encode()


ODD_PARTS = {
    "NaN": ({"data": '{"mass":NaN}'}, "invalid character"),
    "Infinity": ({"data": '{"mass":-Infinity}'}, "invalid"),
    "beyond all numbers": ({"data": '{"mass":1e999}'}, "out of range"),
    "5,000 digits": ({"data": '{"mass":' + "9" * 5000 + "}"}, "out of range"),
    "nesting": ({"data": '{"pen":' + '{"a":' * 2000 + "1" + "}" * 2000 + "}"}, "nested too deep"),
    "half a character": ({"data": '{"pen":"a \\ud83d pen"}'}, "“\\ud83d” is half a character"),
    "a list": ({"data": "[1]"}, "Expected `object`, got `array`"),
    "no data": ({"data": ""}, "missing required field `data`"),
    "a null byte": ({"data": '{"pen":"\x00"}'}, "invalid character"),
    "a name twice": ({"data": '{"pen":"green","pen":"black"}'}, "“pen” is given twice"),
    "a reading's name twice": ({"data": '{"m":{"value":1,"value":2}}'}, "“value” is given twice"),
    "a remark": ({"note": "5"}, "Expected `str`, got `int`"),
    "a target": ({"replaces": '["b"]'}, "got `array`"),
    "a form": ({"format": '"one"'}, "got `str`"),
}


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
