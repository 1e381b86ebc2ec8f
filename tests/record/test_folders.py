"""What lies on a bench is listed without opening it, and nothing odd that lies there stands in the way of the rest."""

import os

import pytest

from pentools.errors import RecordError
from pentools.record.bench import Bench
from pentools.record.folders import folders_on, is_there, jobs_on, links_on


def test_folders_that_hold_a_record_or_a_notebook_of_their_name_are_jobs(tmp_path):
    for name, file in (("b", "record.jsonl"), ("a", "a.ipynb"), ("c", "other.ipynb"), (".d", "record.jsonl")):
        (tmp_path / name).mkdir()
        (tmp_path / name / file).touch()
    (tmp_path / "e.jsonl").touch()
    (tmp_path / "round").symlink_to("round")
    (tmp_path / "elsewhere").symlink_to(tmp_path / "b")
    assert folders_on(Bench(tmp_path)) == ["a", "b", "c", "elsewhere"]
    assert jobs_on(Bench(tmp_path)) == ("a", "b", "elsewhere")
    assert links_on(Bench(tmp_path)) == {"round", "elsewhere"}


def test_a_bench_that_is_a_file_or_not_there_is_said(tmp_path):
    (tmp_path / "file").touch()
    for name in ("file", "none"):
        with pytest.raises(RecordError, match="cannot be looked into"):
            jobs_on(Bench(tmp_path / name))


def test_what_cannot_be_looked_at_is_there(tmp_path, monkeypatch):
    assert not is_there(str(tmp_path / "none"))

    def refused(_):
        raise PermissionError(13, "no")

    monkeypatch.setattr(os, "stat", refused)
    assert is_there(str(tmp_path / "none"))
