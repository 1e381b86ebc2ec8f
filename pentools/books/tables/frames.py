"""Pages of the tables as pandas frames; a column's form says its type."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import TYPE_CHECKING, Any

import numpy as np

from pentools.books.tables.columns import NO_COUNT, NO_DAY, Packed, Page

if TYPE_CHECKING:
    import pandas as pd

__all__ = ["DTYPES", "frame"]

DTYPES = {
    "category": "category", "text": "string", "note": "string", "number": "float64", "count": "Int64",
    "yes-no": "boolean", "day": "datetime64[s]", "moment": "datetime64[us, UTC]", "money": "object (Decimal)",
}  # fmt: skip
"""The type of a column by its form; what was not entered is NA (NaN, NaT; None for money), never nought."""


def frame(page: Page, columns: Sequence[str] | None = None) -> pd.DataFrame:
    """A page as a frame.

    Parameters
    ----------
    columns : sequence of str or None
        Which columns, in which order; all by default.
    """
    import pandas as pd

    return pd.DataFrame({name: _series(page[name]) for name in columns or page}, copy=False)


def _series(column: Packed) -> Any:  # noqa: PLR0911 - one line a form
    import pandas as pd

    match column.form:
        case "category":
            return _categories(column)
        case "text" | "note":
            return pd.array(_texts(column), dtype=pd.StringDtype("python"))
        case "count":
            missing = column.numbers == NO_COUNT
            return pd.arrays.IntegerArray(np.where(missing, 0, column.numbers), missing)
        case "yes-no":
            return pd.arrays.BooleanArray(column.numbers == 1, column.numbers < 0)
        case "day":
            days = column.numbers.astype("datetime64[D]").astype("datetime64[s]")
            days[column.numbers == NO_DAY] = np.datetime64("NaT")
            return pd.Series(days)
        case "moment":
            return pd.Series(column.numbers.astype("datetime64[us]")).dt.tz_localize("UTC")
        case "money":
            return pd.Series([None if text is None else Decimal(text) for text in column.texts], dtype=object)
        case _:
            return pd.Series(column.numbers)


def _categories(column: Packed) -> Any:
    """The texts that there are, in their order: the same whatever was read first."""
    import pandas as pd

    texts = [str(text) for text in column.texts]
    order = sorted(range(len(texts)), key=texts.__getitem__)
    places = np.empty(len(texts) + 1, np.int32)
    places[order], places[-1] = np.arange(len(texts)), -1
    return pd.Categorical.from_codes(places[column.numbers], [texts[place] for place in order])


def _texts(column: Packed) -> Any:
    import pandas as pd

    if column.array is None:
        return np.array(column.texts, object)
    return np.array([*column.texts, pd.NA], object)[column.array]
