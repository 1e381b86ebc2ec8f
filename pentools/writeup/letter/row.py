"""A row of the letter's first page, and texts cut to what a page can carry."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass

from pentools.writeup.words import sentence

__all__ = ["Row", "sentences", "up_to"]

# a full stop after a lone capital or a usual abbreviation ends no sentence
_END = re.compile(r"(?<![A-Z])(?<!\bno)(?<!\bNo)(?<!\bca)(?<!\bc)(?<!\be\.g)(?<!\bi\.e)[.!?…]+[”’\"')]*\s+(?=[^a-z\s])")


@dataclass(frozen=True, slots=True)
class Row:
    """What stands beside one label.

    Parameters
    ----------
    label : str
        Such as "What was done".
    lines : tuple of str
        Its paragraphs, one or more.
    big : str
        What stands large before the first of them, such as a volume with its ±.
    """

    label: str
    lines: tuple[str, ...]
    big: str = ""


def sentences(text: str) -> tuple[str, ...]:
    """The sentences of a text, each with its full stop; none where it is empty."""
    whole = " ".join(text.split())
    cuts = [0, *(found.end() for found in _END.finditer(whole)), len(whole)]
    return tuple(sentence(part) for a, b in itertools.pairwise(cuts) if (part := whole[a:b].strip()))


def up_to(text: str, words: int) -> tuple[str, bool]:
    """The first sentences of a text that fit.

    Parameters
    ----------
    text : str
        A person's own text.
    words : int
        How many words fit, 1 or more; the first sentence is given whole in any case.

    Returns
    -------
    tuple of (str, bool)
        Whole sentences, and whether that is all of it.
    """
    kept: list[str] = []
    said = sentences(text)
    for one in said:
        if kept and len(" ".join((*kept, one)).split()) > words:
            break
        kept.append(one)
    return " ".join(kept), len(kept) == len(said)
