"""Wording that every section shares: dates, sentences, times and masses as the page shows them."""

from __future__ import annotations

import datetime as dt
import re
from typing import TYPE_CHECKING

from pentools.numbers import capital
from pentools.record.stages.job.posting import insured_since, insured_value
from pentools.units import Reading
from pentools.words import MONTHS

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "THIN",
    "basis_in_words",
    "date_in_words",
    "decimals_of",
    "first_sentence",
    "minutes_in_words",
    "sentence",
    "shown_mass",
]

THIN = "\u202f"


def date_in_words(moment: dt.date | dt.datetime | str | None) -> str:
    """A date as ``14 March 2026``; a text that is no date stays as it is; empty for None."""
    if moment is None:
        return ""
    if isinstance(moment, str):
        try:
            return date_in_words(dt.datetime.fromisoformat(moment))
        except ValueError:
            return moment
    return f"{moment.day}\u00a0{MONTHS[moment.month - 1]} {moment.year}"


def basis_in_words(job: Job) -> str:
    """On what basis a pen is insured for its value, and when that was said, unless the basis tells a year itself."""
    _, basis = insured_value(job)
    since = insured_since(job)
    if since is None or re.search(r"\b(1[89]|2\d)\d\d\b", basis):
        return f"Basis: {(basis or 'not entered').rstrip('. ')}."
    return f"Basis: {(basis or 'not entered').rstrip('. ')}; said on {date_in_words(since)}."


def sentence(text: str) -> str:
    """The text as a sentence: a capital letter in front, a full stop at the end."""
    text = capital(text)
    return text if not text or text[-1] in ".!?…”" else text + "."


def first_sentence(text: str) -> str:
    """The first sentence of a text, as a sentence."""
    found = re.match(r"(.+?[.!?…])(?:\s|$)", " ".join(text.split()))
    return sentence(found[1] if found else " ".join(text.split()))


def minutes_in_words(minutes: float) -> str:
    """A time [min] as ``45 min`` or ``2 h 10 min``."""
    whole = round(minutes)
    hours, rest = divmod(whole, 60)
    if not hours:
        return f"{whole}{THIN}min"
    return f"{hours}{THIN}h {rest}{THIN}min" if rest else f"{hours}{THIN}h"


def decimals_of(job: Job) -> int:
    """How many decimals a mass [g] is shown with: those of the bench balance's readability, 0 to 5."""
    text = job.bench.text("balance", "readability").split()
    found = re.fullmatch(r"\d+[.,]?(\d*)", text[0]) if text else None
    return min(len(found[1]), 5) if found else 2


def shown_mass(reading: Reading, decimals: int) -> str:
    """A mass [g] with the decimals of the balance, or more where more were typed."""
    typed = re.search(r"\d[.,](\d+)\s*(?:g|$)", reading.typed or "")
    digits = max(decimals, len(typed[1]) if typed else 0)
    return f"{reading.value:.{digits}f}{THIN}g"
