"""What is worked out of each record for the tables: what every filling comes to, and what is missing or odd."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import Any

import msgspec

from pentools.books.asked import Question, Told
from pentools.books.tables.columns import Page, packed
from pentools.books.tables.forms import JOB, TABLES
from pentools.record.entries import as_if_at
from pentools.record.job import Job
from pentools.record.review import on_record
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.weighing.filling import FillCycle, capacity_of, cycles
from pentools.record.view import SPOILT

__all__ = ["DRAWN", "FILLINGS", "FINDINGS", "Drawn", "Filling", "Fillings", "Findings", "Found", "worked_page"]


class Filling(msgspec.Struct, frozen=True):
    """What one filling comes to; None where it cannot be worked out."""

    number: int
    start: str
    system: str | None
    weighings: int
    volume_ml: float | None = None
    expanded_uncertainty_ml: float | None = None
    expected_ml: float | None = None
    share_filled: float | None = None
    share_standard_uncertainty: float | None = None
    verdict: str | None = None


class Fillings(msgspec.Struct, frozen=True):
    """The fillings of a job, in their order."""

    rows: tuple[Filling, ...]


class Drawn(msgspec.Struct, frozen=True):
    """What the pen draws by its last filling; None where nothing was weighed, or it cannot be worked out."""

    volume_ml: float | None = None
    expanded_uncertainty_ml: float | None = None
    share_filled: float | None = None


class Found(msgspec.Struct, frozen=True):
    """One thing that is missing or odd."""

    level: str
    subject: str
    topic: str
    text: str


class Findings(msgspec.Struct, frozen=True):
    """What is missing or odd in a job, the gravest first."""

    rows: tuple[Found, ...]


def _fillings(job: Job) -> Fillings:
    return Fillings(tuple(_filling(job, number, cycle) for number, cycle in enumerate(cycles(job), 1)))


def _filling(job: Job, number: int, cycle: FillCycle) -> Filling:
    known = Filling(
        number,
        cycle.start,
        job.newest(ARRIVAL).system,
        len(cycle.empty) + len(cycle.filled) + len(cycle.gains),
    )
    try:
        answer = capacity_of(job, cycle)
    except SPOILT:
        return known  # the weighings contradict each other; `pentools check` says how
    data = answer.data if answer else {}
    names = [name for name in Filling.__struct_fields__[4:] if name in data]
    return msgspec.structs.replace(known, **{name: data[name] for name in names})


_NEVER = dt.datetime(2000, 1, 1, tzinfo=dt.UTC)  # of a record without entries no clock is asked
_OF_FILES = ("photo-missing", "photo-unread")  # what lies beside the record may change without it; the check says it


def _drawn(job: Job) -> Drawn:
    try:
        answer = capacity_of(job)
    except SPOILT:
        return Drawn()
    data = answer.data if answer else {}
    return Drawn(**{name: data.get(name) for name in Drawn.__struct_fields__})


def _findings(job: Job) -> Findings:
    """What its own record says, as it stood with the newest entry: no clock, no files beside it, no other jobs."""
    alone = Job(job.name, job.folder, replace(job.bench, folder=job.folder, problems=()), job.record)
    newest = max((entry.time for entry in job.record.entries), default=_NEVER)
    with as_if_at(newest):
        found = [finding for finding in on_record(alone) if finding.topic not in _OF_FILES]
    return Findings(tuple(Found(f.level, f.key.partition(".")[0], f.topic, f.text) for f in found))


DRAWN = Question("drawn", Drawn, _drawn)
FILLINGS = Question("fillings", Fillings, _fillings)
FINDINGS = Question("findings", Findings, _findings)


def worked_page(table: str, told: Told[Any]) -> Page:
    """The rows of a table from what the jobs answered."""
    rows = [(name, row) for name, answer in told.answers.items() for row in answer.rows]
    page = {JOB.name: packed("category", [name for name, _ in rows])}
    for column in TABLES[table].columns:
        page[column.name] = packed(column.form, [getattr(row, column.name) for _, row in rows])
    return page
