"""The date sum: evidence in lines of words in, the range it allows and what to doubt out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pentools.calc.dating.evidence import KINDS, Evidence
from pentools.calc.dating.findings import date_sentence
from pentools.calc.dating.interval import EdtfInterval
from pentools.calc.dating.range import date_range
from pentools.calc.dating.reading import read_evidence
from pentools.calc.dating.result import DateRange, DoubtSet
from pentools.errors import InputError
from pentools.fields import Field, Value
from pentools.sums.base import Sum, SumAnswer

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
        year = None if day is None else round(day / 365.2425 + 0.5)
        if year is not None and not EARLIEST_YEAR <= year <= LATEST_YEAR:
            raise InputError(
                f"date of the {item.feature}",
                f"within {EARLIEST_YEAR} to {LATEST_YEAR}",
                item.dates.typed,
                "Was a digit mistyped?",
            )
    return item


def date_answer(values: Mapping[str, Value]) -> SumAnswer:
    """When a pen was made, as far as its evidence goes.

    Parameters
    ----------
    values : mapping of str to Value
        Values of the fields; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table and JSON object.

    Raises
    ------
    InputError
        If there is no evidence, or a line of it cannot be read.
    """
    about, lines = values.get("about"), values.get("evidence")
    width = int(about) if isinstance(about, int | float) else 2
    texts = [line for line in lines if isinstance(line, str)] if isinstance(lines, tuple) else []
    result = date_range([plausible(read_evidence(text, about_years=width)) for text in texts])
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
        "meaning": EdtfInterval("", result.spans).meaning if result.spans else None,
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
        "allows": EdtfInterval("", item.spans).meaning,
        "kind": item.kind,
        "certainty": item.certainty,
        "part": item.part,
        "source": item.source or None,
    }


def _table(result: DateRange) -> tuple[tuple[str, ...], ...]:
    rows = [("feature", "typed", "allows", "kind", "how sure", "part")]
    rows += [
        (item.feature, item.dates.typed, EdtfInterval("", item.spans).meaning, item.kind, item.certainty, item.part)
        for item in result.evidence
    ]
    return tuple(rows)


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
