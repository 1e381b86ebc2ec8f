"""What dating a pen gives: the range, the ways out of a contradiction, one sentence, and the findings that go with it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.dating.evidence import Evidence
from pentools.calc.dating.narrowing import NextFact
from pentools.calc.dating.spans import ANY_DAY, Span, in_words, intersect, years_left
from pentools.numbers import in_words as listed

__all__ = ["NARROW_YEARS", "DateRange", "DoubtSet", "date_findings", "date_sentence"]

NARROW_YEARS = 3.0
"""A range narrower than this [years] wants a stamped date behind it (a collectors' page: three to five years is as
close as it gets without one)."""


@dataclass(frozen=True, slots=True)
class DoubtSet:
    """Evidence that would have to be wrong, all of it, for the rest to agree; no part of it would do.

    Parameters
    ----------
    doubted : tuple of int
        Places in the list of evidence that was given.
    features : tuple of str
        Their features.
    weight : int
        What doubting them costs, all weights together.
    spans : tuple of Span
        What the rest allows.
    edtf : str
        The same as EDTF.
    least_weight : bool
        Whether no other set costs less.
    fewest : bool
        Whether no other set is smaller.
    """

    doubted: tuple[int, ...]
    features: tuple[str, ...]
    weight: int
    spans: tuple[Span, ...]
    edtf: str
    least_weight: bool
    fewest: bool


@dataclass(frozen=True, slots=True)
class DateRange:
    """What the evidence says.

    Parameters
    ----------
    evidence : tuple of Evidence
        All that was given, in that order.
    spans : tuple of Span
        The days that all original evidence allows; empty where it contradicts itself.
    edtf : str
        The same as EDTF; empty where it contradicts itself.
    conflicts : tuple of DoubtSet
        Every set with the least weight and every set with the fewest pieces, the least weight first.
    other_ways : tuple of DoubtSet
        All further sets of which no part would do.
    unknown_agree : tuple of int
        Evidence on parts not known to be original that agrees with the range.
    unknown_disagree : tuple of int
        Evidence on parts not known to be original that does not.
    edtf_if_all_original : str
        The range if the agreeing unknown parts were original too; empty where they agree with nothing together.
    start_set_by, end_set_by : tuple of int
        The evidence at which the range starts and ends; empty for an open end.
    next_facts : tuple of NextFact
        Which single new fact would narrow the range, the best first.
    findings : tuple of Finding
        Advice.
    """

    evidence: tuple[Evidence, ...]
    spans: tuple[Span, ...]
    edtf: str
    conflicts: tuple[DoubtSet, ...]
    other_ways: tuple[DoubtSet, ...]
    unknown_agree: tuple[int, ...]
    unknown_disagree: tuple[int, ...]
    edtf_if_all_original: str
    start_set_by: tuple[int, ...]
    end_set_by: tuple[int, ...]
    next_facts: tuple[NextFact, ...]
    findings: tuple[Finding, ...] = ()

    @property
    def first_year(self) -> int | None:
        """The first year allowed; None where that end is open or nothing is allowed."""
        day = self.spans[0][0] if self.spans else None
        return None if day is None else dt.date.fromordinal(day).year

    @property
    def last_year(self) -> int | None:
        """The last year allowed; None where that end is open or nothing is allowed."""
        day = self.spans[-1][1] if self.spans else None
        return None if day is None else dt.date.fromordinal(day).year

    @property
    def years(self) -> float:
        """How many years it allows; infinite where an end is open, 0 where it contradicts itself."""
        return years_left(self.spans)


def date_sentence(result: DateRange) -> str:
    """The date in one sentence, two where something must be doubted."""
    if not result.spans:
        likeliest = [way for way in result.conflicts if way.least_weight]
        ways = "; or ".join(f"the {listed(way.features)}, which leaves {in_words(way.spans)}" for way in likeliest)
        return f"The evidence contradicts itself. The least to doubt is {ways}."
    if result.spans == ANY_DAY:
        return "The evidence on original parts limits the date at neither end."
    return f"All evidence on original parts allows {in_words(result.spans)}."


def date_findings(result: DateRange) -> tuple[Finding, ...]:
    """The findings that go with a range, the gravest first."""
    found = [*_on_contradiction(result), *_on_range(result), *_on_unknown(result), *_on_kinds(result.evidence)]
    return gravest_first([*found, *_on_next_fact(result)])


def _on_contradiction(result: DateRange) -> Iterator[Finding]:
    for way in result.conflicts:
        why = [text for text, true in (("least weight", way.least_weight), ("fewest pieces", way.fewest)) if true]
        yield Finding("warning", "dating.contradiction", features=way.features, why=why, left=in_words(way.spans))
    if result.other_ways:
        yield Finding("note", "dating.other ways", number=len(result.other_ways))


def _on_range(result: DateRange) -> Iterator[Finding]:
    original = [item for item in result.evidence if item.part == "original"]
    if not result.spans:
        return
    if not original:
        yield Finding("warning", "dating.no original")
        return
    coded = any(item.kind == "date code" for item in original)
    if 0 < result.years < NARROW_YEARS - 0.01 and not coded:
        yield Finding("note", "dating.narrow", range=in_words(result.spans), years=NARROW_YEARS)
    for end, places in (("start", result.start_set_by), ("end", result.end_set_by)):
        if len(places) == 1 and (item := result.evidence[places[0]]).weight == 1:
            without = in_words(intersect(other.spans for other in original if other is not item))
            yield Finding("note", f"dating.weak {end}", feature=item.feature, without=without)
    if not result.conflicts and result.spans != ANY_DAY:
        yield Finding("ok", "dating.agreed:several" if len(original) > 1 else "dating.agreed:one")


def _on_unknown(result: DateRange) -> Iterator[Finding]:
    agreeing = [result.evidence[i].feature for i in result.unknown_agree]
    if agreeing and not result.edtf_if_all_original:
        yield Finding("note", "dating.if original:not together", features=agreeing)
    elif agreeing and result.edtf_if_all_original != result.edtf:
        yield Finding("note", "dating.if original", features=agreeing, range=result.edtf_if_all_original)
    for item in (result.evidence[place] for place in result.unknown_disagree):
        yield Finding("warning", "dating.does not fit", feature=item.feature, dates=item.dates.meaning)


def _on_kinds(evidence: Sequence[Evidence]) -> Iterator[Finding]:
    replaced = [item.feature for item in evidence if item.part == "replaced"]
    if replaced:
        yield Finding("note", "dating.replaced", features=replaced)
    for item in (item for item in evidence if item.part != "replaced"):
        if item.kind == "patent":
            yield Finding("note", "dating.patent", feature=item.feature)
        elif item.kind == "advert":
            yield Finding("note", "dating.advert", feature=item.feature)
        elif item.kind == "opinion":
            yield Finding("note", "dating.opinion", feature=item.feature)
        if item.dates.uncertain:
            yield Finding("note", "dating.uncertain", feature=item.feature)
        if item.dates.approximate:
            dates = item.dates
            yield Finding("note", "dating.about", feature=item.feature, years=dates.about_years, range=dates.meaning)
        if item.dates.note:
            yield Finding("note", "dating.read as", feature=item.feature, told=item.dates.note)


def _on_next_fact(result: DateRange) -> Iterator[Finding]:
    """The one thing to find out next: the best fact known of, else the kind of feature that would help."""
    if not result.spans:
        for fact in result.next_facts[:1]:
            yield Finding("note", "dating.next fact:settle", fact=fact.text, ways=fact.ways_left)
        return
    for fact in result.next_facts[:1]:
        surely = fact.worst_years < result.years
        left = fact.worst_years if surely else fact.best_years
        yield Finding(
            "note", "dating.next fact:narrow", fact=fact.text, surely=surely, years=left, best=fact.edtf_at_best
        )
    first, last = result.spans[0][0], result.spans[-1][1]
    if result.next_facts:
        return
    if first is None or last is None:
        yield Finding("note", "dating.next fact:end", earliest=first is None, latest=last is None)
    elif result.years >= 1.05:  # a year is as close as it gets
        yield Finding("note", "dating.next fact:middle", year=dt.date.fromordinal((first + last) // 2).year)
