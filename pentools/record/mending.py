"""What can be mended about a job's files: lines that cannot be read are set aside, and rights are made private."""

from __future__ import annotations

import os
import stat
from dataclasses import dataclass
from pathlib import Path

from pentools.errors import RecordError
from pentools.record.appending import PRIVATE_FILE, locked, put_in_place, set_aside, what_failed
from pentools.record.lines import Line, read_line, split_lines, without_mark
from pentools.record.looking import read_file
from pentools.record.storage import LOCK_SECONDS, Record

__all__ = ["Mended", "mend", "open_to_others"]

PRIVATE_FOLDER = 0o700
_OTHERS = stat.S_IRWXG | stat.S_IRWXO
_REACH = stat.S_IXGRP | stat.S_IXOTH


@dataclass(frozen=True, slots=True)
class Mended:
    """What was done to a job's files.

    Parameters
    ----------
    lines : tuple of int
        The numbers of the lines that were set aside.
    aside : str
        The file beside the record that holds them; empty where there were none.
    kept : str
        The file beside the record that holds all of it as it was; empty where nothing was changed in it.
    tightened : tuple of str
        The files and folders whose rights were made private.
    """

    lines: tuple[int, ...] = ()
    aside: str = ""
    kept: str = ""
    tightened: tuple[str, ...] = ()


def mend(record: Record, folder: Path) -> Mended:
    """Set aside the lines that cannot be read, and make the job's files private.

    Parameters
    ----------
    record : Record
        The job's record; read it again afterwards.
    folder : Path
        The job's folder.

    Returns
    -------
    Mended
        What was done.

    Raises
    ------
    RecordError
        If something cannot be written; the record is then as it was.

    Notes
    -----
    Nothing is deleted: the whole file as it was and the lines taken out of it are put beside the record first. A line
    in a newer form, a kind that is not known and an entry with a value that cannot be read stay where they are: to
    take such a line out could bring back what it corrects.
    """
    try:
        done = _take_out(record) if record.path.exists() else Mended()
        return Mended(done.lines, done.aside, done.kept, _tighten(record, folder))
    except OSError as error:
        raise RecordError(f"{folder} could not be mended ({what_failed(error)}). The record is as it was.") from error


def _take_out(record: Record) -> Mended:
    path = record.path
    with locked(path, LOCK_SECONDS):
        content = read_file(path)[0]
        read: list[tuple[bytes, Line | None]] = [
            (raw, read_line(raw, number) if without_mark(raw).strip() else None)
            for number, raw in enumerate(split_lines(content), start=1)
        ]
        unread = [(raw, line.number) for raw, line in read if line is not None and not line.whole]
        if not unread:
            return Mended()
        kept = set_aside(path, "before", content)
        aside = set_aside(path, "unread", b"".join(raw + b"\n" for raw, _ in unread))
        left = [raw for raw, line in read if line is not None and line.whole]
        put_in_place(path, b"".join(raw + b"\n" for raw in left), stat.S_IMODE(path.stat().st_mode))
    return Mended(tuple(number for _, number in unread), aside.name, kept.name)


def open_to_others(record: Record, folder: Path) -> tuple[Path, ...]:
    """Which of a job's folder and record other people on this machine can look into.

    Returns
    -------
    tuple of Path
        Empty where the system keeps no such rights, or where a folder above lets nobody else in.
    """
    if os.name != "posix":
        return ()
    try:
        if not _let_in(folder) or not folder.stat().st_mode & _OTHERS:
            return ()
        inside = [record.path] if record.path.is_file() and record.path.stat().st_mode & _OTHERS else []
    except OSError:
        return ()
    return (folder, *inside)


def _let_in(folder: Path) -> bool:
    """Whether every folder above lets others through."""
    return all(parent.stat().st_mode & _REACH for parent in folder.resolve().parents)


def _tighten(record: Record, folder: Path) -> tuple[str, ...]:
    found = open_to_others(record, folder)
    for path in found:
        path.chmod(PRIVATE_FOLDER if path.is_dir() else PRIVATE_FILE)
    return tuple(f"{path.name}/" if path.is_dir() else path.name for path in found)
