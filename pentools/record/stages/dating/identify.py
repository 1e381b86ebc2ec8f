"""Identify: marks letter for letter, dating evidence feature by feature, a price then, and what is concluded from it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, cast

from pentools.calc.base.findings import Finding
from pentools.calc.dating.evidence import Certainty, Evidence, EvidenceKind, PartState
from pentools.calc.dating.interval import EdtfInterval
from pentools.calc.dating.narrowing import OpenQuestion
from pentools.calc.dating.range import date_range
from pentools.calc.dating.spans import intersect
from pentools.calc.dating.words import read_date
from pentools.errors import InputError
from pentools.fields import Value
from pentools.money import read_money
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.dating.kinds import EVIDENCE, IDENTITY, MARK, PRICE_THEN, QUESTION
from pentools.sums.base import SumAnswer
from pentools.sums.dating.date import plausible
from pentools.sums.dating.money import price_answer

if TYPE_CHECKING:
    from pentools.calc.dating.result import DateRange
    from pentools.record.entries import Entry
    from pentools.record.job import Job

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
    evidence: Evidence | None
    problem: str = ""


def read_clue(values: Mapping[str, Value]) -> Evidence:
    """The values of an evidence form as evidence.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.

    Returns
    -------
    Evidence
        With its dates read.

    Raises
    ------
    InputError
        If the dates cannot be read, or their years are not those of a pen.
    """
    return plausible(
        Evidence(
            str(values["feature"] or "").removeprefix("the "),  # the findings put their own article before it
            read_date(str(values["dates"] or "")),
            cast("EvidenceKind", values["evidence_kind"] or "production"),
            cast("Certainty", values["certainty"] or "likely"),
            cast("PartState", values["part_state"] or "original"),
            str(values["source"] or ""),
        )
    )


def read_question(values: Mapping[str, Value]) -> OpenQuestion:
    """The values of a question form as an open question.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.

    Returns
    -------
    OpenQuestion
        With the dates of each answer read.

    Raises
    ------
    InputError
        If there are fewer than two answers, or one cannot be read.
    """
    answers = values["answers"]
    texts = [str(text) for text in answers] if isinstance(answers, tuple) else []
    return OpenQuestion(str(values["feature"] or ""), tuple(read_date(text) for text in texts))


def clues(job: Job) -> tuple[Clue, ...]:
    """All dating evidence of a job in the order of entry, also what cannot be read."""
    found = []
    for entry, values in job.log("identify", "evidence"):
        feature, typed = str(values["feature"]), str(values["dates"])
        try:
            found.append(Clue(entry, feature, typed, read_clue(values)))
        except InputError as error:
            found.append(Clue(entry, feature, typed, None, str(error)))
    return tuple(found)


def dating(job: Job) -> DateRange | None:
    """When the pen was made, from all evidence that can be read.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    DateRange or None
        None where no evidence can be read.
    """
    read = [clue.evidence for clue in clues(job) if clue.evidence is not None]
    questions = []
    for _, values in job.log("identify", "question"):
        try:
            questions.append(read_question(values))
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


def dating_findings(job: Job) -> tuple[Finding, ...]:
    """What is to be said about the evidence: who contradicts whom, what to doubt, what to look at next.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of Finding
        Evidence that cannot be read comes first.
    """
    unread = [
        Finding(
            "warning", f"The date of the {clue.feature} cannot be read and does not count: {clue.problem}", "unread"
        )
        for clue in clues(job)
        if clue.evidence is None
    ]
    result = dating(job)
    if result is None:
        return tuple(unread)
    return (*unread, *(_who_contradicts(result)), *result.findings)


def _who_contradicts(result: DateRange) -> list[Finding]:
    """Each contradiction once, that first which is least to doubt, else which contradicts most or weighs least."""
    evidence = result.evidence
    against: dict[int, list[int]] = {}
    pairs = contradictions(result)
    least = result.conflicts[0].doubted if result.conflicts else ()
    count = {i: sum(i in pair for pair in pairs) for pair in pairs for i in pair}
    for a, b in pairs:
        odd, other = sorted((a, b), key=lambda i: (i not in least, -count[i], evidence[i].weight, -i))
        against.setdefault(odd, []).append(other)
    return [
        Finding(
            "warning",
            f"Contradiction: the {evidence[odd].feature} ({_allows(evidence[odd])}) against "
            + _listed(f"the {evidence[i].feature} ({_allows(evidence[i])})" for i in others)
            + ".",
            "who contradicts",
        )
        for odd, others in against.items()
    ]


def _allows(item: Evidence) -> str:
    return EdtfInterval("", item.spans).meaning


def _listed(texts: Iterable[str]) -> str:
    things = list(texts)
    return things[0] if len(things) == 1 else ", ".join(things[:-1]) + " and " + things[-1]


def price_today(job: Job) -> SumAnswer | None:
    """The price then in the money of the index's last year; see `read_price_then`."""
    return read_price_then(job.values("identify", "price then"))


def read_price_then(values: Mapping[str, Value]) -> SumAnswer | None:
    """The values of a price's form in the money of the index's last year.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.

    Returns
    -------
    SumAnswer or None
        None where no price was entered or the country has no index here.

    Raises
    ------
    InputError
        If the price cannot be read, its money is not the country's, or its year lies outside the index. A price
        without its money is in that of the country.
    """
    typed, year, country = values["price"], values["year"], str(values["country"])
    own = _INDEX_MONEY.get(country)
    if typed is None or own is None or not isinstance(year, int | float):
        return None
    price = read_money(str(typed), own, name="price", zero=False)
    if price.currency != own:
        raise InputError(
            "price", f"in the money of the country ({country}: {own})", str(typed), "Change one of the two."
        )
    return price_answer(price, int(year))


def _state(job: Job) -> StageState:
    if not job.record.live("identify"):
        return StageState("not begun")
    result = dating(job)
    concluded = job.record.latest("identify", "identity") is not None
    if result is None:
        return StageState("open", "no dating evidence yet")
    if not concluded:
        return StageState("open", "what it is has not been concluded")
    return StageState("done", result.edtf or "the evidence contradicts itself")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("identify"):
        return ()
    found = [f for f in dating_findings(job) if f.topic == "unread"]
    for _, values in job.log("identify", "question"):
        try:
            read_question(values)
        except InputError as error:
            found.append(Finding("warning", f"Not looked at yet, {values['feature']}: {error}", "unread"))
    try:
        price_today(job)
    except InputError as error:
        found.append(Finding("warning", f"Price then: {error}", "price"))
    found += _contradiction_on_record(job)
    return tuple(f.under("Identify") for f in found)


def _contradiction_on_record(job: Job) -> list[Finding]:
    """A contradiction is a warning until a conclusion later than the evidence says what was made of it."""
    result = dating(job)
    if result is None or result.spans:
        return []
    words = " ".join(f.text for f in _who_contradicts(result))
    identity = job.record.latest("identify", "identity")
    newest = max(clue.entry.time for clue in clues(job))
    if identity is not None and identity.data.get("conclusion") and identity.time >= newest:
        return [Finding("note", f"the dating evidence contradicts itself, and the conclusion was written after it. {words}", "contradiction")]  # fmt: skip
    return [Finding("warning", f"the dating evidence contradicts itself. {words} Write under “What it is” which of it you doubt, and why.", "contradiction")]  # fmt: skip


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
