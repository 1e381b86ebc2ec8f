"""Odd lines are named by file and line, each kind once a place, and a sound record has none."""

import pytest
from msgspec.structs import replace

from pentools.record.entries import WITHDRAWAL, encode_entry, new_entry
from pentools.record.oddities import MOST_NAMED, odd_lines
from pentools.record.storage import Record


def entry(name, value=1, **more):
    return replace(new_entry("fill test", "weighing", {"n": value}, **more), id=name)


@pytest.fixture
def said(tmp_path):
    def say(*lines):
        path = tmp_path / "record.jsonl"
        path.write_bytes(b"".join((x if isinstance(x, bytes) else encode_entry(x)) + b"\n" for x in lines))
        return [(f.topic, f.text) for f in odd_lines(Record.open(path))]

    return say


def test_a_sound_record_has_none(said):
    assert said(entry("a"), entry("b", replaces="a"), entry("c", replaces="b")) == []
    gone = replace(new_entry("intake", WITHDRAWAL, {"reason": "a slip"}, replaces="a"), id="b")
    assert said(entry("a"), gone, entry("c", replaces="b"), entry("d", replaces=" ")) == []
    twice = entry("a")
    assert said(twice, entry("b"), twice) == []


@pytest.mark.parametrize(
    ("lines", "topic", "places"),
    [
        ([entry("b", replaces="a"), entry("a")], "line-early", ("line 1", "line 2")),
        ([entry("x"), entry("b", replaces="gone")], "line-target", ("line 2", "gone")),
        ([b'{"id":"a","at":"no time"}', entry("b", replaces="a")], "line-target", ("line 2", "line 1")),
        ([b'{"id":"a","format":2}', entry("b", replaces="a")], "line-target", ("line 2", "line 1")),
        ([entry("x"), entry("")], "line-nameless", ("line 2",)),
        ([entry("a"), entry("x"), entry("a", 2)], "line-double", ("line 3", "line 1")),
        ([entry("x"), b'{"id":"a","format":9}'], "line-newer", ("line 2", "form 9")),
        ([entry("x"), entry("a", replaces="c"), entry("b", replaces="a"), entry("c", replaces="b")], "line-circle", ("lines 2, 3 and 4", "line 4, counts")),
        ([entry("a", replaces="a")], "line-circle", ("line 1", "itself")),
        ([entry("x"), entry(" ")], "line-nameless", ("line 2",)),
        ([entry("x"), replace(new_entry("intake", "arrival", {}, replaces="x"), id="b")], "line-other", ("line 2", "line 1", "(fill test, weighing)")),
    ],
)  # fmt: skip
def test_each_is_named_by_file_and_line(said, lines, topic, places):
    found = [text for key, text in said(*lines) if key == topic]
    assert len(found) == 1
    assert all(place in found[0] for place in ("record.jsonl", *places)), found


def test_a_tail_into_a_circle_is_not_part_of_it(said):
    found = dict(said(entry("t", replaces="a"), entry("a", replaces="b"), entry("b", replaces="a")))
    assert "lines 2 and 3" in found["line-circle"]


def test_of_very_many_the_rest_is_counted(said):
    found = said(*(entry("") for _ in range(MOST_NAMED + 5)))
    assert [topic for topic, _ in found] == ["line-nameless"] * MOST_NAMED + ["line-more"]
    assert "5 more" in found[-1][1]
