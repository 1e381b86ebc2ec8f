"""Reference tables: CSV files, one fact a row, each with a TOML sidecar that says where it comes from."""

from __future__ import annotations

import csv
import functools
import tomllib
import types
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, TypeVar, Union, get_args, get_origin

import msgspec

from pentools.errors import RecordError

__all__ = ["convert_rows", "names", "read", "rows", "sidecar"]

_FOLDER = Path(__file__).parent
_YES_NO = {"yes": True, "no": False}

Row = TypeVar("Row", bound=msgspec.Struct)


def names() -> tuple[str, ...]:
    """The names of all tables, sorted."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("*.csv")))


@functools.lru_cache(maxsize=64)
def rows(name: str) -> tuple[dict[str, str], ...]:
    """All rows of a table, as text.

    Parameters
    ----------
    name : str
        The table's name (its file name without ``.csv``).

    Returns
    -------
    tuple of dict
        One dict a row, column name to text; treat it as read-only.

    Raises
    ------
    RecordError
        If there is no such table.
    """
    path = _FOLDER / f"{name}.csv"
    if name not in names():
        raise RecordError(f"There is no table “{name}”. There are: {', '.join(names())}.")
    with path.open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


@functools.lru_cache(maxsize=64)
def sidecar(name: str) -> dict[str, Any]:
    """What a table is: title, edition, columns (unit and meaning of each), sources (each with its kind)."""
    path = _FOLDER / f"{name}.toml"
    if not path.is_file():
        raise RecordError(f"The table “{name}” has no sidecar.")
    return tomllib.loads(path.read_text(encoding="utf-8"))


@functools.cache
def read(row: type[Row], name: str) -> tuple[Row, ...]:
    """All rows of a table as typed structures.

    An empty cell is None where the structure allows it, or the structure's default; ``a; b`` is a tuple where it
    wants one; ``yes`` and ``no`` are read where it wants a bool. Columns that it does not name are left alone.

    Parameters
    ----------
    row : type of msgspec.Struct
        One row: an attribute a column, of the column's name.
    name : str
        The table's name (its file name without ``.csv``).

    Returns
    -------
    tuple of Row
        In the file's order.

    Raises
    ------
    RecordError
        If there is no such table, or a cell is not what the structure wants; it names file, row and column.

    Examples
    --------
    >>> class Year(msgspec.Struct, frozen=True):
    ...     year: int
    ...     index: float
    >>> read(Year, "cpi_us")[0]
    Year(year=1913, index=9.9)
    """
    return convert_rows(row, rows(name), f"{name}.csv")


def convert_rows(row: type[Row], found: Iterable[Mapping[str, str]], file: str) -> tuple[Row, ...]:
    """Rows of text as typed structures; see `read`.

    Parameters
    ----------
    row : type of msgspec.Struct
        One row.
    found : iterable of mapping of str to str
        Column name to text.
    file : str
        What the error calls the file.

    Returns
    -------
    tuple of Row
        In the order given.

    Raises
    ------
    RecordError
        If a cell is not what the structure wants; it names file, row (the heading is row 1) and column.
    """
    columns = msgspec.structs.fields(row)
    made = []
    for number, texts in enumerate(found, start=2):
        cells: dict[str, Any] = {}
        for column in columns:
            name = column.encode_name
            if name not in texts:
                if column.required:
                    raise RecordError(f"{file} has no column “{name}”.")
                continue
            text = (texts[name] or "").strip()
            wanted = _choices(column.type)
            if text or not (column.default is not msgspec.NODEFAULT or type(None) in wanted):
                cells[name] = _cell(text, wanted)
            elif column.required:
                cells[name] = None
        try:
            made.append(msgspec.convert(cells, type=row, strict=False))
        except msgspec.ValidationError as error:
            wrong, _, place = str(error).partition(" - at `$.")
            where = place.rstrip("`").split("[")[0] or "?"
            raise RecordError(
                f"{file}, row {number}, column “{where}”: {wrong}; there is “{texts.get(where, '')}”."
            ) from None
    return tuple(made)


def _choices(kind: Any) -> tuple[Any, ...]:
    """The types that a column may have: those of a union, else its one type."""
    return get_args(kind) if get_origin(kind) in (Union, types.UnionType) else (kind,)


def _cell(text: str, wanted: tuple[Any, ...]) -> Any:
    if any(get_origin(kind) is tuple for kind in wanted):
        return tuple(part.strip() for part in text.split(";") if part.strip())
    if bool in wanted:
        return _YES_NO.get(text.casefold(), text)
    return text
