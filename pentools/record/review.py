"""What is missing or odd in a job: the list that ``pentools check`` prints and the notebook shows."""

from __future__ import annotations

from collections.abc import Iterator

from pentools.calc.base.findings import Finding, gravest_first
from pentools.errors import InputError, RecordError
from pentools.record.entries import RELEASE, WITHDRAWAL, Entry
from pentools.record.holds import HOLDS, passed_by
from pentools.record.job import Job
from pentools.record.registry import STAGES, all_stages, find_stage
from pentools.record.report import report_notes
from pentools.record.spending import spending_of, unread_amounts

__all__ = ["review"]


def review(job: Job) -> tuple[Finding, ...]:
    """Everything worth knowing about a job's record.

    Returns
    -------
    tuple of Finding
        Gravest first; empty where nothing is missing or odd.
    """
    found = [*_on_file(job)]
    for entry in job.record.live():
        found += _on_entry(job, entry)
    for stage in all_stages():
        if stage.checks is not None:
            try:
                found += stage.checks(job)
            except InputError as error:
                found.append(Finding("warning", "job.sum", title=stage.title, problem=str(error)))
    found += passed_by(job)
    currency = spending_of(job).currency
    found += [Finding("note", "job.cost", text=text, currency=currency) for text in unread_amounts(job)]
    found += report_notes(job)
    for hold in HOLDS.values():
        for release in job.record.releases(hold.key):
            reason = str(release.data.get("reason", "none was given"))
            found.append(Finding("note", "job.released", step=hold.step, reason=reason))
    return gravest_first(found)


def _on_file(job: Job) -> Iterator[Finding]:
    for text in job.record.problems:
        yield Finding("warning", "job.file", problem=text)
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
