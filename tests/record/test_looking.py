"""Looking at what lies there: a sentence for what is no file or cannot be read, and nothing is written."""

import os

import pytest

from pentools.errors import RecordError
from pentools.record.looking import bytes_of, folder_of, read_file, stamp_of


def test_what_changed_has_another_stamp(tmp_path):
    path = tmp_path / "record.jsonl"
    assert stamp_of(path) is None
    path.write_bytes(b"one")
    first = stamp_of(path)
    assert stamp_of(path) == first == read_file(path)[1]
    other = tmp_path / "other"
    other.write_bytes(b"two")
    os.utime(other, ns=(path.stat().st_atime_ns, path.stat().st_mtime_ns))
    other.replace(path)
    assert stamp_of(path) != first


def test_what_is_no_file_is_said(tmp_path):
    with pytest.raises(RecordError, match="is no file"):
        stamp_of(tmp_path)
    with pytest.raises(RecordError, match=r"is a folder. Name the copy"):
        bytes_of(tmp_path)
    with pytest.raises(RecordError, match="cannot be read"):
        bytes_of(tmp_path / "not there")
    assert stamp_of(tmp_path / "not there" / "record.jsonl") is None
    assert folder_of(tmp_path / "not there" / "record.jsonl") is None
    assert folder_of(tmp_path / "a") == folder_of(tmp_path / "b") is not None
