"""Words of a text as they are compared: case, accents, spelling of umlauts and what cannot be seen are taken away."""

from __future__ import annotations

import functools
import html
import re
import unicodedata
from dataclasses import dataclass

__all__ = [
    "Word",
    "digits_in",
    "fold",
    "folded_words",
    "parts_of",
    "seen_text",
    "spellings",
    "without_spaces",
    "words_of",
]

# letters that do not come apart into a letter and an accent
_LETTERS = str.maketrans({"ø": "o", "đ": "d", "ł": "l", "æ": "ae", "œ": "oe", "þ": "th", "ð": "d", "ı": "i", "ħ": "h"})
_WRITTEN_OUT = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "å": "aa", "ø": "oe"})
_UNSEEN = re.compile(
    r"[\u00ad\u034f\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufe00-\ufe0f\ufeff]"
)
# signs of markdown inside a word: they are not seen either
_EMPHASIS = re.compile(r"(?<=\w)(?:\*+|~~|`)(?=\w)|\\(?=[^\w\s])")
_WORD = re.compile(r"[^\W_]+")
_CAMEL = re.compile(r"[^\W\d_][a-z\u00df-\u00ff]+(?=[A-Z\u00c0-\u00de])|[A-Z\u00c0-\u00de][a-z\u00df-\u00ff]+")
_NUMBER = re.compile(r"\+?\d[\d\s().\u2010-\u2015/·-]*\d")
_UNSPACED = re.compile("[\u0e00-\u0eff\u1000-\u109f\u1100-\u11ff\u1780-\u17ff\u2e80-\U0010ffff]")
"""Signs of scripts without spaces between the words, or with endings that are joined to a name (hangul comes apart in folding)."""


@dataclass(frozen=True, slots=True)
class Word:
    """One word of a text: as it is compared, as it is written, and where it stands."""

    folded: str
    shown: str
    start: int
    end: int

    @property
    def bare(self) -> str:
        """Without figures at its ends: ``quist2`` is a name with a number."""
        return self.folded.strip("0123456789") or self.folded


def seen_text(text: str) -> str:
    """A text as the eye takes it: entities read, unseen signs and the signs of emphasis inside a word taken out."""
    clean = _UNSEEN.sub("", unicodedata.normalize("NFKC", html.unescape(text) if "&" in text else text))
    return _EMPHASIS.sub("", clean) if re.search(r"[*~`\\]", clean) else clean


@functools.lru_cache(maxsize=16384)
def fold(word: str) -> str:
    """A word without case and accents.

    Examples
    --------
    >>> fold("Łucja"), fold("MÜLLER"), fold("Groß")
    ('lucja', 'muller', 'gross')
    """
    if word.isascii():
        return word.lower()
    apart = unicodedata.normalize("NFKD", word.casefold()).translate(_LETTERS)
    return "".join(sign for sign in apart if not unicodedata.combining(sign))


def spellings(word: str) -> tuple[str, ...]:
    """The folded forms a name may be met in: with its umlauts left out, written out, or made up from ``ae``, ``oe``, ``ue``.

    Examples
    --------
    >>> spellings("Müller"), spellings("Mueller")
    (('muller', 'mueller'), ('mueller', 'muller'))
    """
    plain = fold(word)
    written = fold(word.casefold().translate(_WRITTEN_OUT))
    short = re.sub(r"([aou])e", r"\1", plain) if len(plain) > 4 else plain
    return tuple(dict.fromkeys((plain, written, short)))


def folded_words(text: str) -> set[str]:
    """The words of a text, each once and without case and accents."""
    return {fold(word) for word in set(_WORD.findall(text))}


def words_of(text: str) -> list[Word]:
    """The words of a text, as `seen_text` gave it: runs of letters and figures.

    Returns
    -------
    list of Word
        In order; a word written like ``AdelaQuist`` is followed by its parts at the same place.
    """
    found = []
    for match in _WORD.finditer(text):
        word = match[0]
        found.append(Word(fold(word), word, match.start(), match.end()))
    return found


def parts_of(word: Word) -> list[Word]:
    """The parts of a word written with capitals inside, or in a script that sets no spaces; none for any other."""
    if word.shown.islower() or word.shown.isupper() or word.shown.istitle():
        return []
    return [
        Word(fold(part[0]), part[0], word.start + part.start(), word.start + part.end())
        for part in _CAMEL.finditer(word.shown)
    ]


def without_spaces(word: str) -> bool:
    """Whether a word is of a script that sets no spaces between words."""
    return _UNSPACED.search(word) is not None


def digits_in(text: str) -> list[tuple[str, int, int]]:
    """The runs of figures in a text, whatever parts them within a line: digits, start, end."""
    found = []
    for match in _NUMBER.finditer(text.replace("(0)", "   ")):
        digits = re.sub(r"\D", "", match[0])
        if len(digits) >= 6:
            found.append((digits, match.start(), match.end()))
    return found
