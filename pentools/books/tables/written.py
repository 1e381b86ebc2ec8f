"""The tables written for other programs: CSV, a workbook, Parquet, JSON; nothing in them runs when they are opened."""

from __future__ import annotations

import importlib.util
import io
from collections.abc import Iterator, Mapping
from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING, Any

from pentools.books.cells import defused
from pentools.errors import InputError, RecordError
from pentools.record.appending import put_in_place, what_failed

if TYPE_CHECKING:
    import pandas as pd

__all__ = ["plain_rows", "write_csv", "write_parquet", "write_workbook"]

MOST_ROWS = 1_048_575  # of a sheet, below its header
MOST_LETTERS = 32_767  # of a cell
WIDEST = 60
_FIRST_DAY = "1900-03-01"  # a workbook's calendar is wrong before it, so that an earlier day is written as text


def write_csv(frame: pd.DataFrame, path: Path) -> bool:
    """Write one table as CSV: UTF-8 with a mark, commas, a full stop as decimal sign, days as 2026-03-09.

    Parameters
    ----------
    path : Path
        A name that ends in .csv.

    Returns
    -------
    bool
        Whether a file of that name was replaced.

    Raises
    ------
    InputError
        If the name has another ending.
    RecordError
        If it cannot be written; a file of that name is then as it was.
    """
    text = _defused(frame).to_csv(index=False, lineterminator="\r\n")
    return _put(path, ".csv", text.encode("utf-8-sig", "replace"))


def write_workbook(frames: Mapping[str, pd.DataFrame], path: Path) -> bool:
    """Write tables as sheets of a workbook, each with its header held in sight and columns as wide as what they hold.

    Parameters
    ----------
    path : Path
        A name that ends in .xlsx.

    Returns
    -------
    bool
        Whether a file of that name was replaced.

    Raises
    ------
    InputError, RecordError
        As `write_csv` does.

    Notes
    -----
    A table of more rows than a sheet takes goes on in a second one. A text of more than 32,767 letters is cut, with an
    ellipsis at its end; characters that no cell may hold are taken for a sign of their own (U+FFFD).
    """
    import pandas as pd

    held = io.BytesIO()
    with pd.ExcelWriter(
        held, engine="openpyxl", date_format="YYYY-MM-DD", datetime_format="YYYY-MM-DD HH:MM:SS"
    ) as book:
        for name, frame in frames.items():
            for sheet, part in _sheets(name, _for_cells(frame)):
                part.to_excel(book, sheet_name=sheet, index=False, freeze_panes=(1, 1))
                _widen(book.sheets[sheet], part)
    return _put(path, ".xlsx", held.getvalue())


def write_parquet(frames: Mapping[str, pd.DataFrame], folder: Path) -> list[Path]:
    """Write tables as Parquet, a file each: days as dates, moments in universal time, money as decimals.

    Parameters
    ----------
    folder : Path
        Where; it is made if need be.

    Returns
    -------
    list of Path
        The files; those of the same names were replaced.

    Raises
    ------
    InputError
        If the library that writes them is not installed.
    RecordError
        If they cannot be written.
    """
    if importlib.util.find_spec("pyarrow") is None:
        raise InputError(
            "parquet",
            "asked for where pyarrow is installed",
            str(folder),
            "Install it: pip install 'pentools[columns]'",
        )
    import pyarrow.parquet as pq

    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise RecordError(f"The folder {folder} cannot be made ({what_failed(error)}).") from error
    files = []
    for name, frame in frames.items():
        held = io.BytesIO()
        pq.write_table(_arrow(frame), held)
        files.append(folder / f"{name}.parquet")
        _put(files[-1], ".parquet", held.getvalue())
    return files


def plain_rows(frame: pd.DataFrame) -> Iterator[dict[str, Any]]:
    """The rows of a table as plain values: texts, numbers, truth values, `date`, `datetime` and `Decimal`, or None."""
    columns = {name: _plain(frame[name]) for name in frame}
    for values in zip(*columns.values(), strict=True):
        yield dict(zip(columns, values, strict=True))


def _plain(column: pd.Series[Any]) -> list[Any]:
    kind = str(column.dtype)
    if kind == "datetime64[s]":
        values = list(column.dt.date)
    elif kind.startswith("datetime64"):
        values = [None if none else value.to_pydatetime() for value, none in zip(column, column.isna(), strict=True)]
    else:
        values = column.astype(object).tolist()
    return [None if none else value for value, none in zip(values, column.isna(), strict=True)]


def _put(path: Path, ending: str, content: bytes) -> bool:
    if path.suffix.casefold() != ending:
        raise InputError("file", f"a name that ends in {ending}", str(path))
    there = path.exists()
    try:
        put_in_place(path, content)
    except OSError as error:
        raise RecordError(f"{path} cannot be written ({what_failed(error)}).") from error
    return there


def _defused(frame: pd.DataFrame) -> pd.DataFrame:
    import pandas as pd

    found = {}
    for name in frame:
        column = frame[name]
        if isinstance(column.dtype, pd.CategoricalDtype):
            column = column.astype(pd.StringDtype("python"))
        text = isinstance(column.dtype, pd.StringDtype)
        found[name] = column.map(defused, na_action="ignore") if text else column
    return pd.DataFrame(found)


# workbooks ---------------------------------------------------------------------------------------------------


def _sheets(name: str, frame: pd.DataFrame) -> Iterator[tuple[str, pd.DataFrame]]:
    for number, first in enumerate(range(0, max(len(frame), 1), MOST_ROWS), 1):
        yield (name if number == 1 else f"{name} {number}"), frame.iloc[first : first + MOST_ROWS]


def _for_cells(frame: pd.DataFrame) -> pd.DataFrame:
    import pandas as pd

    found = {}
    for name, column in _defused(frame).items():
        kind = str(column.dtype)
        if kind == "datetime64[s]":
            found[name] = pd.Series([_day(day) for day in _plain(column)], dtype=object)
        elif kind.startswith("datetime64"):
            found[name] = column.dt.tz_localize(None)
        elif isinstance(column.dtype, pd.StringDtype) or column.dtype == object:
            found[name] = column.map(_for_cell, na_action="ignore")
        else:
            found[name] = column
    return pd.DataFrame(found)


def _day(day: Any) -> Any:
    return day if day is None or day.isoformat() >= _FIRST_DAY else day.isoformat()


def _for_cell(value: Any) -> Any:
    """A text that a cell may hold; an amount as the number that a cell has for it."""
    from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE

    if not isinstance(value, str):
        return float(value) if isinstance(value, Decimal) else value
    clean: str = ILLEGAL_CHARACTERS_RE.sub("\ufffd", value)
    return clean if len(clean) <= MOST_LETTERS else clean[: MOST_LETTERS - 1] + "…"


def _widen(sheet: Any, frame: pd.DataFrame) -> None:
    from openpyxl.utils import get_column_letter

    for number, name in enumerate(frame, 1):
        longest = max((len(str(value)) for value in frame[name].head(500).dropna()), default=0)
        sheet.column_dimensions[get_column_letter(number)].width = min(max(longest, len(str(name))) + 2, WIDEST)


# Parquet -----------------------------------------------------------------------------------------------------


def _arrow(frame: pd.DataFrame) -> Any:
    import pyarrow as pa

    return pa.table({name: _arrow_column(frame[name]) for name in frame})


def _arrow_column(column: pd.Series[Any]) -> Any:
    import pandas as pd
    import pyarrow as pa

    kind = str(column.dtype)
    if isinstance(column.dtype, pd.CategoricalDtype):
        texts = pa.array([str(text) for text in column.cat.categories], pa.string())
        codes = column.cat.codes.to_numpy()
        return pa.DictionaryArray.from_arrays(pa.array(codes.astype("int32"), mask=codes < 0), texts)
    types = {"string": pa.string(), "float64": pa.float64(), "Int64": pa.int64(), "boolean": pa.bool_()}
    if kind in types:
        return pa.array(column, types[kind], from_pandas=True)
    if kind == "datetime64[s]":
        return pa.array(column, pa.timestamp("s"), from_pandas=True).cast(pa.date32())
    if kind.startswith("datetime64"):
        return pa.array(column, pa.timestamp("us", "UTC"), from_pandas=True)
    amounts: list[Decimal | None] = _plain(column)
    places = max((-int(amount.as_tuple().exponent) for amount in amounts if amount is not None), default=0)
    return pa.array(amounts, pa.decimal128(38, max(places, 4)))
