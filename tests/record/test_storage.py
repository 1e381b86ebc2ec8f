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


@pytest.mark.parametrize("tail", [b'{"id": "x", "at": "2026-0', b"\xff\xfe\x00", b"half a word", b"\0" * 512])
def test_a_torn_tail_is_named_when_read_and_set_aside_by_the_next_append(record, tail):
    record.append(entry())
    whole = record.path.read_bytes()
    record.path.write_bytes(whole + tail)
    again = Record.open(record.path)
    assert len(again.entries) == 1
    assert "line 2" in again.problems[0]
    assert "set aside when the next entry" in again.problems[0]
    assert record.path.read_bytes() == whole + tail
    assert list(record.path.parent.glob("record-torn-*.txt")) == []
    again.append(entry())
    [aside] = record.path.parent.glob("record-torn-*.txt")
    assert aside.read_bytes() == tail
    assert again.path.read_bytes().startswith(whole + b"{")
    assert "was set aside as" in again.problems[0]
    assert len(again.entries) == len(Record.open(record.path).entries) == 2
    assert Record.open(record.path).problems == []


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


@pytest.mark.parametrize("end", [b"\r\n", b"\r"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_other_line_ends_and_a_mark_are_read_and_added_to(record, end, mark):
    for value in (1.0, 2.0, 3.0):
        record.append(entry(value))
    record.path.write_bytes(mark + record.path.read_bytes().replace(b"\n", end))
    again = Record.open(record.path)
    assert (masses(again), again.problems) == ([1.0, 2.0, 3.0], [])
    again.append(entry(4.0))
    assert masses(again) == masses(Record.open(record.path)) == [1.0, 2.0, 3.0, 4.0]
    assert [line.number for line in again.lines] == [line.number for line in Record.open(record.path).lines]
    assert list(record.path.parent.glob("record-*.txt")) == []


def test_lines_without_their_end_are_read_as_they_grow(record):
    record.append(entry(1.0))
    other = Record.open(record.path)
    line = encode_entry(entry(2.0))
    for piece, seen in ((line[:9], [1.0]), (line[9:], [1.0, 2.0]), (b"\r", [1.0, 2.0]), (b"\n" + line[:9], [1.0, 2.0])):
        with record.path.open("ab") as file:
            file.write(piece)
        other.refresh()
        assert masses(other) == seen
    assert "line 3" in other.problems[0]


def write(path, *values):
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(b"".join(encode_entry(entry(value)) + b"\n" for value in values))


@pytest.mark.parametrize("many", [1, 2, 30])
@pytest.mark.parametrize("in_place", [True, False])
def test_another_record_in_its_place_leaves_no_ghost_and_takes_no_entry(record, tmp_path, many, in_place):
    for value in (1.0, 2.0):
        record.append(entry(value))
    write(tmp_path / "other.jsonl", *(9.0 for _ in range(many)))
    swapped = (tmp_path / "other.jsonl").read_bytes()
    if in_place:
        record.path.write_bytes(swapped)
    else:
        (tmp_path / "other.jsonl").replace(record.path)
    for _ in range(2):
        with pytest.raises(RecordError, match="Another record lies at"):
            record.append(entry(3.0))
    assert masses(record) == [9.0] * many
    assert record.path.read_bytes() == swapped
    assert any("Another record" in text for text in record.problems)


def test_once_the_right_record_is_back_it_takes_entries_again(record, tmp_path):
    record.append(entry(1.0))
    record.append(entry(2.0))
    record.path.rename(tmp_path / "kept")
    write(record.path, 9.0, 9.0, 9.0)
    with pytest.raises(RecordError, match="Another record"):
        record.append(entry(3.0))
    (tmp_path / "kept").replace(record.path)
    record.append(entry(3.0))
    assert masses(record) == masses(Record.open(record.path)) == [1.0, 2.0, 3.0]
    assert not any("Another" in text or "cannot be found" in text for text in record.problems)


def test_an_older_or_longer_copy_put_back_takes_the_entry_and_is_said(record):
    lines = [record.append(entry(value)) for value in (1.0, 2.0, 3.0)]
    content = record.path.read_bytes()
    record.path.write_bytes(b"".join(content.splitlines(keepends=True)[:2]))
    record.append(entry(4.0))
    assert masses(record) == masses(Record.open(record.path)) == [1.0, 2.0, 4.0]
    assert any("One line that was read before cannot be found" in text for text in record.problems)
    more = b"".join(encode_entry(e) + b"\n" for e in (*lines, *record.entries[2:], entry(5.0)))
    record.path.with_name("synced").write_bytes(more)
    record.path.with_name("synced").replace(record.path)
    record.append(entry(6.0))
    assert masses(record) == masses(Record.open(record.path)) == [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]


def test_a_line_changed_in_place_is_seen_at_the_same_length(record):
    record.append(entry(1.0))
    record.append(entry(2.0))
    record.path.write_bytes(record.path.read_bytes().replace(b"1.0", b"7.0"))
    assert record.refresh()
    assert masses(record) == [7.0, 2.0]


def test_a_record_that_is_gone_is_not_begun_anew(record):
    record.append(entry(1.0))
    content = record.path.read_bytes()
    record.path.unlink()
    for _ in range(2):
        with pytest.raises(RecordError, match="is not in"):
            record.append(entry(2.0))
    assert not record.path.exists()
    assert record.entries == []
    record.path.write_bytes(content)
    record.append(entry(2.0))
    assert masses(record) == [1.0, 2.0]
    assert not any("any more" in text for text in record.problems)


@pytest.fixture
def job_record(tmp_path):
    (tmp_path / "pen-1").mkdir()
    return Record.open(tmp_path / "pen-1" / "record.jsonl")


@pytest.mark.parametrize("begun", [True, False])
def test_a_folder_renamed_while_open_is_not_made_again(job_record, tmp_path, begun):
    if begun:
        job_record.append(entry(1.0))
    (tmp_path / "pen-1").rename(tmp_path / "pen-2")
    with pytest.raises(RecordError, match="moved, renamed or deleted"):
        job_record.append(entry(2.0))
    assert [p.name for p in tmp_path.iterdir()] == ["pen-2"]
    (tmp_path / "pen-2").rename(tmp_path / "pen-1")
    job_record.append(entry(2.0))
    assert masses(job_record)[-1:] == [2.0]


@pytest.mark.parametrize("begun", [True, False])
@pytest.mark.parametrize("other_begun", [True, False])
def test_a_folder_swapped_while_open_takes_no_entry(job_record, tmp_path, begun, other_begun):
    if begun:
        job_record.append(entry(1.0))
    (tmp_path / "pen-1").rename(tmp_path / "pen-2")
    (tmp_path / "pen-1").mkdir()
    if other_begun:
        write(tmp_path / "pen-1" / "record.jsonl", 9.0)
    before = {p: p.read_bytes() for p in (tmp_path / "pen-1").iterdir()}
    with pytest.raises(RecordError, match=r"Another (record|folder) lies|is not in"):
        job_record.append(entry(2.0))
    assert {p: p.read_bytes() for p in (tmp_path / "pen-1").iterdir() if p.name != ".record.lock"} == before


def test_a_folder_put_back_from_a_copy_goes_on(job_record, tmp_path):
    job_record.append(entry(1.0))
    content = job_record.path.read_bytes()
    (tmp_path / "pen-1").rename(tmp_path / "pen-2")
    (tmp_path / "pen-1").mkdir()
    job_record.path.write_bytes(content)
    job_record.append(entry(2.0))
    assert masses(job_record) == masses(Record.open(job_record.path)) == [1.0, 2.0]


def test_a_record_that_is_no_file_or_has_no_folder_is_said(tmp_path):
    (tmp_path / "record.jsonl").mkdir()
    with pytest.raises(RecordError, match="is no file"):
        Record.open(tmp_path / "record.jsonl")
    with pytest.raises(RecordError, match="not there any more"):
        Record.open(tmp_path / "gone" / "record.jsonl").append(entry())


def test_of_very_many_lines_that_cannot_be_read_the_rest_is_counted(record):
    record.path.write_bytes(b"no entry\n" * 500)
    told = Record.open(record.path).problems
    assert len(told) == 21
    assert told[-1].startswith("480 more lines")


def test_a_line_in_a_newer_form_is_kept_and_passed_by(record):
    record.append(entry(1.0))
    newer = encode_entry(entry(2.0)).replace(b'"format":1', b'"format":2')
    with record.path.open("ab") as file:
        file.write(newer + b"\n" + newer)
    again = Record.open(record.path)
    again.append(entry(3.0))
    assert masses(again) == [1.0, 3.0]
    assert record.path.read_bytes().split(b"\n").count(newer) == 2
    assert [line.form for line in again.lines] == [None, 2, 2, None]


def apart(tmp_path, record):
    """The other copy of a record, from the same lines on."""
    path = tmp_path / "elsewhere" / "record.jsonl"
    path.parent.mkdir()
    path.write_bytes(record.path.read_bytes() if record.path.exists() else b"")
    return Record.open(path)


def merged_both_ways(tmp_path, one, other):
    kept = tmp_path / "theirs.jsonl"
    kept.write_bytes(other.path.read_bytes())
    other.merge(one.path)
    one.merge(kept)


def test_two_copies_edited_apart_with_clocks_off_come_out_the_same_in_state_and_log(tmp_path, record):
    first = record.append(entry(1.0, at=at(10)))
    other = apart(tmp_path, record)
    mine = [record.append(entry(value, at=at(day))) for value, day in ((2.0, 20), (3.0, 1), (4.0, 15))]
    record.append(entry(1.5, at=at(2), replaces=first.id))
    record.append(new_entry("fill test", WITHDRAWAL, {"reason": "twice"}, replaces=mine[0].id, at=at(1)))
    theirs = [other.append(entry(value, at=at(day))) for value, day in ((5.0, 18), (6.0, 3), (7.0, 25))]
    other.append(entry(1.6, at=at(30), replaces=first.id))
    other.append(entry(5.5, at=at(1), replaces=theirs[0].id))
    merged_both_ways(tmp_path, record, other)
    assert [e.id for e in record.entries] == [e.id for e in other.entries]
    assert masses(record) == masses(other) == [1.6, 5.5, 6.0, 3.0, 4.0, 7.0]
    assert masses(Record.open(record.path)) == masses(Record.open(other.path)) == masses(record)
    before = record.path.read_bytes(), other.path.read_bytes()
    assert (record.merge(other.path).added, other.merge(record.path).added) == (0, 0)
    assert [e.id for e in record.entries] == [e.id for e in other.entries]
    assert record.path.read_bytes().startswith(before[0])
    assert other.path.read_bytes().startswith(before[1])


def test_what_is_entered_after_a_merge_comes_last_and_three_copies_agree(tmp_path, record):
    record.append(entry(1.0, at=at(10)))
    other = apart(tmp_path, record)
    third = apart(tmp_path / "elsewhere", record)
    record.append(entry(2.0, at=at(20)))
    other.append(entry(3.0, at=at(12)))
    third.append(entry(4.0, at=at(11)))
    record.merge(other.path)
    record.append(entry(5.0, at=at(1)))
    assert masses(record) == [1.0, 3.0, 2.0, 5.0]
    merged_both_ways(tmp_path, record, third)
    assert masses(record) == masses(third) == [1.0, 4.0, 3.0, 2.0, 5.0]
    other.merge(third.path)
    assert masses(other) == masses(record)


def test_a_merge_writes_only_behind_what_was_there_and_each_line_once(tmp_path, record):
    record.append(entry(1.0, at=at(1)))
    other = apart(tmp_path, record)
    record.append(entry(2.0, at=at(3)))
    theirs = other.append(entry(3.0, at=at(2)))
    before = record.path.read_bytes()
    report = record.merge(other.path)
    assert (report.added, report.there, report.aside, report.both) == (1, 1, "", True)
    assert record.path.read_bytes().startswith(before + encode_entry(theirs) + b"\n")
    assert len(record.path.read_bytes().splitlines()) == 4  # the fourth says the order
    assert len(record.entries) == 3


def test_two_merges_in_one_second_keep_what_both_set_aside(tmp_path, record):
    first = record.append(entry(1.0))
    for value in (b"8.0", b"9.0"):
        (tmp_path / "copy.jsonl").write_bytes(encode_entry(first).replace(b"1.0", value) + b"\n")
        record.merge(tmp_path / "copy.jsonl")
    aside = sorted(p.read_bytes() for p in tmp_path.glob("record-unlike-*.txt"))
    assert len(aside) == 2
    assert b"8.0" in aside[0]
    assert b"9.0" in aside[1]


def test_a_merge_that_cannot_be_written_takes_nothing(tmp_path, record, monkeypatch):
    record.append(entry(1.0))
    other = apart(tmp_path, record)
    other.append(entry(2.0))
    before = record.path.read_bytes()

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pentools.record.appending.os.write", full)
    with pytest.raises(RecordError, match="Nothing was taken over"):
        record.merge(other.path)
    assert record.path.read_bytes() == before
    assert masses(record) == [1.0]


def test_a_merge_with_itself_or_with_a_folder(record):
    record.append(entry(1.0))
    assert record.merge(record.path).there == 1
    with pytest.raises(RecordError, match="is a folder"):
        record.merge(record.path.parent)
