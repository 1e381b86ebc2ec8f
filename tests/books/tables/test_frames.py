"""Frames hold the values of the pages in documented types, and NA where nothing was entered."""

from decimal import Decimal

import pandas as pd
import pytest
from books.tables.test_columns import VALUES

from pentools.books.tables.columns import packed
from pentools.books.tables.frames import DTYPES, frame


@pytest.mark.parametrize("form", [*VALUES, "moment"])
def test_each_form_is_of_its_type_and_not_entered_is_na(form):
    values = VALUES.get(form) or [0, 1_773_217_878_250_000, -1, 5]
    table = frame({"x": packed(form, values)})
    assert str(table["x"].dtype) == DTYPES[form].split(" (")[0]
    missing = [value is None for value in values]
    assert table["x"].isna().tolist() == missing
    told = [value for value, none in zip(table["x"], missing, strict=True) if not none]
    wanted = [value for value in values if value is not None]
    if form == "day":
        assert [str(value)[:10] for value in told] == wanted
    elif form == "moment":
        assert told[1] == pd.Timestamp("2026-03-11T08:31:18.250Z")
    elif form == "money":
        assert told == [Decimal(value) for value in wanted]
        assert all(isinstance(value, Decimal) for value in told)
    else:
        assert told == wanted


def test_categories_are_in_their_order_whatever_was_read_first():
    first, second = (frame({"x": packed("category", list(texts))})["x"] for texts in ("bca", "acb"))
    assert list(first.cat.categories) == list(second.cat.categories) == ["a", "b", "c"]
    assert list(first) == ["b", "c", "a"]


def test_some_columns_in_an_order_of_their_own():
    page = {name: packed("count", [1]) for name in "abc"}
    assert list(frame(page, ["c", "a"])) == ["c", "a"]
