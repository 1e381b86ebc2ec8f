"""What to say about a pen's date: one sentence, and the findings that go with the range."""

from __future__ import annotations

from collections.abc import Sequence

from pentools.calc.base.findings import Finding
from pentools.calc.dating.evidence import Evidence
from pentools.calc.dating.interval import EdtfInterval, write_edtf
from pentools.calc.dating.result import DateRange, DoubtSet
from pentools.calc.dating.spans import ANY_DAY, intersect

__all__ = ["NARROW_YEARS", "date_findings", "date_sentence"]

NARROW_YEARS = 3.0
"""A range narrower than this [years] wants a stamped date behind it (a collectors' page: three to five years is as
close as it gets without one)."""


def date_sentence(result: DateRange) -> str:
    """The date in one sentence.

    Parameters
    ----------
    result : DateRange
        What `date_range` gave.

    Returns
    -------
    str
        One sentence, two where something must be doubted.
    """
    if not result.spans:
        likeliest = [way for way in result.conflicts if way.least_weight]
        ways = "; or ".join(f"the {_listed(way.features)}, which leaves {_words(way.edtf, way)}" for way in likeliest)
        return f"The evidence contradicts itself. The least to doubt is {ways}."
    if result.spans == ANY_DAY:
        return "The evidence on original parts limits the date at neither end."
    words = EdtfInterval(result.edtf, result.spans).meaning
    return f"All evidence on original parts allows {words}."


def date_findings(result: DateRange) -> tuple[Finding, ...]:
    """The findings that go with a range.

    Parameters
    ----------
    result : DateRange
        The range, its contradictions and facts.

    Returns
    -------
    tuple of Finding
        The gravest first.
    """
    findings = [
        *_on_contradiction(result),
        *_on_range(result),
        *_on_unknown(result),
        *_on_kinds(result.evidence),
        *_on_next_fact(result),
    ]
    order = ("stop", "warning", "note", "ok")
    return tuple(sorted(findings, key=lambda finding: order.index(finding.level)))


def _on_contradiction(result: DateRange) -> list[Finding]:
    findings = []
    for way in result.conflicts:
        why = " and ".join(
            text for text, true in (("least weight", way.least_weight), ("fewest pieces", way.fewest)) if true
        )
        findings.append(
            Finding(
                "warning",
                f"Doubt the {_listed(way.features)} ({why}) and the rest allows {_words(way.edtf, way)}.",
                "contradiction",
            )
        )
    if result.other_ways:
        number = len(result.other_ways)
        findings.append(
            Finding(
                "note", f"{number} more {'way' if number == 1 else 'ways'} out would cost more doubt.", "other ways"
            )
        )
    return findings


def _on_range(result: DateRange) -> list[Finding]:
    if not result.spans:
        return []
    if not any(item.part == "original" for item in result.evidence):
        return [
            Finding(
                "warning", "No evidence is on a part known to be original, so nothing limits the date.", "no original"
            )
        ]
    findings = []
    coded = any(item.kind == "date code" and item.part == "original" for item in result.evidence)
    if 0 < result.years < NARROW_YEARS - 0.01 and not coded:
        findings.append(
            Finding(
                "note",
                f"{EdtfInterval('', result.spans).meaning} is narrower than {NARROW_YEARS:g} years without a stamped date. "
                "Factories fitted the parts they had, so do not lean on the edges.",
                "narrow",
            )
        )
    for name, places in (("start", result.start_set_by), ("end", result.end_set_by)):
        if len(places) == 1 and (item := result.evidence[places[0]]).weight == 1:
            others = [e for i, e in enumerate(result.evidence) if e.part == "original" and i != places[0]]
            without = EdtfInterval("", intersect(e.spans for e in others)).meaning
            findings.append(
                Finding(
                    "note",
                    f"The {name} rests on the {item.feature} alone, which is doubtful. Without it: {without}.",
                    f"weak {name}",
                )
            )
    if not result.conflicts and result.spans != ANY_DAY:
        agreed = sum(item.part == "original" for item in result.evidence)
        findings.append(
            Finding(
                "ok",
                "The evidence does not contradict itself." if agreed > 1 else "It rests on one piece of evidence.",
                "agreed",
            )
        )
    return findings


def _on_unknown(result: DateRange) -> list[Finding]:
    findings = []
    if result.unknown_agree and result.edtf_if_all_original and result.edtf_if_all_original != result.edtf:
        names = _listed([result.evidence[i].feature for i in result.unknown_agree])
        findings.append(
            Finding("note", f"If the {names} should be original too: {result.edtf_if_all_original}.", "if original")
        )
    if result.unknown_agree and not result.edtf_if_all_original:
        names = _listed([result.evidence[i].feature for i in result.unknown_agree])
        findings.append(Finding("note", f"Not all of these can be original together: {names}.", "if original"))
    for place in result.unknown_disagree:
        item = result.evidence[place]
        findings.append(
            Finding(
                "warning",
                f"The {item.feature} ({item.dates.meaning}) does not fit the rest: it is probably not original.",
                "does not fit",
            )
        )
    return findings


def _on_kinds(evidence: Sequence[Evidence]) -> list[Finding]:
    findings = []
    replaced = [item.feature for item in evidence if item.part == "replaced"]
    if replaced:
        findings.append(Finding("note", f"Left out, as replaced: {_listed(replaced)}.", "replaced"))
    kept = [item for item in evidence if item.part != "replaced"]
    for item in kept:
        if item.kind == "patent":
            findings.append(
                Finding(
                    "note",
                    f"The {item.feature} is taken as “not before”: a patent mark says nothing of the end.",
                    "patent",
                )
            )
        elif item.kind == "advert":
            findings.append(
                Finding(
                    "note",
                    f"The {item.feature} limits neither end: an advert shows that the model was sold, not when this pen was made.",
                    "advert",
                )
            )
        elif item.kind == "opinion":
            findings.append(
                Finding("note", f"The {item.feature} is an opinion: say so wherever the date is given.", "opinion")
            )
        if item.dates.uncertain:
            findings.append(
                Finding("note", f"The date of the {item.feature} is marked ?, so it counts as doubtful.", "uncertain")
            )
        if item.dates.approximate:
            findings.append(
                Finding(
                    "note",
                    f"“About” for the {item.feature} reaches {item.dates.about_years} years to either side: {item.dates.meaning}.",
                    "about",
                )
            )
        if item.dates.note:
            findings.append(Finding("note", f"{item.feature}: {item.dates.note}", "read as"))
    return findings


def _on_next_fact(result: DateRange) -> list[Finding]:
    if result.next_facts:
        fact = result.next_facts[0]
        if result.spans:
            surely = fact.worst_years < result.years
            left = f"at {'worst' if surely else 'best'} it leaves {_years(fact.worst_years if surely else fact.best_years)}"
            at_best = f" ({fact.edtf_at_best} at best)"
            return [Finding("note", f"To narrow it most, find out {fact.text}: {left}{at_best}.", "next fact")]
        left = f"then {fact.ways_left} {'way' if fact.ways_left == 1 else 'ways'} out at most would be left"
        return [Finding("note", f"To settle it, find out {fact.text}: {left}.", "next fact")]
    if result.spans:
        first, last = result.spans[0][0], result.spans[-1][1]
        if first is None or last is None:
            ends = {
                (True, True): "an earliest or a latest date",
                (True, False): "an earliest date",
                (False, True): "a latest date",
            }
            return [
                Finding(
                    "note",
                    f"To narrow it most, look for a feature that gives {ends[first is None, last is None]}.",
                    "next fact",
                )
            ]
        if result.years < 1.05:
            return []
        middle = write_edtf([((first + last) // 2, (first + last) // 2)])[:4]
        return [
            Finding(
                "note",
                f"To narrow it most, look for a feature that changed about {middle}: it would halve the range.",
                "next fact",
            )
        ]
    return []


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]


def _words(edtf: str, way: DoubtSet) -> str:
    return EdtfInterval(edtf, way.spans).meaning


def _years(years: float) -> str:
    if years < 0.95:
        return f"{max(round(12 * years), 1)} months"
    return f"about {years:.0f} {'year' if round(years) == 1 else 'years'}"
