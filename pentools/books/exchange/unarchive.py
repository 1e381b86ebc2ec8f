"""An archived job opened again: everything in the zip is doubted until it is what its manifest says, and laid in one step."""

from __future__ import annotations

import contextlib
import hashlib
import os
import shutil
import stat
import tempfile
import zipfile
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

import msgspec

from pentools.books.exchange.archive import ARCHIVE_FORM, CHUNK, MANIFEST, FileLine, Manifest, files_of
from pentools.books.exchange.safe_paths import doubles, fault_of
from pentools.books.exchange.uniting_job import Taken, take_over
from pentools.errors import InputError, RecordError
from pentools.record.appending import PRIVATE_FILE, sync_folder, what_failed
from pentools.record.bench import Bench, check_job_name
from pentools.record.job import job_folder, open_job
from pentools.record.layout import PARTS, RECORD_NAME
from pentools.record.storage import Record

__all__ = ["MOST_BYTES", "MOST_FILES", "MOST_TIMES", "Opened", "laid_out", "merge_archive", "unarchive_job", "unpacked"]

MOST_BYTES = 2 << 30
"""All files of a job together [bytes], unpacked (judged: some hundred pictures)."""
MOST_FILES = 5_000
MOST_TIMES = 200
"""How many times its size in the zip a file may be (judged: records come to 10, drawn scans to 50)."""
FREE_BYTES = 8 << 20
"""A file up to this [bytes] may be packed as tight as it will."""
MOST_MANIFEST = 4 << 20
_METHODS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)
_FOREIGN = "is no archive of a job: pentools archive makes one."
_BROKEN = (
    zipfile.BadZipFile,
    zipfile.LargeZipFile,
    zlib.error,
    EOFError,
    NotImplementedError,
    RuntimeError,
    ValueError,
)


@dataclass(frozen=True, slots=True)
class Opened:
    """What came of an archive.

    Parameters
    ----------
    folder : Path
        The job's folder.
    manifest : Manifest
        What was in the zip.
    laid : bool
        Whether the job was laid on the bench; False where it was there already, with the same content.
    """

    folder: Path
    manifest: Manifest
    laid: bool


def unarchive_job(bench: Bench, source: str | os.PathLike[str], *, name: str = "") -> Opened:
    """Lay an archived job on a bench.

    Parameters
    ----------
    source : path
        The zip.
    name : str
        What the job is to be called here; as in the archive by default. Its notebook takes the name too.

    Returns
    -------
    Opened
        Where it lies.

    Raises
    ------
    InputError
        If the name cannot be used.
    RecordError
        If the zip is none of a job, is damaged, or holds what it should not; or if a job of that name is there with
        other content. Nothing is changed then.
    """
    with unpacked(bench, source) as (work, manifest):
        called = check_job_name(name or manifest.job)
        folder = job_folder(bench, called)
        if folder.exists():
            if name == "" and _as_there(folder, manifest):
                return Opened(folder, manifest, laid=False)
            raise RecordError(
                f"There is already a job {called} in {bench.folder}, and it is not the same. Lay the archived one beside it under "
                f"another name (--as NAME), or take its entries and pictures over (--merge)."
            )
        laid_out(work, folder, was=manifest.job)
    return Opened(folder, manifest, laid=True)


def merge_archive(bench: Bench, source: str | os.PathLike[str]) -> tuple[str, Taken]:
    """Take the entries and pictures of an archived job over into the job of its name.

    Parameters
    ----------
    source : path
        The zip.

    Returns
    -------
    name : str
        The job's name.
    taken : Taken
        What was taken over.

    Raises
    ------
    RecordError
        As `unarchive_job`; or if there is no job of that name here, or it shares no entry with the archived one.
    """
    with unpacked(bench, source) as (work, manifest):
        job = open_job(manifest.job, bench=bench)
        mine = {line.id for line in job.record.lines}
        theirs = {line.id for line in Record.open(work / RECORD_NAME).lines}
        if mine and theirs and not mine & theirs:
            raise RecordError(
                f"The job {job.name} here shares no entry with the archived one: it is another pen. Lay that under another "
                "name: --as NAME."
            )
        return job.name, take_over(job, work, was=manifest.job)


def laid_out(work: Path, folder: Path, *, was: str) -> None:
    """Give an unpacked job its place and its name, in one step.

    Raises
    ------
    RecordError
        If that fails; nothing is left behind then.
    """
    try:
        notebook = work / f"{was}.ipynb"
        if folder.name != was and notebook.is_file():
            notebook.rename(work / f"{folder.name}.ipynb")
        for part in PARTS:
            (work / part).mkdir(exist_ok=True)
        work.rename(folder)
    except OSError as error:
        raise RecordError(f"The job could not be laid in {folder} ({what_failed(error)}).") from error
    sync_folder(folder.parent)


@contextlib.contextmanager
def unpacked(bench: Bench, source: str | os.PathLike[str]) -> Iterator[tuple[Path, Manifest]]:
    """An archive's files in a folder of their own beside the jobs, every one of them checked; it goes at the end.

    Raises
    ------
    RecordError
        As `unarchive_job`.
    """
    path = Path(source).expanduser()
    work = None
    try:
        with path.open("rb") as file, _opened(file, path.name) as zipped:
            manifest, members = _checked(zipped, path.name)
            bench.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            work = Path(tempfile.mkdtemp(prefix=".new-job-", dir=bench.folder))
            for line in manifest.files:
                _unpack(zipped, members[line.path], line, work, path.name)
        yield work, manifest
    except OSError as error:
        raise RecordError(
            f"{path} could not be opened ({what_failed(error)}). Nothing was laid on the bench."
        ) from error
    finally:
        if work is not None:
            shutil.rmtree(work, ignore_errors=True)


@contextlib.contextmanager
def _opened(file: object, name: str) -> Iterator[zipfile.ZipFile]:
    """The zip; whatever is damaged in it is said in a sentence."""
    try:
        with zipfile.ZipFile(file) as zipped:  # type: ignore[call-overload]
            yield zipped
    except PermissionError:
        raise
    except _BROKEN as error:
        if isinstance(error, InputError):
            raise
        raise RecordError(f"{name} is no sound zip ({str(error).rstrip('.') or type(error).__name__}). Nothing was laid on the bench.") from error  # fmt: skip


def _checked(zipped: zipfile.ZipFile, name: str) -> tuple[Manifest, Mapping[str, zipfile.ZipInfo]]:
    """What the manifest says, and the members by their names in the job, once they agree and none is one to refuse."""
    members = zipped.infolist()
    if len(members) > MOST_FILES:
        raise RecordError(
            f"{name} holds {len(members):,} files; a job’s archive has at most {MOST_FILES:,}. It was not opened."
        )
    _refuse_members(members, name)
    manifest = _manifest(zipped, name)
    stem = f"{manifest.job}/"
    found = {m.filename.removeprefix(stem): m for m in members if not m.is_dir() and m.filename != MANIFEST}
    strange = [m.filename for m in members if m.filename != MANIFEST and not m.filename.startswith(stem)]
    told = [line.path for line in manifest.files]
    if strange or set(found) != set(told) or len(told) != len(set(told)):
        missing, more = sorted(set(told) - set(found)), sorted({*strange, *(set(found) - set(told))})
        said = [f"“{missing[0]}” is missing"] if missing else []
        said += [f"“{more[0]}” is not in its manifest"] if more else []
        raise RecordError(
            f"{name} is not whole: {' and '.join(said) or 'its manifest names a file twice'}. Nothing was laid on the bench."
        )
    if not {RECORD_NAME, f"{manifest.job}.ipynb"} & set(found):
        raise RecordError(f"{name} holds neither a record nor a notebook of its name. It {_FOREIGN}")
    return manifest, found


def _refuse_members(members: list[zipfile.ZipInfo], name: str) -> None:
    """Refuse names, links, methods and sizes, before a byte is unpacked."""
    for member in members:
        if fault := _fault_of_member(member):
            raise RecordError(
                f"{name} was not opened: “{member.orig_filename[:80]}” in it cannot be taken, for {fault}."
            )
    names = [member.filename.rstrip("/") for member in members]
    if len(names) != len(set(names)) or (same := doubles(m.filename for m in members if not m.is_dir())) is not None:
        both = next((n for n in names if names.count(n) > 1), "") or " and ".join(same or ())
        raise RecordError(f"{name} was not opened: “{both}” would be one file twice.")
    total = sum(member.file_size for member in members)
    if total > MOST_BYTES:
        raise RecordError(
            f"{name} was not opened: it unpacks to {total / 2**30:,.1f} GiB; a job’s archive has at most {MOST_BYTES / 2**30:.0f} GiB."
        )


def _fault_of_member(member: zipfile.ZipInfo) -> str:
    kind = stat.S_IFMT(member.external_attr >> 16)
    whole = member.filename.removesuffix("/") if member.is_dir() else member.filename
    rules = (
        (member.orig_filename != member.filename, "its name holds what this system cannot take"),
        (bool(fault := fault_of(whole)), fault),
        (bool(kind) and not (stat.S_ISREG(kind) or stat.S_ISDIR(kind)), "it is a link or a device, and no file"),
        (bool(member.flag_bits & 0x1), "it is locked with a password"),
        (member.compress_type not in _METHODS, "it is packed in a way that this kit does not open"),
        (
            member.file_size > max(FREE_BYTES, MOST_TIMES * member.compress_size),
            f"it unpacks to more than {MOST_TIMES} times its size",
        ),
    )
    return next((fault for broken, fault in rules if broken), "")


def _manifest(zipped: zipfile.ZipFile, name: str) -> Manifest:
    try:
        member = zipped.getinfo(MANIFEST)
    except KeyError:
        raise RecordError(f"{name} {_FOREIGN}") from None
    if member.file_size > MOST_MANIFEST:
        raise RecordError(f"{name} was not opened: its manifest is longer than any.")
    content = zipped.read(member)
    try:
        form = msgspec.json.decode(content, type=_Form).form
        if form > ARCHIVE_FORM:
            raise RecordError(
                f"{name} is in form {form}; this version of the kit opens form {ARCHIVE_FORM}. Open it with a newer one."
            )
        manifest = msgspec.json.decode(content, type=Manifest)
        check_job_name(manifest.job)
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError, InputError) as error:
        raise RecordError(f"{name} {_FOREIGN} Its manifest cannot be used ({str(error).rstrip('.')}).") from error
    return manifest


class _Form(msgspec.Struct, frozen=True):
    form: int


def _unpack(zipped: zipfile.ZipFile, member: zipfile.ZipInfo, line: FileLine, work: Path, name: str) -> None:
    """One file onto the disk, counted and summed as it comes: what the zip says of itself is not believed."""
    path = work.joinpath(*line.path.split("/"))
    path.parent.mkdir(parents=True, exist_ok=True)
    summed, count = hashlib.sha256(), 0
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), PRIVATE_FILE)
    with os.fdopen(handle, "wb") as file, zipped.open(member) as packed:
        while count <= line.bytes and (chunk := packed.read(CHUNK)):
            summed.update(chunk)
            count += len(chunk)
            file.write(chunk)
        file.flush()
        os.fsync(handle)
    if count != line.bytes or summed.hexdigest() != line.sha256.casefold():
        raise RecordError(
            f"{name} is damaged: “{line.path}” is not what its manifest says (its length or its SHA-256 differs). Nothing was laid on the bench."
        )


def _as_there(folder: Path, manifest: Manifest) -> bool:
    """Whether every file of an archive lies in a job's folder, byte for byte, and the job has no other."""
    there, _ = files_of(folder)
    if set(there) != {line.path for line in manifest.files}:
        return False
    return all(hashlib.sha256((folder / line.path).read_bytes()).hexdigest() == line.sha256 for line in manifest.files)
