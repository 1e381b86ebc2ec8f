"""Dating evidence typed in one line: "clip 1936/1942, sure" or "patent mark 1934, source: the patent itself"."""

from __future__ import annotations

import re
from typing import cast

from pentools.calc.dating.evidence import CERTAINTIES, KINDS, Certainty, Evidence, EvidenceKind, PartState
from pentools.calc.dating.interval import ABOUT_YEARS
from pentools.calc.dating.words import read_date
from pentools.errors import InputError

__all__ = ["read_evidence"]

_PARTS = ("original", "replaced", "unknown")
# words in a feature's name that tell its kind, where none was given
_TELLING: tuple[tuple[str, EvidenceKind], ...] = (
    (r"\bpat(ent|ented|\.)", "patent"),
    (r"\b(advert|advertisement|catalogue|catalog)\b", "advert"),
    (r"\bdate[- ]code\b", "date code"),
    (r"\bprice\b", "price mark"),
    (r"\bcolou?r\b", "colour"),
    (r"\b(inscription|engraving|engraved)\b", "inscription"),
)
_YEAR = re.compile(r"(?<!\d)(?:\d{4}|\d{3}X|\d{2}XX)(?!\d)")


def read_evidence(text: str, *, about_years: int = ABOUT_YEARS) -> Evidence:
    """Read one line of evidence.

    Parameters
    ----------
    text : str
        A feature, its dates (EDTF or words), then, separated by commas, any of: a kind of evidence
        (`pentools.calc.dating.evidence.KINDS`), how sure it is (sure, likely, doubtful), the part (original, replaced,
        unknown) and ``source:`` with words. A colon before the dates parts them from a feature that ends in a number.
    about_years : int
        How far "about" reaches where the text does not say [0 to 50 years to either side].

    Returns
    -------
    Evidence
        Likely and original where nothing is said; the kind is taken from words such as "patent" in the feature.

    Raises
    ------
    InputError
        If there is no feature, no date, or a word that is not known.

    Examples
    --------
    >>> item = read_evidence("clip 1936/1942, doubtful")
    >>> item.feature, item.dates.edtf, item.certainty
    ('clip', '1936/1942', 'doubtful')
    >>> read_evidence("patent number 1934").kind
    'patent'
    """
    source = ""
    line = text.strip()
    if found := re.search(r"[,;]?\s*\b(?:source|known from)\s*:?\s+(.+)$", line, re.IGNORECASE):
        source, line = found[1].strip(), line[: found.start()]
    head, *words = (part.strip() for part in re.split(r",(?![^\[]*\])", line))
    feature, dates = _feature_and_dates(head, text)
    kind: EvidenceKind | None = next((kind for pattern, kind in _TELLING if re.search(pattern, feature.lower())), None)
    certainty: Certainty = "likely"
    part: PartState = "original"
    for word in words:
        low = word.lower().removesuffix(" part")
        if low in KINDS:
            kind = cast(EvidenceKind, low)
        elif low in CERTAINTIES:
            certainty = cast(Certainty, low)
        elif low in _PARTS:
            part = cast(PartState, low)
        else:
            raise InputError(
                "evidence", "a feature, its dates, then words from: " + ", ".join([*KINDS, *CERTAINTIES, *_PARTS]), word
            )
    return Evidence(feature, read_date(dates, about_years=about_years), kind or "production", certainty, part, source)


def _feature_and_dates(head: str, text: str) -> tuple[str, str]:
    advice = "Type it like: clip 1936/1942."
    if ": " in head:
        feature, dates = head.rsplit(": ", 1)
        return feature.strip(), dates.strip()
    places = [found.start() for found in re.finditer(r"(?<!\S)\S", head)]
    year = _YEAR.search(head)
    if year is None:
        raise InputError("evidence", "a feature with its dates", text, advice)
    # the dates begin at the first word from which the rest reads as one, and no later than the first year
    starts = [place for place in places if place <= year.start()]
    for place in starts:
        try:
            read_date(head[place:])
        except InputError:
            continue
        if place == 0:
            raise InputError("evidence", "a feature with its dates", text, f"The feature is missing. {advice}")
        return head[:place].strip(), head[place:]
    if starts[-1] == 0:
        raise InputError("evidence", "a feature with its dates", text, advice)
    return head[: starts[-1]].strip(), head[starts[-1] :]
