"""When a pen was made: the range that all original evidence allows, and what to doubt where it contradicts itself."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from pentools.calc.dating.evidence import Evidence, read_evidence
from pentools.calc.dating.findings import DateRange, DoubtSet, date_findings
from pentools.calc.dating.interval import write_edtf
from pentools.calc.dating.narrowing import OpenQuestion, facts_that_narrow, facts_that_settle
from pentools.calc.dating.spans import Span, intersect, largest_agreements
from pentools.errors import InputError

__all__ = ["DateRange", "DoubtSet", "Evidence", "OpenQuestion", "date_range"]


def date_range(evidence: Sequence[Evidence | str], questions: Sequence[OpenQuestion] = ()) -> DateRange:
    """The range of dates that all original evidence allows, and nothing tighter.

    Parameters
    ----------
    evidence : sequence of Evidence or str
        What was seen, each with the dates known for it; at least one. A line such as ``clip 1936/1942, sure`` is
        read by `pentools.calc.dating.evidence.read_evidence`.
    questions : sequence of OpenQuestion
        Features not looked at yet, with the dates of each answer they may give.

    Returns
    -------
    DateRange
        Range, contradictions, the facts that would narrow it most, and findings.

    Raises
    ------
    InputError
        If there is no evidence, or a line of it cannot be read.

    Notes
    -----
    The range is the intersection of the dates of all evidence on original parts, by days. Parts that were replaced
    say nothing; parts not known to be original are told apart and never tighten it. Where the intersection is empty,
    every set of evidence is found whose removal lets the rest agree and of which no part would do: the complements
    of the largest agreements, which a sweep over the starts gives in one pass. Weights are the judged costs of
    `pentools.calc.dating.evidence.CERTAINTIES`. It says when the parts were made; a pen may have been put together
    later from stock, and a range under three years is rarely to be trusted without a stamped date (a collectors' page).

    Examples
    --------
    >>> date_range(["clip 1936/1942", "imprint from 1938"]).edtf
    '1938/1942'
    >>> [way.features for way in date_range(["clip 1936/1942", "band 1938/1945", "nib 1950/1955"]).conflicts]
    [('nib',)]
    """
    items = tuple(read_evidence(item) if isinstance(item, str) else item for item in evidence)
    if not items:
        raise InputError("evidence", "at least one feature with its dates", 0, "Type it like: clip 1936/1942.")
    original = [i for i, item in enumerate(items) if item.part == "original"]
    unknown = [i for i, item in enumerate(items) if item.part == "unknown"]
    spans = intersect(items[i].spans for i in original)
    sets = () if spans else _doubt_sets(items, original)
    agree = tuple(i for i in unknown if intersect([spans, items[i].spans]))
    narrower = intersect([spans, *(items[i].spans for i in agree)])
    start, end = _set_by(items, original, spans)
    if spans:
        facts = facts_that_narrow(items, spans, questions)
    else:
        facts = facts_that_settle([item.feature for item in items], [(way.doubted, way.spans) for way in sets])
    result = DateRange(
        items,
        spans,
        write_edtf(spans) if spans else "",
        tuple(way for way in sets if way.least_weight or way.fewest),
        tuple(way for way in sets if not (way.least_weight or way.fewest)),
        agree,
        tuple(i for i in unknown if i not in agree) if spans else (),
        write_edtf(narrower) if narrower else "",
        start,
        end,
        facts,
    )
    return dataclasses.replace(result, findings=date_findings(result))


def _doubt_sets(items: Sequence[Evidence], original: Sequence[int]) -> tuple[DoubtSet, ...]:
    """Every set of which no part would do, the least weight first."""
    weights = [items[i].weight for i in original]
    agreements = largest_agreements([items[i].spans for i in original], weights)
    everything = sum(weights)
    heaviest = max(agreement.weight for agreement in agreements)
    most = max(agreement.members.bit_count() for agreement in agreements)
    sets = []
    for agreement in agreements:
        doubted = tuple(i for place, i in enumerate(original) if not agreement.members >> place & 1)
        sets.append(
            DoubtSet(
                doubted,
                tuple(items[i].feature for i in doubted),
                everything - agreement.weight,
                agreement.spans,
                write_edtf(agreement.spans),
                agreement.weight == heaviest,
                agreement.members.bit_count() == most,
            )
        )
    return tuple(sorted(sets, key=lambda way: (way.weight, len(way.doubted), way.doubted)))


def _set_by(
    items: Sequence[Evidence], original: Sequence[int], spans: Sequence[Span]
) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Which evidence the range starts and ends at."""
    if not spans:
        return (), ()
    first, last = spans[0][0], spans[-1][1]
    start = () if first is None else tuple(i for i in original if any(span[0] == first for span in items[i].spans))
    end = () if last is None else tuple(i for i in original if any(span[1] == last for span in items[i].spans))
    return start, end
