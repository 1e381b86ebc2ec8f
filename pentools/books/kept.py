"""What was found out about each job, kept on this machine so that it need not be found out again; never the truth."""

from __future__ import annotations

import contextlib
import functools
import hashlib
import logging
import os
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

import platformdirs

from pentools import __version__
from pentools.record.bench import Bench
from pentools.record.folders import folders_on, is_there
from pentools.record.job import RECORD_NAME

__all__ = ["Kept", "Row", "Shelf", "kept_folder", "kit_mark", "stamps_on"]

LOCK_SECONDS = 5.0
FORM = 1  # of the file; one of another form is laid anew
_log = logging.getLogger(__name__)
_TABLE = (
    "CREATE TABLE IF NOT EXISTS kept (question TEXT, job TEXT, stamp TEXT, answer BLOB, why TEXT, "
    "PRIMARY KEY (question, job)) WITHOUT ROWID"
)


class Kept(NamedTuple):
    """What is kept of one job under one question.

    Parameters
    ----------
    stamp : str
        By what the record was known when it was asked; another stamp means that it must be asked again.
    answer : bytes or None
        The answer, encoded; None where the job could not answer.
    why : str
        Why it could not, as a sentence.
    """

    stamp: str
    answer: bytes | None
    why: str = ""


Row = tuple[str, Kept]


def kept_folder() -> Path:
    """Where it is kept: the folder ``PENTOOLS_KEPT`` names, else the user's own folder for such things.

    It lies on this machine and not on the bench, which may be a shared or a synced folder.
    """
    return Path(os.environ.get("PENTOOLS_KEPT") or platformdirs.user_cache_path("pentools", appauthor=False))


@functools.cache
def kit_mark() -> str:
    """By what this version of the kit is known: its number, and when any of its files was last changed."""
    package = Path(__file__).resolve().parents[1]
    newest = max(
        (path.stat().st_mtime_ns for ending in ("py", "csv", "toml") for path in package.rglob(f"*.{ending}")),
        default=0,
    )
    return f"{__version__} {newest}"


def stamps_on(bench: Bench) -> dict[str, str]:
    """Every job on a bench and by what its record is known now, without reading it.

    Returns
    -------
    dict
        Job to stamp, in the order of their names; a job whose record is missing or cannot be looked at has a stamp too.

    Raises
    ------
    RecordError
        If the bench folder is not there or cannot be looked into.
    """
    facts = hashlib.blake2b(repr(sorted(bench.facts.items())).encode(), digest_size=12).hexdigest()
    found, rest, folder = {}, f" {facts} {kit_mark()}", f"{bench.folder}{os.sep}"
    for name in folders_on(bench):
        try:
            seen = os.stat(f"{folder}{name}{os.sep}{RECORD_NAME}")
        except OSError as error:
            if is_there(f"{folder}{name}{os.sep}{RECORD_NAME}") or is_there(f"{folder}{name}{os.sep}{name}.ipynb"):
                found[name] = f"none: {error.errno}{rest}"
            continue
        found[name] = f"{seen.st_ino} {seen.st_size} {seen.st_mtime_ns} {seen.st_ctime_ns}{rest}"
    return found


class Shelf:
    """The file in which a bench's answers are kept; one that cannot be used is done without.

    Parameters
    ----------
    bench : Bench
        The bench; each has a file of its own.
    """

    def __init__(self, bench: Bench) -> None:
        name = hashlib.blake2b(str(bench.folder.resolve()).encode(), digest_size=12).hexdigest()
        self.path = kept_folder() / f"{name}.sqlite"

    def of(self, question: str) -> dict[str, Kept]:
        """What is kept under a question; nothing where the file cannot be read."""
        if not self.path.is_file():
            return {}
        try:
            with self._open() as base:
                rows = base.execute("SELECT job, stamp, answer, why FROM kept WHERE question = ?", (question,))
                return {job: Kept(*row) for job, *row in rows}
        except (sqlite3.Error, OSError) as error:
            _log.info("what is kept cannot be read: %s", error)
            return {}

    def one(self, question: str, job: str) -> Kept | None:
        """What is kept of one job under a question; None where nothing is, or the file cannot be read."""
        if not self.path.is_file():
            return None
        try:
            with self._open() as base:
                rows = base.execute(
                    "SELECT stamp, answer, why FROM kept WHERE question = ? AND job = ?", (question, job)
                )
                return next((Kept(*row) for row in rows), None)
        except (sqlite3.Error, OSError) as error:
            _log.info("what is kept cannot be read: %s", error)
            return None

    def put(self, question: str, rows: Mapping[str, Kept], gone: Sequence[str] = ()) -> None:
        """Keep answers under a question, and let those of jobs go that are not there any more."""
        for attempt in ("as it is", "laid anew"):
            try:
                self._write(question, rows, gone)
            except sqlite3.OperationalError as error:  # locked, full or not to be written: next time
                _log.info("answers were not kept: %s", error)
            except sqlite3.DatabaseError as error:
                _log.info("what was kept is spoilt (%s): %s", attempt, error)
                with contextlib.suppress(OSError):
                    self.path.unlink()
                continue
            except OSError as error:
                _log.info("answers were not kept: %s", error)
            return

    def _write(self, question: str, rows: Mapping[str, Kept], gone: Sequence[str]) -> None:
        self.path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        if not self.path.exists():
            self.path.touch(mode=0o600)
        with self._open() as base, base:
            base.execute(_TABLE)
            base.execute(f"PRAGMA user_version = {FORM}")
            base.executemany(
                "INSERT OR REPLACE INTO kept VALUES (?, ?, ?, ?, ?)",
                ((question, job, kept.stamp, kept.answer, kept.why) for job, kept in rows.items()),
            )
            base.executemany("DELETE FROM kept WHERE question = ? AND job = ?", ((question, job) for job in gone))

    @contextlib.contextmanager
    def _open(self) -> Iterator[sqlite3.Connection]:
        base = sqlite3.connect(self.path, timeout=LOCK_SECONDS)
        try:
            if base.execute("PRAGMA user_version").fetchone()[0] not in (0, FORM):
                raise sqlite3.DatabaseError("it is of another form")
            yield base
        finally:
            base.close()
