"""A postal address taken apart: its street, its town and its post code, each as it may be met in a text."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from typing import NamedTuple

from pentools.record.wording import seen_text, spellings, words_of

__all__ = ["STREETS", "Told", "told_of_address"]

STREETS = {"str": "strasse", "st": "street", "rd": "road", "ave": "avenue", "av": "avenue", "ln": "lane", "sq": "square", "cl": "close", "ct": "court", "pl": "place"}  # fmt: skip
_ENDS = frozenset(STREETS) | frozenset(STREETS.values()) | {"way", "row", "weg", "gasse", "platz", "hill", "terrace"}
_BEGINS = frozenset({"rue", "via", "calle"})
_ENDINGS = ("strasse", "str", "weg", "gasse")
# of a street or town of one word that is looked for in any case; a shorter one with a capital
_LEAST_LETTERS = 5
_SHORTEST = 3
_MOST_IN_LINE = 40  # words
_MOST_WORDS = 5  # of a street's or town's name


class Told(NamedTuple):
    """One thing an address tells: what it is, its words as compared, and whether it is one word with a capital."""

    about: str
    words: tuple[str, ...]
    as_typed: str = ""
    joined: bool = False


def told_of_address(text: str) -> Iterator[Told]:
    """Street and house, post code and town; the country, which stands last without figures, is no secret.

    Parameters
    ----------
    text : str
        An address of one line or several, parted by commas or not at all.

    Yields
    ------
    Told
        Words in their order; ``joined`` where they may be met as one, as in a tag or a file name.
    """
    lines = [part for part in re.split(r"[\n,;]+", seen_text(text)) if part.strip()]
    for number, line in enumerate(lines):
        last = number > 1 and number == len(lines) - 1
        if last and not any(sign.isdigit() for sign in line):
            continue
        pieces = list(_pieces(line))
        for place, piece in enumerate(pieces):
            yield from _piece(piece, town=(number > 0 or place > 0) and not _is_street(piece))


def _pieces(line: str) -> Iterator[str]:
    """A line that nothing parts: what follows a street and its number, or begins with a post code, is a piece of its own."""
    start, words = 0, words_of(line)
    if len(words) > _MOST_IN_LINE:  # that is no address
        return
    for word in words:
        so_far, code = line[start : word.start], word.folded.isdigit() and len(word.folded) >= _LEAST_LETTERS - 1
        town = not word.folded[:1].isdigit() and _is_at_its_end(so_far) and not _goes_on(line[start : word.end])
        if _is_street(so_far) and (code or town):
            yield so_far
            start = word.start
    yield line[start:]


def _is_at_its_end(piece: str) -> bool:
    """Whether a street's name and its number, if it has one, are whole: ``Mill Lane``, ``Mill Lane 4 a``."""
    words = [word.folded for word in words_of(piece)]
    if len(words) > 2 and len(words[-1]) == 1 and words[-1].isalpha():
        words.pop()
    number = len(words) > 1 and words[-1][:1].isdigit()
    last = words[-1] if words else ""
    return number or last in _ENDS or last.endswith(_ENDINGS)


def _goes_on(piece: str) -> bool:
    """Whether a street's name is not at its end: ``Rue Zola``, ``Lane End Road``, ``St Anne``, ``4 b``."""
    words = [word.folded for word in words_of(piece)]
    return len(words[-1]) == 1 or words[-1] in _ENDS or not any(len(word) > 2 and word.isalpha() for word in words[:-2])


def _is_street(piece: str) -> bool:
    words = [word.folded for word in words_of(piece)]
    return any(word in _ENDS or word in _BEGINS or word.endswith(_ENDINGS) for word in words)


def _piece(piece: str, *, town: bool) -> Iterator[Told]:
    found = [word for word in words_of(piece) if word.folded != "the"]
    numbered = [any(sign.isdigit() for sign in word.folded) for word in found]
    letters = [  # the letter of a house number is none of its street
        word
        for place, word in enumerate(found)
        if not numbered[place] and (len(word.folded) > 1 or not place or not numbered[place - 1])
    ]
    about = "the owner’s town" if town else "the owner’s street"
    names = [STREETS.get(word.folded, word.folded) for word in letters]
    if not (len(names) == 1 and names[0] in STREETS.values()):
        yield from _sequences(names, about)
        if town and len(letters) == 1 and _SHORTEST <= len(names[0]) < _LEAST_LETTERS:
            yield from (Told(about, (one,), one.capitalize()) for one in spellings(letters[0].shown))
    codes = [word.folded for word, figures in zip(found, numbered, strict=True) if figures]
    for code in codes:
        mixed = not code.isdigit()
        if (town and len(code) >= _LEAST_LETTERS) or (mixed and len(code) >= _LEAST_LETTERS - 1):
            yield Told("the owner’s post code", (code,))
    for one, two in itertools.pairwise(word.folded for word in found):
        if all(any(sign.isdigit() for sign in word) for word in (one, two)) and len(one + two) >= _LEAST_LETTERS:
            yield Told("the owner’s post code", (one, two))
            if not (one + two).isdigit():
                yield Told("the owner’s post code", (one + two,))


def _sequences(names: list[str], about: str) -> Iterator[Told]:
    if len(names) == 1 and len(names[0]) >= _LEAST_LETTERS:
        yield Told(about, (names[0],))
    elif 1 < len(names) <= _MOST_WORDS:
        yield Told(about, tuple(names))
        yield Told(about, ("".join(names),), joined=True)
    if len(names) >= _SHORTEST:
        for pair in itertools.pairwise(names):
            if all(len(word) > _SHORTEST for word in pair):
                yield Told(about, pair)
                yield Told(about, ("".join(pair),), joined=True)
