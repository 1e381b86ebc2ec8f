"""The rows of a table of old jobs: read as the file is written, each made into entries by the kit's own readers."""

from __future__ import annotations

import contextlib
import csv
import datetime as dt
import hashlib
import io
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import msgspec

from pentools.books.exchange.import_mapping import Column, FileSays, Mapping_, Target
from pentools.errors import InputError, RecordError
from pentools.fields import Field, Value
from pentools.record.appending import what_failed
from pentools.record.bench import MOST_LETTERS, Bench
from pentools.record.entries import Entry
from pentools.record.kinds import Kind

__all__ = ["Fault", "Row", "Table", "entries_of", "job_name_of", "read_table"]

_FIGURE = re.compile(r"[+-]?[\d.,  ]*\d")
_FIRST_YEAR = 1970  # of a record's clock
_FIGURES = ("quantity", "quantities", "number", "count")
_COMMA, _POINT = re.compile(r"(?<=\d),(?=\d)"), re.compile(r"\d\.\d")
_DELIMITERS = (";", "\t", ",", "|")


@dataclass(frozen=True, slots=True)
class Row:
    """One row: its number in the file as an editor counts lines of it, and its cells by column."""

    number: int
    cells: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Fault:
    """Why a row cannot be taken: the column, empty where it is the row as a whole, and the reason as a sentence."""

    row: int
    column: str
    why: str


@dataclass(frozen=True, slots=True)
class Table:
    """A file's columns, its rows, and the rows that are not whole."""

    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    faults: tuple[Fault, ...]


def read_table(path: Path, says: FileSays) -> Table:
    """Read a table of comma-separated values.

    Raises
    ------
    InputError
        If it is not of the encoding that is said, has no head, or names a column twice.
    RecordError
        If it cannot be read.

    Notes
    -----
    A byte-order mark is passed over. Rows without any content are passed by; one with more cells than the head, or with
    fewer, is a fault of its own.
    """
    text = _text_of(path, says.encoding)
    delimiter = says.delimiter or _delimiter_of(text)
    try:
        reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
        head = [cell.strip() for cell in next(reader, [])]
        _check_head(path.name, head)
        rows: list[Row] = []
        faults: list[Fault] = []
        number = reader.line_num + 1
        for cells in reader:
            stripped = [cell.strip() for cell in cells]
            if any(stripped) and len(stripped) != len(head):
                faults.append(Fault(number, "", f"It has {len(stripped)} cells, and the head has {len(head)}."))
            elif any(stripped):
                rows.append(Row(number, dict(zip(head, stripped, strict=True))))
            number = reader.line_num + 1
    except csv.Error as error:
        raise InputError(
            path.name, "a table of comma-separated values", f"{error}, near line {reader.line_num}"
        ) from error
    return Table(tuple(head), tuple(rows), tuple(faults))


def _text_of(path: Path, encoding: str) -> str:
    try:
        content = path.read_bytes()
    except OSError as error:
        raise RecordError(f"{path} cannot be read ({what_failed(error)}).") from error
    try:
        return content.decode("utf-8-sig" if encoding == "utf-8" else encoding)
    except UnicodeError as error:
        line = content[: getattr(error, "start", 0)].count(b"\n") + 1
        advice = f'In line {line} it is not. Say another in [file]: encoding = "windows-1252" or "latin-1".'
        raise InputError(path.name, f"text in {encoding.upper()}", "something else", advice) from error


def _delimiter_of(text: str) -> str:
    """The sign that stands most often in the first line, outside of quotes; a comma where none does."""
    first = re.sub(r'"[^"]*"', "", text.lstrip("\r\n").split("\n", 1)[0])
    best = max(_DELIMITERS, key=first.count)
    return best if first.count(best) else ","


def _check_head(name: str, head: Sequence[str]) -> None:
    if not any(head):
        raise InputError(name, "a table whose first line names its columns", "an empty one")
    twice = [cell for cell in head if cell and head.count(cell) > 1]
    if twice:
        raise InputError(f"{name}, its first line", "a name once", twice[0], "Name one of the two columns otherwise.")


def job_name_of(text: str, number: int) -> str:
    """What a row's job is called: what stands in its column, made fit for a folder; ``old-`` and its row's number else."""
    name = re.sub(r"[^A-Za-z0-9_]+", "-", text).strip("-_")[:MOST_LETTERS].strip("-_")
    return name or f"old-{number:04d}"


def entries_of(
    row: Row, mapping: Mapping_, bench: Bench, note: str, moment: dt.datetime
) -> tuple[list[Entry], list[Fault]]:
    """What a row says, as entries of the kit's own kinds.

    Parameters
    ----------
    note : str
        The remark that each entry gets.
    moment : datetime
        The moment of the import, with zone.

    Returns
    -------
    entries : list of Entry
        In the order of the kinds as the mapping names them first. Their ids are made from what the row says, so that the
        same row makes the same ids again.
    faults : list of Fault
        Why it cannot be taken; then no entry counts.
    """
    customs = _customs(bench, mapping.file)
    texts: dict[tuple[str, str, str], dict[str, str]] = {}
    kinds: dict[tuple[str, str, str], Kind[Any]] = {}
    columns: dict[tuple[str, str, str], dict[str, str]] = {}
    for name, column in mapping.columns.items():
        place = column.target.entry
        kinds[place] = column.target.kind
        columns.setdefault(place, {})[column.target.field.name] = name
        if row.cells[name]:
            texts.setdefault(place, {})[column.target.field.name] = _typed(column, row.cells[name])
    at, faults = _at(row, mapping.file, customs, moment)
    entries = []
    for place, given in texts.items():
        _fix(place, given, mapping.fixed)
        values, errors = _read(kinds[place], given, customs)
        faults += [Fault(row.number, columns[place].get(name, ""), str(error)) for name, error in errors.items()]
        if not errors:
            entries.append(_entry(row, place, kinds[place].to_json(values), at, note))
    if not texts and not faults:
        faults.append(Fault(row.number, "", "None of its columns that go somewhere has anything in it."))
    return ([] if faults else entries), faults


def _customs(bench: Bench, says: FileSays) -> tuple[str, str, str]:
    currency = says.currency or bench.text("money", "currency")
    return (
        currency.upper(),
        says.decimal_sign or bench.text("bench", "decimal_sign"),
        says.date_order or bench.text("bench", "date_order"),
    )


def _read(
    kind: Kind[Any], given: Mapping[str, str], customs: tuple[str, str, str]
) -> tuple[dict[str, Value], dict[str, InputError]]:
    """As `Kind.read`; a full stop in a file whose decimal sign is the comma is asked about, and only there."""
    values: dict[str, Value] = {}
    errors: dict[str, InputError] = {}
    for field in kind.fields:
        try:
            values[field.name] = _value(field, given.get(field.name, ""), customs)
        except InputError as error:
            errors[field.name] = error
    return values, errors


def _value(field: Field, text: str, customs: tuple[str, str, str]) -> Value:
    money, sign, order = customs
    if sign == "," and field.kind in _FIGURES and not _POINT.search(text):
        with contextlib.suppress(InputError):  # which the text as it stands is then refused with
            return field.read(_COMMA.sub(".", text), money, ".", order)
    return field.read(text, money, sign, order)


def _typed(column: Column, cell: str) -> str:
    """A cell as it would be typed into the field's box."""
    meant = column.words.get(cell.casefold())
    if meant is not None:
        return meant
    if column.unit and _FIGURE.fullmatch(cell):
        return f"{cell} {column.unit}"
    return cell


def _fix(place: tuple[str, str, str], given: dict[str, str], fixed: tuple[tuple[Target, str], ...]) -> None:
    for target, text in fixed:
        if target.entry == place:
            given.setdefault(target.field.name, text)


def _at(
    row: Row, says: FileSays, customs: tuple[str, str, str], moment: dt.datetime
) -> tuple[dt.datetime, list[Fault]]:
    """The moment that the entries carry: noon of the day given, in the bench's own zone."""
    text = row.cells.get(says.entered, "") if says.entered else ""
    if not text:
        return moment, []
    try:
        day = dt.date.fromisoformat(str(Field(says.entered, says.entered, "date").read(text, *customs)))
    except InputError as error:
        return moment, [Fault(row.number, says.entered, str(error))]
    if day > moment.date() or day.year < _FIRST_YEAR:
        why = "This day is still to come." if day > moment.date() else f"No entry carries a day before {_FIRST_YEAR}."
        return moment, [Fault(row.number, says.entered, why)]
    return dt.datetime.combine(day, dt.time(12)).astimezone(), []


def _entry(row: Row, place: tuple[str, str, str], data: dict[str, Any], at: dt.datetime, note: str) -> Entry:
    stage, kind, label = place
    said = msgspec.json.encode([stage, kind, label, data, sorted(row.cells.items())], order="deterministic")
    id_ = hashlib.blake2b(said, digest_size=16).hexdigest()
    return Entry(id=id_, at=at.isoformat(), stage=stage, kind=kind, data=data, note=note)
