"""A file to double-click that opens the bench, for whoever never sees a terminal."""

from __future__ import annotations

import os
import shlex
import sys
from pathlib import Path
from subprocess import list2cmdline

from pentools.errors import RecordError
from pentools.record.bench import Bench

__all__ = ["lay_starter", "starter_file"]

NAME = "Pens on the bench"


def starter_file(python: str, bench: str, system: str) -> tuple[str, str]:
    """What the file is called on a system, and what stands in it.

    Parameters
    ----------
    python : str
        The Python that the kit is installed in.
    bench : str
        The bench folder.
    system : str
        As `sys.platform` names it: ``win32``, ``darwin``; anything else is taken for a desktop of the Linux kind.

    Returns
    -------
    tuple of str
        The name with its ending, and the text.
    """
    words = [python, "-m", "pentools.cli", "open", "--bench", bench]
    if system == "win32":
        line = list2cmdline(words).replace("%", "%%")
        return f"{NAME}.cmd", f"@echo off\r\nchcp 65001 >nul\r\ntitle {NAME}\r\n{line}\r\nif errorlevel 1 pause\r\n"
    if system == "darwin":
        return f"{NAME}.command", f"#!/bin/sh\n{shlex.join(words)} || read -r _\n"
    run = " ".join(_quoted(word) for word in words)
    entry = f"[Desktop Entry]\nType=Application\nName={NAME}\nExec={run}\nTerminal=true\nCategories=Office;\n"
    return "pens-on-the-bench.desktop", entry


def _quoted(word: str) -> str:
    """A word of an Exec line, as the desktop entry specification 1.5 wants it: quoted, and the escapes escaped again."""
    for sign in ("\\", '"', "`", "$"):
        word = word.replace(sign, f"\\{sign}")
    return '"' + word.replace("\\", "\\\\").replace("%", "%%") + '"'


def lay_starter(bench: Bench, folder: Path | None = None) -> Path:
    """Lay the file for the system at hand; one that is there already is written anew.

    Parameters
    ----------
    folder : Path or None
        Where to; by default the desktop, or the home folder where there is none.

    Returns
    -------
    Path
        The file.

    Raises
    ------
    RecordError
        If it cannot be written there.
    """
    desktop = Path.home() / "Desktop"
    where = folder or (desktop if desktop.is_dir() else Path.home())
    name, text = starter_file(sys.executable, str(bench.folder.resolve()), sys.platform)
    try:
        place = where / name
        place.write_text(text, encoding="utf-8", newline="")
        if os.name == "posix":
            place.chmod(0o755)
    except OSError as error:
        raise RecordError(
            f"The starter cannot be laid in {where} ({error.strerror or error}). Name another folder: pentools starter FOLDER"
        ) from error
    return place
