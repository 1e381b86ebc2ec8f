"""No more room: by a limit on the size of files, and on a small file system that is really full."""

import contextlib
import os
import shutil
import subprocess
import sys

import pytest

from pentools.errors import RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import create_job, job_in, start_job
from pentools.record.storage import Record
from pentools.writeup.write import write_pages


def entry(number, size=200):
    return new_entry("work log", "work", {"n": number, "did": "x" * size})


def fill_up(record, most=5000):
    """Append until there is no room; the ids that were acknowledged."""
    said, why = [], ""
    try:
        for number in range(most):
            said.append(record.append(entry(number)).id)
    except RecordError as error:
        why = str(error)
    assert "could not be written" in why
    assert "Nothing was saved" in why
    return said


@pytest.fixture
def small_files():
    """No file of this process may grow beyond 20,000 bytes."""
    resource = pytest.importorskip("resource", reason="this system has no limit on the size of files")
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, before[1]))
    yield
    resource.setrlimit(resource.RLIMIT_FSIZE, before)


def test_a_limit_on_the_size_of_files_loses_nothing_that_was_acknowledged(tmp_path, small_files):
    record = Record.open(tmp_path / "record.jsonl")
    said = fill_up(record)
    assert len(said) > 20
    assert [e.id for e in record.entries] == [e.id for e in Record.open(record.path).entries] == said
    assert Record.open(record.path).problems == []
    assert record.path.read_bytes().endswith(b"}\n")


@pytest.fixture
def disk(tmp_path):
    """A file system of 256 KiB."""
    place = tmp_path / "disk"
    place.mkdir()
    if sys.platform != "linux" or os.geteuid() != 0 or not shutil.which("mount"):
        pytest.skip("a small file system can be mounted on Linux by its administrator only")
    words = ["mount", "-t", "tmpfs", "-o", "size=256k,nr_inodes=64", "tmpfs", str(place)]
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.skip(f"a small file system cannot be mounted here: {done.stderr.strip()}")
    yield place
    subprocess.run(["umount", "-l", str(place)], check=True)


def leave(disk, room):
    """Fill the disk up but for about so many bytes."""
    with contextlib.suppress(OSError), (disk / "ballast").open("wb", buffering=0) as file:
        free = os.statvfs(disk)
        file.write(b"x" * max(free.f_bavail * free.f_frsize - room, 0))


def there(folder):
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*"))


def test_a_full_disk_loses_nothing_and_what_is_there_is_read(disk):
    job = create_job(open_bench_folder(disk / "bench", create=True), "pen-1")
    leave(disk, 40_000)
    said = fill_up(job.record)
    assert len(said) > 20
    with pytest.raises(RecordError, match="Nothing was saved"):
        job.add("intake", "arrival", {"pen": "a pen " * 1000})
    again = job_in(job.folder)
    assert [e.id for e in again.record.entries] == said
    assert again.record.problems == []
    (disk / "ballast").unlink()
    assert again.record.append(entry(0)).id in [e.id for e in Record.open(job.record.path).entries]


def test_a_torn_line_on_a_full_disk_is_read_past_and_kept(disk):
    job = create_job(open_bench_folder(disk / "bench", create=True), "pen-1")
    job.add("intake", "arrival", {"pen": "a pen"})
    with job.record.path.open("ab") as file:
        file.write(b'{"torn' + b"x" * 300)
    leave(disk, 0)
    content = job.record.path.read_bytes()
    again = job_in(job.folder)
    assert len(again.record.entries) == 1
    assert "torn off" in again.record.problems[0]
    with pytest.raises(RecordError, match="Nothing was saved"):
        again.add("intake", "arrival", {"pen": "another pen"})
    assert job.record.path.read_bytes() == content
    assert not list(job.folder.glob("record-torn-*"))


def test_a_new_job_on_a_full_disk_leaves_nothing_behind(disk):
    bench = open_bench_folder(disk / "bench", create=True)
    leave(disk, 4096)
    before = there(disk)
    with pytest.raises(RecordError, match=r"cannot be laid out .* Nothing of it was left behind"):
        create_job(bench, "pen-1")
    with pytest.raises(RecordError, match="cannot be laid out"):
        create_job(bench, "pen-2", sample="green-piston")
    assert there(disk) == before
    leave(disk, 0)
    with pytest.raises(RecordError):
        start_job(disk / "new-bench", "pen-1")
    assert there(disk) == before


def test_pages_and_merges_on_a_full_disk_are_refused_in_words(disk):
    job = create_job(open_bench_folder(disk / "bench", create=True), "pen-1")
    job.add("intake", "arrival", {"pen": "a pen"})
    other = disk / "copy.jsonl"
    with other.open("wb") as file:
        file.write(job.record.path.read_bytes())
    for number in range(20):
        Record.open(other).append(entry(number))
    leave(disk, 0)
    before, content = there(disk), job.record.path.read_bytes()
    with pytest.raises(RecordError, match="Nothing was taken over"):
        job.record.merge(other)
    with pytest.raises(RecordError, match="could not be written"):
        write_pages(job, ["letter"])
    assert there(disk) == before
    assert job.record.path.read_bytes() == content
