"""Folders and files that may only be read, or not even that: a sentence, and what can be read is shown."""

import os

import pytest

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job

NOBODY = 65534


@pytest.fixture
def job(tmp_path):
    if os.name != "posix":
        pytest.skip("this system keeps no such rights")
    job = create_job(open_bench_folder(tmp_path / "bench", create=True), "pen-1")
    create_job(job.bench, "pen-2").add("intake", "arrival", {"pen": "another pen"})
    job.add("intake", "arrival", {"pen": "a pen"})
    with job.record.path.open("ab") as file:
        file.write(b'{"torn')
    yield job
    for path in (job.folder, job.folder / "photos", job.folder / "writeup", job.record.path):
        path.chmod(0o700)


@pytest.fixture
def asked(job, capsys):
    """The command line, asked by somebody who is not the administrator, for whom rights count."""
    for words in (["check", "pen-2"], ["writeup", "pen-2", "--only", "letter"], ["check", "pen-2", "--mend"]):
        main([*words, "--bench", str(job.bench.folder)])  # loads what may not be open to others
    administrator = os.geteuid() == 0

    def ask(*words):
        capsys.readouterr()
        if administrator:
            give_to_nobody(job.bench.folder)
            os.setegid(NOBODY)
            os.seteuid(NOBODY)
        try:
            code = main([*words, "--bench", str(job.bench.folder)])
        finally:
            if administrator:
                os.seteuid(0)
                os.setegid(0)
        told = capsys.readouterr()
        assert "Traceback" not in told.err
        return code, told.out, told.err

    return ask


def give_to_nobody(folder):
    for path in (folder, *folder.rglob("*")):
        os.chown(path, NOBODY, NOBODY)
    for parent in folder.parents:
        if not parent.stat().st_mode & 0o001:
            parent.chmod(parent.stat().st_mode | 0o011)


def test_a_folder_that_may_only_be_read_is_checked_as_it_stands(job, asked):
    before = {
        path: path.read_bytes() for path in job.folder.rglob("*") if path.is_file() and path.name != ".record.lock"
    }
    job.folder.chmod(0o500)
    code, out, _ = asked("check", "pen-1")
    assert (code, "pen-1: 1 entry" in out, "torn off" in out) == (1, True, True)
    for command in (["merge", "pen-1", str(job.bench.folder / "pen-2" / "record.jsonl")], ["check", "pen-1", "--mend"]):
        code, _, err = asked(*command)
        assert (code, "cannot be written to" in err or "could not be" in err) == (3, True), err
    job.folder.chmod(0o700)
    assert {path: path.read_bytes() for path in before} == before
    assert not list(job.folder.glob("record-*.txt"))


def test_pages_of_a_job_that_may_only_be_read_are_refused_in_words(job, asked):
    (job.folder / "writeup").chmod(0o500)
    job.folder.chmod(0o500)
    code, _, err = asked("writeup", "pen-1", "--only", "letter")
    assert (code, "could not be written" in err) == (3, True), err


def test_a_record_that_cannot_be_read_is_said_and_hides_no_other_job(job, asked):
    job.record.path.chmod(0)
    code, _, err = asked("check", "pen-1")
    assert (code, "record.jsonl cannot be read (Permission denied)" in err) == (3, True), err
    code, out, _ = asked("check")
    assert code == 3
    assert "pen-1: cannot be read." in out
    assert "pen-2: 1 entry" in out


def test_a_job_folder_that_cannot_be_looked_into_hides_no_other_job(job, asked):
    job.folder.chmod(0)
    code, out, _ = asked("check", "--all")
    assert (code, "pen-1: cannot be read." in out, "pen-2: 1 entry" in out) == (3, True, True), out


def test_photos_and_bench_file_that_cannot_be_read_stand_in_nobodys_way(job, asked):
    (job.folder / "photos").chmod(0)
    (job.bench.folder / "bench.toml").chmod(0)
    code, out, _ = asked("check", "pen-1")
    assert (code, "bench.toml cannot be read (Permission denied)" in out, "1 entry" in out) == (1, True, True), out
