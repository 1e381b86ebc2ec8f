"""What a merge takes, passes by and sets aside, worked out from two files before anything is written."""

import json

import pytest

from pentools.errors import RecordError
from pentools.record.entries import encode_entry, new_entry
from pentools.record.merging import plan_merge


def line(value, **more):
    return encode_entry(new_entry("fill test", "weighing", {"n": value}, **more))


ONE, TWO, THREE = (line(n) for n in (1, 2, 3))
NEWER = b'{"format":2,"id":"n","what":"unknown"}'


def file(*lines):
    return b"".join(each + b"\n" for each in lines)


def test_every_line_goes_one_way():
    unlike = TWO.replace(b'"n":2', b'"n":9')
    plan = plan_merge(file(ONE, TWO), file(ONE, unlike, THREE, NEWER, b"torn"), "copy.jsonl")
    assert plan.lines == (THREE, NEWER)
    assert plan.aside == (unlike, b"torn")
    done = plan.done
    assert (done.added, done.there, len(done.conflicts), done.unread) == (2, 1, 1, 1)
    assert plan.report("aside.txt").aside == "aside.txt"


@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r"])
def test_a_mark_and_other_line_ends_cost_no_line(end):
    plan = plan_merge(file(ONE), b"\xef\xbb\xbf" + end.join((ONE, TWO, THREE)), "copy.jsonl")
    assert plan.lines == (TWO, THREE)
    assert (plan.done.there, plan.aside) == (1, ())


def test_a_line_that_is_only_spaced_otherwise_is_there_already():
    spaced = json.dumps(json.loads(ONE), sort_keys=True).encode()
    plan = plan_merge(file(ONE), file(spaced), "copy.jsonl")
    assert (plan.lines, plan.aside, plan.done.there) == ((), (), 1)
    assert plan_merge(file(ONE), file(ONE.replace(b"{", b'{"new":1,', 1)), "copy.jsonl").done.conflicts


def test_lines_without_an_id_are_told_apart_by_what_they_say():
    nameless = [line(n).replace(b'"id":"', b'"id":"",  "was":"') for n in (7, 8)]
    plan = plan_merge(file(nameless[0]), file(*nameless), "copy.jsonl")
    assert plan.lines == (nameless[1],)
    assert plan.aside == ()


def test_a_whole_line_is_taken_over_where_this_copys_is_damaged():
    plan = plan_merge(file(ONE[:-1], TWO), file(ONE, TWO), "copy.jsonl")
    assert plan.lines[0] == ONE
    assert plan.aside == ()
    damaged = ONE.replace(b'"at":"2', b'"at":"x')  # its id can still be made out
    assert plan_merge(file(damaged), file(ONE), "copy.jsonl").lines == (ONE,)
    assert plan_merge(file(ONE), file(damaged, ONE), "copy.jsonl").aside == (damaged,)


def test_what_cannot_be_read_here_either_is_not_set_aside_again():
    assert plan_merge(file(ONE, b"torn"), file(ONE, b"torn"), "copy.jsonl").aside == ()


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\n \n",
        b"\xef\xbb\xbf",
        b"Dear owner,\nthe pen is done.\n",
        b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR",
        b'{"cells": []}',
        b"[1,2]\n3\n",
    ],
)
def test_what_is_no_record_is_refused(content):
    with pytest.raises(RecordError, match=r"letter\.txt is (empty|no record)"):
        plan_merge(file(ONE), content, "letter.txt")


def test_it_is_said_where_both_had_lines_and_where_nothing_is_common():
    assert plan_merge(file(ONE, TWO), file(ONE, THREE), "c").done.both
    assert not plan_merge(file(ONE), file(ONE, THREE), "c").done.both
    assert not plan_merge(file(ONE, TWO), file(ONE), "c").done.both
    assert plan_merge(file(ONE), file(TWO), "c").done.strangers
    assert not plan_merge(b"", file(TWO), "c").done.strangers
