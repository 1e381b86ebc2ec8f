"""The folders on a bench, and which of them hold a job: looked through without opening a record."""

from __future__ import annotations

import errno
import os

from pentools.errors import RecordError
from pentools.record.appending import what_failed
from pentools.record.bench import Bench
from pentools.record.layout import RECORD_NAME

__all__ = ["folders_on", "is_there", "jobs_on", "links_on"]


def jobs_on(bench: Bench) -> tuple[str, ...]:
    """The names of the folders on a bench that hold a record or a notebook of their name, in their order.

    Raises
    ------
    RecordError
        If the bench folder is not there or cannot be looked into.
    """
    # by plain text and `os`: ten thousand jobs are looked through for every question about all of them
    folder = str(bench.folder)
    return tuple(
        name for name in folders_on(bench) if any(is_there(os.path.join(folder, name, file)) for file in _marks(name))
    )


def _marks(name: str) -> tuple[str, str]:
    return RECORD_NAME, f"{name}.ipynb"


def folders_on(bench: Bench) -> list[str]:
    """The names of all folders on a bench but the hidden ones, in their order, whether a job lies in them or not.

    Raises
    ------
    RecordError
        If the bench folder is not there or cannot be looked into.
    """
    try:
        with os.scandir(bench.folder) as found:
            names = [one.name for one in found if not one.name.startswith(".") and _is_folder(one)]
    except OSError as error:
        raise RecordError(f"The bench folder {bench.folder} cannot be looked into ({what_failed(error)}).") from error
    return sorted(names, key=os.path.normcase)


def links_on(bench: Bench) -> frozenset[str]:
    """The names of the links on a bench: where they lead is looked at before a job is opened through one."""
    with os.scandir(bench.folder) as found:
        return frozenset(one.name for one in found if one.is_symlink())


def _is_folder(one: os.DirEntry[str]) -> bool:
    try:
        return one.is_dir()
    except OSError as error:
        return error.errno != errno.ELOOP


def is_there(path: str) -> bool:
    """Whether something lies there; what cannot be looked at does, which whoever opens it will be told."""
    try:
        os.stat(path)
    except (FileNotFoundError, NotADirectoryError):
        return False
    except OSError as error:
        return error.errno != errno.ELOOP
    return True
