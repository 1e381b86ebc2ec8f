"""What is odd about a record's lines although each has an answer: ids, corrections, newer forms, by file and line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from pentools.calc.base.findings import Finding
from pentools.record.entries import WITHDRAWAL
from pentools.record.lines import Line
from pentools.record.storage import Record

__all__ = ["odd_lines"]

MOST_NAMED = 20  # of one kind


def odd_lines(record: Record) -> tuple[Finding, ...]:
    """What is odd about the ids, corrections and forms of a record's lines.

    Returns
    -------
    tuple of Finding
        Each with the file and the line; of more than `MOST_NAMED` of one kind the rest is counted.
    """
    file, found = record.path.name, []
    for question in (_newer, _nameless, _doubles, _targets, _others, _circles):
        named = list(question(file, record.lines))
        found += named[:MOST_NAMED]
        if len(named) > MOST_NAMED:
            found.append(Finding("warning", "job.line-more", file=file, count=len(named) - MOST_NAMED))
    return tuple(found)


def _newer(file: str, lines: Sequence[Line]) -> Iterator[Finding]:
    for line in lines:
        if line.form is not None:
            yield Finding("warning", "job.line-newer", file=file, line=line.number, form=line.form)


def _nameless(file: str, lines: Sequence[Line]) -> Iterator[Finding]:
    for line in lines:
        if line.entry is not None and not line.entry.id:
            yield Finding("warning", "job.line-nameless", file=file, line=line.number)


def _doubles(file: str, lines: Sequence[Line]) -> Iterator[Finding]:
    first: dict[str, Line] = {}
    for line in lines:
        if line.entry is None or not line.id:
            continue
        other = first.setdefault(line.id, line)
        if other.entry != line.entry:
            yield Finding("warning", "job.line-double", file=file, line=line.number, other=other.number, id=line.id)


def _targets(file: str, lines: Sequence[Line]) -> Iterator[Finding]:
    """Corrections and withdrawals whose target comes later, is not there, or cannot be read."""
    read = {line.id: line.number for line in reversed(lines) if line.entry is not None and line.id}
    stated = {line.id: line.number for line in lines if line.entry is None and line.id}
    for line in lines:
        target = line.entry.replaces if line.entry is not None else None
        if not target:
            continue
        if target in read:
            if read[target] > line.number:
                yield Finding("note", "job.line-early", file=file, line=line.number, other=read[target])
        elif target in stated:
            yield Finding(
                "warning", "job.line-target:unread", file=file, line=line.number, other=stated[target], id=target
            )
        else:
            yield Finding("warning", "job.line-target:missing", file=file, line=line.number, id=target)


def _others(file: str, lines: Sequence[Line]) -> Iterator[Finding]:
    """Corrections that are no form of the kind they correct, so that the entry is gone from its own."""
    of = {line.id: line for line in lines if line.entry is not None and line.id}
    for line in lines:
        target = of.get(line.entry.replaces or "") if line.entry is not None else None
        if line.entry is None or target is None or target.entry is None:
            continue
        kinds = {line.entry.kind, target.entry.kind}
        if WITHDRAWAL not in kinds and (len(kinds) > 1 or line.entry.stage != target.entry.stage):
            was = f"{target.entry.stage}, {target.entry.kind}"
            yield Finding("warning", "job.line-other", file=file, line=line.number, other=target.number, was=was)


def _circles(file: str, lines: Sequence[Line]) -> Iterator[Finding]:
    """Lines that correct each other round in a circle, each circle once."""
    of = {line.id: line for line in lines if line.entry is not None and line.id}
    done: set[str] = set()
    for start in of:
        walked: dict[str, None] = {}
        name: str | None = start
        while name in of and name not in done and name not in walked:
            walked[name] = None
            entry = of[name].entry
            name = entry.replaces if entry is not None else None
        if name in walked:
            names = list(walked)
            numbers = sorted(of[one].number for one in names[names.index(name) :])
            if len(numbers) == 1:
                yield Finding("warning", "job.line-circle:self", file=file, line=numbers[0])
            else:
                yield Finding(
                    "warning", "job.line-circle", file=file, lines=[str(n) for n in numbers], last=numbers[-1]
                )
        done |= walked.keys()
