"""What findings say: one file a subject, plain data, so that a wording is changed once and in one place.

A file holds ``WORDS``: topic to template. A template is a text with ``{name:.2f}`` where a value goes, or a function
that takes the values by name and gives the text. A topic said in several ways has a variant after a colon
(``squeeze-high:may``); whoever asks for the topic does not see it.
"""

from __future__ import annotations

import functools
import importlib
import re
from collections.abc import Callable, Mapping, Sequence
from typing import TypeAlias

from pentools.numbers import PlainFormatter

__all__ = [
    "CERTAINTY",
    "KEY",
    "LANGUAGES",
    "LEVEL_SIGNS",
    "LEVEL_WORDS",
    "MONTHS",
    "Said",
    "Template",
    "month_number",
    "phrase",
    "phrasebook",
]

Said: TypeAlias = str | float | bool | Sequence[str] | None
"""What a template is filled with."""

Template: TypeAlias = str | Callable[..., str]

KEY = re.compile(r"(?P<subject>[a-z]+)\.(?P<topic>[a-z0-9][a-z0-9 _-]*)(?::(?P<variant>[a-z0-9][a-z0-9 _-]*))?")
"""``subject.topic`` or ``subject.topic:variant``."""

LANGUAGES = ("en",)
"""The languages these words are written in; a page says no other of itself."""

LEVEL_WORDS: Mapping[str, str] = {"ok": "Fine", "note": "Note", "warning": "Look again", "stop": "Stop"}
"""A finding's level in a word, the same in panels, pages and on the command line."""

LEVEL_SIGNS: Mapping[str, str] = {"ok": "✓", "note": "·", "warning": "▲", "stop": "■"}

CERTAINTY: Mapping[str, str] = {
    "measured here": "measured at this bench",
    "standard": "from a standard",
    "primary": "read in the source",
    "read": "read in the source",
    "open data": "from open data",
    "computed": "worked out",
    "derived": "worked out",
    "derived here": "worked out here",
    "secondary": "seen at second hand",
    "trade": "seen on a trade page",
    "seen-trade": "seen on a trade page",
    "scope seen only": "only its scope was seen",
    "rough": "rough",
    "common practice": "common practice",
    "from memory": "from memory",
    "judged": "judged",
}
"""How sure a table's row is, in the words that people are shown."""

MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December")  # fmt: skip

_FORMATTER = PlainFormatter()


@functools.cache
def phrasebook(subject: str) -> Mapping[str, Template]:
    """The words of a subject.

    Parameters
    ----------
    subject : str
        A file of this folder, such as ``seal``.

    Returns
    -------
    mapping of str to Template
        Topic, or ``topic:variant``, to template.
    """
    book: Mapping[str, Template] = importlib.import_module(f"pentools.words.{subject}").WORDS
    return book


def phrase(key: str, values: Mapping[str, Said]) -> str:
    """The words of a key with their values filled in.

    Parameters
    ----------
    key : str
        ``subject.topic`` or ``subject.topic:variant``.
    values : mapping of str to Said
        What the template asks for, by name; more is no harm to a text.

    Returns
    -------
    str
        One or two plain sentences.

    Raises
    ------
    KeyError
        If there are no such words, or a value is missing.
    """
    subject, _, topic = key.partition(".")
    template = phrasebook(subject)[topic]
    return template(**values) if callable(template) else _FORMATTER.vformat(template, (), values)


def month_number(name: str) -> int:
    """The number of a month by its name or the three or more letters it begins with, 1 to 12.

    Raises
    ------
    ValueError
        If it is no month.
    """
    bare = name.strip(". ").casefold()
    found = [number for number, month in enumerate(MONTHS, start=1) if month.casefold().startswith(bare)]
    if len(bare) < 3 or len(found) != 1:
        raise ValueError(f"{name} is no month")
    return found[0]
