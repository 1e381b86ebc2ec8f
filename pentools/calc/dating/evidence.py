"""One piece of dating evidence: a feature, the dates that are known for it, what that says about the pen; typed in one line."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal, cast, get_args

from pentools.calc.dating.interval import ABOUT_YEARS, EdtfInterval
from pentools.calc.dating.phrases import read_date
from pentools.calc.dating.spans import Span
from pentools.errors import InputError

__all__ = ["CERTAINTIES", "KINDS", "Certainty", "Evidence", "EvidenceKind", "PartState", "read_evidence"]

EvidenceKind = Literal["production", "date code", "price mark", "colour", "patent", "advert", "inscription", "opinion"]
PartState = Literal["original", "replaced", "unknown"]
Certainty = Literal["sure", "likely", "doubtful"]

KINDS: dict[EvidenceKind, str] = {
    "production": "made between these dates",
    "date code": "stamped with a date",
    "price mark": "the price was asked between these dates",
    "colour": "the colour was offered between these dates",
    "patent": "not before the patent's date; it says nothing of the end",
    "advert": "shown on sale then, which limits neither end for this pen",
    "inscription": "engraved then, so made no later",
    "opinion": "somebody's word, without a feature on the pen to show for it",
}
"""What each kind of evidence says about the date at which the pen was made."""

CERTAINTIES: dict[Certainty, int] = {"sure": 3, "likely": 2, "doubtful": 1}
"""What it costs to doubt one piece of evidence; judged: three doubtful ones weigh as much as a sure one."""


@dataclass(frozen=True, slots=True)
class Evidence:
    """One piece of evidence.

    Parameters
    ----------
    feature : str
        What was seen, such as ``clip`` or ``imprint, second line``.
    dates : EdtfInterval
        The dates known for it.
    kind : EvidenceKind
        What sort of evidence it is; see `KINDS`.
    certainty : Certainty
        How sure the dates are; see `CERTAINTIES`.
    part : PartState
        Whether the part is original to this pen.
    source : str
        Where the dates are known from.

    Raises
    ------
    InputError
        If the feature is empty, or a word is none of the known ones.
    """

    feature: str
    dates: EdtfInterval
    kind: EvidenceKind = "production"
    certainty: Certainty = "likely"
    part: PartState = "original"
    source: str = ""

    def __post_init__(self) -> None:
        if not self.feature.strip():
            raise InputError("feature", "named", self.feature, "Say what was seen, such as clip.")
        for name, value, known in (
            ("kind of evidence", self.kind, get_args(EvidenceKind)),
            ("certainty", self.certainty, get_args(Certainty)),
            ("part", self.part, get_args(PartState)),
        ):
            if value not in known:
                raise InputError(name, "one of " + ", ".join(known), value)

    @property
    def weight(self) -> int:
        """What it costs to doubt it [1 to 3]; a date marked ``?`` counts as doubtful."""
        return CERTAINTIES["doubtful" if self.dates.uncertain else self.certainty]

    @property
    def spans(self) -> tuple[Span, ...]:
        """The days at which the pen may have been made, as far as this evidence goes.

        Notes
        -----
        A patent is "not before" its first day; an inscription "not after" its last; an advert shows a model on sale
        and limits neither end of one pen's date (advertising art was used again for ten years and more: a collectors'
        page). All other kinds are taken as they stand.
        """
        match self.kind:
            case "patent":
                return ((self.dates.first_day, None),)
            case "inscription":
                return ((None, self.dates.last_day),)
            case "advert":
                return ((None, None),)
            case _:
                return self.dates.spans

    @property
    def limits_nothing(self) -> bool:
        """Whether it allows any date."""
        return self.spans == ((None, None),)


# words in a feature's name that tell its kind, where none was given
_TELLING: tuple[tuple[str, EvidenceKind], ...] = (
    (r"\bpat(ent|ented|\.)", "patent"),
    (r"\b(advert|advertisement|catalogue|catalog)\b", "advert"),
    (r"\bdate[- ]code\b", "date code"),
    (r"\bprice\b", "price mark"),
    (r"\bcolou?r\b", "colour"),
    (r"\b(inscription|engraving|engraved)\b", "inscription"),
)
_YEAR = re.compile(r"(?<!\d)(?:\d{4}|\d{3}X|\d{2}XX)(?!\d)|\d(?:st|nd|rd|th)[ -]c", re.IGNORECASE)
# what limits a date wherever it stands: never a part of a feature's name unless a colon says so
_LIMITING = re.compile(
    r"(?<![\w-])(?:before|after|since|until|till|introduced|dropped|discontinued|launched|withdrawn|ceased|later|earlier|latest|earliest"
    r"|circa|ca?\.|onwards?|prior|not|never)(?![\w-])|[≥≤<>±]",
    re.IGNORECASE,
)
# what limits or blurs a date, or says something else of it, where it stands right before it
_BESIDE = re.compile(
    rf"(?:{_LIMITING.pattern}|(?<![\w-])(?:early|mid|middle|late|last|first|from|by|to|up|about|around|roughly|approx\.?|approximately|or|and"
    r"|between|than|then|pre|post|new|old|no|only|shortly|just|soon|nearly|almost|end|ended|beginning|begun|began|start|started|half|probably"
    r"|possibly|perhaps|maybe|as|through|at|the|replaced|removed|dates|dating|spring|summer|autumn|fall|winter|turn|of|was|is|gone|out"
    r"|most|least|less|more|longer|very|well|long|towards?|upto|c|ca|century|appear(?:s|ed|ing)|seen|stopped|stops|over|under|within))$",
    re.IGNORECASE,
)


def read_evidence(text: str, *, about_years: int = ABOUT_YEARS) -> Evidence:
    """Read one line of evidence.

    Parameters
    ----------
    text : str
        A feature, its dates (EDTF or words), then, separated by commas, any of: a kind of evidence (`KINDS`), how sure it
        is (sure, likely, doubtful), the part (original, replaced, unknown) and ``source:`` with words. A colon before the
        dates parts them from a feature that ends in a number or has a limiting word in its name. Dates may stand first
        ("late 1930s nib") where nothing in the name could be said of them.
    about_years : int
        How far "about" reaches where the text does not say [0 to 50 years to either side].

    Returns
    -------
    Evidence
        Likely and original where nothing is said; the kind is taken from words such as "patent" in the feature.

    Raises
    ------
    InputError
        If there is no feature, no date, or a word that is not understood; a word that limits a date is never left in
        the feature's name.

    Examples
    --------
    >>> item = read_evidence("clip not later than 1942, doubtful")
    >>> item.feature, item.dates.edtf, item.certainty
    ('clip', '../1942', 'doubtful')
    >>> read_evidence("patent number 1934").kind
    'patent'
    """
    source = ""
    line = text.strip()
    if found := re.search(r"[,;]?\s*\b(?:source|known from)\s*:?\s+(.+)$", line, re.IGNORECASE):
        source, line = found[1].strip(), line[: found.start()]
    head, words = _head_and_words(line)
    feature, dates = _feature_and_dates(head, text)
    kind: EvidenceKind | None = next((kind for pattern, kind in _TELLING if re.search(pattern, feature.lower())), None)
    return Evidence(
        feature,
        read_date(dates, about_years=about_years),
        cast("EvidenceKind", _one_of(words, get_args(EvidenceKind), kind or "production")),
        cast("Certainty", _one_of(words, get_args(Certainty), "likely")),
        cast("PartState", _one_of(words, get_args(PartState), "original")),
        source,
    )


def _head_and_words(line: str) -> tuple[str, list[str]]:
    """Feature and dates, their commas kept, and the words that tell kind, certainty and part."""
    words = (*KINDS, *CERTAINTIES, *get_args(PartState))
    parts = [part.strip() for part in re.split(r",(?![^\[]*\])", line)]
    known = {index: part.lower().removesuffix(" part") for index, part in enumerate(parts)}
    known = {index: word for index, word in known.items() if word in words and index}
    dated = max((index for index, part in enumerate(parts) if index not in known and _YEAR.search(part)), default=0)
    strange = next((part for index, part in enumerate(parts) if index > dated and index not in known), None)
    if strange is not None:
        raise InputError("evidence", "a feature, its dates, then words from: " + ", ".join(words), strange)
    return ", ".join(part for index, part in enumerate(parts[: dated + 1]) if index not in known), list(known.values())


def _one_of(words: list[str], known: tuple[str, ...], usual: str) -> str:
    said = dict.fromkeys(word for word in words if word in known)
    if len(said) > 1:
        raise InputError(
            "evidence", "one of " + ", ".join(known), ", ".join(said), "Two of them contradict each other."
        )
    return next(iter(said), usual)


def _feature_and_dates(head: str, text: str) -> tuple[str, str]:
    """Where the feature's name ends: the dates begin at the first word from which the rest reads as one."""
    advice = "Type it like: clip 1936/1942."
    if ":" in head:
        feature, dates = (part.strip() for part in head.rsplit(":", 1))
        return _not_in_the_name(feature, dates, text), dates
    year = _YEAR.search(head)
    if year is None:
        raise InputError("evidence", "a feature with its dates", text, advice)
    starts = [found.start() for found in re.finditer(r"(?<!\S)\S|[<>≤≥±]", head) if found.start() <= year.start()]
    start = next((place for place in starts if _reads(head[place:])), None)
    if start is None and (turned := _dates_first(head)):
        return turned
    start = starts[-1] if start is None else start
    feature, dates = head[:start].strip().rstrip(",").rstrip(), head[start:]
    if not feature:
        raise InputError(
            "evidence",
            "a feature with its dates",
            text,
            f"The feature is missing. {advice}" if _reads(dates) else _advice_of(head, year.start()) or advice,
        )
    if found := _LIMITING.search(feature) or _BESIDE.search(feature):
        colon = (
            "" if feature.endswith(found[0]) else f"{feature}: {dates}"
        )  # a colon helps where more of the name follows
        raise _limiting_word(found[0], text, head[found.start() :], colon)
    return feature, dates


def _dates_first(head: str) -> tuple[str, str] | None:
    """Name and dates of "late 1930s nib", if no word of the name could limit the dates and no figure could be one."""
    for found in reversed(list(re.finditer(r"\s+(?=\S)", head))):
        dates, feature = head[: found.start()], head[found.end() :]
        if not _reads(dates):
            continue
        doubtful = any(_LIMITING.search(word) or _BESIDE.search(word) for word in re.findall(r"[^\s,;]+", feature))
        return None if doubtful or re.search(r"\d", feature) else (feature, dates)
    return None


def _advice_of(head: str, year: int) -> str:
    """What the reader of dates says of those that stand first, up to the word with the first year; empty if it reads them."""
    try:
        read_date(head[:year] + head[year:].split(maxsplit=1)[0].rstrip(",;"))
    except InputError as error:
        return error.advice
    return ""


def _reads(dates: str) -> EdtfInterval | None:
    try:
        return read_date(dates)
    except InputError:
        return None


def _not_in_the_name(feature: str, dates: str, text: str) -> str:
    """The feature before a colon, if its last words do not limit the dates behind it ("clip not later than: 1942")."""
    plain = _reads(dates)
    for found in re.finditer(r"(?<=\s)\S", feature):
        more = _reads(f"{feature[found.start() :]} {dates}")
        if plain and more and more.spans != plain.spans:
            right = f"{feature[: found.start()].strip()}: {feature[found.start() :]} {dates}"
            raise InputError(
                "evidence", "a feature with its dates", text, f"Put the colon behind the feature's name: {right}"
            )
    return feature


def _limiting_word(word: str, text: str, rest: str, with_colon: str) -> InputError:
    """What to say of a word before a date that is neither understood nor a name: what the reader of dates says of it."""
    try:
        read_date(rest)
    except InputError as error:
        told = error.advice
    else:
        told = f"“{word}” says something of the date that is not understood there."
    colon = (
        f" If “{word}” belongs to the feature's name, put a colon behind the name: {with_colon}" if with_colon else ""
    )
    return InputError("evidence", "a feature with its dates", text, told + colon)
