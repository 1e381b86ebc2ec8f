"""Stopped at every single step of a save, a merge and a mending, by a kill and by a power cut: nothing acknowledged is lost."""

import itertools
import os

import pytest
from faults.power import Machine

from pentools.record.entries import encode_entry, new_entry
from pentools.record.mending import mend
from pentools.record.storage import Record

STEPS_AT_MOST = 40


def entry(value):
    return new_entry("fill test", "weighing", {"n": value})


def begun(folder, *tail):
    """A record of three acknowledged entries, perhaps with a torn last line."""
    folder.mkdir()
    record = Record.open(folder / "record.jsonl")
    for value in range(3):
        record.append(entry(value))
    with record.path.open("ab") as file:
        file.write(b"".join(tail))
    return record


def everything(folder):
    """All bytes that lie in a folder, in whatever file."""
    return b"\n".join(path.read_bytes() for path in folder.iterdir())


@pytest.mark.parametrize("power", [True, False], ids=["power cut", "kill"])
@pytest.mark.parametrize("tail", [b"", b'{"torn'], ids=["sound", "torn"])
def test_a_save_stopped_anywhere(tmp_path, monkeypatch, tail, power):
    for stop in itertools.count(1):
        folder = tmp_path / str(stop)
        record = begun(folder, tail)
        said = [e.id for e in record.entries]
        machine = Machine(monkeypatch, folder)
        done = machine.run(lambda record=record: record.append(entry(9)), stop)
        if power:
            machine.lose_what_was_not_forced()
        monkeypatch.undo()
        ids = [e.id for e in Record.open(record.path).entries]
        assert ids[:3] == said, f"step {stop}"
        assert len(ids) == 4 or not done, "an acknowledged entry is lost"
        assert tail in everything(folder), f"the torn piece is lost at step {stop}"
        again = Record.open(record.path)
        after = again.append(entry(10))
        assert [e.id for e in Record.open(record.path).entries] == [*ids, after.id]
        assert Record.open(record.path).problems == []
        if done:
            break
    assert 2 <= stop <= STEPS_AT_MOST


@pytest.mark.parametrize("power", [True, False], ids=["power cut", "kill"])
def test_the_first_save_of_a_job_stopped_anywhere(tmp_path, monkeypatch, power):
    for stop in itertools.count(1):
        folder = tmp_path / str(stop)
        folder.mkdir()
        machine = Machine(monkeypatch, folder)
        done = machine.run(lambda folder=folder: Record.open(folder / "record.jsonl").append(entry(1)), stop)
        if power:
            machine.lose_what_was_not_forced()
        monkeypatch.undo()
        record = Record.open(folder / "record.jsonl")
        assert len(record.entries) == 1 or not done
        record.append(entry(2))
        assert len(Record.open(record.path).entries) == len(record.entries)
        if done:
            break
    assert 3 <= stop <= STEPS_AT_MOST


@pytest.mark.parametrize("power", [True, False], ids=["power cut", "kill"])
def test_a_merge_stopped_anywhere_can_be_done_again(tmp_path, monkeypatch, power):
    for stop in itertools.count(1):
        folder = tmp_path / str(stop)
        record = begun(folder)
        said = [e.id for e in record.entries]
        unlike = encode_entry(record.entries[0]).replace(b'"n":0', b'"n":7')
        theirs = [encode_entry(entry(value)) for value in range(5)]
        other = folder / "copy.jsonl"
        other.write_bytes(b"\n".join([unlike, b"cannot be read", *theirs]))
        machine = Machine(monkeypatch, folder)
        done = machine.run(lambda record=record, other=other: record.merge(other), stop)
        if power:
            machine.lose_what_was_not_forced()
        monkeypatch.undo()
        again = Record.open(record.path)
        assert [e.id for e in again.entries if e.id in said] == said
        again.merge(other)
        assert len(Record.open(record.path).entries) == 8
        aside = b"".join(path.read_bytes() for path in folder.glob("record-unlike-*.txt"))
        assert unlike in aside
        assert b"cannot be read" in aside
        if done:
            break
    assert 4 <= stop <= STEPS_AT_MOST


@pytest.mark.parametrize("power", [True, False], ids=["power cut", "kill"])
def test_a_mending_stopped_anywhere_loses_nothing(tmp_path, monkeypatch, power):
    for stop in itertools.count(1):
        folder = tmp_path / str(stop)
        record = begun(folder, b"cannot be read\n", encode_entry(entry(4)), b"\n")
        machine = Machine(monkeypatch, folder)
        done = machine.run(lambda record=record, folder=folder: mend(record, folder), stop)
        if power:
            machine.lose_what_was_not_forced()
        monkeypatch.undo()
        assert b"cannot be read" in everything(folder)
        assert len(Record.open(record.path).entries) == 4
        mend(Record.open(record.path), folder)
        assert Record.open(record.path).problems == []
        assert len(Record.open(record.path).entries) == 4
        if done:
            break
    assert 4 <= stop <= STEPS_AT_MOST


def test_the_machine_stops_and_loses_what_was_not_forced(tmp_path, monkeypatch):
    path = tmp_path / "file"
    path.write_bytes(b"old")
    machine = Machine(monkeypatch, tmp_path)

    def save(force):
        handle = os.open(path, os.O_WRONLY | os.O_APPEND)
        os.write(handle, b"-new")
        if force:
            os.fsync(handle)
        os.close(handle)

    assert machine.run(lambda: save(False))
    machine.lose_what_was_not_forced()
    assert path.read_bytes() == b"old"
    assert machine.run(lambda: save(True))
    machine.lose_what_was_not_forced()
    assert path.read_bytes() == b"old-new"
    assert not machine.run(lambda: save(True), 1)
    assert path.read_bytes() == b"old-new-n"
