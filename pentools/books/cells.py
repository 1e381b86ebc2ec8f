"""Texts in the cells of a spreadsheet: nothing in them runs when the file is opened."""

from __future__ import annotations

__all__ = ["RUNS", "defused"]

RUNS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""What a spreadsheet takes for the start of a formula."""


def defused(text: str) -> str:
    """A text that a spreadsheet does not take for a formula: where it would, an apostrophe stands before it.

    Examples
    --------
    >>> defused("=1+1"), defused("9.6 mm")
    ("'=1+1", '9.6 mm')
    """
    return f"'{text}" if text.startswith(RUNS) or text.lstrip().startswith(RUNS) else text
