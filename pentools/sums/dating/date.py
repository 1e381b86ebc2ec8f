"""The date sum: evidence in lines of words in, the range it allows and what to doubt out."""

from __future__ import annotations

import datetime as dt
from typing import Any

from pentools.calc.dating.evidence import KINDS, Evidence, read_evidence
from pentools.calc.dating.findings import DateRange, DoubtSet, date_sentence
from pentools.calc.dating.interval import ABOUT_YEARS
from pentools.calc.dating.range import date_range
from pentools.calc.dating.spans import in_words
from pentools.errors import InputError
from pentools.fields import Field
from pentools.sums.base import Inputs, Sum, SumAnswer

__all__ = ["DATE", "EARLIEST_YEAR", "LATEST_YEAR", "date_answer", "date_json", "plausible"]

EARLIEST_YEAR, LATEST_YEAR = 1780, 2100
"""Years outside these are asked about: a metal pen is hardly older (judged), and a slip of the finger is likelier."""

FIELDS = (
    Field("evidence", "Evidence", "items", required=True, hint="such as: clip 1936/1942, sure, original; once for each feature"),
    Field("about", "Width of about", "count", low=0, high=50, default="2", hint="years to either side where the text does not say; 2 is a judgement"),
)  # fmt: skip


def plausible(item: Evidence) -> Evidence:
    """The evidence, if its years can be those of a pen.

    Parameters
    ----------
    item : Evidence
        One piece of evidence.

    Returns
    -------
    Evidence
        The same.

    Raises
    ------
    InputError
        If a year lies outside `EARLIEST_YEAR` to `LATEST_YEAR`.
    """
    for day in (item.dates.first_day, item.dates.last_day):
        year = None if day is None else dt.date.fromordinal(day).year
        if year is not None and not EARLIEST_YEAR <= year <= LATEST_YEAR:
            raise InputError(
                f"date of the {item.feature}",
                f"within {EARLIEST_YEAR} to {LATEST_YEAR}",
                item.dates.typed,
                "Was a digit mistyped?",
            )
    return item


def date_answer(given: Inputs) -> SumAnswer:
    """When a pen was made, as far as its evidence goes.

    Raises
    ------
    InputError
        If there is no evidence, or a line of it cannot be read.
    """
    width = given.whole("about", ABOUT_YEARS)
    result = date_range([plausible(read_evidence(text, about_years=width)) for text in given.texts("evidence")])
    data = date_json(result)
    return SumAnswer(data["sentence"], data, result.findings, _table(result), result)


def date_json(result: DateRange) -> dict[str, Any]:
    """A date range as the JSON object that the command line prints and the record's panel shows.

    Parameters
    ----------
    result : DateRange
        What `date_range` gave.

    Returns
    -------
    dict
        Years are whole numbers and null at an open end; ``range`` and ``edtf`` are null where the evidence
        contradicts itself.
    """
    return {
        "sentence": date_sentence(result),
        "range": [result.first_year, result.last_year] if result.spans else None,
        "edtf": result.edtf or None,
        "meaning": in_words(result.spans) if result.spans else None,
        "conflicts": [_way(way) for way in result.conflicts],
        "other_ways": [_way(way) for way in result.other_ways],
        "edtf_if_all_original": result.edtf_if_all_original or None,
        "start_set_by": [result.evidence[i].feature for i in result.start_set_by],
        "end_set_by": [result.evidence[i].feature for i in result.end_set_by],
        "next_facts": [
            {
                "find_out": fact.text,
                "edtf_at_best": fact.edtf_at_best or None,
                "years_at_best": fact.best_years if 0 < fact.best_years < float("inf") else None,
                "ways_out_left": fact.ways_left if result.conflicts else None,
            }
            for fact in result.next_facts
        ],
        "evidence": [_evidence(item) for item in result.evidence],
        "findings": [finding.as_json() for finding in result.findings],
    }


def _way(way: DoubtSet) -> dict[str, Any]:
    return {
        "doubt": list(way.features),
        "places": list(way.doubted),
        "weight": way.weight,
        "least_weight": way.least_weight,
        "fewest": way.fewest,
        "leaves": way.edtf,
    }


def _evidence(item: Evidence) -> dict[str, Any]:
    return {
        "feature": item.feature,
        "typed": item.dates.typed,
        "edtf": item.dates.edtf,
        "meaning": item.dates.meaning,
        "read_as": item.dates.read_as,
        "note": item.dates.note or None,
        "allows": in_words(item.spans),
        "kind": item.kind,
        "certainty": item.certainty,
        "part": item.part,
        "source": item.source or None,
    }


def _table(result: DateRange) -> tuple[tuple[str, ...], ...]:
    head = ("feature", "typed", "read as", "allows", "kind", "how sure", "part")
    return head, *(
        (item.feature, item.dates.typed, item.dates.read_as, in_words(item.spans), item.kind, item.certainty, item.part)
        for item in result.evidence
    )


DATE = Sum(
    "date",
    "Date from evidence",
    "The range of dates that all evidence on original parts allows, and what to doubt where it contradicts itself. "
    "Each piece: a feature, its dates, then if you like its kind (" + ", ".join(KINDS) + "), how sure (sure, likely, "
    "doubtful) and the part (original, replaced, unknown).",
    FIELDS,
    date_answer,
    'pentools sums date --evidence "clip 1936/1942" --evidence "patent 1934" --evidence "nib c. 1940, replaced"',
)
