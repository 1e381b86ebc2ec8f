"""A job goes into one zip with all that is its own, and nothing is written over or left half-made."""

import hashlib
import json
import zipfile

import pytest

from pentools.books.exchange.archive import MANIFEST, archive_job
from pentools.books.exchange.unarchive import unarchive_job
from pentools.errors import InputError, RecordError
from pentools.record.appending import locked
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    return create_job(open_bench_folder(tmp_path / "bench", create=True), "lever", sample="lever-back-again")


def contents(folder):
    return {
        p.relative_to(folder).as_posix(): p.read_bytes()
        for p in folder.rglob("*")
        if p.is_file() and not p.name.startswith(".")
    }


def test_every_file_goes_in_with_its_length_and_its_checksum(job, tmp_path):
    (job.folder / "writeup").mkdir(exist_ok=True)
    (job.folder / "writeup" / "letter.html").write_text("sent")
    done = archive_job(job, tmp_path / "out.zip")
    own = contents(job.folder)
    assert {line.path: (line.bytes, line.sha256) for line in done.manifest.files} == {
        name: (len(content), hashlib.sha256(content).hexdigest()) for name, content in own.items()
    }
    with zipfile.ZipFile(tmp_path / "out.zip") as zipped:
        assert zipped.testzip() is None
        told = json.loads(zipped.read(MANIFEST))
        assert {key: told[key] for key in ("form", "job", "kit")} == {
            "form": 1,
            "job": "lever",
            "kit": done.manifest.kit,
        }
        assert {name: zipped.read(f"lever/{name}") for name in own} == own
    assert (tmp_path / "out.zip").stat().st_mode & 0o77 == 0


def test_pages_hidden_files_and_links_stay_out(job, tmp_path):
    (job.folder / "writeup" / "letter.html").write_text("sent")
    (job.folder / ".ipynb_checkpoints").mkdir()
    (job.folder / ".ipynb_checkpoints" / "x.ipynb").write_text("{}")
    (tmp_path / "secret").write_text("not the job's")
    (job.folder / "photos" / "link.jpg").symlink_to(tmp_path / "secret")
    (job.folder / "elsewhere").symlink_to(tmp_path)
    done = archive_job(job, tmp_path / "out.zip", pages=False)
    assert not [
        line.path
        for line in done.manifest.files
        if line.path.startswith(("writeup", ".ipynb", "photos/link", "elsewhere"))
    ]
    assert {"writeup/", "photos/link.jpg", ".ipynb_checkpoints/"} <= set(done.left_out)
    assert [name for name in done.left_out if name.startswith("elsewhere")]


@pytest.mark.parametrize("name", ["out.tar", "there.zip", "no/such/out.zip", "bench/lever/out.zip"])
def test_a_target_that_cannot_be_used_is_said(job, tmp_path, name):
    (tmp_path / "there.zip").write_text("mine")
    with pytest.raises(InputError, match="archive must be"):
        archive_job(job, tmp_path / name)
    assert (tmp_path / "there.zip").read_text() == "mine"
    assert sorted(p.name for p in tmp_path.iterdir()) == ["bench", "there.zip"]


@pytest.mark.parametrize(
    ("name", "why"),
    [("photos/con.jpg", "device"), ("photos/a:b.jpg", "one of"), ("photos/SIDE-BEFORE.jpg", "one file")],
)
def test_a_name_that_would_not_open_elsewhere_is_said_before_it_is_packed(job, tmp_path, name, why):
    (job.folder / name).write_bytes(b"x")
    with pytest.raises(RecordError, match=why):
        archive_job(job, tmp_path / "out.zip")
    assert [p.name for p in tmp_path.iterdir()] == ["bench"]


def test_a_file_that_cannot_be_read_leaves_nothing_behind(job, tmp_path, monkeypatch):
    def broken(*_, **__):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pentools.books.exchange.archive._fill", broken)
    with pytest.raises(RecordError, match="No space left"):
        archive_job(job, tmp_path / "out.zip")
    assert [p.name for p in tmp_path.iterdir()] == ["bench"]


def test_what_does_not_come_out_as_it_went_in_is_not_kept(job, tmp_path, monkeypatch):
    from pentools.books.exchange import archive

    real = archive._fill

    def spoilt(fresh, job, names):
        manifest = real(fresh, job, names)
        content = fresh.read_bytes()
        at = content.index(b"JFIF")
        fresh.write_bytes(content[:at] + b"JFIX" + content[at + 4 :])
        return manifest

    monkeypatch.setattr(archive, "_fill", spoilt)
    with pytest.raises((RecordError, zipfile.BadZipFile)):
        archive_job(job, tmp_path / "out.zip")
    assert [p.name for p in tmp_path.iterdir()] == ["bench"]


def test_a_job_without_a_record_yet_goes_out_and_comes_back(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    archive_job(create_job(bench, "fresh"), tmp_path / "out.zip")
    opened = unarchive_job(open_bench_folder(tmp_path / "other", create=True), tmp_path / "out.zip")
    assert contents(opened.folder) == contents(bench.folder / "fresh")


def test_it_waits_for_whoever_is_writing_in_the_record(job, tmp_path, monkeypatch):
    monkeypatch.setattr("pentools.books.exchange.archive.LOCK_SECONDS", 0.1)
    with locked(job.record.path, 1.0), pytest.raises(RecordError, match="held the lock"):
        archive_job(job, tmp_path / "out.zip")
    assert [p.name for p in tmp_path.iterdir()] == ["bench"]
    archive_job(job, tmp_path / "out.zip")
