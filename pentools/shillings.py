"""British money before 15 February 1971 as people write it: pounds, shillings and pence, farthings, guineas and coins."""

from __future__ import annotations

import re
from collections.abc import Callable

from pentools.errors import InputError

__all__ = ["FARTHINGS_A_POUND", "in_shillings", "read_shillings"]

FARTHINGS_A_POUND = 960
"""Four farthings a penny, twelve pence a shilling, twenty shillings a pound (Coinage Act 1971 names the last two)."""

_PENNY, _SHILLING, _POUND = 4, 48, FARTHINGS_A_POUND
_COINS: tuple[tuple[str, int], ...] = (
    (r"farthings?", 1), (r"ha'?penny|half ?penny|ha'?pence|half ?pence", 2), (r"penny|pennies|pence|d\.?", 4),
    (r"twopence|tuppence", 8), (r"threepence|thruppence|thrup?penny bits?|threepenny bits?", 12), (r"sixpence|sixpences|tanners?", 24),
    (r"shillings?|bob|s\.?", 48), (r"florins?", 96), (r"half ?crowns?", 120), (r"crowns?", 240), (r"half ?sovereigns?", 480),
    (r"half ?guineas?", 504), (r"sovereigns?|pounds?", 960), (r"guineas?|gns?\.?|gs\.?", 1008),
)  # fmt: skip
_COUNTS = {
    word: number
    for number, word in enumerate(
        [
            "no",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen",
            "twenty",
        ]
    )
} | {"a": 1, "an": 1}

_N = r"\d{1,6}"
_PART = r"(?:½|¼|¾|1/2|1/4|3/4)"  # of a penny
_P = rf"(?:{_N}(?:(?:\s+|-)?{_PART})?|{_PART})"
_SLASHED = rf"(?:{_N}(?:[½¼¾]|(?:\s+|-)(?:1/2|1/4|3/4))?|[½¼¾])"  # after a slash: a bare 1/2 would be two more columns
_QUARTERS = {"½": 2, "1/2": 2, "¼": 1, "1/4": 1, "¾": 3, "3/4": 3}
_D = r"(?:d\.?)"
_THEN = r"\s*[,./-]?\s*(?:and\s+|&\s*)?"
_ANY = re.compile(r"[£½¼¾/]|\d\s*(?:s|d|l|sh)\b|" + "|".join(rf"\b(?:{word})(?!\w)" for word, _ in _COINS))
_LABELLED = re.compile(
    rf"(?:(?:£\s*(?P<pounds>{_N}|-)|(?P<pounds_after>{_N})\s*(?:£|l\b\.?|pounds?\b)){_THEN})?"
    rf"(?:(?P<shillings>{_N}|-)\s*(?:shillings?\b|sh\b\.?|s(?![a-z])\.?){_THEN})?"
    rf"(?:(?P<pence>{_P}|-)\s*(?P<d>pence\b|penny\b|d\b\.?)?)?"
)
_TERM = re.compile(
    r"(?:(?P<half>half an? )|(?P<count>\d{1,6}|" + "|".join(_COUNTS) + r")(?P<more>\s*½|\s+1/2| and a half)?\s*)?"
    r"(?P<coin>" + "|".join(f"(?:{word})" for word, _ in reversed(_COINS)) + r")(?!\w)(?:\s+and\s+|\s*[,&]\s*|\s+)?"
)


def read_shillings(text: str, name: str = "amount") -> int | None:
    """Old British money as a whole number of farthings.

    Parameters
    ----------
    text : str
        ``£1 1s 2d``, ``12/6``, ``21/-``, ``2/11¾``, ``£1-10-0``, ``1½d``, ``1 1/2d``, ``5 guineas``, ``half a crown``.
    name : str
        What it is for, used in the error's sentence.

    Returns
    -------
    int or None
        Farthings [960 to the pound]; None where it is not written as pounds, shillings and pence at all.

    Raises
    ------
    InputError
        If it can be read in two ways (``£12/6``, ``1/2d``), or is wrong in itself (``25/- 6d``, ``£1 25s``).

    Notes
    -----
    A guinea was 21 shillings, a crown 5 and a florin 2. Shillings alone may be 20 and more, as they were printed
    (``25/-``, ``63s``), pence alone 12 and more (``18d``); beside a larger unit they may not.

    Examples
    --------
    >>> read_shillings("12/6"), read_shillings("1 1/2d"), read_shillings("$5")
    (600, 6, None)
    """
    low = re.sub(r"\s+", " ", text.lower().strip()).replace("/=", "/-").replace("/--", "/-")
    if not _ANY.search(low) or re.search(r"\d{7}", low):
        return None
    for read in (_unclear, _slashed, _pointed, _labelled, _in_coins):
        farthings = read(low, lambda accepted, advice: InputError(name, accepted, text.strip(), advice))
        if farthings is not None:
            return farthings
    return None


def in_shillings(farthings: int) -> str:
    """Farthings in pounds, shillings and pence.

    Parameters
    ----------
    farthings : int
        The amount [960 to the pound], 0 or more.

    Returns
    -------
    str
        Such as ``£1 1s 2d`` or ``1½d``.

    Examples
    --------
    >>> in_shillings(600), in_shillings(6)
    ('12s 6d', '1½d')
    """
    pounds, rest = divmod(farthings, _POUND)
    shillings, rest = divmod(rest, _SHILLING)
    pence, quarters = divmod(rest, _PENNY)
    part = ("", "¼", "½", "¾")[quarters]
    penny = f"{pence or ''}{part}d" if pence or part else ""
    return (
        " ".join(p for p in (f"£{pounds}" if pounds else "", f"{shillings}s" if shillings else "", penny) if p) or "0d"
    )


_Wrong = Callable[[str, str], InputError]
_ONE = "one clear amount"
_HALVES = r"(1)/(2)|(1)/(4)|(3)/(4)"
# what can be read in two ways, or says two things, and what to ask; the groups that matched fill the places in the sentence
_UNCLEAR: tuple[tuple[str, str], ...] = (
    (rf"£ ?({_N}) ?/ ?- ?{_D}?", "Does it mean {0}/- ({0} shillings) or £{0}?"),
    (rf"£ ?({_N}) ?/ ?((?:1?\d)?[½¼¾]?) ?{_D}?", "Does it mean {0}s {1}d or £{0} {1}s?"),
    (rf"(?:{_HALVES}) ?(?:d\.?|pence|penny)", "Does it mean {0}/{1} of a penny or {0}s {1}d? For a part of a penny type ½d, ¼d or ¾d."),
    (rf"(\d+)(?:{_HALVES}) ?{_D}", "Does it mean {0} {1}/{2}d or {0}{1}s {2}d?"),
    (rf"£ ?({_N}) (?:{_HALVES})", "Does it mean £{0} {1}s {2}d or £{0} and {1}/{2} of a pound?"),
    (rf"£ ?({_N}) (?:{_HALVES}) ?{_D}", "Does it mean £{0} {1}s {2}d or £{0} 0s {1}/{2}d?"),
    (rf"({_N}) (?:{_HALVES})", "Does it mean {0} {1}/{2}d or £{0} {1}s {2}d?"),
    (rf"({_N}) (?!(?:1/2|1/4|3/4) ?d)({_N})/({_N}) ?{_D}?", "Does it mean £{0} {1}s {2}d?"),
    (rf"({_N})/(?:{_HALVES})", "Does it mean {0}s {1}/{2}d or £{0} {1}s {2}d?"),
    (rf"£ ?({_N})-(\d\d?)", "Does it mean £{0} {1}s? A range is two amounts."),
    (rf"£ ?({_N}) (\d\d?)", "Does it mean £{0} {1}s or £{0} 0s {1}d?"),
    (rf"(?:£ ?{_N} )?({_N}) ?/- ?(?:and )?({_P}) ?{_D}?", "“/-” says that no pence follow, and {1} follow: is it {0}/{1} or {0}/-?"),
    (rf"({_N})([-.:, ])({_N})\2({_P}|-) ?{_D}?", "Without £ it could be a date: does it mean £{0} {2}s {3}d?"),
)  # fmt: skip


def _unclear(low: str, wrong: _Wrong) -> int | None:
    """Raise where it can be read in two ways, or says two things."""
    for pattern, question in _UNCLEAR:
        if found := re.fullmatch(pattern, low):
            told = question.format(*(group for group in found.groups() if group is not None))
            raise wrong(_ONE, f"{told} Type the one you mean.")
    return None


def _slashed(low: str, wrong: _Wrong) -> int | None:
    """12/6, 21/-, 2/11¾, £1/10/6 and £1 10/6."""
    if found := re.fullmatch(rf"({_N}|-)\s*/\s*({_SLASHED}|-)\s*{_D}?", low):
        return _added("", found[1], found[2], wrong)
    if found := re.fullmatch(rf"£?\s*({_N}|-)\s*/\s*({_N}|-)\s*/\s*({_SLASHED}|-)\s*{_D}?", low):
        return _added(found[1], found[2], found[3], wrong)
    if found := re.fullmatch(rf"£\s*({_N})[\s,]+({_N}|-)/({_SLASHED}|-)\s*{_D}?", low):
        return _added(found[1], found[2], found[3], wrong)
    return None


def _pointed(low: str, wrong: _Wrong) -> int | None:
    """£1-10-0, £1.10.6, £1:10:6 and £1 10 6."""
    found = re.fullmatch(rf"£ ?({_N}) ?([-.:, ]) ?({_N}|-) ?\2 ?({_P}|-) ?{_D}?", low)
    if found is None or re.fullmatch(r"\d{3}", found[4]):  # thousands: £1 250 000
        return None
    return _added(found[1], found[3], found[4], wrong)


def _labelled(low: str, wrong: _Wrong) -> int | None:
    """£1 1s 2d, 17s 6d, 7s 6, 1½d, 12s/6d."""
    found = _LABELLED.fullmatch(low)
    if found is None:
        return None
    pounds, shillings, pence = (
        found["pounds"] or found["pounds_after"] or "",
        found["shillings"] or "",
        found["pence"] or "",
    )
    if not shillings and not found["d"]:
        return None
    return _added(pounds, shillings, pence, wrong)


def _in_coins(low: str, wrong: _Wrong) -> int | None:
    """Half a crown, 5 guineas, two shillings and sixpence, a penny ha'penny."""
    words = low.replace("half-", "half ").replace("’", "'")
    place, total, before = 0, 0, None
    while place < len(words):
        found = _TERM.match(words, place)
        if found is None:
            return None
        value = next(worth for word, worth in reversed(_COINS) if re.fullmatch(word, found["coin"]))
        count = found["count"]
        number = 1 if count is None else _COUNTS[count] if count in _COUNTS else int(count)
        if found["coin"] == "crowns" and number > 1:
            raise wrong("an amount with its money", f"If British crowns of 5 shillings are meant, type {5 * number}/-.")
        if (
            count is None
            and not found["half"]
            and re.search(r"(?<!c)s$", found["coin"].rstrip("."))
            and found["coin"] != "gs"
        ):
            return None
        if before is not None and value >= before:
            raise wrong(_ONE, "The larger unit comes first, such as two shillings and sixpence.")
        twice = value if found["half"] else 2 * number * value + (value if found["more"] else 0)
        if twice % 2:
            raise wrong("whole farthings", "Nothing smaller was coined.")
        total, before, place = total + twice // 2, value, found.end()
    return None if re.fullmatch(r"\D*\d*\D*\bpounds? ?", words) or before is None else total


def _added(pounds: str, shillings: str, pence: str, wrong: _Wrong) -> int:
    """Farthings of the three columns as typed; a dash is nothing."""
    whole = [0 if part in ("", "-") else int(part) for part in (pounds, shillings)]
    found = re.fullmatch(rf"(\d*)[\s-]*({_PART})?", "" if pence == "-" else pence)
    # "1/2" alone is a part of a penny, not one and a rest
    bare = pence in _QUARTERS
    quarters = _QUARTERS[pence] if bare else 4 * int(found[1] or 0) + _QUARTERS.get(found[2] or "", 0) if found else 0
    if (pounds or shillings) and quarters >= _SHILLING:
        raise wrong("fewer than 12 pence beside shillings or pounds", "Twelve pence were a shilling.")
    if pounds not in ("", "-") and whole[1] >= 20:
        raise wrong("fewer than 20 shillings beside pounds", "Twenty shillings were a pound.")
    return whole[0] * _POUND + whole[1] * _SHILLING + quarters
