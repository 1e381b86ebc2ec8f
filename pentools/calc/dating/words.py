"""Dates as people write them ("c. 1936", "before 1942", "1930s") turned into EDTF, with the meaning to show back."""

from __future__ import annotations

import dataclasses
import re

from pentools.calc.dating.interval import ABOUT_YEARS, EdtfInterval, read_edtf
from pentools.errors import InputError

__all__ = ["read_date"]

_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_FULL_MONTHS = ("january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december")  # fmt: skip
_ABOUT = r"(?:c\.?|ca\.?|circa|about|around|roughly|approx\.?|approximately)"
_WIDTH = r"(?:\s*(?:±|\+/-|\+-)\s*(?P<width>\d{1,2})\s*(?:y|yr|yrs|year|years)?)?"
_YEARS_ONLY = re.compile(r"\d{4}-(?:1[3-9]|20|4[2-9]|[5-9]\d)")  # no month, season, quarter or third of a year
_DATE = r"\d{4}s|\d{4}(?:-\d{2}(?:-\d{2})?)?|(?:q[1-4]\s+\d{4})|(?:(?:" + "|".join(_MONTHS) + r")[a-z]*\.?\s+\d{4})"


def read_date(text: str, *, about_years: int = ABOUT_YEARS) -> EdtfInterval:
    """Read a date typed as EDTF or in plain words.

    Parameters
    ----------
    text : str
        EDTF as `read_edtf` takes it, or words: ``c. 1936``, ``about 1936 ± 3``, ``1936-1942``, ``1936 to 1942``,
        ``before 1942``, ``until 1942``, ``after 1936``, ``from 1936``, ``1930s``, ``May 1936``, ``Q1 1941``.
    about_years : int
        How far "about" reaches where the text does not say [0 to 50 years to either side].

    Returns
    -------
    EdtfInterval
        The days it allows; ``typed`` keeps the words, ``meaning`` says how they were taken, ``note`` what to check.

    Raises
    ------
    InputError
        If it cannot be read, is ambiguous (``1930-35``), or ends before it starts.

    Notes
    -----
    Taken literally: "before 1942" leaves 1942 out and "until 1942" keeps it; "after 1936" starts with 1937 and
    "from 1936" with 1936. "1930s" is the ten years 1930 to 1939. "Early" and "late" have no agreed years and are
    refused. With a dash and two digits the text means years where EDTF gives it no month or quarter.

    Examples
    --------
    >>> read_date("before 1942").edtf
    '../1941'
    >>> read_date("c. 1936 ± 3").meaning
    '1933 to 1939'
    """
    clean = re.sub(r"\s+", " ", text.strip())
    if not clean:
        raise InputError("date", "a date or a range of years", text, "Type it like 1936/1942, c. 1936 or before 1942.")
    _refuse_two_meanings(clean, text)
    low = clean.replace("–", "-").replace("—", "-").replace("−", "-").lower()
    for pattern, form in _FORMS:
        if not (found := re.fullmatch(pattern, low)):
            continue
        groups = {name: value for name, value in found.groupdict().items() if value is not None}
        width = int(groups.pop("width", about_years))
        if re.fullmatch(r"\d{4}-\d{2}", low) and ("–" in clean or _YEARS_ONLY.fullmatch(low)):
            edtf = _short_range(low, text)
        else:
            edtf = form.format(**{name: _near(name, value, text) for name, value in groups.items()})
        read = _read_as_typed(edtf, width, text)
        return dataclasses.replace(read, typed=text.strip(), note=_to_check(clean, read))
    if re.match(r"(early|mid|late)\b", low):
        raise InputError(
            "date", "years", text, "Early, mid and late have no agreed years: give them, such as 1930/1934."
        )
    read = read_edtf(clean, about_years=about_years)
    return dataclasses.replace(read, typed=text.strip(), note=_to_check(clean, read))


def _read_as_typed(edtf: str, about_years: int, text: str) -> EdtfInterval:
    try:
        return read_edtf(edtf, about_years=about_years)
    except InputError as error:
        advice = str(error).split("”. ", 1)[-1] if "”. " in str(error) else ""
        raise InputError(error.name, error.accepted, text, advice) from error


def _to_check(clean: str, read: EdtfInterval) -> str:
    if found := re.fullmatch(r"(\d{2})(\d{2})-(\d{2})", clean):
        century, tail, last = found.groups()
        if int(tail) < int(last) <= 12:
            return f"Taken as month {int(last)} of {century}{tail}; for the years type {century}{tail}/{century}{last}."
    if re.match(r"(before|after)\b", clean.lower()):
        return f"“{clean}” was taken as {read.meaning}, without the year named."
    return ""


def _refuse_two_meanings(clean: str, text: str) -> None:
    found = re.fullmatch(r"(\d{2})(\d{2})-(\d{2})", clean)
    if found is None or not int(found[2]) < int(found[3]) or not 21 <= int(found[3]) <= 41:
        return
    years, code = f"{found[1]}{found[2]}/{found[1]}{found[3]}", int(found[3])
    other = (
        f"Q{code - 32} {found[1]}{found[2]}" if 33 <= code <= 36 else f"a part of {found[1]}{found[2]}, given as months"
    )
    raise InputError("date", "one clear range", text, f"Does it mean {years} or {other}? Type the one you mean.")


def _part(text: str, whole: str) -> str:
    """One date in words as EDTF."""
    part = text.strip()
    if part.endswith("s"):
        if part[-2] != "0":
            raise InputError("date", "a decade such as 1930s", whole)
        return part[:3] + "X"
    if found := re.fullmatch(r"q([1-4])\s+(\d{4})", part):
        return f"{found[2]}-{32 + int(found[1])}"
    if found := re.fullmatch(r"([a-z]{3,9})\.?\s+(\d{4})", part):
        if found[1] not in _FULL_MONTHS and found[1] not in (*_MONTHS, "sept"):
            raise InputError(
                "date",
                "a date or a range of years",
                whole,
                f"“{found[1]}” is no month. Type it like 1936/1942, c. 1936 or before 1942.",
            )
        return f"{found[2]}-{_MONTHS.index(found[1][:3]) + 1:02d}"
    return part


def _short_range(part: str, whole: str) -> str:
    start, end = part.split("-")
    if int(end) <= int(start[2:]):
        raise InputError(
            "date", "a range whose end comes after its start", whole, "Type both years in full, such as 1898/1902."
        )
    return f"{start}/{start[:2]}{end}"


def _near(group: str, text: str, whole: str) -> str:
    """One named group of a form as EDTF; the year beside a limit that is itself left out."""
    if group == "before":
        return f"{int(text) - 1:04d}"
    if group == "after":
        return f"{int(text) + 1:04d}"
    return _part(text, whole)


# a form of words and the EDTF it stands for; the groups are dates, but for the width of "about"
_FORMS: tuple[tuple[str, str], ...] = (
    (rf"{_ABOUT}\s*(?P<start>{_DATE})\s*(?:-|/|to)\s*(?P<end>{_DATE}){_WIDTH}", "{start}~/{end}~"),
    (rf"{_ABOUT}\s*(?P<date>{_DATE}){_WIDTH}", "{date}~"),
    (r"(?P<date>\d{4})\s*(?:±|\+/-|\+-)\s*(?P<width>\d{1,2})\s*(?:y|yr|yrs|year|years)?", "{date}~"),
    (rf"(?:from\s+|between\s+)?(?P<start>{_DATE})\s*(?:-|to|till|until|and)\s*(?P<end>{_DATE})", "{start}/{end}"),
    (r"before\s+(?P<before>\d{4})", "../{before}"),
    (r"after\s+(?P<after>\d{4})", "{after}/.."),
    (rf"(?:until|till|up to|by|not after|no later than|at the latest|to)\s+(?P<date>{_DATE})", "../{date}"),
    (rf"(?:from|since|not before|no earlier than|at the earliest)\s+(?P<date>{_DATE})(?:\s+on(?:wards?)?)?", "{date}/.."),
    (rf"(?P<date>{_DATE})\s+or\s+(?:earlier|before)", "../{date}"),
    (rf"(?P<date>{_DATE})\s+or\s+(?:later|after)", "{date}/.."),
    (rf"(?P<date>{_DATE})", "{date}"),
    (r"(?:unknown|any|any date|not known)", "../.."),
)  # fmt: skip
