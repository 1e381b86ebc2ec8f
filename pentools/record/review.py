"""What is missing or odd in a job: the list that ``pentools check`` prints and the notebook shows."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from pentools.calc.base.findings import Finding, gravest_first
from pentools.errors import RecordError
from pentools.money import in_money
from pentools.record.entries import RELEASE, WITHDRAWAL, Entry
from pentools.record.holds import HOLDS, passed_by, released_step
from pentools.record.job import Job
from pentools.record.mending import open_to_others
from pentools.record.oddities import odd_lines
from pentools.record.owed import owed_findings
from pentools.record.registry import STAGES, all_stages, find_stage
from pentools.record.report import report_notes
from pentools.record.spending import spending_of, unread_amounts
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.strangers import strangers_found
from pentools.record.view import SPOILT, why_not

__all__ = ["MATTERS", "matters_and_fuller", "on_record", "review"]

MATTERS = ("warning", "stop")
"""Levels of what matters here; the rest makes the record fuller."""


def review(job: Job) -> tuple[Finding, ...]:
    """Everything worth knowing about a job's record.

    Returns
    -------
    tuple of Finding
        Gravest first; empty where nothing is missing or odd.
    """
    return gravest_first([*_on_file(job), *_on_entries(job, (*_QUESTIONS, ("Report", report_notes)))])


def on_record(job: Job) -> tuple[Finding, ...]:
    """What the record itself tells of that: nothing about the files beside it, nor what would make a report fuller.

    Returns
    -------
    tuple of Finding
        Gravest first.
    """
    return gravest_first([*_on_lines(job), *_on_entries(job, _QUESTIONS)])


def _on_entries(job: Job, questions: Iterable[tuple[str, Callable[[Job], tuple[Finding, ...]]]]) -> Iterator[Finding]:
    for entry in job.record.live():
        yield from _on_entry(job, entry)
    for stage in all_stages():
        if stage.checks is not None:
            yield from _asked(job, stage.title, stage.checks)
    for title, question in questions:
        yield from _asked(job, title, question)
    for hold in HOLDS.values():
        for release in job.record.releases(hold.key):
            reason = str(release.data.get("reason", "none was given"))
            yield Finding("note", "job.released", step=released_step(release), reason=reason)


def matters_and_fuller(found: Iterable[Finding]) -> tuple[tuple[Finding, ...], tuple[Finding, ...]]:
    """Findings in two: what matters here, and what would make the record fuller."""
    found = tuple(found)
    return tuple(f for f in found if f.level in MATTERS), tuple(f for f in found if f.level not in MATTERS)


def _asked(job: Job, title: str, question: Callable[[Job], tuple[Finding, ...]]) -> tuple[Finding, ...]:
    """What a question finds; why it cannot be answered where entries contradict each other."""
    try:
        return question(job)
    except SPOILT as error:
        return (Finding("warning", "job.sum", title=title, problem=why_not(error)),)


def _on_costs(job: Job) -> tuple[Finding, ...]:
    money, result = spending_of(job), job.newest(RESULT)
    found = [Finding("note", "job.cost", text=text, currency=money.currency) for text in unread_amounts(job)]
    if result.ending in ("done", "done with limits") and result.price is None and money.ceiling is not None:
        found.append(Finding("warning", "job.price-not-named", ceiling=in_money(money.ceiling, money.currency)))
    return tuple(found)


_QUESTIONS = (
    ("Hold points", passed_by),
    ("Publication", strangers_found),
    ("Costs", _on_costs),
    ("Owed", owed_findings),
)


def _on_lines(job: Job) -> Iterator[Finding]:
    yield from (Finding("warning", "job.file", problem=text) for text in (*job.record.problems, *job.bench.problems))
    yield from odd_lines(job.record)


def _on_file(job: Job) -> Iterator[Finding]:
    yield from _on_lines(job)
    names = [path.name for path in open_to_others(job.record, job.folder)]
    if names:
        yield Finding("note", "job.rights", names=names, job=job.name)
    for path in sorted(job.folder.glob("*record*.jsonl")):
        if path.name != job.record.path.name:
            yield Finding("warning", "job.copy", name=path.name, job=job.name)
    for path in sorted(job.folder.glob("record-*.txt")):
        yield Finding("note", "job.aside", name=path.name)


def _on_entry(job: Job, entry: Entry) -> Iterator[Finding]:
    if entry.kind in (RELEASE, WITHDRAWAL):
        return
    if entry.stage not in STAGES:
        yield Finding("note", "job.unknown:stage", at=entry.at, stage=entry.stage)
        return
    stage = find_stage(entry.stage)
    kind = next((k for k in stage.kinds if k.key == entry.kind), None)
    if kind is None:
        yield Finding("note", "job.unknown:kind", title=stage.title, kind=entry.kind)
        return
    values = job.view.decoded(kind, entry)
    if isinstance(values, RecordError):
        yield Finding("warning", "job.value:unread", title=stage.title, reason=str(values))
        return
    missing = [field.label for field in kind.fields if field.required and getattr(values, field.name) is None]
    if missing:
        yield Finding("warning", "job.value:missing", title=stage.title, kind=kind.title, at=entry.at, names=missing)
