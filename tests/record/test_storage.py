"""The record loses nothing: corrections, torn tails, unknown lines, two programs, two copies."""

import datetime as dt
import json
import multiprocessing

import pytest
from msgspec.structs import replace

from pentools.errors import RecordError
from pentools.record.entries import WITHDRAWAL, encode_entry, new_entry
from pentools.record.storage import Record


def entry(mass=8.92, **more):
    return new_entry("fill test", "weighing", {"mass": {"value": mass, "unit": "g"}}, **more)


@pytest.fixture
def record(tmp_path):
    return Record.open(tmp_path / "record.jsonl")


def test_append_then_open_again(record):
    first, second = record.append(entry(1.0)), record.append(entry(2.0))
    again = Record.open(record.path)
    assert [e.id for e in again.entries] == [first.id, second.id]
    assert again.problems == []


def test_a_correction_takes_the_place_of_the_old_line(record):
    first = record.append(entry(1.0))
    second = record.append(entry(2.0))
    fixed = record.append(entry(1.1, replaces=first.id))
    fixed_again = record.append(entry(1.2, replaces=fixed.id))
    assert [e.id for e in record.live()] == [fixed_again.id, second.id]
    assert [e.id for e in record.history(fixed_again)] == [first.id, fixed.id, fixed_again.id]
    assert len(record.path.read_bytes().splitlines()) == 4


def test_a_withdrawal_hides_but_keeps(record):
    first = record.append(entry())
    record.append(new_entry("fill test", WITHDRAWAL, {"reason": "wrong pen"}, replaces=first.id))
    assert record.live() == []
    assert len(Record.open(record.path).entries) == 2


@pytest.mark.parametrize("tail", [b'{"id": "x", "at": "2026-0', b"\xff\xfe\x00", b"half a word"])
def test_a_torn_tail_is_set_aside_and_reported(record, tail):
    record.append(entry())
    whole = record.path.read_bytes()
    record.path.write_bytes(whole + tail)
    again = Record.open(record.path)
    assert len(again.entries) == 1
    assert "set aside" in again.problems[0]
    [aside] = record.path.parent.glob("record-torn-*.txt")
    assert aside.read_bytes() == tail
    assert again.path.read_bytes() == whole
    again.append(entry())
    assert len(Record.open(record.path).entries) == 2


def test_a_tail_torn_while_open_is_set_aside_by_the_next_append(record):
    record.append(entry())
    with record.path.open("ab") as file:
        file.write(b'{"torn')
    record.append(entry())
    assert len(record.entries) == 2
    assert len(Record.open(record.path).entries) == 2
    assert list(record.path.parent.glob("record-torn-*.txt"))


def test_a_whole_last_line_without_its_end_is_kept(record):
    record.append(entry())
    record.path.write_bytes(record.path.read_bytes().rstrip(b"\n"))
    again = Record.open(record.path)
    assert len(again.entries) == 1
    again.append(entry())
    assert len(Record.open(record.path).entries) == 2


def test_a_bad_line_in_the_middle_is_left_and_reported(record):
    record.append(entry())
    with record.path.open("ab") as file:
        file.write(b"not json\n")
    record.append(entry())
    again = Record.open(record.path)
    assert len(again.entries) == 2
    assert "Line 2" in again.problems[0]
    assert b"not json\n" in again.path.read_bytes()


def test_unknown_kinds_and_keys_are_kept(record):
    line = json.loads(encode_entry(entry()))
    line |= {"stage": "future", "kind": "thing", "colour": "mauve"}
    record.path.write_text(json.dumps(line) + "\n")
    again = Record.open(record.path)
    assert again.live("future", "thing")
    again.append(entry())
    assert "mauve" in again.path.read_text()


def test_what_another_notebook_adds_is_seen(record):
    other = Record.open(record.path)
    record.append(entry())
    assert other.refresh() is True
    assert len(other.entries) == 1
    assert other.refresh() is False


def _write_many(path, count):
    record = Record.open(path)
    for number in range(count):
        record.append(entry(float(number)))


def test_two_programs_at_once_lose_nothing(tmp_path):
    path = tmp_path / "record.jsonl"
    context = multiprocessing.get_context("spawn")
    workers = [context.Process(target=_write_many, args=(path, 40)) for _ in range(3)]
    for worker in workers:
        worker.start()
    for worker in workers:
        worker.join()
    again = Record.open(path)
    assert len(again.entries) == 120
    assert again.problems == []


def test_merge_is_the_union_of_ids(tmp_path, record):
    shared = record.append(entry(1.0))
    copy = tmp_path / "copy.jsonl"
    copy.write_bytes(record.path.read_bytes())
    mine, theirs = record.append(entry(2.0)), Record.open(copy).append(entry(3.0))
    report = record.merge(copy)
    assert report.added == 1
    assert report.conflicts == ()
    assert {e.id for e in record.entries} == {shared.id, mine.id, theirs.id}
    assert record.merge(copy).added == 0


def test_merge_sets_unlike_lines_aside(tmp_path, record):
    first = record.append(entry(1.0))
    copy = tmp_path / "copy.jsonl"
    copy.write_bytes(record.path.read_bytes().replace(b"1.0", b"9.0"))
    report = record.merge(copy)
    assert report.conflicts == (first.id,)
    assert record.entries[0].data["mass"]["value"] == 1.0
    [aside] = tmp_path.glob("record-unlike-*.txt")
    assert b"9.0" in aside.read_bytes()


ZONE = dt.timezone(dt.timedelta(hours=1))


def at(day):
    return dt.datetime(2026, 3, day, 9, tzinfo=ZONE)


def masses(record):
    return [e.data["mass"]["value"] for e in record.live()]


def test_within_one_file_the_later_line_counts_whatever_the_clock_said(record):
    first = record.append(entry(1.0, at=at(5)))
    fixed = record.append(entry(2.0, replaces=first.id, at=at(4)))
    assert masses(record) == [2.0]
    record.append(entry(3.0, replaces=first.id, at=at(3)))
    assert masses(record) == [3.0]
    record.append(new_entry("fill test", WITHDRAWAL, {"reason": "typed twice"}, replaces=first.id, at=at(2)))
    assert masses(record) == []
    assert record.history(fixed)[0].id == first.id


def test_a_correction_may_stand_before_its_target(record):
    first, fixed = entry(1.0), entry(2.0)
    last = replace(entry(3.0), replaces=fixed.id)
    for line in (last, replace(fixed, replaces=first.id), first, entry(9.0)):
        record.append(line)
    assert masses(record) == [3.0, 9.0]


def test_circles_and_missing_or_double_ids_have_one_answer_each(record):
    one, two = entry(1.0), entry(2.0)
    lines = [replace(one, replaces=two.id), replace(two, replaces=one.id)]  # a circle: the last line of it
    lines += [replace(entry(value), id="") for value in (3.0, 4.0)]  # no id: each stands for itself
    lines += [replace(entry(value), id="same") for value in (5.0, 6.0)]  # one id twice: the later line
    own = entry(7.0)
    lines += [replace(own, replaces=own.id), replace(entry(8.0), replaces="not there"), entry(9.0, replaces="")]
    for line in lines:
        record.append(line)
    assert masses(record) == [2.0, 3.0, 4.0, 6.0, 7.0, 8.0, 9.0]
    assert len(record.history(record.entries[0])) == 2


@pytest.mark.parametrize("mine_is_later", [True, False])
def test_of_two_corrections_made_apart_the_later_counts_from_both_sides(tmp_path, record, mine_is_later):
    first = record.append(entry(1.0, at=at(1)))
    other = Record.open(tmp_path / "copy.jsonl")
    other.append(first)
    record.append(entry(2.0, replaces=first.id, at=at(3 if mine_is_later else 2)))
    other.append(entry(3.0, replaces=first.id, at=at(2 if mine_is_later else 3)))
    apart = other.path.read_bytes()
    other.merge(record.path)
    (tmp_path / "theirs.jsonl").write_bytes(apart)
    record.merge(tmp_path / "theirs.jsonl")
    assert masses(record) == masses(other) == [2.0 if mine_is_later else 3.0]
    assert masses(Record.open(record.path)) == masses(record)


def test_the_version_changes_with_every_line_and_not_without(record):
    before = record.version
    record.append(entry())
    assert record.version > before
    before, live = record.version, record.live()
    assert record.refresh() is False
    assert record.version == before
    assert record.live() == live


def test_a_write_that_fails_says_so_and_leaves_the_file_whole(record, monkeypatch):
    record.append(entry())
    before = record.path.read_bytes()
    real = __import__("os").write

    def half(handle, block):
        real(handle, block[:5])
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pentools.record.storage.os.write", half)
    with pytest.raises(RecordError, match="No space left"):
        record.append(entry())
    assert record.path.read_bytes() == before


def test_the_lock_is_waited_for_and_then_said_in_words(record, monkeypatch):
    from filelock import FileLock

    monkeypatch.setattr("pentools.record.storage.LOCK_SECONDS", 0.05)
    with FileLock(record.path.with_name(".record.lock")), pytest.raises(RecordError, match="Another program"):
        record.append(entry())


def test_reading_needs_no_write(record):
    record.append(entry())
    record.path.with_name(".record.lock").unlink(missing_ok=True)
    Record.open(record.path)
    assert not record.path.with_name(".record.lock").exists()
