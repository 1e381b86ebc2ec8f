"""The order of lines, and which of several about one entry counts: one answer each, from both sides."""

import datetime as dt
import itertools

from hypothesis import given
from hypothesis import strategies as st

from pentools.record.chains import arranged, chains, heads, order_line, together
from pentools.record.entries import MERGE_ORDER, Entry


def entry(name, hour=9, replaces=None):
    at = dt.datetime(2026, 3, 14, hour, tzinfo=dt.UTC).isoformat()
    return Entry(id=name, at=at, stage="fill test", kind="weighing", data={}, replaces=replaces)


def order(*names):
    return Entry(id="o", at="2026-03-14T09:00:00Z", stage="record", kind=MERGE_ORDER, data={"order": list(names)})


def names(entries):
    return "".join(e.id for e in entries)


def test_each_copys_own_order_stands_first_and_time_second():
    one = [entry("s"), entry("a", 12), entry("b", 8)]  # its clock went back
    other = [entry("s"), entry("x", 9), entry("y", 13)]
    assert "".join(together(one, other)) == "sxaby"
    assert together(one, other) == together(other, one)


def test_what_was_entered_in_the_same_second_is_ordered_by_name():
    assert "".join(together([entry("b")], [entry("a")])) == "ab"


def test_where_copies_contradict_each_other_time_decides_and_nothing_is_lost():
    one, other = [entry("a", 9), entry("b", 8), entry("c", 7)], [entry("c", 7), entry("a", 9)]
    assert "".join(together(one, other)) == "".join(together(other, one)) == "cab"


@given(st.lists(st.integers(0, 23), max_size=8), st.lists(st.integers(0, 23), max_size=8), st.integers(0, 3))
def test_the_common_order_is_the_same_from_both_sides_and_keeps_each_ones_own(mine, theirs, shared):
    common = [entry(f"s{n}", 5) for n in range(shared)]
    one = common + [entry(f"a{n}", hour) for n, hour in enumerate(mine)]
    other = common + [entry(f"b{n}", hour) for n, hour in enumerate(theirs)]
    found = together(one, other)
    assert found == together(other, one)
    assert sorted(found) == sorted({e.id for e in one + other})
    for copy in (one, other):
        assert [name for name in found if name in {e.id for e in copy}] == [e.id for e in copy]
    there = one + other[shared:]
    line = order_line(found, there)
    assert [e.id for e in arranged([*there, *([line] if line else [])])] == found


def test_a_line_on_the_order_moves_what_it_names_and_nothing_else():
    lines = [entry(name) for name in "abcde"]
    assert names(arranged([*lines, order("d", "b", "not there")])) == "adcbe"
    assert names(arranged([*lines, order()])) == "abcde"
    assert names(arranged([*lines[:2], order("b", "a"), *lines[2:]])) == "bacde"


def test_a_line_on_the_order_that_makes_no_sense_moves_nothing():
    lines = [entry(name) for name in "ab"]
    for data in ({}, {"order": "ba"}, {"order": None}, {"order": [1, None, ["a"]]}, {"order": {"b": 1}}):
        odd = Entry(id="o", at="2026-03-14T09:00:00Z", stage="", kind=MERGE_ORDER, data=data)
        assert names(arranged([*lines, odd])) == "ab"


def test_the_line_on_the_order_is_the_same_whoever_makes_it():
    a, b, c = entry("a", 9), entry("b", 10), entry("c", 11)
    one, other = order_line(["a", "b", "c"], [b, a, c]), order_line(["a", "b", "c"], [b, a, c])
    assert one == other
    assert one.data == {"order": ["a", "b"]}
    assert order_line(["a", "b"], [a, b]) is None


def test_the_later_line_of_a_chain_counts_unless_another_corrects_it():
    first, fixed, again = entry("a", 9), entry("b", 7, replaces="a"), entry("c", 5, replaces="a")
    assert names(heads([first, fixed, again])) == "c"
    assert names(heads([first, entry("b", replaces="a"), entry("c", replaces="b"), entry("d", replaces="a")])) == "d"


def test_circles_of_any_length_end():
    for length in range(1, 6):
        ring = [entry(str(n), replaces=str((n + 1) % length)) for n in range(length)]
        for turned in itertools.islice(itertools.permutations(ring), 24):
            assert heads(turned) == [turned[-1]]
            assert [len(chain) for chain in chains(turned)] == [length]


def test_many_corrections_of_one_entry_are_walked_once():
    lines = [entry("0"), *(entry(str(n), replaces=str(n - 1)) for n in range(1, 20_000))]
    assert names(heads(lines)) == "19999"
