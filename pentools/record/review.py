"""What is missing or odd in a job: the list that ``pentools check`` prints and the notebook shows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.errors import InputError, RecordError
from pentools.record.entries import RELEASE, WITHDRAWAL
from pentools.record.holds import HOLDS
from pentools.record.registry import STAGES, all_stages, find_stage
from pentools.record.report import report_notes

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = ["review"]


def review(job: Job) -> tuple[Finding, ...]:
    """Everything worth knowing about a job's record.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of Finding
        Gravest first; empty where nothing is missing or odd.
    """
    found = [Finding("warning", "job.file", problem=text) for text in job.record.problems]
    copies = [p.name for p in job.folder.glob("*record*.jsonl") if p.name != job.record.path.name]
    found += [Finding("warning", "job.copy", name=name, job=job.name) for name in copies]
    found += [Finding("note", "job.aside", file=p.name) for p in job.folder.glob("record-*.txt")]
    for entry in job.record.live():
        found += _check_entry(job, entry)
    for stage in all_stages():
        if stage.checks is not None:
            try:
                found += stage.checks(job)
            except InputError as error:
                found.append(Finding("warning", "job.sum", stage=stage.title, error=str(error)))
    found += report_notes(job)
    for hold in HOLDS.values():
        for release in job.record.releases(hold.key):
            found.append(Finding("note", "job.released", step=hold.step, reason=str(release.data.get("reason"))))
    return gravest_first(found)


def _check_entry(job: Job, entry: Entry) -> list[Finding]:
    if entry.kind in (RELEASE, WITHDRAWAL):
        return []
    if entry.stage not in STAGES:
        return [Finding("note", "job.unknown", at=entry.at, stage=entry.stage)]
    stage = find_stage(entry.stage)
    kind = next((k for k in stage.kinds if k.key == entry.kind), None)
    if kind is None:
        return [Finding("note", "job.unknown:kind", stage=stage.title, kind=entry.kind)]
    values = job.view.decoded(kind, entry)
    if isinstance(values, RecordError):
        return [Finding("warning", "job.value", stage=stage.title, error=str(values))]
    missing = [field.label for field in kind.fields if field.required and getattr(values, field.name) is None]
    if missing:
        return [
            Finding(
                "warning",
                "job.value:blank",
                stage=stage.title,
                kind=kind.title,
                at=entry.at,
                missing=", ".join(missing),
            )
        ]
    return []
