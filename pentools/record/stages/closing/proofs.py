"""The tests this pen owes, answered wherever they are kept: leak checks, tests of the seal, writing after a night."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from pentools import tables
from pentools.calc.closing.proofs import Proof, ProofRow, proofs_owed
from pentools.record.entries import now
from pentools.record.stages.closing.kinds import BEGUN, KINDS, WRITING
from pentools.record.stages.closing.known import NIGHT_H
from pentools.record.stages.closing.work import closing_of
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import TEST
from pentools.record.stages.seal.proof import results_that_count
from pentools.record.stages.weighing.kinds import LEAK_CHECK

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["answers_to", "owed_now", "seal_test_of"]

_LEAK, _WRITING, _SEAL = "leak check", "writing", "seal test "


def seal_test_of(row: ProofRow) -> str:
    """The name of the seal stage's test that keeps a result; empty where another kind does."""
    return row.records.removeprefix(_SEAL) if row.records.startswith(_SEAL) else ""


def owed_now(job: Job, moment: dt.datetime | None = None) -> tuple[Proof, ...]:
    """The tests that this pen owes, in their order, each with how it stands.

    Parameters
    ----------
    moment : datetime or None
        The time it is; now by default.

    Returns
    -------
    tuple of Proof
        None where the filling system is not named. What was seen before the pen was closed does not count for a night.
    """
    rows = tables.read(ProofRow, "closing_proofs")
    found = {row.key: result for row in rows if (result := _result(job, row)) is not None}
    results = {key: passed for key, (passed, _) in found.items()}
    begun = {}
    for logged in job.log(BEGUN):
        key = logged.values.test
        if key is not None and (key not in found or job.place_of(logged.entry) > found[key][1]):
            begun[key] = logged.entry.time
    return proofs_owed(job.newest(ARRIVAL).system or "", rows, results, begun, moment or now())


def _result(job: Job, row: ProofRow) -> tuple[bool, int] | None:
    """Whether a test passed when it was last made, and where that stands in the record; None where it was not made."""
    found = [*_by_leak_checks(job, row), *_by_seal_tests(job, row), *_by_order(job, row)]
    if row.records == _WRITING:
        found += [(logged.values.wrote == row.passes, job.place_of(logged.entry)) for logged in job.log(WRITING)]
    return max(found, key=lambda result: result[1]) if found else None


def _by_leak_checks(job: Job, row: ProofRow) -> list[tuple[bool, int]]:
    """Nights that count: since the pen was closed, long enough, and lying as the test wants it."""
    order = closing_of(job)
    if order is None or order.step("rested").state not in ("done", "failed"):
        return []
    found = []
    for logged in job.log(LEAK_CHECK):
        rested, dry, how = logged.values.rested, logged.values.dry, logged.values.how or ""
        long = rested is not None and rested.value >= NIGHT_H
        fits = row.records == _LEAK or (row.lay and row.lay in how.casefold())
        if long and fits and dry is not None:
            found.append((dry, job.place_of(logged.entry)))
    return found


def _by_seal_tests(job: Job, row: ProofRow) -> list[tuple[bool, int]]:
    test = seal_test_of(row)
    result = results_that_count(job).get(test) if test else None
    places = [job.place_of(logged.entry) for logged in job.log(TEST) if logged.values.test == test]
    return [(result == row.passes, places[-1])] if result is not None and places else []


def _by_order(job: Job, row: ProofRow) -> list[tuple[bool, int]]:
    """What the order's own tests have shown already is not asked again."""
    order, entries = closing_of(job), job.entered(*KINDS)
    if order is None or not entries:
        return []
    passed = [step for step in order.steps if step.state == "done" and step.gives.key in row.gives]
    return [(True, job.place_of(entries[0]))] if passed else []


def answers_to(row: ProofRow) -> tuple[tuple[str, str], ...]:
    """What may be answered to a test, the passing one first: key as it is kept, and words.

    Parameters
    ----------
    row : ProofRow
        The test.

    Returns
    -------
    tuple of (key, words)
        A button each.
    """
    if row.records == _LEAK:
        return (("yes", "dry all over"), ("no", "damp"))
    if row.records == _WRITING:
        return WRITING.field("wrote").choices
    field = TEST.field(f"{seal_test_of(row).replace('-', '_')}_seen")
    return tuple(sorted(field.choices, key=lambda choice: choice[0] != row.passes))
