"""Reference tables: CSV files, one fact a row, each with a TOML sidecar that says where it comes from."""

from __future__ import annotations

import csv
import functools
import tomllib
from pathlib import Path
from typing import Any

from pentools.errors import RecordError

__all__ = ["names", "rows", "sidecar"]

_FOLDER = Path(__file__).parent


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
