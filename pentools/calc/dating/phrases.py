"""Dates as people write them ("c. 1936", "not later than early 1942", "introduced 1936, dropped 1942") turned into EDTF."""

from __future__ import annotations

import dataclasses
import re
from dataclasses import dataclass

from pentools.calc.dating.interval import ABOUT_YEARS, EdtfInterval, read_edtf
from pentools.calc.dating.spans import end_text, first_and_last_day, start_text
from pentools.calc.dating.tokens import ADVICE, Mention, Token, Wrong, tokens_of
from pentools.errors import InputError

__all__ = ["THIRDS", "read_date"]

THIRDS = (
    "Early, mid and late are taken as the thirds of a year, decade or century, rounded outward to whole months or years "
    "(common practice, no source)."
)
"""How the parts of a year, a decade or a century are read."""

_LIMITS = (">=", ">", "<=", "<", "from", "to", "in", "out")
_AFTERWARDS = {"or later": ">=", "or earlier": "<=", ">=": ">=", "<=": "<=", "in": "in", "out": "out"}
_PLACES = {"early": 0, "beginning": 0, "start": 0, "mid": 1, "middle": 1, "late": 2, "end": 2, "first": 0, "1st": 0}
# figures alone that are words all the same: short ranges, dates in local order, years cut short
_NOT_EDTF = r"\d{4}-(?:\d{2}|\d{4})|\d{4}/\d{2}|\d{1,3}|\d{1,2}[./]\d{1,2}[./]\d{4}"


@dataclass(frozen=True, slots=True)
class _Part:
    """A date, a limit or a joining word: its letter in the phrase's shape, and its ends as EDTF."""

    letter: str
    start: str = ""
    end: str = ""
    date: Mention | None = None


def read_date(text: str, *, about_years: int = ABOUT_YEARS) -> EdtfInterval:
    """Read a date typed as EDTF or in plain words.

    Parameters
    ----------
    text : str
        EDTF as `read_edtf` takes it, or words: ``c. 1936``, ``about 1936 ± 3``, ``1936-1942``, ``before May 1942``,
        ``not later than 1942``, ``after c. 1936``, ``late 1930s``, ``introduced 1936, dropped 1942``, ``Q1 1941``,
        ``from early 1936 until 1942``, ``1936 or 1938``, ``≥ 1936``, ``20th century``.
    about_years : int
        How far "about" reaches where the text does not say [0 to 50 years to either side].

    Returns
    -------
    EdtfInterval
        The days it allows; ``typed`` keeps the words, ``read_as`` says how they were taken, ``note`` what to check.

    Raises
    ------
    InputError
        If a word of it is not understood, it can be read in two ways, limits nothing, or ends before it starts.

    Notes
    -----
    "Before 1942" and "after 1936" leave the year named out; "until", "by", "not after", "from", "since" and "not before"
    keep it. What was introduced in a year is of that year or later, what was dropped or last seen in one of that year or
    earlier. Early, mid and late are thirds (`THIRDS`); "about" moves the bound of the date it stands before, limited or
    not, to the outside. A century counts from its year 1, so that the 20th is 1901 to 2000.

    Examples
    --------
    >>> read_date("before 1942").edtf
    '../1941'
    >>> read_date("not before c. 1936 ± 3").meaning
    '1933 or later'
    >>> read_date("late 1930s").edtf
    '1936/1939'
    """
    notes: list[str] = []
    shown = text.strip() if len(text) <= 120 else f"{text[:40].strip()}…"

    def wrong(advice: str, accepted: str = "a date or a range of years") -> InputError:
        return InputError("date", accepted, shown, advice)

    clean = re.sub(r"\s+", " ", text.strip()).replace("—", "–").replace("−", "-").replace("’", "'")
    clean = re.sub(r"(?<=[\ds)])\.$", "", clean)
    if not clean or len(text) > 120:
        raise wrong(ADVICE if not clean else f"It is too long. {ADVICE}")
    if re.fullmatch(r"(?i)unknown|any|any date|not known", clean):
        edtf, width = "../..", about_years
    elif re.fullmatch(r"[\[\]{}\d.,/?~%xX-]+", clean) and not re.fullmatch(_NOT_EDTF, clean):
        edtf, width = clean.upper(), about_years
    else:
        edtf, width, notes = _read_words(clean, about_years, wrong)
    try:
        read = read_edtf(edtf, about_years=width)
    except InputError as error:
        raise InputError(error.name, error.accepted, shown, error.advice) from error
    told = " ".join(note.format(clean=clean, meaning=read.meaning) for note in notes)
    return dataclasses.replace(read, typed=text.strip(), note=told)


def _read_words(clean: str, about_years: int, wrong: Wrong) -> tuple[str, int, list[str]]:
    """A phrase as EDTF, the width of its "about", and what to check."""
    tokens = tokens_of(clean.lower(), wrong)
    widths = {int(re.sub(r"\D", "", token.text)) for token in tokens if token.kind == "width"}
    if len(widths) > 1:
        raise wrong("Two widths of about stand there: type one.")
    notes = [token.note for token in tokens if token.note]
    plain = _limits_first(_blurred(tokens, wrong), wrong)
    parts = _parts(plain, wrong)
    if (
        len(parts) == 1
        and parts[0].letter == "f"
        and re.search(r"(?i)\bfrom the\b", clean)
        and tokens[-1].kind != "or later"
    ):
        raise wrong("Does it mean of those years, or then and later? Leave “from the” out, or type since.")
    if any(token.kind in (">", "<") for token in plain):
        named = "date" if any(token.date and "-" in token.date.edtf.replace("/", "") for token in plain) else "year"
        notes.append(f"“{{clean}}” was taken as {{meaning}}, without the {named} named.")
    notes += [THIRDS] if any(token.kind == "part" for token in tokens) else []
    return _joined(parts, bool(widths), wrong), widths.pop() if widths else about_years, notes


def _blurred(tokens: list[Token], wrong: Wrong) -> list[Token]:
    """The phrase with circa, perhaps, early, mid, late and ± put into the date that they stand beside."""
    found: list[Token] = []
    waiting: list[Token] = []
    for number, token in enumerate(tokens):
        parts = sum(word.kind in ("part", "half") for word in waiting)
        if token.kind in ("circa", "width") and _belongs_to_the_last(token, found, waiting, tokens[number:]):
            found[-1] = _with(found[-1], found[-1].date.marked("~"))  # type: ignore[union-attr]
        elif token.kind in ("circa", "maybe", "part", "half"):
            waiting.append(token)
        elif token.date is not None:
            found.append(_with(token, _modified(token.date, waiting, wrong)))
            waiting = []
        elif not (
            parts and (token.kind == "-" or (token.kind in ("to", "/") and parts == 1))
        ):  # mid-1930s, early to mid 1930s
            found.append(token)
    if waiting:
        raise wrong(f"“{waiting[-1].text}” wants a date behind it. {ADVICE}")
    if any(token.kind == "width" for token in found):
        raise wrong("± belongs behind a date, such as 1936 ± 3.")
    return found


def _with(token: Token, date: Mention) -> Token:
    return dataclasses.replace(token, date=date)


def _belongs_to_the_last(token: Token, found: list[Token], waiting: list[Token], rest: list[Token]) -> bool:
    """Whether a circa or ± goes with the date before it: a ± always, a circa where no date follows."""
    if waiting or not found or found[-1].date is None:
        return False
    return token.kind == "width" or all(later.date is None for later in rest)


def _modified(date: Mention, waiting: list[Token], wrong: Wrong) -> Mention:
    names = [token.text.split()[0].rstrip("-") for token in waiting if token.kind in ("part", "half")]
    if len(names) > 2:
        raise wrong("At most two parts of one date, such as early to mid 1930s.")
    halves = any(token.kind == "half" for token in waiting)
    if names:
        one, other = (_part(date, name, 2 if halves else 3, wrong) for name in (names[0], names[-1]))
        edtf = f"{start_text(one.first)}/{end_text(other.last)}"
        date = Mention(one.first, other.last, edtf, date.mark, one.until, other.since)
    return date.marked(
        "".join("~" if token.kind == "circa" else "?" for token in waiting if token.kind in ("circa", "maybe"))
    )


def _part(date: Mention, name: str, of: int, wrong: Wrong) -> Mention:
    """A third or a half of a year, a decade or a century, its ends rounded outward to whole months or years."""
    first, last = start_text(date.first), end_text(date.last)
    if len(first) != 4 or len(last) != 4:
        raise wrong("Early, mid and late go with a year, a decade or a century: give the days instead.")
    months = first == last
    start, length = (1, 12) if months else (int(first), int(last) - int(first) + 1)
    place = _PLACES.get(name, of - 1)
    low, low_rest = divmod(place * length, of)
    high, high_rest = divmod((place + 1) * length, of)

    def days(unit: int) -> tuple[int, int]:
        return first_and_last_day(int(first), start + unit) if months else first_and_last_day(start + unit)

    begins, ends = days(low), days(high if high_rest else high - 1)
    until = begins[1] if low_rest else begins[0] - 1  # a month or year that is cut in two is on both sides
    return Mention(begins[0], ends[1], "", date.mark, until, ends[0] if high_rest else ends[1] + 1)


def _limits_first(tokens: list[Token], wrong: Wrong) -> list[Token]:
    """The phrase with what limits a date from behind ("1936 or later", "1942 dropped") put before it."""
    found: list[Token] = []
    for number, token in enumerate(tokens):
        behind = token.kind in ("or later", "or earlier") or (
            token.kind in _AFTERWARDS
            and found
            and found[-1].date is not None
            and not _date_follows(tokens[number + 1 :])
        )
        if not behind:
            found.append(token)
        elif not found or found[-1].date is None:
            raise wrong(f"“{token.text}” wants a date before it. {ADVICE}")
        elif token.kind == "or later" and len(found) > 1 and found[-2].kind in ("from", ">=", "in"):
            continue  # from 1936 onwards
        else:
            found.insert(-1, Token(_AFTERWARDS[token.kind], token.text))
    return found


def _date_follows(rest: list[Token]) -> bool:
    """Whether a date comes before the next word that joins."""
    return next(
        (token.date is not None for token in rest if token.date is not None or token.kind in ("and", "or", "-", "/")),
        False,
    )


def _parts(tokens: list[Token], wrong: Wrong) -> list[_Part]:
    """Dates, limits and the words that join them."""
    found: list[_Part] = []
    waiting: list[Token] = []
    for token in tokens:
        if token.date is not None and waiting:
            found.append(_limited([word.kind for word in waiting], token.date, wrong))
            waiting = []
        elif token.date is not None:
            date = token.date
            found.append(_Part("d", start_text(date.first) + date.mark, end_text(date.last) + date.mark, date))
        elif token.kind in _LIMITS and not (token.kind == "to" and found and found[-1].letter in "dfl" and not waiting):
            waiting.append(token)
        elif waiting:
            raise wrong(f"“{token.text}” does not belong there. {ADVICE}")
        else:
            found.append(_Part({"to": "t", "and": "&", "or": "|", "between": "w"}.get(token.kind, token.kind)))
    if waiting:
        raise wrong(f"“{waiting[-1].text}” wants a date behind it. {ADVICE}")
    return found


def _limited(words: list[str], date: Mention, wrong: Wrong) -> _Part:
    """A bound from the words before a date."""
    events = [word for word in words if word in ("in", "out")]
    signs = [{"from": ">=", "to": "<="}.get(word, word) for word in words if word not in events]
    if len(signs) > 1 or len(events) > 1 or (events and words[0] != events[0]):
        raise wrong("A date is limited twice: say it once, such as before 1942.")
    sign = signs[0] if signs else ">=" if events == ["in"] else "<="
    if (events == ["in"] and "<" in sign) or (events == ["out"] and ">" in sign):
        told = (
            "introduced before a date may be of any later one"
            if "in" in events
            else "dropped after a date may be of any earlier one"
        )
        raise wrong(f"That limits neither end: what was {told}. Give the year itself.")
    day = {">=": date.first, ">": date.since, "<=": date.last, "<": date.until}[sign]
    if not 1 <= day <= first_and_last_day(9999)[1]:
        raise wrong("Nothing is left on that side of it.", "within the years 1 to 9999")
    if ">" in sign:
        return _Part("f" if words == ["from"] else "l", start=start_text(day) + date.mark)
    return _Part("b" if sign == "<" else "u", end=end_text(day) + date.mark)


# shapes of a phrase: d a date, f "from", l another lower limit, u an upper one, b "before"; t "to", w "between … and", & "and", | "or"
_RANGES = r"d[t/-]d|wd&d|wd-d|dt[ub]|du|[fl]td|f[/-]d|[fl][&t]?[ub]|[ub]&?[fl]"
_SHAPES: tuple[tuple[str, str], ...] = (
    (r".*w.*", "Between wants two dates, such as between 1936 and 1942."),
    (r"[flub][/&|-]d|d[/-][flub]|[flub]d[/-]d", "A limit goes with one date, a range without a limiting word: type 1936/1942 or not later than 1942."),
    (r"d&d", "Does it mean a range or one of the two? Join them by to or by or."),
    (r".*", "It is not one date, one limit or one range. " + ADVICE),
)  # fmt: skip


def _joined(parts: list[_Part], width: bool, wrong: Wrong) -> str:
    """The phrase's parts as one EDTF text."""
    shape = "".join(part.letter for part in parts)
    dates = [part.date for part in parts if part.date is not None]
    if shape == "d" and "/" not in dates[0].edtf:
        return dates[0].edtf + dates[0].mark
    if re.fullmatch(r"\|?d(?:\|d)+", shape):
        return "[" + ",".join(_in_a_set(date) for date in dates) + "]"
    if shape in ("d", "f", "l", "u", "b") or re.fullmatch(_RANGES, shape):
        first = next((part for part in parts if part.start), _Part("", start=".."))
        last = next((part for part in reversed(parts) if part.end), _Part("", end=".."))
        start, end = first.start, last.end
        if re.fullmatch(r"d[t/-]d", shape):  # an "about" before a range, and a ± behind it, go with both ends
            end += "~" if "~" in start and end[-1] not in "~?%" else ""
            start += "~" if width and "~" in end and start[-1] not in "~?%" else ""
        return f"{start}/{end}"
    raise wrong(next(told for pattern, told in _SHAPES if re.fullmatch(pattern, shape)))


def _in_a_set(date: Mention) -> str:
    if "/" not in date.edtf:
        return date.edtf + date.mark
    return f"{start_text(date.first)}{date.mark}..{end_text(date.last)}{date.mark}"
