"""The stage of the parts mended: cracks, clips, bands, inner caps, levers, threads, imprints, and what is sent out."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.common import PARTS
from pentools.record.stages.finish.kinds import STEP as POLISH
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import PART_CONDITION
from pentools.record.stages.repairs.kinds import BACK, IMPRINT, OUT, REPAIR, SPOT
from pentools.record.stages.repairs.work import (
    WELD,
    away,
    clock_sentence,
    curing,
    faults_waiting,
    holds_for_now,
    mended,
    method_of,
)

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["REPAIRS", "repair_findings", "repair_sentence"]

_NAMES = dict(PARTS)


def repair_sentence(job: Job) -> str:
    """What matters of the parts mended now, in one sentence."""
    waits = curing(job)
    if waits:
        return clock_sentence(waits[-1])
    gone = away(job)
    if gone:
        return f"At another workshop: {', '.join(_NAMES.get(part, part) for part in gone)}."
    faults = faults_waiting(job)
    if faults:
        return f"The survey found a fault that may be mended here: {_NAMES[faults[0].part]} ({faults[0].seen.rstrip('.')})."
    done = mended(job)
    return f"{'1 part' if len(done) == 1 else f'{len(done)} parts'} mended." if done else "No part is mended yet."


def repair_findings(job: Job) -> tuple[Finding, ...]:
    """What is odd or missing about the parts mended.

    Returns
    -------
    tuple of Finding
        Gravest first.
    """
    return gravest_first([*_on_mends(job), *_on_way(job), *_too_early(job)])


def _on_mends(job: Job) -> Iterator[Finding]:
    for logged in job.log(REPAIR):
        if logged.values.part is not None and logged.values.method is not None and method_of(logged.values) is None:
            yield Finding("warning", "repairs.other-part", part=_NAMES[logged.values.part], method=logged.values.method)
    for one in mended(job):
        if holds_for_now(one) and one.values.wanted is None:
            yield Finding("note", "repairs.wanted", what=one.words)


def _on_way(job: Job) -> Iterator[Finding]:
    for part, sent in away(job).items():
        yield Finding("note", "repairs.away", part=_NAMES.get(part, part), sent=sent.sent_on, due=sent.due_on)
    if away(job) and job.log(RESULT):
        yield Finding("warning", "repairs.left-away", parts=[_NAMES.get(part, part) for part in away(job)])


def _too_early(job: Job) -> Iterator[Finding]:
    """Abrasive used while a weld had not stood its shortest time."""
    for one in mended(job):
        if one.row.treatment != WELD or one.stands is None:
            continue
        begun = job.first(one.entry).time
        if any(begun < step.entry.time < one.stands.earliest for step in job.log(POLISH)):
            yield Finding("warning", "repairs.too-early", what=one.words, until=f"{one.stands.earliest:%d %B}")


def _state(job: Job) -> StageState:
    if away(job) or curing(job):
        return StageState("open", repair_sentence(job).rstrip("."))
    faults = faults_waiting(job)
    if not job.entered(REPAIR, SPOT, IMPRINT, OUT, BACK):
        return (
            StageState("not begun")
            if faults or not job.log(PART_CONDITION)
            else StageState("done", "nothing of the survey waits for it")
        )
    if faults:
        return StageState(
            "open", f"still to mend or to leave: {', '.join(dict.fromkeys(_NAMES[fault.part] for fault in faults))}"
        )
    return StageState("done", repair_sentence(job).rstrip("."))


REPAIRS = Stage(
    "repairs",
    "Parts mended",
    "Cracks, clips, bands, inner caps, levers, threads and imprints: what was done, with whose yes, and how long it stands.",
    (REPAIR, SPOT, IMPRINT, OUT, BACK),
    panel="pentools.panels.stages.repairs.repairs:RepairsPanel",
    section="pentools.writeup.sections.repairs.repairs:section",
    state=_state,
    checks=repair_findings,
)
