"""A form that is a folder, written whole or not at all; what somebody else laid into it stays."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterable, Mapping
from pathlib import Path

import msgspec

from pentools.errors import RecordError

__all__ = ["replace_folder"]


def replace_folder(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write a folder anew.

    Parameters
    ----------
    folder : Path
        Where it stands; it need not be there.
    files : mapping of str to bytes
        Name to content.

    Raises
    ------
    RecordError
        If it cannot be written, or a file that is not from here has a name that is wanted; the folder is then as it was.

    Notes
    -----
    All is made ready beside the folder, and then changes place with it. Files of an earlier writing go away; they are
    known from a list beside the folder (``.<name>-files.json``). Everything else in the folder is kept.
    """
    listed = folder.parent / f".{folder.name}-files.json"
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        _finish_earlier(folder)
        ours = _listed(listed, otherwise=files)
        others = [path for path in folder.iterdir() if path.name not in ours] if folder.is_dir() else []
        _refuse_to_replace(folder, [path.name for path in others], files)
        fresh = Path(tempfile.mkdtemp(prefix=f".{folder.name}-", suffix=".tmp", dir=folder.parent))
        try:
            _fill(fresh, files, others)
            _change_places(folder, fresh)
        finally:
            shutil.rmtree(fresh, ignore_errors=True)
        listed.write_bytes(msgspec.json.encode(sorted(files)))
    except OSError as error:
        raise RecordError(
            f"{folder} could not be written ({error.strerror or error}). Close the program that holds it, or make room on the disk."
        ) from error


def _listed(path: Path, otherwise: Iterable[str]) -> set[str]:
    """The files of the earlier writing; without a list, those that are to be written now."""
    try:
        return set(msgspec.json.decode(path.read_bytes(), type=list[str]))
    except (FileNotFoundError, msgspec.DecodeError):
        return set(otherwise)


def _refuse_to_replace(folder: Path, others: Iterable[str], files: Iterable[str]) -> None:
    wanted = {name.casefold() for name in files}
    for name in others:
        if name.casefold() in wanted:
            raise RecordError(
                f"{folder.name}/{name} was not written from here, and a file of that name is to be written. Move it elsewhere, or give it another name, then write again."
            )


def _fill(fresh: Path, files: Mapping[str, bytes], others: list[Path]) -> None:
    fresh.chmod(0o755)
    for name, content in files.items():
        with (fresh / name).open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
    for path in others:
        if path.is_dir() and not path.is_symlink():
            shutil.copytree(path, fresh / path.name, symlinks=True)
        else:
            shutil.copy2(path, fresh / path.name, follow_symlinks=False)


def _set_aside(folder: Path) -> Path:
    return folder.parent / f".{folder.name}-before"


def _change_places(folder: Path, fresh: Path) -> None:
    """The old folder steps aside, the new one takes its place; where that fails the old one comes back."""
    old = _set_aside(folder)
    if folder.exists():
        folder.rename(old)
    try:
        fresh.rename(folder)
    except OSError:
        if old.exists():
            old.rename(folder)
        raise
    shutil.rmtree(old, ignore_errors=True)


def _finish_earlier(folder: Path) -> None:
    """Where an earlier writing was cut off between two steps: the old folder comes back, or is cleared away."""
    old = _set_aside(folder)
    if old.exists() and not folder.exists():
        old.rename(folder)
    elif old.exists():
        shutil.rmtree(old)
