"""The columns of the tables over all jobs: packed as they are read, joined, taken apart and kept; pandas comes last."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from typing import Any, Literal

import msgspec
import numpy as np
import numpy.typing as npt

__all__ = [
    "NO_COUNT",
    "NO_DAY",
    "ColumnForm",
    "Packed",
    "Page",
    "from_wire",
    "joined",
    "joined_pages",
    "packed",
    "recoded",
    "taken",
    "to_wire",
]

ColumnForm = Literal["category", "text", "note", "number", "count", "yes-no", "day", "moment", "money"]
"""How a column is kept: a text of few kinds, any text, a text that most rows have none of, a float, a whole number, true or false, a day, a moment in
microseconds of universal time, an amount as its text."""

NO_COUNT = np.iinfo(np.int64).min
NO_DAY = np.iinfo(np.int32).min
_TYPES: dict[str, Any] = {
    "category": np.int32, "note": np.int32, "number": np.float64, "count": np.int64, "yes-no": np.int8, "day": np.int32,
    "moment": np.int64,
}  # fmt: skip
_EPOCH = dt.date(1970, 1, 1).toordinal()


class Packed(msgspec.Struct, frozen=True):
    """A column: numbers side by side, or texts.

    Parameters
    ----------
    form : ColumnForm
        What it holds.
    array : ndarray or None
        Its numbers; of a category the places in `texts`. Not entered is NaN, -1 or the least number there is.
    texts : list of str or None
        Its texts, or what a category may be; None where not entered.
    """

    form: ColumnForm
    array: npt.NDArray[Any] | None
    texts: list[str | None]

    @property
    def numbers(self) -> npt.NDArray[Any]:
        """Its numbers, of a column that has some."""
        assert self.array is not None
        return self.array

    def __len__(self) -> int:
        return len(self.texts) if self.array is None else len(self.array)


Page = dict[str, Packed]
"""Some rows of a table: its columns by name."""


def packed(form: ColumnForm, values: Sequence[Any]) -> Packed:
    """Pack plain values.

    Parameters
    ----------
    values : sequence
        Texts, numbers, truth values or days (a `date` or its text); None where not entered. A moment is a number already.
    """
    if form in ("text", "money"):
        return Packed(form, None, list(values))
    if form in ("category", "note"):
        found = dict.fromkeys(values)
        found.pop(None, None)
        places = {value: place for place, value in enumerate(found)} | {None: -1}
        return Packed(form, np.fromiter(map(places.__getitem__, values), np.int32, len(values)), list(found))
    return Packed(form, np.array(_numbers(form, values), _TYPES[form]), [])


def recoded(texts: Sequence[str], codes: npt.NDArray[np.int32]) -> Packed:
    """A category from places in texts, of which some may be alike."""
    found = list(dict.fromkeys(texts))
    return Packed("category", np.array([found.index(text) for text in texts], np.int32)[codes], list(found))


def _numbers(form: ColumnForm, values: Sequence[Any]) -> Sequence[Any]:
    match form:
        case "count":
            return [NO_COUNT if value is None else value for value in values]
        case "yes-no":
            return [-1 if value is None else value for value in values]
        case "day":
            return [_day(value) for value in values]
        case _:  # numpy takes None for NaN
            return values


def _day(value: dt.date | str | None) -> int:
    if value is None:
        return NO_DAY
    return (dt.date.fromisoformat(value) if isinstance(value, str) else value).toordinal() - _EPOCH


def taken(page: Page, rows: npt.NDArray[Any]) -> Page:
    """Some rows of a page in an order of their own.

    Parameters
    ----------
    rows : ndarray of int
        Their places.
    """
    places = rows.tolist()
    return {
        name: Packed(one.form, None, [one.texts[row] for row in places])
        if one.array is None
        else Packed(one.form, one.array[rows], one.texts)
        for name, one in page.items()
    }


def joined_pages(pages: Sequence[Page]) -> Page:
    """Pages of one table, one below the other."""
    return {name: joined([page[name] for page in pages]) for name in pages[0]}


def joined(parts: Sequence[Packed]) -> Packed:
    """Columns of one form, one below the other."""
    form, first = parts[0].form, parts[0]
    if len(parts) == 1:
        return first
    if first.array is None:
        return Packed(form, None, [text for part in parts for text in part.texts])
    if form not in ("category", "note"):
        return Packed(form, np.concatenate([part.numbers for part in parts]), [])
    places: dict[str | None, int] = {}
    arrays = []
    for part in parts:
        # one place more at the end: -1 takes it, and stays -1
        where = [places.setdefault(text, len(places)) for text in part.texts]
        arrays.append(np.array([*where, -1], np.int32)[part.numbers])
    return Packed(form, np.concatenate(arrays), list(places))


def to_wire(page: Page) -> dict[str, Any]:
    """A page as plain values that can be written down."""
    return {
        name: (one.form, b"" if one.array is None else one.array.tobytes(), one.texts) for name, one in page.items()
    }


def from_wire(told: Mapping[str, tuple[ColumnForm, bytes, list[str | None]]]) -> Page:
    """A page back from plain values.

    Raises
    ------
    ValueError
        If its columns do not fit each other.
    """
    page = {
        name: Packed(form, None, texts)
        if form in ("text", "money")
        else Packed(form, np.frombuffer(data, _TYPES[form]), texts)
        for name, (form, data, texts) in told.items()
    }
    if len({len(one) for one in page.values()}) > 1:
        raise ValueError("the columns are not of one length")
    return page
