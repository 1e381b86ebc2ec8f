"""Which single new fact would narrow a pen's date most, or settle a contradiction."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.dating.evidence import Evidence
from pentools.calc.dating.interval import EdtfInterval, read_edtf, write_edtf
from pentools.calc.dating.spans import Span, intersect, years_left
from pentools.errors import InputError

__all__ = ["NextFact", "OpenQuestion", "facts_that_narrow", "facts_that_settle"]


@dataclass(frozen=True, slots=True)
class OpenQuestion:
    """A feature that was not looked at yet, and the dates of each answer it can give.

    Parameters
    ----------
    feature : str
        What to look at.
    answers : tuple of EdtfInterval
        Dates that go with each answer; at least two.

    Raises
    ------
    InputError
        If it has fewer than two answers.
    """

    feature: str
    answers: tuple[EdtfInterval, ...]

    def __post_init__(self) -> None:
        if len(self.answers) < 2:
            raise InputError("answers", "at least two, each with its dates", len(self.answers))


@dataclass(frozen=True, slots=True)
class NextFact:
    """A fact worth finding out.

    Parameters
    ----------
    feature : str
        What to look at.
    text : str
        What to find out, and what it would do.
    best_years : float
        What would be left at best [years].
    worst_years : float
        What would be left at worst [years].
    edtf_at_best : str
        The range at best; empty where a contradiction would stay.
    ways_left : int
        How many ways out of a contradiction would be left at worst; 0 where there is no contradiction.
    """

    feature: str
    text: str
    best_years: float
    worst_years: float
    edtf_at_best: str
    ways_left: int = 0


def facts_that_narrow(
    evidence: Sequence[Evidence], spans: Sequence[Span], questions: Sequence[OpenQuestion]
) -> tuple[NextFact, ...]:
    """The single new facts that would narrow a range without a contradiction, the best first.

    Parameters
    ----------
    evidence : sequence of Evidence
        What is known.
    spans : sequence of Span
        The days that all original evidence allows; not empty.
    questions : sequence of OpenQuestion
        Features not looked at yet.

    Returns
    -------
    tuple of NextFact
        What surely narrows comes first (least left at worst), then what may narrow (least left at best).

    Notes
    -----
    Weighed are: whether a part not known to be original is; a firm date in place of an "about"; and the answers of
    the open questions, of which those that contradict the range are left out. How likely each outcome is, is not
    guessed at.
    """
    now = years_left(spans)
    facts = []
    for item in evidence:
        if item.part == "unknown":
            facts.append(_may_narrow(item.feature, f"whether the {item.feature} is original", spans, item.spans, now))
        elif item.part == "original" and item.dates.approximate and not item.limits_nothing:
            named = Evidence(item.feature, read_edtf(item.dates.edtf, about_years=0), item.kind)
            facts.append(_may_narrow(item.feature, f"a firm date for the {item.feature}", spans, named.spans, now))
    for question in questions:
        left = [rest for answer in question.answers if (rest := intersect([spans, answer.spans]))]
        if left:
            best = min(left, key=years_left)
            worst = max(years_left(rest) for rest in left)
            facts.append(
                NextFact(
                    question.feature,
                    f"which form of the {question.feature} it has",
                    years_left(best),
                    worst,
                    write_edtf(best),
                )
            )
    narrowing = [fact for fact in facts if fact is not None and fact.best_years < now]
    return tuple(sorted(narrowing, key=lambda fact: (fact.worst_years, fact.best_years)))


def facts_that_settle(
    features: Sequence[str], ways: Sequence[tuple[Sequence[int], Sequence[Span]]]
) -> tuple[NextFact, ...]:
    """The pieces of evidence whose checking would settle a contradiction, the best first.

    Parameters
    ----------
    features : sequence of str
        Features of all evidence.
    ways : sequence of (sequence of int, sequence of Span)
        Every set of evidence that may be doubted (places in `features`), and the days then left.

    Returns
    -------
    tuple of NextFact
        The fewer ways are left at worst, the earlier.

    Notes
    -----
    Checking one piece ends in "it holds", which leaves the ways that do not doubt it, or in "it does not", which
    leaves those that do; the larger number is what is left at worst.
    """
    doubting: dict[int, int] = {}
    alone: dict[int, Sequence[Span]] = {}
    for doubted, spans in ways:
        for place in doubted:
            doubting[place] = doubting.get(place, 0) + 1
        if len(doubted) == 1:
            alone[doubted[0]] = spans
    facts = []
    for place in sorted(doubting):
        left = max(doubting[place], len(ways) - doubting[place])
        rest = alone.get(place, ())
        years = years_left(rest)
        text = f"whether the {features[place]} is original and its dates are right"
        facts.append(NextFact(features[place], text, years, years, write_edtf(rest) if rest else "", left))
    return tuple(sorted(facts, key=lambda fact: (fact.ways_left, not fact.edtf_at_best)))


def _may_narrow(feature: str, text: str, spans: Sequence[Span], more: Sequence[Span], now: float) -> NextFact | None:
    rest = intersect([spans, more])
    return NextFact(feature, text, years_left(rest), now, write_edtf(rest)) if rest else None
