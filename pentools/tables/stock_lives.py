"""The table of how long things in a drawer keep, as typed rows."""

from __future__ import annotations

import msgspec

from pentools import tables

__all__ = ["StockLife", "life_of", "stock_lives"]


class StockLife(msgspec.Struct, frozen=True):
    """How long something keeps once it was opened [month], and how it is tried then."""

    key: str
    words: tuple[str, ...]
    not_words: tuple[str, ...]
    opened_months: float
    then: str
    source: str
    certainty: str


def stock_lives() -> tuple[StockLife, ...]:
    """Every row of the table."""
    return tables.read(StockLife, "stock_lives")


def life_of(words: str) -> StockLife | None:
    """The first row that an item's words mean; None where no row does."""
    said = words.casefold()
    for row in stock_lives():
        if any(word in said for word in row.words) and not any(word in said for word in row.not_words):
            return row
    return None
