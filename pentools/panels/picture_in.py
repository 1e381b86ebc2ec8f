"""A picture on its way into a job's photos folder: looked at before it is stored, and never over another one."""

from __future__ import annotations

import os
from pathlib import Path

from pentools.errors import RecordError
from pentools.pictures.reading import look_at

__all__ = ["lay_in"]


def lay_in(folder: Path, name: str, content: bytes) -> str:
    """Store a picture.

    Parameters
    ----------
    folder : Path
        The job's photos folder; made where it is missing.
    name : str
        The file's own name.
    content : bytes
        The file.

    Returns
    -------
    str
        The name it got: its own with the ending of what it is, and a number where another lies there already.

    Raises
    ------
    InputError
        If it is no picture that can be read: why, and what to do.
    RecordError
        If it cannot be written.
    """
    ending = look_at(content, name).ending
    stem = "".join(c if c.isalnum() or c in "-_" else "-" for c in Path(name).stem).strip("-") or "picture"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        number, fresh = 1, f"{stem}{ending}"
        while not _written(folder / fresh, content):
            if (folder / fresh).read_bytes() == content:
                return fresh
            number += 1
            fresh = f"{stem}-{number}{ending}"
    except OSError as error:
        raise RecordError(f"{name} could not be stored ({error.strerror or error}).") from error
    return fresh


def _written(path: Path, content: bytes) -> bool:
    """Write a file that is not there yet, whole or not at all; False where there is one."""
    try:
        file = path.open("xb")
    except FileExistsError:
        return False
    try:
        with file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
    except BaseException:
        path.unlink(missing_ok=True)
        raise
    return True
