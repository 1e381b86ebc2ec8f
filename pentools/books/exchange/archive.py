"""A job as one zip: everything in its folder, with a manifest that says what must be in it, to the byte."""

from __future__ import annotations

import contextlib
import hashlib
import os
import tempfile
import time
import zipfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import msgspec

from pentools import __version__
from pentools.books.exchange.safe_paths import doubles, fault_of
from pentools.errors import InputError, RecordError
from pentools.record.appending import PRIVATE_FILE, locked, sync_folder, what_failed
from pentools.record.entries import now
from pentools.record.job import Job

__all__ = ["ARCHIVE_FORM", "MANIFEST", "Archived", "FileLine", "Manifest", "archive_job", "files_of"]

ARCHIVE_FORM = 1
MANIFEST = "manifest.json"
PAGES = "writeup"
LOCK_SECONDS = 10.0
CHUNK = 1 << 20
_PACKED = frozenset(
    {".jpg", ".jpeg", ".png", ".webp", ".heic", ".pdf", ".zip", ".gz"}
)  # deflating them again gains nothing


class FileLine(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """One file of an archive: its name within the job, its length and its SHA-256 in hexadecimal digits."""

    path: str
    bytes: int
    sha256: str


class Manifest(msgspec.Struct, frozen=True, kw_only=True):
    """What an archive holds.

    Parameters
    ----------
    form : int
        Form of the archive; this version writes and reads 1.
    kit : str
        Version of the kit that made it.
    job : str
        The job's name; the files lie in a folder of that name.
    made_at : str
        When it was made, ISO 8601 with zone.
    files : tuple of FileLine
        Every file, in the order of the names.
    """

    form: int
    kit: str
    job: str
    made_at: str
    files: tuple[FileLine, ...]


@dataclass(frozen=True, slots=True)
class Archived:
    """What was archived.

    Parameters
    ----------
    path : Path
        The zip.
    manifest : Manifest
        What it holds.
    left_out : tuple of str
        What of the folder was left out: hidden files, links, and the pages where that was asked.
    """

    path: Path
    manifest: Manifest
    left_out: tuple[str, ...]


def files_of(folder: Path, *, pages: bool = True) -> tuple[list[str], list[str]]:
    """The files of a job's folder by their names within it, and what is left out of an archive of it.

    Hidden files (locks, a notebook's own copies) and links are left out.

    Raises
    ------
    OSError
        If a folder cannot be looked into.
    """
    taken: list[str] = []
    left: list[str] = []
    for root, folders, files in os.walk(folder, onerror=_stop):
        here = Path(root).relative_to(folder)
        for name in sorted(folders):
            if name.startswith(".") or (Path(root) / name).is_symlink() or (not pages and here / name == Path(PAGES)):
                left.append(f"{(here / name).as_posix()}/")
                folders.remove(name)
        for name in files:
            path = Path(root) / name
            plain = not name.startswith(".") and path.is_file() and not path.is_symlink()
            (taken if plain else left).append((here / name).as_posix())
    return sorted(taken), sorted(left)


def _stop(error: OSError) -> None:
    raise error


def archive_job(job: Job, target: str | os.PathLike[str], *, pages: bool = True) -> Archived:
    """Put a job into one zip.

    Parameters
    ----------
    target : path
        The zip to be made; its name ends in ``.zip``, and nothing of that name is there.
    pages : bool
        Whether the pages in ``writeup/`` go in too.

    Returns
    -------
    Archived
        What is in it. It was read again and held against the manifest before it got its name.

    Raises
    ------
    InputError
        If the target cannot be used.
    RecordError
        If a file has a name that no other system could take, or something cannot be read or written; nothing is left
        behind then.

    Notes
    -----
    The zip is the job whole, also what is for the bench alone: it is for the shelf, or for whoever goes on with the work.
    An owner gets the pages. The record's lock is held while the files are read.
    """
    path = _checked_target(Path(target).expanduser(), job)
    try:
        names, left = files_of(job.folder, pages=pages)
        _refuse_names(names)
        with _held(job), _fresh(path) as fresh:
            manifest = _fill(fresh, job, names)
            _compare(fresh, manifest)
    except OSError as error:
        raise RecordError(f"{path} could not be written ({what_failed(error)}). Nothing was left behind.") from error
    return Archived(path, manifest, tuple(name for name in left if name != ".record.lock"))


def _checked_target(path: Path, job: Job) -> Path:
    if path.suffix.casefold() != ".zip":
        raise InputError("archive", "a file whose name ends in .zip", str(path))
    path = path.parent.resolve() / path.name
    if path.exists() or path.is_symlink():
        raise InputError(
            "archive", "a file that is not there yet", str(path), "Nothing is written over: choose another name."
        )
    if not path.parent.is_dir():
        raise InputError("archive", "in a folder that is there", str(path))
    if path.is_relative_to(job.folder.resolve()):
        raise InputError("archive", "outside the job’s own folder", str(path))
    return path


def _refuse_names(names: list[str]) -> None:
    for name in names:
        if fault := fault_of(name):
            raise RecordError(f"“{name}” cannot go into an archive that other systems open: {fault}. Rename it first.")
    if (same := doubles(names)) is not None:
        raise RecordError(f"“{same[0]}” and “{same[1]}” are one file on some systems. Rename one of them first.")


@contextlib.contextmanager
def _held(job: Job) -> Iterator[None]:
    """The record's lock; where nobody can write there, none is needed."""
    with locked(job.record.path, LOCK_SECONDS) if os.access(job.folder, os.W_OK) else contextlib.nullcontext():
        yield


@contextlib.contextmanager
def _fresh(path: Path) -> Iterator[Path]:
    """A file beside its place that gets its name at the end, or goes."""
    handle, name = tempfile.mkstemp(prefix=".archive-", suffix=".zip", dir=path.parent)
    os.close(handle)
    fresh = Path(name)
    try:
        yield fresh
        fresh.chmod(PRIVATE_FILE)
        handle = os.open(fresh, os.O_RDWR | getattr(os, "O_BINARY", 0))
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
        if path.exists():
            raise RecordError(f"{path} came into being meanwhile. Nothing is written over: choose another name.")
        fresh.rename(path)
    finally:
        fresh.unlink(missing_ok=True)
    sync_folder(path.parent)


def _fill(fresh: Path, job: Job, names: list[str]) -> Manifest:
    lines = []
    with zipfile.ZipFile(fresh, "w") as zipped:
        for name in names:
            content = (job.folder / name).read_bytes()
            lines.append(FileLine(name, len(content), hashlib.sha256(content).hexdigest()))
            zipped.writestr(_member(f"{job.name}/{name}", (job.folder / name).stat().st_mtime), content)
        manifest = Manifest(
            form=ARCHIVE_FORM, kit=__version__, job=job.name, made_at=now().isoformat(), files=tuple(lines)
        )
        said = msgspec.json.format(msgspec.json.encode(manifest), indent=1)
        zipped.writestr(_member(MANIFEST, now().timestamp()), said)
    return manifest


def _member(name: str, changed: float) -> zipfile.ZipInfo:
    moment = time.localtime(max(changed, 315_619_200))  # a zip knows no year before 1980
    member = zipfile.ZipInfo(name, date_time=(min(moment.tm_year, 2107), *moment[1:6]))
    member.compress_type = zipfile.ZIP_STORED if Path(name).suffix.casefold() in _PACKED else zipfile.ZIP_DEFLATED
    member.external_attr = (0o100000 | PRIVATE_FILE) << 16
    return member


def _compare(fresh: Path, manifest: Manifest) -> None:
    """Read it all again, as whoever opens it will."""
    with zipfile.ZipFile(fresh) as zipped:
        for line in manifest.files:
            if hashlib.sha256(zipped.read(f"{manifest.job}/{line.path}")).hexdigest() != line.sha256:
                raise RecordError(f"“{line.path}” did not come out of the archive as it went in. Is the disk sound?")
