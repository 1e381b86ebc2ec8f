"""Many records read into plain pages of the tables: what was entered, with nothing worked out."""

from __future__ import annotations

import datetime as dt
import os
import re
import stat
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from operator import attrgetter
from typing import Any

import numpy as np
import numpy.typing as npt

from pentools.books.tables.columns import Packed, Page
from pentools.books.tables.plain_lines import PlainLine, counting, moments, plain_lines
from pentools.books.tables.quick_forms import all_kinds, carefully_held, held
from pentools.errors import PentoolsError
from pentools.record.bench import Bench
from pentools.record.entries import Entry
from pentools.record.job import RECORD_NAME, open_job
from pentools.record.kinds import Kind
from pentools.record.view import SPOILT, why_not

__all__ = ["Lines", "Logs", "Reading", "read_lines_of"]

_at, _place, _data = attrgetter("at"), attrgetter("stage", "kind"), attrgetter("data")
_EPOCH = dt.datetime(1970, 1, 1, tzinfo=dt.UTC)
_PLAIN_NAME = re.compile(r"(?!(?i:con|prn|aux|nul|com|lpt))[A-Za-z0-9](?:[A-Za-z0-9_-]{0,62}[A-Za-z0-9])?")
_FLAGS = os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_NONBLOCK", 0)  # what is no file is not waited for
Rows = npt.NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Reading:
    """A record as it was read.

    Parameters
    ----------
    name : str
        The job's name.
    entries : sequence of Entry
        Every line that could be read, in the order in which they count.
    live : sequence of Entry
        Those that count, in the order first entered.
    plain : bool
        Whether it stands as the kit wrote it, so that it was read at once.
    """

    name: str
    entries: Sequence[Entry | PlainLine]
    live: Sequence[Entry | PlainLine]
    plain: bool


@dataclass(frozen=True, slots=True)
class Logs:
    """The entries of one kind over several records that count and can be read.

    Parameters
    ----------
    rows : ndarray
        Their places among all lines.
    turns : ndarray
        Their places among all entries that count.
    forms : list
        What they hold.
    """

    rows: Rows
    turns: Rows
    forms: list[Any]


@dataclass(frozen=True, slots=True)
class Lines:
    """The lines of several records, one after the other.

    Parameters
    ----------
    records : list of Reading
        The records that could be read.
    unread : dict
        Why the others could not, by the job's name.
    entries : list of Entry
        All lines that could be read.
    places : list of (str, str)
        The stages and kinds that there are.
    place_of, job, line, at, day : ndarray
        Of each line its stage and kind (place in `places`), its job (place in `records`), its place in the record, its
        moment [us] and its day.
    live : ndarray
        The rows of those that count, in the order first entered.
    held : dict
        By kind the rows of the lines of the kinds asked for, and what they hold, those that do not count too.
    """

    records: list[Reading]
    unread: dict[str, str]
    entries: list[Entry | PlainLine]
    places: list[tuple[str, str]]
    place_of: npt.NDArray[np.int32]
    job: npt.NDArray[np.int32]
    line: npt.NDArray[np.int64]
    at: npt.NDArray[np.int64]
    day: npt.NDArray[np.int32]
    live: Rows
    held: dict[Kind[Any], tuple[Rows, list[Any]]]

    @property
    def names(self) -> list[str | None]:
        """The jobs' names."""
        return [record.name for record in self.records]

    def place(self, rows: Rows | slice) -> Page:
        """Job, line, moment and day of some lines."""
        return {
            "job": Packed("category", self.job[rows], self.names),
            "line": Packed("count", self.line[rows], []),
            "at_utc": Packed("moment", self.at[rows], []),
            "day": Packed("day", self.day[rows], []),
        }

    def logs(self, kind: Kind[Any]) -> Logs:
        """The entries of a kind that count, with what they hold."""
        rows, forms = self.held.get(kind, (np.zeros(0, np.int64), []))
        if self.live_in_order:
            return Logs(rows, self.live[rows], forms)
        turn_of = np.full(len(self.entries), -1)
        turn_of[self.live] = np.arange(len(self.live))
        order = np.argsort(turn_of[rows], kind="stable")
        order = order[turn_of[rows[order]] >= 0]
        return Logs(rows[order], turn_of[rows[order]], [forms[place] for place in order.tolist()])

    @property
    def live_in_order(self) -> bool:
        """Whether every line counts, in the order of the lines."""
        return len(self.live) == len(self.entries) and bool((np.diff(self.live) > 0).all())


def read_lines_of(
    bench: Bench, names: Sequence[str], kinds: Sequence[Kind[Any]], careful: Collection[str] = ()
) -> Lines:
    """Read the records of some jobs.

    Parameters
    ----------
    names : sequence of str
        Jobs on the bench.
    kinds : sequence of Kind
        Of which kinds it is asked what their entries hold.
    careful : collection of str
        Jobs that the careful reader must read, those whose folder is a link among them.

    Returns
    -------
    Lines
        All their lines; a record that cannot be read stands in nobody's way.
    """
    unread: dict[str, str] = {}
    tried = [(name not in careful and _plainly(bench, name)) or _carefully(bench, name, unread) for name in names]
    records = [record for record in tried if record is not None]
    entries = [entry for record in records for entry in record.entries]
    counts = [len(record.entries) for record in records]
    plain = np.repeat(np.array([record.plain for record in records], bool), counts)
    job = np.repeat(np.arange(len(records), dtype=np.int32), counts)
    texts = list(map(_at, entries))
    at, day, sound = moments(texts)
    keys = list(map(_place, entries))
    places = {key: place for place, key in enumerate(dict.fromkeys(keys))}
    place_of = np.fromiter(map(places.__getitem__, keys), np.int32, len(keys))
    forms, odd = _held(entries, place_of, places, plain, kinds)
    odd |= set(np.flatnonzero(~sound & plain).tolist())
    if odd:  # those that are not plain after all: once more
        return read_lines_of(bench, names, kinds, {*careful, *(records[job[row]].name for row in odd)})
    for row in np.flatnonzero(~sound).tolist():
        at[row], day[row] = _exactly(texts[row])
    line = np.concatenate([np.zeros(0, np.int64), *(np.arange(1, count + 1) for count in counts)])
    return Lines(
        records, unread, entries, list(places), place_of, job, line, at, day, _live(records, len(entries)), forms
    )


def _held(
    entries: Sequence[Entry | PlainLine],
    place_of: npt.NDArray[np.int32],
    places: Mapping[tuple[str, str], int],
    plain: npt.NDArray[np.bool_],
    kinds: Sequence[Kind[Any]],
) -> tuple[dict[Kind[Any], tuple[Rows, list[Any]]], set[int]]:
    """What the lines of some kinds hold, with their rows; and the rows of those that are not as the kit writes them."""
    found: dict[Kind[Any], tuple[Rows, list[Any]]] = {}
    odd: set[int] = set()
    order, known, asked = np.argsort(place_of, kind="stable"), all_kinds(), {(k.stage, k.key) for k in kinds}
    data = list(map(_data, entries))
    for key, some in zip(places, np.split(order, np.cumsum(np.bincount(place_of))[:-1])[: len(places)], strict=True):
        kind = known.get(key)
        forms: list[Any] = []
        rows, rest = some[plain[some]], some[~plain[some]]
        if len(rows):
            forms, strange = held(kind, list(map(data.__getitem__, rows.tolist())))
            odd |= set(rows[strange].tolist())
        if kind is not None and key in asked:
            forms += [carefully_held(kind, entries[row]) for row in rest.tolist()]
            found[kind] = _read(np.concatenate([rows, rest]), forms)
    return found, odd


def _read(rows: Rows, forms: list[Any]) -> tuple[Rows, list[Any]]:
    """Without those that could not be read."""
    if None not in forms:
        return rows, forms
    kept = [place for place, form in enumerate(forms) if form is not None]
    return rows[kept], [forms[place] for place in kept]


def _live(records: Sequence[Reading], count: int) -> Rows:
    if all(record.live is record.entries for record in records):
        return np.arange(count)
    rows: list[int] = []
    first = 0
    for record in records:
        if record.live is record.entries:
            rows += range(first, first + len(record.entries))
        else:
            where = {id(entry): row for row, entry in enumerate(record.entries, first)}
            rows += [where[id(entry)] for entry in record.live]
        first += len(record.entries)
    return np.array(rows, np.int64)


def _plainly(bench: Bench, name: str) -> Reading | None:
    """A record that stands as the kit wrote it; None for any other, whatever is the matter with it."""
    if not _PLAIN_NAME.fullmatch(name):
        return None
    try:
        file = os.open(f"{bench.folder}{os.sep}{name}{os.sep}{RECORD_NAME}", _FLAGS)
        try:
            seen = os.fstat(file)
            data = os.read(file, seen.st_size + 1) if stat.S_ISREG(seen.st_mode) else b""
        finally:
            os.close(file)
    except OSError:
        return None
    lines = plain_lines(data) if data and len(data) == seen.st_size else None
    return None if lines is None else Reading(name, lines, counting(lines), True)


def _carefully(bench: Bench, name: str, unread: dict[str, str]) -> Reading | None:
    try:
        record = open_job(name, bench=bench).record
        return Reading(name, record.entries, record.live(), False)
    except (*SPOILT, PentoolsError) as error:
        unread[name] = why_not(error)
        return None


def _exactly(text: str) -> tuple[int, int]:
    moment = dt.datetime.fromisoformat(text)
    return (moment - _EPOCH) // dt.timedelta(microseconds=1), moment.toordinal() - _EPOCH.toordinal()
