"""What lies on the disk where a record should be, found out without writing anything."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from pentools.errors import RecordError
from pentools.record.appending import what_failed

__all__ = ["Stamp", "bytes_of", "folder_of", "read_file", "stamp_from", "stamp_of"]

Stamp = tuple[int, ...]


def stamp_from(found: os.stat_result) -> Stamp:
    """By what a file is known: which one it is, how long, and when it was last changed."""
    return found.st_dev, found.st_ino, found.st_size, found.st_mtime_ns, found.st_ctime_ns


def stamp_of(path: Path) -> Stamp | None:
    """By what a file is known without reading it; None where there is none."""
    try:
        found = path.stat()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError as error:
        raise RecordError(f"{path} cannot be read ({what_failed(error)}).") from error
    if not stat.S_ISREG(found.st_mode):
        raise RecordError(f"{path} is no file. Move it away, or put the record back in its place.")
    return stamp_from(found)


def folder_of(path: Path) -> Stamp | None:
    """Which folder a file lies in, whatever that is called; None where there is none."""
    try:
        found = path.parent.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino


def read_file(path: Path) -> tuple[bytes, Stamp]:
    """All of a file, and by what it was known when that was read.

    Raises
    ------
    RecordError
        If it cannot be read.
    """
    try:
        with path.open("rb") as file:
            stamp = stamp_from(os.fstat(file.fileno()))  # before the content: what comes later is seen at the next look
            return file.read(), stamp
    except OSError as error:
        raise RecordError(
            f"{path} cannot be read ({what_failed(error)}). Its rights or the disk are in the way."
        ) from error


def bytes_of(path: Path) -> bytes:
    """All of a file that somebody named.

    Raises
    ------
    RecordError
        If it is a folder or cannot be read.
    """
    if path.is_dir():
        raise RecordError(f"{path} is a folder. Name the copy of the record in it, such as {path.name}/record.jsonl.")
    return read_file(path)[0]
