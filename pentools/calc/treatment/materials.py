"""What somebody wrote of a material, a treatment or a sealant, and the name the tables use for it.

A material counts as named only where every word of the text is understood: one name, and beside it words that say how
it looks or which part it is. Any other word ("perhaps", "looks like", "some") leaves it unknown, the strictest.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping, Sequence

from pentools.calc.treatment.vocabulary import (
    BLACK,
    CARAT,
    COLOURED_RUBBER,
    COLOURS,
    DECAY,
    DOUBT,
    FADED,
    MATERIALS,
    METAL_LOOKS,
    METALS,
    NEUTRAL,
    NO_SEALANT,
    PATTERNS,
    SEALANTS,
    SMALL,
    SOFT,
    SPELLINGS,
    TREATMENTS,
    TRIM,
    UNKNOWN,
)  # fmt: skip
from pentools.errors import InputError

__all__ = ["NO_SEALANT", "UNKNOWN", "material_name", "sealant_name", "treatment_name"]

_RUBBER, _FADED, _COLOURED = "hard rubber", "faded hard rubber", "coloured hard rubber"
_SOUND, _DEGRADING, _OVERLAY = "celluloid", "degrading celluloid", "metal overlay"


def material_name(text: str, known: Iterable[str], part: str = "") -> tuple[str, str]:
    """The table's name of a material, and what to say where it is not named.

    Parameters
    ----------
    text : str
        A material in everyday words, with how it looks if somebody wrote that; empty for one that was not named.
    known : iterable of str
        The names the table uses.
    part : str
        Which part it is; "gold" alone is a name for a nib only, since elsewhere it may be filled or plated.

    Returns
    -------
    tuple of str
        The name, "unknown" where it is not named, and a sentence saying so; the sentence is empty where the name was
        understood.

    Notes
    -----
    A name that is not in the table, or not sure, is read as "unknown", which is the strictest: a guess would be
    kinder and worse. Two materials in one text are none, save a body with its trim, and an overlay with what is under it.

    Examples
    --------
    >>> material_name("Green marbled ebonite", ["hard rubber", "casein"])[0]
    'unknown'
    >>> material_name("black chased ebonite", ["hard rubber", "casein"])
    ('hard rubber', '')
    """
    names = {name.casefold(): name for name in (*known, UNKNOWN)}
    shown = " ".join(text.split())
    if not shown or _plain(shown) in _NOT_KNOWN:
        return UNKNOWN, ""
    if "?" in text:
        return UNKNOWN, _not_sure(shown)
    words = _words(text)
    found, others = _taken(words)
    name = _resolved(found, others, words, part) if found else UNKNOWN
    if name.casefold() in names and name != UNKNOWN:
        return names[name.casefold()], ""
    return UNKNOWN, _why_unnamed(shown, words, found, others, names)


def treatment_name(text: str, known: Iterable[str]) -> str:
    """The table's name of a treatment.

    Parameters
    ----------
    text : str
        A treatment in everyday words.
    known : iterable of str
        The names the table uses.

    Returns
    -------
    str
        The name.

    Raises
    ------
    InputError
        If there is no such treatment.

    Examples
    --------
    >>> treatment_name("Heat", ["dry heat"])
    'dry heat'
    """
    names = list(known)
    found = _one_of(text, _TREATMENT_OF, names)
    if found is None:
        close = difflib.get_close_matches(_plain(text), names, n=1, cutoff=0.8)
        raise InputError("treatment", "one of " + ", ".join(names), text, f"Did you mean {close[0]}?" if close else "")
    return found


def sealant_name(text: str, known: Iterable[str]) -> str:
    """The table's name of a joint sealant; "unknown" for one that is not named or not in the table, "none" for nothing.

    Parameters
    ----------
    text : str
        A sealant in everyday words.
    known : iterable of str
        The names the table uses.

    Returns
    -------
    str
        The name.

    Examples
    --------
    >>> sealant_name("thread sealant", ["shellac", "rosin and castor oil"])
    'rosin and castor oil'
    >>> sealant_name("brown glue", ["shellac", "rosin and castor oil"])
    'unknown'
    """
    return _one_of(text, _SEALANT_OF, [*known, NO_SEALANT, UNKNOWN]) or UNKNOWN


def _plain(text: str) -> str:
    return " ".join(text.replace("-", " ").split()).casefold()


def _words(text: str) -> list[str]:
    """The words of a text in one spelling, without punctuation but for the comma of a number."""
    plain = re.sub(r"(?<!\d)/|/(?!\d)|[^\w\s,/.%+]", " ", _plain(text))
    words = [word.strip(".,;:+%") for word in plain.split()]
    return [SPELLINGS.get(word, word) for word in words if word]


def _everyday(words: Mapping[str, str]) -> dict[str, str]:
    """Every everyday name, in one spelling, and the table's name for it."""
    return {_plain(part): name for name, texts in words.items() for part in (name, *texts.split(";"))}


_TREATMENT_OF, _SEALANT_OF = _everyday(TREATMENTS), _everyday(SEALANTS)
_NOT_KNOWN = frozenset(phrase for phrase, name in _everyday(MATERIALS).items() if name == UNKNOWN)
_PHRASES: dict[tuple[str, ...], str] = {tuple(_words(phrase)): name for phrase, name in _everyday(MATERIALS).items() if name != UNKNOWN}  # fmt: skip
_LONGEST = max(len(phrase) for phrase in _PHRASES)


def _taken(words: Sequence[str]) -> tuple[list[tuple[str, int, str]], list[str]]:
    """Names found in the words, each with its place and as it was written, longest first at each place; and the rest."""
    found: list[tuple[str, int, str]] = []
    others: list[str] = []
    at = 0
    while at < len(words):
        for length in range(min(_LONGEST, len(words) - at), 0, -1):
            phrase = tuple(words[at : at + length])
            if phrase in _PHRASES:
                found.append((_PHRASES[phrase], at, " ".join(phrase)))
                at += length
                break
        else:
            others.append(words[at])
            at += 1
    return found, others


def _resolved(found: list[tuple[str, int, str]], others: list[str], words: Sequence[str], part: str) -> str:
    rest = set(others)
    if "overlay" in words or "filigree" in words:
        more = {"filigree", "over", "with", *NEUTRAL, *COLOURS, *PATTERNS, *METAL_LOOKS}
        return _OVERLAY if all(word in more or CARAT.fullmatch(word) for word in rest) else UNKNOWN
    bodies = [one for one in found if one[0] not in METALS]
    if bodies and len(found) > len(bodies):
        first = bodies[0][1]
        metals = [one for one in found if one[0] in METALS]
        colours = {one for one in metals if one[1] < first and one[2] in COLOURS}
        trim = bool(rest & TRIM) and all(one[1] > first for one in metals if one not in colours)
        if len(colours) == len(metals) or trim:
            found = bodies
            rest -= {*TRIM, "with"} if trim else set()
    names = {name for name, _, _ in found}
    if len(names) > 1 and not names <= {_RUBBER, _FADED, _COLOURED} and not names <= {_SOUND, _DEGRADING}:
        return UNKNOWN
    return _with_looks(names, rest, found, part)


def _with_looks(names: set[str], rest: set[str], found: list[tuple[str, int, str]], part: str) -> str:
    """The name as the words beside it make it: faded or coloured rubber, decaying celluloid; unknown if one is strange."""
    if names <= {_RUBBER, _FADED, _COLOURED}:
        return _rubber(names, rest)
    if names <= {_SOUND, _DEGRADING}:
        known = rest <= COLOURS | PATTERNS | NEUTRAL | DECAY | {"ambered", "yellowed", "discoloured"}
        decays = _DEGRADING in names or bool(rest & DECAY)
        return UNKNOWN if not known else _DEGRADING if decays else _SOUND
    (name,) = names
    carats = {word for word in rest if name.startswith("gold") and CARAT.fullmatch(word)}
    solid = part == "nib" or bool(carats) or any(said in ("gold nib", "solid gold") for _, _, said in found)
    if name == "gold nib" and not solid:
        return UNKNOWN
    return name if rest - carats <= NEUTRAL | _looks(name) else UNKNOWN


def _rubber(names: set[str], rest: set[str]) -> str:
    if not rest <= FADED | COLOURED_RUBBER | BLACK | NEUTRAL:
        return UNKNOWN
    if _COLOURED in names or rest & COLOURED_RUBBER:
        return _COLOURED
    return _FADED if _FADED in names or rest & FADED else _RUBBER


def _looks(name: str) -> frozenset[str]:
    if name in METALS or name == "bare metal":
        return METAL_LOOKS | PATTERNS
    return SMALL if name in SOFT else COLOURS | PATTERNS


def _not_sure(shown: str) -> str:
    return f"“{shown}” is not sure, so the strictest limits are used."


def _why_unnamed(
    shown: str, words: Sequence[str], found: list[tuple[str, int, str]], others: list[str], names: dict[str, str]
) -> str:
    if DOUBT.search(" ".join(words)):
        return _not_sure(shown)
    if len({name for name, _, _ in found}) > 1:
        return f"“{shown}” names more than one material, so the strictest limits are used: name one a part."
    if found and others:
        return f"“{shown}” is not read as a name, so the strictest limits are used: write the material alone, such as {found[0][2]}."
    if [said for _, _, said in found] == ["gold"]:
        return f"“{shown}” may be solid, filled or plated, so the strictest limits are used: say which."
    if list(words) == ["metal"]:
        return f"“{shown}” does not say which, nor whether it is lacquered or plated, so the strictest limits are used: say bare metal, brass, silver, chrome or what it is."
    close = _close(" ".join(words), names)
    return (
        f"“{shown}” is not in the table, so the strictest limits are used.{f' Did you mean {close}?' if close else ''}"
    )


def _close(text: str, names: dict[str, str]) -> str:
    """The one name a slip of the pen leads to; empty where another material is nearly as near."""
    best: dict[str, tuple[float, str]] = {}
    for phrase, name in _PHRASES.items():
        said = " ".join(phrase)
        if name.casefold() in names and len(said) >= 4:
            matcher = difflib.SequenceMatcher(None, text, said)
            near = matcher.real_quick_ratio() > 0.7 and matcher.quick_ratio() > 0.7  # a text far longer is none at once
            share = matcher.ratio() if near else 0.0
            family = _SOUND if name == _DEGRADING else _RUBBER if name in (_FADED, _COLOURED) else name
            best[family] = max(best.get(family, (0.0, "")), (share, said))
    order = sorted(best.values(), reverse=True)
    if not order or order[0][0] < 0.85 or (len(order) > 1 and order[0][0] - order[1][0] < 0.12):
        return ""
    return order[0][1]


def _one_of(text: str, words: Mapping[str, str], known: Sequence[str]) -> str | None:
    """The name in the table that a text means, by itself or as an everyday name; None where it is neither."""
    plain = _plain(text)
    names = {_plain(name): name for name in known}
    return names.get(plain) or names.get(_plain(words.get(plain, "")))
