"""The words of a typed date, one by one: dates in all their spellings, and what limits, blurs and joins them."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from pentools.calc.dating.interval import read_edtf
from pentools.calc.dating.spans import first_and_last_day
from pentools.errors import InputError
from pentools.words import MONTHS, month_number

__all__ = ["ADVICE", "Mention", "Token", "Wrong", "tokens_of"]

ADVICE = "Type it like 1936/1942, c. 1936 or before 1942."
Wrong = Callable[..., InputError]
"""Makes the error for a text from advice and, if need be, what is accepted."""

_MONTH = (
    r"(?:"
    + "|".join(f"{name[:3]}(?:{name[3:]})?".replace("(?:)?", "") for name in map(str.lower, MONTHS))
    + r"|sept)\b\.?"
)
_SEEN = r"(?:seen|used|made|produced|sold|offered|fitted|listed|catalogued|advertised|appeared|known|found)"
_ENDS = r"(?=[ ).;]*$|,)"

# what a word says of the date beside it, in this order; a "before" leaves its date out, an "until" keeps it
_WORDS: tuple[tuple[str, str], ...] = (
    ("half", r"(?:first|1st|second|2nd|latter) half(?: of)?"),
    ("part", r"(?:early|mid|middle|late|beginning(?= of)|start(?= of)|end)\b(?: in\b| of\b)?"),
    (">=", rf"≥|>=|=>|(?:not|no|never|none|only) (?:{_SEEN} )?(?:before|(?:earlier|sooner) th[ae]n|until|till)|as early as|in or after|on or after|at the earliest|at least|earliest|(?:starting|beginning)(?: from)?|since"),
    ("from", r"from"),
    ("<=", rf"≤|<=|=<|(?:not|no|never|none|nothing|(?:no|not any) (?:longer|more)) (?:{_SEEN} )?(?:after|later th[ae]n)|as late as|in or before|on or before|at the latest|at most|latest|up ?(?:to|until|till)(?: and including)?|by"),
    ("to", r"to|until|till|til|through|thru"),
    ("or later", rf"(?:or|and) (?:later|after|newer){_ENDS}|(?:(?:or|and) )?onwards?|(?:and )?on{_ENDS}|\+{_ENDS}"),
    ("or earlier", rf"(?:or|and) (?:earlier|before|older){_ENDS}"),
    (">", r">|(?:only )?after|later th[ae]n|post(?:-(?=\d))?"),
    ("<", r"<|(?:only )?before|earlier th[ae]n|prior to|pre(?:-(?=\d))?"),
    ("in", rf"first {_SEEN}|introduced|introduction|launched|launch|new in|first|began|begun|appear(?:s|ed|ing)|came in|comes in"),
    ("out", rf"last {_SEEN}|dropped|discontinued|discontinuation|withdrawn|phased out|ceased|ended|last|gone|went out|goes out|disappear(?:s|ed)"),
    ("circa", r"c\.?(?= ?\d| ?q[1-4]\b)|c\.|ca\.|(?:ca|circa|about|around|roughly|approx|approximately|more or less)\b\.?"),
    ("maybe", r"possibly|perhaps|maybe|probably"),
    ("between", r"between"),
    ("or", r"or|either"),
    ("and", r"and|but|[&,;]"),
    ("-", r"-|–"),
    ("/", r"/"),
    ("width", r"(?:±|\+/-|\+-) ?\d{1,2}(?!\d) ?(?:years?|yrs?|y)?"),
    ("", rf"[ ()]+|in production|in use|some ?time|in|during|of|the|years?|only|dated|is|was|were|it|{_SEEN}"),
)  # fmt: skip
_TOKEN = tuple((kind, re.compile(rf"(?:{pattern})(?!(?<=[a-z])[a-z'])")) for kind, pattern in _WORDS)
_DATES: tuple[tuple[str, str], ...] = (
    ("decade", r"(?P<year>\d{3}0)'?s(?!\w)"),
    ("century", r"(?P<number>[1-9]\d?)(?:st|nd|rd|th)[ -](?:century|cent\.?|c\.)(?!\w)"),
    ("day", rf"(?P<day>\d{{1,2}})(?:st|nd|rd|th)? (?:of )?(?P<month>{_MONTH}),? (?P<year>\d{{4}})(?!\d)"),
    ("day", rf"(?P<month>{_MONTH}) (?P<day>\d{{1,2}})(?:st|nd|rd|th)?,? (?P<year>\d{{4}})(?!\d)"),
    ("month", rf"(?P<month>{_MONTH}),? (?:of )?(?P<year>\d{{4}})(?!\d)"),
    ("quarter", r"q(?P<quarter>[1-4]) ?[ /]?(?P<year>\d{4})(?!\d)"),
    ("quarter", r"(?P<year>\d{4}) ?q(?P<quarter>[1-4])(?!\w)"),
    ("short", r"(?P<year>\d{4})(?P<sign>[-–/])(?P<end>\d{2})(?![\d-])"),
    ("edtf", r"(?:\d{4}-(?:\d{2}|xx)-(?:\d{2}|xx)|\d{4}-xx|\d{4}|\d{3}x|\d{2}xx)(?![\dx]|'?s\b)"),
)
_SPELLINGS = tuple((kind, re.compile(pattern)) for kind, pattern in _DATES)
# what is not understood, and what to say of it; {0} is the word
_STRANGE: tuple[tuple[str, str], ...] = (
    (r"\d{1,2}[./]\d{1,2}[./]\d{4}", "Day or month first? Type it as 1936-05-12 or 12 May 1936."),
    (_MONTH, "“{0}” wants its year, such as May 1936."),
    (r"(?:spring|summer|autumn|fall|winter)\b", "Seasons are not read, since nobody says in which months they lie: give the months, such as 1936-03/1936-05."),
    (r"(?:shortly|just|soon|well|long|nearly|almost|very|towards?)\b", "“{0}” has no agreed length: leave it out, or give the years."),
    (r"(?:replaced|removed)\b", "“{0}” may tell when that was done: type the part's own dates, and replaced behind a comma."),
    (r"\d{4}'?s\b", "A decade such as 1930s ends in 0: “{0}” does not."),
    (r"'?\d0'?s\b|'\d\d\b|\d{1,3}\b|\w+ties\b", "Type the year or the decade of “{0}” in full, such as 1936 or 1930s."),
    (r"\d", "“{0}” is not a date in a form known here. " + ADVICE),
    (r"", "“{0}” is not understood in a date. " + ADVICE),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Mention:
    """One date as typed.

    Parameters
    ----------
    first, last : int
        Its days, both included.
    edtf : str
        How it is written; an interval for a part of a year and the like.
    mark : str
        ``~``, ``?`` or ``%`` for what blurs it.
    until, since : int
        The last day that "before" it allows, and the first that "after" it does.
    """

    first: int
    last: int
    edtf: str
    mark: str = ""
    until: int = 0
    since: int = 0

    def marked(self, marks: str) -> Mention:
        """The same date, blurred as well by what more marks say."""
        both = {*self.mark, *marks}
        return dataclasses.replace(self, mark="%" if "%" in both or both >= {"?", "~"} else "".join(both))


@dataclass(frozen=True, slots=True)
class Token:
    """One word of a phrase: what it says, as typed, its date if it is one, and what the reader should check about it."""

    kind: str
    text: str = ""
    date: Mention | None = None
    note: str = ""


def tokens_of(low: str, wrong: Wrong) -> list[Token]:
    """The words of a phrase.

    Parameters
    ----------
    low : str
        The phrase in small letters, single spaces.
    wrong : callable
        Makes the error.

    Returns
    -------
    list of Token
        Words that say nothing of a date ("in", "the", "made") left out.

    Raises
    ------
    InputError
        If a word is not understood.
    """
    return [token for token in _tokens(low, wrong) if token.kind]


def _tokens(low: str, wrong: Wrong) -> Iterator[Token]:
    place = 0
    while place < len(low):
        for kind, pattern in (*_SPELLINGS, *_TOKEN):
            found = pattern.match(low, place)
            if found is None or not found[0]:
                continue
            place = found.end()
            if pattern not in _PATTERNS_OF_DATES:
                yield Token(kind, found[0].strip())
            else:
                mark = _MARK.match(low, place)
                place = mark.end() if mark else place
                yield from _dates(kind, found, mark[1] if mark else "", wrong)
            break
        else:
            raise _not_understood(low[place:], wrong)


_MARK = re.compile(r" ?([?~%])(?!\w)")
_PATTERNS_OF_DATES = frozenset(pattern for _, pattern in _SPELLINGS)


def _not_understood(rest: str, wrong: Wrong) -> InputError:
    word = re.match(r"[^\s,;]+|.", rest)
    told = next(told for pattern, told in _STRANGE if re.match(pattern, rest))
    return wrong(told.format(word[0] if word else rest))


def _dates(kind: str, found: re.Match[str], mark: str, wrong: Wrong) -> Iterator[Token]:
    if kind == "short":
        yield from _short(found, mark, wrong)
    elif kind == "century":
        first, last = 100 * int(found["number"]) - 99, 100 * int(found["number"])
        days = first_and_last_day(first)[0], first_and_last_day(last)[1]
        yield Token("date", found[0], Mention(*days, f"{first:04d}/{last:04d}", mark, days[0] - 1, days[1] + 1))
    else:
        yield _one(_edtf_of(kind, found, wrong), mark, wrong)


def _edtf_of(kind: str, found: re.Match[str], wrong: Wrong) -> str:
    if kind == "edtf":
        return found[0].upper()
    year = found["year"]
    if kind == "quarter":
        return f"{year}-{32 + int(found['quarter'])}"
    if kind != "decade":
        month = month_number(found["month"][:3])
        return f"{year}-{month:02d}" + (f"-{int(found['day']):02d}" if kind == "day" else "")
    if year.endswith("00"):
        raise wrong(f"Does {year}s mean the ten years (type {year[:3]}X) or the century (type {year[:2]}XX)?")
    return f"{year[:3]}X"


def _one(edtf: str, mark: str, wrong: Wrong, note: str = "") -> Token:
    try:
        ((first, last),) = read_edtf(edtf).spans
    except InputError as error:
        raise wrong(error.advice, error.accepted) from error
    assert first is not None
    assert last is not None
    return Token("date", edtf, Mention(first, last, edtf, mark, first - 1, last + 1), note)


def _short(found: re.Match[str], mark: str, wrong: Wrong) -> Iterator[Token]:
    """1936-42 and 1936/42: years, unless EDTF gives the two digits a month or a quarter; asked where both may be meant."""
    year, sign, end = found["year"], found["sign"], int(found["end"])
    later, full = int(year[2:]) < end, f"{year[:2]}{found['end']}"
    asked = ""
    if sign == "-" and (end <= 12 or (21 <= end <= 41 and not later)):
        note = f"Taken as month {end} of {year}; for the years type {year}/{full}." if later else ""
        yield _one(f"{year}-{end:02d}", mark, wrong, note)
        return
    if sign == "-" and 21 <= end <= 41:
        asked = f"Q{end - 32} {year}" if 33 <= end <= 36 else f"a part of {year}, given as months"
    elif sign == "/" and 1 <= end <= 12:
        asked = f"{year}-{end:02d} (a month)"
    if asked:
        raise wrong(f"Does it mean {year}/{full} or {asked}? Type the one you mean.", "one clear range")
    if not later:
        raise wrong("Type both years in full, such as 1898/1902.", "a range whose end comes after its start")
    yield _one(year, "", wrong)
    yield Token("-", sign)
    yield _one(full, mark, wrong)
