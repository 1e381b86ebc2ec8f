"""How lines come into a record's file: under a lock, in one piece, forced to disk, and what is torn set aside first."""

from __future__ import annotations

import contextlib
import errno
import os
from collections.abc import Iterator
from pathlib import Path

import msgspec
from filelock import FileLock, Timeout

from pentools.errors import RecordError
from pentools.record.entries import now
from pentools.record.lines import whole_part, without_mark

__all__ = [
    "PRIVATE_FILE",
    "append_block",
    "close_tail",
    "locked",
    "put_in_place",
    "set_aside",
    "sync_folder",
    "what_failed",
]

PRIVATE_FILE = 0o600
_NO_FOLDER_SYNC = (errno.EINVAL, errno.ENOTSUP, errno.EBADF, errno.EACCES)  # file systems that cannot force a folder


def what_failed(error: OSError) -> str:
    """What the system said, in its words."""
    return error.strerror or str(error)


@contextlib.contextmanager
def locked(path: Path, seconds: float) -> Iterator[None]:
    """Hold the lock of a record.

    Parameters
    ----------
    path : Path
        The record's file; its folder must be there, and is never made.
    seconds : float
        How long to wait for another program [s].

    Raises
    ------
    RecordError
        If another program holds the lock for longer, or the folder is gone or cannot be written to.
    """
    if not path.parent.is_dir():
        raise RecordError(
            f"The job's folder {path.parent} is not there any more: it was moved, renamed or deleted while it was open. "
            "Nothing was saved. Open the job from where it lies now."
        )
    lock = FileLock(path.with_name(".record.lock"), timeout=seconds, mode=PRIVATE_FILE)
    try:
        lock.acquire()
    except Timeout as error:
        raise RecordError(
            f"Another program has held the lock on {path} for {seconds:.0f} s. Close the other notebook and try again; nothing was lost."
        ) from error
    except OSError as error:
        raise RecordError(
            f"{path.parent} cannot be written to ({what_failed(error)}). Nothing was saved; what is there can still be read."
        ) from error
    try:
        yield
    finally:
        lock.release()


def append_block(path: Path, block: bytes, *, fresh: bool) -> None:
    """Append whole lines and force them to disk.

    Parameters
    ----------
    block : bytes
        The lines, each with its line feed.
    fresh : bool
        Whether the file is made; otherwise it must be there.

    Raises
    ------
    OSError
        If that fails; the file is then as it was before.
    """
    made = os.O_CREAT | os.O_EXCL if fresh else 0
    handle = os.open(path, os.O_WRONLY | os.O_APPEND | made | getattr(os, "O_BINARY", 0), PRIVATE_FILE)
    try:
        if fresh:
            sync_folder(path.parent)
        _write_all(handle, block)
    except OSError:
        if fresh:
            with contextlib.suppress(OSError):
                path.unlink()
        raise
    finally:
        os.close(handle)


def _write_all(handle: int, block: bytes) -> None:
    before, written = os.fstat(handle).st_size, 0
    try:
        while written < len(block):
            written += os.write(handle, block[written:])
        os.fsync(handle)
    except OSError:
        with contextlib.suppress(OSError):  # what stays behind then is a torn line, which the next append sets aside
            os.ftruncate(handle, before)
        raise


def sync_folder(folder: Path) -> None:
    """Force a folder's list of files to disk, where the system can."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in _NO_FOLDER_SYNC:
            raise
    finally:
        os.close(handle)


def close_tail(path: Path) -> str:
    """Close a last line that has no end: keep it if it is whole, else set it aside beside the file.

    Parameters
    ----------
    path : Path
        The record's file, its lock held.

    Returns
    -------
    str
        What was set aside, as a sentence; empty where nothing was.

    Raises
    ------
    OSError
        If that cannot be written; the record is then as it was.
    """
    if not _tail_is_open(path):
        return ""
    content = path.read_bytes()
    start = whole_part(content)
    tail = content[start:]
    said = ""
    handle = os.open(path, os.O_WRONLY | os.O_APPEND | getattr(os, "O_BINARY", 0))
    try:
        if _is_whole(tail):
            os.write(handle, b"\n")
        else:
            aside = set_aside(path, "torn", tail)
            os.ftruncate(handle, start)
            said = f"The last line of {path.name} was torn off in the middle of a save. It was set aside as {aside.name}; everything before it is whole."
        os.fsync(handle)
    finally:
        os.close(handle)
    return said


def _tail_is_open(path: Path) -> bool:
    if not path.is_file() or path.stat().st_size == 0:
        return False
    with path.open("rb") as file:
        file.seek(-1, os.SEEK_END)
        return file.read(1) != b"\n"


def _is_whole(tail: bytes) -> bool:
    """Whether a last line is a whole object of JSON; nothing that was torn off is."""
    content = without_mark(tail).strip()
    try:
        return not content or isinstance(msgspec.json.decode(content), dict)
    except (msgspec.MsgspecError, ValueError):
        return False
    except RecursionError:
        return content.endswith(b"}")


def set_aside(path: Path, what: str, content: bytes) -> Path:
    """Write bytes into a new file beside the record; nothing that was set aside before is written over.

    Parameters
    ----------
    path : Path
        The record's file.
    what : str
        A word for the file's name, such as ``torn``.
    content : bytes
        What to keep.

    Returns
    -------
    Path
        The new file, ``record-<what>-<time>.txt``, on disk.

    Raises
    ------
    OSError
        If it cannot be written; nothing is left behind then.
    """
    stem = f"record-{what}-{now().strftime('%Y%m%dT%H%M%S')}"
    for number in range(1000):
        aside = path.with_name(f"{stem}{f'-{number}' if number else ''}.txt")
        try:
            handle = os.open(aside, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), PRIVATE_FILE)
        except FileExistsError:
            continue
        try:
            _write_all(handle, content)
            sync_folder(path.parent)
        except OSError:
            with contextlib.suppress(OSError):
                aside.unlink()
            raise
        finally:
            os.close(handle)
        return aside
    raise RecordError(f"Too many files were set aside beside {path} within one second. Wait a moment and try again.")


def put_in_place(path: Path, content: bytes, mode: int = PRIVATE_FILE) -> None:
    """Write a file anew in one piece: beside it first, forced to disk, then in its place.

    Parameters
    ----------
    content : bytes
        All that it is to hold.
    mode : int
        Who may read it, where the system knows that.

    Raises
    ------
    OSError
        If that fails; the file is then as it was, and nothing is left beside it.
    """
    fresh = path.with_name(f".{path.name}.new")
    with contextlib.suppress(FileNotFoundError):
        fresh.unlink()
    handle = os.open(fresh, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), mode)
    try:
        try:
            _write_all(handle, content)
        finally:
            os.close(handle)
        fresh.replace(path)
    except OSError:
        with contextlib.suppress(OSError):
            fresh.unlink()
        raise
    sync_folder(path.parent)
