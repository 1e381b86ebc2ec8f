"""The mapping of a table of old jobs: which column goes into which field, how its figures and days are written."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import msgspec

from pentools.errors import InputError, RecordError
from pentools.fields import Field
from pentools.record.appending import what_failed
from pentools.record.kinds import Kind
from pentools.record.registry import STAGES, find_stage

__all__ = ["ENCODINGS", "Column", "FileSays", "Mapping_", "Target", "read_mapping"]

ENCODINGS = ("utf-8", "latin-1", "windows-1252", "utf-16")
DELIMITERS = {"comma": ",", "semicolon": ";", "tab": "\t", "bar": "|"}
_NOT_FROM_A_TABLE = ("photo",)


class FileSays(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """How the file is written; what is left out is found out, or as the bench has it.

    Parameters
    ----------
    encoding : str
        A word of `ENCODINGS`.
    delimiter : str
        ``comma``, ``semicolon``, ``tab``, ``bar``, or the sign itself; found out from the first line by default.
    decimal_sign : str
        ``.`` or ``,``; the bench's own by default.
    date_order : str
        ``day first`` or ``month first``; the bench's own by default.
    currency : str
        Of amounts that name none; the bench's own by default.
    job : str
        The column that names the job; by default jobs are called ``old-`` and the row's number.
    entered : str
        The column with the day that the entries are to carry; by default they carry the moment of the import.
    """

    encoding: str = "utf-8"
    delimiter: str = ""
    decimal_sign: str = ""
    date_order: str = ""
    currency: str = ""
    job: str = ""
    entered: str = ""


@dataclass(frozen=True, slots=True)
class Target:
    """A field of an entry: its kind, its field, and a word that tells several entries of the kind apart."""

    kind: Kind[Any]
    field: Field
    label: str

    @property
    def entry(self) -> tuple[str, str, str]:
        """The entry that it belongs to."""
        return self.kind.stage, self.kind.key, self.label


@dataclass(frozen=True, slots=True)
class Column:
    """Where a column goes.

    Parameters
    ----------
    target : Target
        Its field.
    unit : str
        What is put behind a figure that stands alone, such as ``mm``.
    words : mapping of str to str
        What stands in the file to what is meant; the case of letters does not count.
    """

    target: Target
    unit: str
    words: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Mapping_:  # noqa: N801 - the word is the right one, and the other is taken
    """A mapping, checked against the kit's own forms.

    Parameters
    ----------
    file : FileSays
        How the file is written.
    columns : mapping of str to Column
        Name of a column to where it goes.
    fixed : tuple of (Target, str)
        What is said of every entry that a row makes, as it would be typed.
    """

    file: FileSays
    columns: Mapping[str, Column]
    fixed: tuple[tuple[Target, str], ...]


class _Long(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    to: str
    unit: str = ""
    words: dict[str, str] = {}


class _Said(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    columns: dict[str, str | _Long]
    file: FileSays = FileSays()
    fixed: dict[str, str] = {}


def read_mapping(path: Path) -> Mapping_:
    """Read a mapping.

    Raises
    ------
    InputError
        If it is no TOML, has a key that is none, or names a field that is none; the text says where, and what there is.
    RecordError
        If it cannot be read.
    """
    said = _said(path)
    if said.file.encoding.casefold() not in ENCODINGS:
        raise InputError(f"{path.name}, [file] encoding", "one of " + ", ".join(ENCODINGS), said.file.encoding)
    if said.file.decimal_sign not in ("", ".", ","):
        raise InputError(f"{path.name}, [file] decimal_sign", "a full stop or a comma", said.file.decimal_sign)
    if said.file.date_order not in ("", "day first", "month first"):
        raise InputError(f"{path.name}, [file] date_order", "“day first” or “month first”", said.file.date_order)
    delimiter = DELIMITERS.get(said.file.delimiter, said.file.delimiter)
    if len(delimiter) > 1:
        raise InputError(
            f"{path.name}, [file] delimiter", "one of " + ", ".join(DELIMITERS) + ", or one sign", delimiter
        )
    columns = {name: _column(path.name, name, one) for name, one in said.columns.items()}
    fixed = tuple((_target(f"{path.name}, [fixed] {name}", name), text) for name, text in said.fixed.items())
    _refuse_twice(path.name, columns)
    file = msgspec.structs.replace(said.file, delimiter=delimiter, encoding=said.file.encoding.casefold())
    return Mapping_(file, columns, fixed)


def _said(path: Path) -> _Said:
    try:
        content = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError as error:
        raise InputError(path.name, "a text in UTF-8", "something else") from error
    except OSError as error:
        raise RecordError(f"{path} cannot be read ({what_failed(error)}).") from error
    try:
        return msgspec.convert(tomllib.loads(content), _Said)
    except (ValueError, RecursionError, msgspec.MsgspecError) as error:
        why = (
            str(error)
            .replace("Object contains", "it has")
            .replace("Object missing", "it lacks")
            .replace("$", "the file")
        )
        raise InputError(
            path.name, "a mapping: TOML with a table [columns], and [file] and [fixed] if need be", why
        ) from error


def _column(file: str, name: str, said: str | _Long) -> Column:
    long = _Long(said) if isinstance(said, str) else said
    words = {word.strip().casefold(): meant for word, meant in long.words.items()}
    return Column(_target(f"{file}, column “{name}”", long.to), long.unit, words)


def _target(where: str, text: str) -> Target:
    """The field that ``stage/kind/field`` or ``stage/kind:label/field`` names."""
    parts = [part.strip() for part in text.split("/")]
    if len(parts) != 3:
        raise InputError(where, "a field as stage/kind/field, such as intake/arrival/pen", text)
    stage_key, kind_key, field_name = parts
    kind_key, _, label = (part.strip() for part in kind_key.partition(":"))
    if stage_key not in STAGES:
        raise InputError(f"{where}, the stage", "one of " + ", ".join(STAGES), stage_key)
    stage = find_stage(stage_key)
    kind = next((kind for kind in stage.kinds if kind.key == kind_key), None)
    if kind is None:
        raise InputError(f"{where}, the kind of entry", "one of " + ", ".join(k.key for k in stage.kinds), kind_key)
    fields = [field for field in kind.fields if field.kind not in _NOT_FROM_A_TABLE]
    found = next((field for field in fields if field.name == field_name), None)
    if found is None:
        raise InputError(f"{where}, the field", "one of " + ", ".join(field.name for field in fields), field_name)
    return Target(kind, found, label)


def _refuse_twice(file: str, columns: Mapping[str, Column]) -> None:
    seen: dict[tuple[str, ...], str] = {}
    for name, column in columns.items():
        place = (*column.target.entry, column.target.field.name)
        if place in seen:
            advice = "Tell two entries of one kind apart by a word: work log/work:nib/minutes."
            raise InputError(
                f"{file}, column “{name}”", f"another field than that of “{seen[place]}”", "/".join(place[:2]), advice
            )
        seen[place] = name
