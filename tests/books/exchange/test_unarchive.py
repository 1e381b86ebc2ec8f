"""An archive comes back byte for byte; one that is damaged, foreign or meant ill is refused, and nothing is half-laid."""

import hashlib
import json
import shutil
import stat
import zipfile

import pytest

from pentools.books.exchange import unarchive
from pentools.books.exchange.archive import MANIFEST, archive_job
from pentools.books.exchange.unarchive import unarchive_job
from pentools.errors import InputError, PentoolsError, RecordError
from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, open_job

RECORD = b'{"id":"a1","at":"2026-03-14T10:00:00+01:00","stage":"work log","kind":"note","data":{"note":"x"}}\n'


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """An archive of a sample, and what was in its folder."""
    place = tmp_path_factory.mktemp("whole")
    job = create_job(open_bench_folder(place / "bench", create=True), "lever", sample="lever-back-again")
    archive_job(job, place / "lever.zip")
    return place / "lever.zip", contents(job.folder)


@pytest.fixture
def bench(tmp_path):
    return open_bench_folder(tmp_path / "here", create=True)


def contents(folder):
    return {
        p.relative_to(folder).as_posix(): p.read_bytes()
        for p in folder.rglob("*")
        if p.is_file() and not p.name.startswith(".")
    }


def nothing_laid(bench):
    return [p.name for p in bench.folder.iterdir()] == ["bench.toml"]


def made(path, files, *, job="pen", manifest=None, members=()):
    """A zip by hand: files with their names in the job, a manifest that fits unless given, and members as they come."""
    lines = [{"path": n, "bytes": len(c), "sha256": hashlib.sha256(c).hexdigest()} for n, c in files.items()]
    told = {"form": 1, "kit": "0", "job": job, "made_at": "2026-03-14T10:00:00+01:00", "files": lines}
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as zipped:
        for name, content in files.items():
            zipped.writestr(f"{job}/{name}", content)
        for member, content in members:
            zipped.writestr(member, content)
        if manifest is not False:
            zipped.writestr(MANIFEST, json.dumps(told | (manifest or {})))
    return path


def test_a_round_trip_gives_the_same_bytes(whole, bench):
    path, own = whole
    opened = unarchive_job(bench, path)
    assert opened.laid
    assert opened.folder == bench.folder / "lever"
    assert contents(opened.folder) == own
    assert len(open_job("lever", bench=bench).record.entries) == 17
    assert [p.name for p in sorted(bench.folder.iterdir())] == ["bench.toml", "lever"]
    assert stat.S_IMODE((opened.folder / "record.jsonl").stat().st_mode) == 0o600


def test_a_torn_and_odd_record_comes_back_as_it_was(tmp_path, bench):
    first = open_bench_folder(tmp_path / "there", create=True)
    job = create_job(first, "torn")
    (job.folder / "record.jsonl").write_bytes(RECORD + b"no line\n" + RECORD[:40])
    archive_job(job, tmp_path / "torn.zip")
    opened = unarchive_job(bench, tmp_path / "torn.zip")
    assert (opened.folder / "record.jsonl").read_bytes() == RECORD + b"no line\n" + RECORD[:40]


def test_the_same_again_changes_nothing_and_another_of_that_name_is_never_overwritten(whole, bench):
    path, own = whole
    unarchive_job(bench, path)
    assert not unarchive_job(bench, path).laid
    with (bench.folder / "lever" / "record.jsonl").open("ab") as file:
        file.write(RECORD)
    with pytest.raises(RecordError, match=r"already a job lever.*--as NAME.*--merge"):
        unarchive_job(bench, path)
    assert contents(bench.folder / "lever")["record.jsonl"] == own["record.jsonl"] + RECORD
    opened = unarchive_job(bench, path, name="lever-2")
    assert opened.folder.name == "lever-2"
    assert (opened.folder / "lever-2.ipynb").read_bytes() == own["lever.ipynb"]
    assert not [p for p in bench.folder.iterdir() if p.name.startswith(".")]


def test_a_zip_made_by_hand_as_the_format_says_opens(tmp_path, bench):
    opened = unarchive_job(bench, made(tmp_path / "a.zip", {"record.jsonl": RECORD, "photos/a b.jpg": b"jpg"}))
    assert contents(opened.folder) == {"record.jsonl": RECORD, "photos/a b.jpg": b"jpg"}
    with_folders = made(
        tmp_path / "b.zip", {"record.jsonl": RECORD}, job="other", members=[("other/", b""), ("other/photos/", b"")]
    )
    assert unarchive_job(bench, with_folders).laid


EVIL = [
    "../evil.txt",
    "pen/../../evil.txt",
    "/tmp/evil.txt",
    "C:/evil.txt",
    "c:evil.txt",
    "pen\\..\\..\\evil.txt",
    "pen/photos/nul.jpg",
    "pen/x.jpg:stream",
    "pen/.record.lock",
    "pen/a/b/c/d/e/f/g/h/i.txt",
    "pen/x\u202e.txt",
]


@pytest.mark.parametrize("name", EVIL)
@pytest.mark.parametrize("listed", [True, False])
def test_a_name_that_leads_elsewhere_is_refused(tmp_path, bench, name, listed):
    content = b"evil"
    line = {"path": name.removeprefix("pen/"), "bytes": 4, "sha256": hashlib.sha256(content).hexdigest()}
    path = tmp_path / "a.zip"
    record = {"path": "record.jsonl", "bytes": len(RECORD), "sha256": hashlib.sha256(RECORD).hexdigest()}
    made(
        path,
        {"record.jsonl": RECORD},
        manifest={"files": [record, line] if listed else [record]},
        members=[(zipfile.ZipInfo(name), content)],
    )
    with pytest.raises(RecordError, match="cannot be taken"):
        unarchive_job(bench, path)
    assert nothing_laid(bench)
    assert not list(tmp_path.rglob("*evil*"))


def test_links_devices_passwords_and_other_packings_are_refused(tmp_path, bench):
    link = zipfile.ZipInfo("pen/photos/a.jpg")
    link.external_attr = (stat.S_IFLNK | 0o777) << 16
    device = zipfile.ZipInfo("pen/photos/b.jpg")
    device.external_attr = (stat.S_IFCHR | 0o600) << 16
    other = zipfile.ZipInfo("pen/photos/c.jpg")
    other.compress_type = zipfile.ZIP_LZMA
    for member, why in ((link, "link or a device"), (device, "link or a device"), (other, "packed in a way")):
        path = made(tmp_path / "a.zip", {"record.jsonl": RECORD}, members=[(member, b"../../../etc/passwd")])
        with pytest.raises(RecordError, match=why):
            unarchive_job(bench, path)
        assert nothing_laid(bench)
    path = made(tmp_path / "a.zip", {"record.jsonl": RECORD})
    content = bytearray(path.read_bytes())
    at = content.index(b"PK\x01\x02")
    content[at + 8] |= 1
    path.write_bytes(content)
    with pytest.raises(RecordError, match="locked with a password"):
        unarchive_job(bench, path)
    assert nothing_laid(bench)


@pytest.mark.parametrize(
    ("one", "two"),
    [("photos/a.jpg", "photos/A.jpg"), ("photos/\u00e9.jpg", "photos/e\u0301.jpg"), ("Photos/a.jpg", "photos/b.jpg")],
)
def test_doubles_are_refused(tmp_path, bench, one, two):
    with pytest.raises(RecordError, match="one file twice"):
        unarchive_job(bench, made(tmp_path / "a.zip", {"record.jsonl": RECORD, one: b"1", two: b"2"}))
    assert nothing_laid(bench)


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_one_name_twice_is_refused(tmp_path, bench):
    path = made(tmp_path / "a.zip", {"record.jsonl": RECORD}, members=[("pen/record.jsonl", RECORD)])
    with pytest.raises(RecordError, match="one file twice"):
        unarchive_job(bench, path)
    assert nothing_laid(bench)


def test_bombs_are_refused_before_and_while_they_unpack(tmp_path, bench, monkeypatch):
    zeros = b"\0" * (9 << 20)
    with pytest.raises(RecordError, match="200 times its size"):
        unarchive_job(bench, made(tmp_path / "a.zip", {"record.jsonl": RECORD, "photos/a.bmp": zeros}))
    monkeypatch.setattr(unarchive, "MOST_BYTES", 1000)
    with pytest.raises(RecordError, match="unpacks to"):
        unarchive_job(bench, made(tmp_path / "b.zip", {"record.jsonl": RECORD, "photos/a.bmp": b"x" * 1001}))
    monkeypatch.setattr(unarchive, "MOST_FILES", 5)
    with pytest.raises(RecordError, match="at most 5"):
        unarchive_job(
            bench, made(tmp_path / "c.zip", {"record.jsonl": RECORD} | {f"photos/{n}.jpg": b"" for n in range(9)})
        )
    assert nothing_laid(bench)


def test_a_size_that_the_zip_lies_about_is_found(tmp_path, bench):
    path = made(tmp_path / "a.zip", {"record.jsonl": RECORD, "photos/a.bmp": b"y" * 5000})
    content = path.read_bytes()
    lied = content.replace((5000).to_bytes(4, "little"), (50).to_bytes(4, "little"))
    path.write_bytes(lied)
    with pytest.raises(RecordError):
        unarchive_job(bench, path)
    assert nothing_laid(bench)


@pytest.mark.parametrize(
    ("manifest", "why"),
    [
        (False, "no archive of a job"),
        ({"form": 2}, "form 2.*newer"),
        ({"form": "x"}, "no archive of a job"),
        ({"job": "../up"}, "no archive of a job"),
        ({"job": "CON"}, "no archive of a job"),
        ({"job": "another"}, "not in its manifest"),
        ({"files": []}, "not in its manifest"),
        ({"files": [{"path": "record.jsonl", "bytes": len(RECORD), "sha256": "0" * 64}]}, "SHA-256 differs"),
        ({"files": [{"path": "record.jsonl", "bytes": 3, "sha256": hashlib.sha256(RECORD[:3]).hexdigest()}]}, "SHA-256 differs"),
        ({"files": [{"path": "record.jsonl", "bytes": len(RECORD)}]}, "no archive of a job"),
        ({"files": [{"path": "record.jsonl", "bytes": 1, "sha256": ""}, {"path": "gone.jpg", "bytes": 1, "sha256": ""}]}, "“gone.jpg” is missing"),
    ],
)  # fmt: skip
def test_a_manifest_that_does_not_fit_is_refused(tmp_path, bench, manifest, why):
    with pytest.raises(RecordError, match=why):
        unarchive_job(bench, made(tmp_path / "a.zip", {"record.jsonl": RECORD}, manifest=manifest))
    assert nothing_laid(bench)


def test_what_is_no_job_is_refused(tmp_path, bench):
    with pytest.raises(RecordError, match="neither a record nor a notebook"):
        unarchive_job(bench, made(tmp_path / "a.zip", {"photos/a.jpg": b"x"}))
    (tmp_path / "b.zip").write_text("no zip at all")
    with pytest.raises(RecordError, match="no sound zip"):
        unarchive_job(bench, tmp_path / "b.zip")
    with pytest.raises(RecordError, match="could not be opened"):
        unarchive_job(bench, tmp_path / "not-there.zip")
    assert nothing_laid(bench)


def test_every_cut_and_every_flipped_byte_is_noticed_or_harmless(whole, bench):
    """A damaged archive never lays anything else than what went in."""
    path, own = whole
    content = path.read_bytes()
    worse = bench.folder.parent / "worse.zip"
    step = len(content) // 60
    for at in range(7, len(content), step):
        for spoilt in (content[:at], content[:at] + bytes([content[at] ^ 0x55]) + content[at + 1 :]):
            worse.write_bytes(spoilt)
            try:
                opened = unarchive_job(bench, worse)
            except PentoolsError:
                assert nothing_laid(bench)
            else:
                assert contents(opened.folder) == own
                shutil.rmtree(opened.folder)


def test_a_full_disk_leaves_nothing_behind(whole, bench, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(unarchive.os, "fsync", full)
    with pytest.raises(RecordError, match="No space left"):
        unarchive_job(bench, whole[0])
    assert nothing_laid(bench)


def test_a_name_here_that_cannot_be_one_is_refused(whole, bench):
    with pytest.raises(InputError, match="job name"):
        unarchive_job(bench, whole[0], name="../up")
    assert nothing_laid(bench)
