"""The results of dating a pen: the range, the ways out of a contradiction, and what to look at next."""

from __future__ import annotations

from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.dating.days import civil_date
from pentools.calc.dating.evidence import Evidence
from pentools.calc.dating.interval import Span
from pentools.calc.dating.narrowing import NextFact
from pentools.calc.dating.spans import years_left

__all__ = ["DateRange", "DoubtSet"]


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
        return None if day is None else civil_date(day)[0]

    @property
    def last_year(self) -> int | None:
        """The last year allowed; None where that end is open or nothing is allowed."""
        day = self.spans[-1][1] if self.spans else None
        return None if day is None else civil_date(day)[0]

    @property
    def years(self) -> float:
        """How many years it allows; infinite where an end is open, 0 where it contradicts itself."""
        return years_left(self.spans)
