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
    found = [Finding("warning", text, "file") for text in job.record.problems]
    copies = [p.name for p in job.folder.glob("*record*.jsonl") if p.name != job.record.path.name]
    found += [
        Finding(
            "warning",
            f"Beside the record lies {name}. If it is a copy edited elsewhere, take it over with: pentools merge {job.name} {name}",
            "copy",
        )
        for name in copies
    ]
    found += [Finding("note", f"Set aside earlier: {p.name}.", "aside") for p in job.folder.glob("record-*.txt")]
    for entry in job.record.live():
        found += _check_entry(job, entry)
    for stage in all_stages():
        if stage.checks is not None:
            try:
                found += stage.checks(job)
            except InputError as error:
                found.append(Finding("warning", f"{stage.title}: {error}", "sum"))
    found += report_notes(job)
    for hold in HOLDS.values():
        for release in job.record.releases(hold.key):
            found.append(
                Finding("note", f"The hold on {hold.step} was released: {release.data.get('reason')}", "released")
            )
    return gravest_first(found)


def _check_entry(job: Job, entry: Entry) -> list[Finding]:
    if entry.kind in (RELEASE, WITHDRAWAL):
        return []
    if entry.stage not in STAGES:
        return [
            Finding(
                "note",
                f"An entry of {entry.at} belongs to a stage “{entry.stage}” that this version does not know. It is kept.",
                "unknown",
            )
        ]
    stage = find_stage(entry.stage)
    kind = next((k for k in stage.kinds if k.key == entry.kind), None)
    if kind is None:
        return [
            Finding(
                "note",
                f"{stage.title}: an entry of kind “{entry.kind}” is not known to this version. It is kept.",
                "unknown",
            )
        ]
    values = job.view.decoded(kind, entry)
    if isinstance(values, RecordError):
        return [Finding("warning", f"{stage.title}: an entry cannot be read, so it is passed by. {values}", "value")]
    missing = [field.label for field in kind.fields if field.required and getattr(values, field.name) is None]
    if missing:
        return [
            Finding(
                "warning", f"{stage.title}, {kind.title}, {entry.at}: not filled in: {', '.join(missing)}.", "value"
            )
        ]
    return []
