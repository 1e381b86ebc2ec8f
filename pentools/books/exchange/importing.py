"""A table of old jobs taken over: each row a job, or more of one; what cannot be taken is said by row and column."""

from __future__ import annotations

import datetime as dt
import os
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from pentools.books.exchange.import_mapping import Mapping_, read_mapping
from pentools.books.exchange.import_rows import Fault, Row, Table, entries_of, job_name_of, read_table
from pentools.books.exchange.uniting import ids_on
from pentools.errors import InputError, PentoolsError, RecordError
from pentools.record.appending import append_block, locked, what_failed
from pentools.record.bench import Bench, check_job_name
from pentools.record.entries import Entry, encode_entry, now
from pentools.record.job import create_job

__all__ = ["Imported", "Taken", "import_table"]

LOCK_SECONDS = 10.0


@dataclass(frozen=True, slots=True)
class Taken:
    """A row that was taken: its number, the job, and how many entries it made."""

    row: int
    job: str
    entries: int


@dataclass(frozen=True, slots=True)
class Imported:
    """What came of a table.

    Parameters
    ----------
    taken : tuple of Taken
        Rows that were, or would be, taken.
    there : tuple of (int, str)
        Rows that are here already, each with its job; a row that stands twice in the file is one.
    faults : tuple of Fault
        Why rows were refused, by row and column.
    unused : mapping of str to int
        Columns that go nowhere, and how many rows have something in them.
    wrote : bool
        Whether anything was written.
    """

    taken: tuple[Taken, ...]
    there: tuple[tuple[int, str], ...]
    faults: tuple[Fault, ...]
    unused: Mapping[str, int]
    wrote: bool


def import_table(
    bench: Bench, table: str | os.PathLike[str], mapping: str | os.PathLike[str], *, write: bool = False
) -> Imported:
    """Take over a table of old jobs.

    Parameters
    ----------
    table : path
        Comma-separated values, the first line naming the columns.
    mapping : path
        TOML; ``[columns]`` says where each column goes (`pentools.books.exchange.import_mapping`).
    write : bool
        False to say what would be taken, and write nothing.

    Returns
    -------
    Imported
        The report. A row with one cell that cannot be used is refused whole; the others are taken.

    Raises
    ------
    InputError
        If the mapping or the table cannot be used as a whole.
    RecordError
        If a file cannot be read, or a job not be written; those before it are there then.

    Notes
    -----
    Each entry's remark names the file, the row and the day. The ids of the entries are made from what the row says, so that
    a row is known again whatever the file is called and wherever the row stands in it.
    """
    path = Path(table).expanduser()
    said = read_mapping(Path(mapping).expanduser())
    read = read_table(path, said.file)
    _check_columns(path.name, read, said)
    sorting = _Sorting(bench, path.name, said, now(), ids_on(bench))
    for row in read.rows:
        sorting.sort(row)
    if write:
        for job, entries in sorting.jobs.items():
            _lay(bench, job, entries)
    used = {*said.columns, said.file.job, said.file.entered}
    unused = {c: sum(bool(row.cells[c]) for row in read.rows) for c in read.columns if c and c not in used}
    faults = sorted((*read.faults, *sorting.faults), key=lambda fault: fault.row)
    return Imported(tuple(sorting.taken), tuple(sorting.there), tuple(faults), unused, write)


def _check_columns(name: str, read: Table, said: Mapping_) -> None:
    wanted = [*said.columns, *(column for column in (said.file.job, said.file.entered) if column)]
    for column in wanted:
        if column not in read.columns:
            raise InputError(
                "a column of the mapping", f"one that {name} has ({', '.join(c for c in read.columns if c)})", column,
                "Capitals and spaces count. Is the delimiter right?" if len(read.columns) == 1 else "Capitals and spaces count.",
            )  # fmt: skip


class _Sorting:
    """The rows one after the other: taken, here already, or refused."""

    def __init__(
        self, bench: Bench, file: str, said: Mapping_, moment: dt.datetime, known: dict[str, set[str]]
    ) -> None:
        self._bench, self._file, self._said, self._moment, self._known = bench, file, said, moment, known
        self._called: dict[str, str] = {}
        self.jobs: dict[str, list[Entry]] = {}
        self.taken: list[Taken] = []
        self.there: list[tuple[int, str]] = []
        self.faults: list[Fault] = []

    def sort(self, row: Row) -> None:
        """Find out what becomes of a row."""
        note = f"imported from {self._file}, row {row.number}, on {self._moment:%Y-%m-%d}"
        entries, faults = entries_of(row, self._said, self._bench, note, self._moment)
        if faults:
            self.faults += faults
            return
        here = {job for entry in entries for job in self._known.get(entry.id, ())}
        if all(entry.id in self._known for entry in entries):
            self.there.append((row.number, min(here)))
            return
        named = row.cells.get(self._said.file.job, "") if self._said.file.job else ""
        job = job_name_of(named, row.number)
        if why := self._against(job, named):
            self.faults.append(Fault(row.number, self._said.file.job, why))
            return
        fresh = [entry for entry in entries if entry.id not in self._known]
        self._called[job.casefold()] = named
        self.jobs.setdefault(job, []).extend(fresh)
        for entry in fresh:
            self._known.setdefault(entry.id, set()).add(job)
        self.taken.append(Taken(row.number, job, len(fresh)))

    def _against(self, job: str, named: str) -> str:
        """What speaks against a job's name; a job of an earlier import is not added to."""
        try:
            check_job_name(job)
        except InputError as error:
            return str(error)
        other = self._called.get(job.casefold(), named)
        if other != named:
            return f"“{named}” and “{other}” both make the job name {job}. Name one of them otherwise."
        if (self._bench.folder / job).exists():
            return f"There is already a job {job}, and this row says something else. Enter it there by hand, or name it otherwise."
        return ""


def _lay(bench: Bench, name: str, entries: list[Entry]) -> None:
    """A job with all its entries, in one step as far as the record goes."""
    job = create_job(bench, name)
    try:
        with locked(job.record.path, LOCK_SECONDS):
            append_block(job.record.path, b"".join(encode_entry(entry) + b"\n" for entry in entries), fresh=True)
    except (OSError, PentoolsError) as error:
        shutil.rmtree(job.folder, ignore_errors=True)  # it was made a moment ago
        why = what_failed(error) if isinstance(error, OSError) else str(error)
        raise RecordError(
            f"The job {name} could not be written ({why}). The jobs before it are there; it is not."
        ) from error
