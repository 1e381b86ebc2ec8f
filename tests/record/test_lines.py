"""Lines of a record: any line end, a byte-order mark, and a bad one that spoils no other."""

import pytest

from pentools.record.entries import MERGE_ORDER, OddEntry, encode_entry, new_entry
from pentools.record.lines import name_of, read_line, read_lines, split_lines, whole_part


def entry(**more):
    return new_entry("fill test", "weighing", {"state": "dry"}, **more)


LINES = [encode_entry(entry()) for _ in range(3)]


@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r", b"\n\r\n"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf", b"\xef\xbb\xbf" * 2])
def test_every_line_is_read_whatever_ends_it(mark, end):
    data = mark + end.join(LINES) + end
    read = list(read_lines(data))
    assert [encode_entry(line.entry) for _, line in read] == LINES
    assert [raw for raw, _ in read] == LINES


def test_lines_are_numbered_as_an_editor_does():
    data = LINES[0] + b"\r\n\r\nbad\r\n" + LINES[1]
    assert [(line.number, line.whole) for _, line in read_lines(data)] == [(1, True), (3, False), (4, True)]
    assert [line.number for _, line in read_lines(data, 10)] == [10, 12, 13]


def test_a_return_at_the_very_end_may_be_half_an_end():
    assert whole_part(b"a\nb\r") == 2
    assert whole_part(b"a\r\nb") == 3
    assert whole_part(b"a\rb") == 2
    assert whole_part(b"a") == 0
    assert split_lines(b"a\r\nb\rc\n") == [b"a", b"b", b"c", b""]


def test_a_line_without_an_id_goes_by_what_it_says():
    one, other = read_line(LINES[0].replace(entry_id(LINES[0]), b""), 1), read_line(LINES[1], 2)
    assert (one.id, other.id) == ("", entry_id(LINES[1]).decode())
    assert one.name.startswith("line-")
    assert one.name == name_of(one.entry)


def entry_id(line):
    return encode_entry(read_line(line, 1).entry).split(b'"')[3]


def test_a_line_in_a_newer_form_is_no_entry_but_whole_whatever_else_it_holds():
    for content in (b'{"format":7,"id":"a"}', LINES[0].replace(b'"format":1', b'"format":2')):
        line = read_line(content, 4)
        assert (line.entry, line.whole, line.form in (2, 7)) == (None, True, True)
        assert not line.counts
    assert read_line(b'{"format":7,"id":"a"}', 4).id == "a"


@pytest.mark.parametrize("form", [b'"2"', b"1.5", b"true", b"null", b"[]"])
def test_a_form_that_is_no_whole_number_makes_an_odd_entry(form):
    line = read_line(LINES[0].replace(b'"format":1', b'"format":' + form), 1)
    assert (type(line.entry), line.form) == (OddEntry, None)


def test_an_id_can_be_made_out_of_a_line_that_is_no_entry():
    assert read_line(b'{"id":"a","at":"no time"}', 1).id == "a"
    assert read_line(b'{"id":', 1).id == ""


def test_the_line_on_the_order_does_not_count_as_an_entry():
    line = read_line(encode_entry(new_entry("record", MERGE_ORDER, {"order": []})), 1)
    assert line.entry is not None
    assert not line.counts
