"""Identify: marks letter for letter, dating evidence feature by feature, a price then, and what is concluded from it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from pentools.calc.base.findings import Finding
from pentools.calc.dating.evidence import Certainty, EvidenceKind, PartState
from pentools.calc.dating.evidence import Evidence as Piece
from pentools.calc.dating.findings import DateRange
from pentools.calc.dating.narrowing import OpenQuestion
from pentools.calc.dating.phrases import read_date
from pentools.calc.dating.range import date_range
from pentools.calc.dating.spans import in_words, intersect
from pentools.errors import InputError
from pentools.money import read_money
from pentools.record.entries import Entry
from pentools.record.job import Job
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.dating.kinds import (
    EVIDENCE,
    IDENTITY,
    MARK,
    PRICE_THEN,
    QUESTION,
    Evidence,
    PriceThen,
    Question,
)
from pentools.record.view import once_a_state
from pentools.sums.base import SumAnswer
from pentools.sums.dating.date import plausible
from pentools.sums.dating.money import price_answer

__all__ = [
    "IDENTIFY",
    "Clue",
    "clues",
    "contradictions",
    "dating",
    "dating_findings",
    "price_today",
    "read_clue",
    "read_price_then",
    "read_question",
]

_INDEX_MONEY = {"US": "USD", "UK": "GBP"}


@dataclass(frozen=True, slots=True)
class Clue:
    """One piece of evidence of a job, as entered and as read.

    Parameters
    ----------
    entry : Entry
        The entry.
    feature, typed : str
        The feature and its dates as they were typed.
    evidence : Evidence or None
        What was read; None where the dates cannot be read.
    problem : str
        Why not; empty where they can.
    """

    entry: Entry
    feature: str
    typed: str
    evidence: Piece | None
    problem: str = ""


def read_clue(values: Evidence) -> Piece:
    """An evidence form as a piece of evidence, its dates read; what was not said of it limits and weighs least.

    Raises
    ------
    InputError
        If the dates cannot be read, or their years are not those of a pen.
    """
    return plausible(
        Piece(
            (values.feature or "").removeprefix("the "),  # the findings put their own article before it
            read_date(values.dates or ""),
            cast("EvidenceKind", values.evidence_kind or "opinion"),
            cast("Certainty", values.certainty or "doubtful"),
            cast("PartState", values.part_state or "unknown"),
            values.source or "",
        )
    )


def read_question(values: Question) -> OpenQuestion:
    """A question form as an open question, the dates of each answer read.

    Raises
    ------
    InputError
        If there are fewer than two answers, or one cannot be read.
    """
    return OpenQuestion(values.feature or "", tuple(read_date(text) for text in values.answers or ()))


@once_a_state
def clues(job: Job) -> tuple[Clue, ...]:
    """All dating evidence of a job in the order of entry, also what cannot be read."""
    found = []
    for entry, values in ((logged.entry, logged.values) for logged in job.log(EVIDENCE)):
        feature, typed = values.feature or "", values.dates or ""
        try:
            found.append(Clue(entry, feature, typed, read_clue(values)))
        except InputError as error:
            found.append(Clue(entry, feature, typed, None, str(error)))
    return tuple(found)


@once_a_state
def dating(job: Job) -> DateRange | None:
    """When the pen was made, from all evidence that can be read; None where there is none."""
    read = [clue.evidence for clue in clues(job) if clue.evidence is not None]
    questions = []
    for logged in job.log(QUESTION):
        try:
            questions.append(read_question(logged.values))
        except InputError:
            continue  # `_checks` names it
    return date_range(read, questions) if read else None


def contradictions(result: DateRange) -> tuple[tuple[int, int], ...]:
    """Which two pieces of evidence on original parts have no day in common.

    Parameters
    ----------
    result : DateRange
        What `dating` gave.

    Returns
    -------
    tuple of (int, int)
        Places in the evidence, in that order; none where all agree.
    """
    kept = [i for i, item in enumerate(result.evidence) if item.part == "original"]
    return tuple(
        (a, b)
        for place, a in enumerate(kept)
        for b in kept[place + 1 :]
        if not intersect([result.evidence[a].spans, result.evidence[b].spans])
    )


@once_a_state
def dating_findings(job: Job) -> tuple[Finding, ...]:
    """What is to be said about the evidence: what cannot be read, who contradicts whom, what to doubt, what to look at next."""
    unread = [
        Finding("warning", "dating.unread", feature=clue.feature, problem=clue.problem)
        for clue in clues(job)
        if clue.evidence is None
    ]
    result = dating(job)
    return (*unread, *_who_contradicts(result), *result.findings) if result is not None else tuple(unread)


def _who_contradicts(result: DateRange) -> list[Finding]:
    """Each contradiction once, that first which is least to doubt, else which contradicts most or weighs least."""
    evidence = result.evidence
    against: dict[int, list[int]] = {}
    pairs = contradictions(result)
    least = result.conflicts[0].doubted if result.conflicts else ()
    count = {i: sum(i in pair for pair in pairs) for pair in pairs for i in pair}
    for pair in pairs:
        odd, other = sorted(pair, key=lambda i: (i not in least, -count[i], evidence[i].weight, -i))
        against.setdefault(odd, []).append(other)
    return [
        Finding(
            "warning",
            "dating.who contradicts",
            feature=evidence[odd].feature,
            allows=in_words(evidence[odd].spans),
            others=[f"the {evidence[i].feature} ({in_words(evidence[i].spans)})" for i in others],
        )
        for odd, others in against.items()
    ]


def price_today(job: Job) -> SumAnswer | None:
    """The price then in the money of the index's last year; see `read_price_then`."""
    return read_price_then(job.newest(PRICE_THEN))


def read_price_then(values: PriceThen) -> SumAnswer | None:
    """A price's form in the money of the index's last year; None where no price was entered or the country has no index.

    Raises
    ------
    InputError
        If the price cannot be read, its money is not the country's, or its year lies outside the index. A price
        without its money is in that of the country.
    """
    own = _INDEX_MONEY.get(values.country or "")
    if values.price is None or values.year is None or own is None:
        return None
    price = read_money(values.price, own, name="price", zero=False)
    if price.currency != own:
        raise InputError(
            "price", f"in the money of the country ({values.country}: {own})", values.price, "Change one of the two."
        )
    return price_answer(price, values.year)


def _state(job: Job) -> StageState:
    if not job.record.live("identify"):
        return StageState("not begun")
    result = dating(job)
    if result is None:
        return StageState("open", "no dating evidence yet")
    if not job.log(IDENTITY):
        return StageState("open", "what it is has not been concluded")
    return StageState("done", result.edtf or "the evidence contradicts itself")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("identify"):
        return ()
    found = [f for f in dating_findings(job) if f.topic == "unread"]
    for logged in job.log(QUESTION):
        try:
            read_question(logged.values)
        except InputError as error:
            found.append(
                Finding("warning", "dating.unread:question", feature=logged.values.feature or "", problem=str(error))
            )
    try:
        price_today(job)
    except InputError as error:
        found.append(Finding("warning", "dating.price", problem=str(error)))
    found += _contradiction_on_record(job)
    return tuple(finding.under("Identify") for finding in found)


def _contradiction_on_record(job: Job) -> list[Finding]:
    """A contradiction is a warning until a conclusion later than the evidence says what was made of it."""
    result = dating(job)
    if result is None or result.spans:
        return []
    who = " ".join(f.text for f in _who_contradicts(result))
    newest = max(clue.entry.time for clue in clues(job))
    if any(logged.values.conclusion and logged.entry.time >= newest for logged in job.log(IDENTITY)[-1:]):
        return [Finding("note", "dating.contradiction:concluded", who=who)]
    return [Finding("warning", "dating.contradiction:open", who=who)]


IDENTIFY = Stage(
    "identify",
    "What it is, and how old",
    "Marks letter for letter, each feature with the years it stands for, and no conclusion tighter than they allow.",
    (MARK, EVIDENCE, QUESTION, PRICE_THEN, IDENTITY),
    panel="pentools.panels.stages.dating.identify:IdentifyPanel",
    section="pentools.writeup.sections.dating.identify:section",
    state=_state,
    checks=_checks,
)
