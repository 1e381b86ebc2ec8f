"""Columns packed, joined, cut and kept give back what was put in, and nothing where nothing was."""

import numpy as np
import pytest
from books.by_the_careful_reader import plain_values

from pentools.books.tables.columns import from_wire, joined, joined_pages, packed, recoded, taken, to_wire

VALUES = {
    "category": ["b", None, "a", "b"],
    "text": ["one", None, "two", "one"],
    "note": [None, "rare", None, "rare"],
    "number": [1.5, None, -2, 0.0],
    "count": [3, None, 0, 2**53],
    "yes-no": [True, None, False, True],
    "day": ["2026-03-09", None, "1969-12-31", "0001-01-01"],
    "money": ["4.50", None, "0.00", "3"],
}


@pytest.mark.parametrize("form", VALUES)
def test_each_form_gives_back_what_was_put_in(form):
    values = VALUES[form]
    column = packed(form, values)
    assert len(column) == 4
    assert plain_values(column) == values
    assert plain_values(joined([column, packed(form, []), packed(form, values[::-1])])) == values + values[::-1]
    page = {"x": column, "n": packed("count", [0, 1, 2, 3])}
    some = taken(page, np.array([3, 1, 1]))
    assert (plain_values(some["x"]), plain_values(some["n"])) == ([values[3], values[1], values[1]], [3, 1, 1])
    assert plain_values(from_wire(to_wire(page))["x"]) == values


def test_categories_are_told_apart_by_their_texts_not_their_places():
    both = joined_pages([{"x": packed("category", ["a", "b"])}, {"x": packed("category", ["b", "c", None])}])
    assert plain_values(both["x"]) == ["a", "b", "b", "c", None]
    assert plain_values(recoded(["seal", "nib", "seal"], np.array([2, 1, 0], np.int32))) == ["seal", "nib", "seal"]
    assert recoded(["seal", "nib", "seal"], np.array([2], np.int32)).texts == ["seal", "nib"]


def test_columns_of_unlike_length_are_refused():
    told = to_wire({"x": packed("count", [1, 2]), "y": packed("text", ["a"])})
    with pytest.raises(ValueError, match="one length"):
        from_wire(told)
