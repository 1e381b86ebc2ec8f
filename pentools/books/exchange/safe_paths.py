"""Names of files that may lie in a job's folder on any system: what an archive may hold, going out and coming in."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

__all__ = ["MOST_DEEP", "MOST_LONG", "doubles", "fault_of"]

MOST_DEEP = 8
"""Folders within each other (judged: the kit itself makes one)."""
MOST_LONG = 200
"""Letters of a file's whole name within its job (judged; some systems take 260 with all that stands before it)."""
_DEVICE = re.compile(r"(?i)(con|prn|aux|nul|conin\$|conout\$|com[\d¹²³]|lpt[\d¹²³])\s*(\..*)?")
_SIGNS = '<>:"|?*'


def fault_of(name: str) -> str:
    """What is wrong with a file's name within a job, as the end of a sentence; empty where nothing is.

    Parameters
    ----------
    name : str
        With ``/`` between folders, such as ``photos/side-before.jpg``.

    Notes
    -----
    The rules are those of the strictest system in use: a name that leads out of the folder, names a drive, a device or
    another stream of a file, or means another file elsewhere is refused whatever this system would make of it.
    """
    parts = name.split("/")
    rules = (
        (not name, "it has no name"),
        (name.startswith("/"), "it names a place from the root of the disk"),
        (bool(re.match(r"[A-Za-z]:", name)), "it names a drive"),
        ("\\" in name, "it has a backslash in it"),
        (".." in parts, "it leads out of the job’s folder"),
        ("" in parts or "." in parts, "a folder in it has no name"),
        (any(unicodedata.category(sign) in ("Cc", "Cf", "Cs", "Zl", "Zp") for sign in name), "it has a sign in it that cannot be seen"),
        (any(sign in _SIGNS for sign in name), f"it has one of {' '.join(_SIGNS)} in it"),
        (any(part[-1:] in (".", " ") for part in parts), "it ends with a full stop or a space"),
        (any(_DEVICE.fullmatch(part) for part in parts), "some systems keep that name for a device"),
        (any(part.startswith(".") for part in parts), "it is hidden"),
        (len(parts) > MOST_DEEP, f"it lies more than {MOST_DEEP} folders deep"),
        (len(name) > MOST_LONG, f"it is longer than {MOST_LONG} letters"),
    )  # fmt: skip
    return next((fault for broken, fault in rules if broken), "")


def doubles(names: Iterable[str]) -> tuple[str, str] | None:
    """Two names that are one and the same on some systems, by case or by how an accent is written; None if there are none.

    A file is such a double, too, of a folder of its name.
    """
    seen: dict[str, str] = {}
    listed = list(names)
    for name in listed:
        if (same := _same(name)) in seen:
            return seen[same], name
        seen[same] = name
    folders = dict.fromkeys("/".join(n.split("/")[:depth]) for n in listed for depth in range(1, n.count("/") + 1))
    for folder in folders:  # each spelling once
        if (same := _same(folder)) in seen:
            return seen[same], folder
        seen[same] = folder
    return None


def _same(name: str) -> str:
    return unicodedata.normalize("NFC", unicodedata.normalize("NFKD", name).casefold())
