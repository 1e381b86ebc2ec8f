"""The decimal sign that is shown, as the bench wants it: numbers inside are never touched, only what is read."""

from __future__ import annotations

import re

__all__ = ["in_markup", "in_text"]

# a decimal number that stands by itself: not a part of a word, a version or a file's name
_DECIMAL = re.compile(r"(?<![\w.])(\d+)\.(\d+)(?![\w.]*[A-Za-z_]\.|\.?\d|\.[A-Za-z])")
_BETWEEN_TAGS = re.compile(r">([^<>]+)<")


def in_text(text: str, sign: str) -> str:
    """A text with its decimal numbers written with a sign.

    Parameters
    ----------
    text : str
        Plain text.
    sign : {".", ","}
        The decimal sign; anything but a comma leaves the text as it is.

    Returns
    -------
    str
        The text.

    Examples
    --------
    >>> in_text("It draws 1.75 mL ± 0.01 (version 1.2.3).", ",")
    'It draws 1,75 mL ± 0,01 (version 1.2.3).'
    """
    return _DECIMAL.sub(r"\1,\2", text) if sign == "," else text


def in_markup(markup: str, sign: str) -> str:
    """HTML or SVG with the decimal numbers of its texts written with a sign; tags and attributes stay.

    Parameters
    ----------
    markup : str
        HTML or SVG of our own making.
    sign : {".", ","}
        The decimal sign.

    Returns
    -------
    str
        The markup.
    """
    if sign != ",":
        return markup
    return _BETWEEN_TAGS.sub(lambda found: f">{in_text(found[1], sign)}<", markup)
