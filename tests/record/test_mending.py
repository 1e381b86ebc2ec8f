"""Mending: what cannot be read is set aside, all of it is kept, and what counts stays the same."""

import os

import pytest

from pentools.errors import RecordError
from pentools.record.entries import WITHDRAWAL, encode_entry, new_entry
from pentools.record.mending import mend, open_to_others
from pentools.record.storage import Record

NEWER = b'{"format":2,"id":"n"}'


@pytest.fixture
def job(new_job):
    job = new_job()
    consent = job.add("intake", "arrival", {"pen": "a pen"})
    with job.record.path.open("ab") as file:
        file.write(b"\xff\xfe\n" + NEWER + b'\n\n{"torn\r\n')
    job.record.append(new_entry("intake", WITHDRAWAL, {"reason": "another pen"}, replaces=consent.id))
    job.record.append(new_entry("future", "thing", {"x": 1}))
    job.record.append(new_entry("intake", "arrival", {"pen": 7}))
    with job.record.path.open("ab") as file:
        file.write(b"{torn too")
    return job


def test_only_what_cannot_be_read_goes_and_nothing_is_lost(job):
    before, live = job.record.path.read_bytes(), job.record.live()
    done = mend(job.record, job.folder)
    assert done.lines == (2, 5, 9)
    assert (job.folder / done.aside).read_bytes() == b'\xff\xfe\n{"torn\n{torn too\n'
    assert (job.folder / done.kept).read_bytes() == before
    again = Record.open(job.record.path)
    assert again.live() == live
    assert again.problems == []
    assert NEWER in job.record.path.read_bytes().split(b"\n")
    assert mend(again, job.folder).lines == ()


@pytest.mark.skipif(not hasattr(os, "link"), reason="this system has no second name for a file")
def test_the_record_is_written_beside_and_put_in_its_place_never_over(job, tmp_path):
    before = job.record.path.read_bytes()
    os.link(job.record.path, tmp_path / "the same file")
    mend(job.record, job.folder)
    assert (tmp_path / "the same file").read_bytes() == before != job.record.path.read_bytes()


def test_a_notebook_that_is_open_goes_on_with_the_mended_record(job):
    open_one = Record.open(job.record.path)
    mend(job.record, job.folder)
    open_one.append(new_entry("limits", "limit", {}))
    assert len(Record.open(job.record.path).entries) == len(open_one.entries) == 5


def test_a_sound_record_is_not_touched(new_job):
    job = new_job()
    assert mend(job.record, job.folder).lines == ()
    job.add("intake", "arrival", {"pen": "a pen"})
    marks = b"\xef\xbb\xbf"  # a line behind them is read, and one of nothing else is blank
    job.record.path.write_bytes(marks * 2 + job.record.path.read_bytes() + marks + b"\n")
    stamp = job.record.path.stat().st_mtime_ns
    assert mend(job.record, job.folder).kept == ""
    assert job.record.path.stat().st_mtime_ns == stamp
    assert sorted(p.name for p in job.folder.glob("record*")) == ["record.jsonl"]


def test_on_a_full_disk_the_record_is_as_it_was(job, monkeypatch):
    before = job.record.path.read_bytes()

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pentools.record.appending.os.write", full)
    with pytest.raises(RecordError, match="The record is as it was"):
        mend(job.record, job.folder)
    assert job.record.path.read_bytes() == before
    assert sorted(p.name for p in job.folder.glob("*record*")) == [".record.lock", "record.jsonl"]


@pytest.mark.skipif(os.name != "posix", reason="this system keeps no such rights")
def test_rights_are_noted_where_others_can_get_in_and_made_private(new_job, monkeypatch):
    job = new_job()
    job.record.append(new_entry("limits", "limit", {}))
    assert open_to_others(job.record, job.folder) == ()
    job.folder.chmod(0o755)
    job.record.path.chmod(0o644)
    # the tests' own folder lets nobody else in, so that what lies in it is private all the same
    above = [p for p in job.folder.resolve().parents if not p.stat().st_mode & 0o011]
    assert (open_to_others(job.record, job.folder) == ()) == bool(above)
    monkeypatch.setattr("pentools.record.mending._let_in", lambda _: True)
    assert open_to_others(job.record, job.folder) == (job.folder, job.record.path)
    assert mend(job.record, job.folder).tightened == (f"{job.name}/", "record.jsonl")
    assert [p.stat().st_mode & 0o777 for p in (job.folder, job.record.path)] == [0o700, 0o600]
    assert open_to_others(job.record, job.folder) == ()


def test_the_name_of_what_is_kept_is_not_taken_for_a_copy(job):
    done = mend(job.record, job.folder)
    assert done.kept.startswith("record-before-")
    assert done.kept.endswith(".txt")
    assert encode_entry(job.record.entries[0]) in (job.folder / done.kept).read_bytes()
