"""What closing need not ask, because another stage has it on record: trials, sealants, weighings, nights at rest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.closing.order import ClosingRow, Did
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.job.pictures import moments_of
from pentools.record.stages.seal.kinds import MEASURE, SEALANT, TRIAL
from pentools.record.stages.seal.proof import results_that_count
from pentools.record.stages.seal.trials import passed_places
from pentools.record.stages.treatment.cleaning_kinds import DRYING
from pentools.record.stages.treatment.facts import limit_of_materials, materials_of
from pentools.record.stages.treatment.opening_kinds import MET
from pentools.record.stages.treatment.work import order_of
from pentools.record.stages.weighing.filling import capacity_of, cycles
from pentools.record.stages.weighing.kinds import LEAK_CHECK, WEIGHING
from pentools.record.view import once_a_state
from pentools.sums.closing.work import closing_rows

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = ["NIGHT_H", "Known", "body_of", "known_conditions", "known_steps"]

NIGHT_H = 8.0
"""A rest that counts as a night [h]; as the table of tests has it."""
_SECTION = ("sealed", "section-home")
_MET = {"tool-fits": ("tool-fits",), "thread-direction-known": ("turn-known", "knob-turn-known")}


@dataclass(frozen=True, slots=True)
class Known:
    """A step that another stage answers for.

    Parameters
    ----------
    did : Did
        The step, and whether its test is known to have passed.
    entry : Entry
        The entry that says so.
    by : str
        Which stage says so, in words.
    """

    did: Did
    entry: Entry
    by: str


def body_of(job: Job) -> tuple[str, ...]:
    """What barrel and cap are made of; "unknown" for what is not named."""
    return tuple(dict.fromkeys(name for part in ("barrel", "cap") for name in materials_of(job, part)))


@once_a_state
def known_steps(job: Job) -> dict[str, Known]:
    """The steps of this pen's order that are on record elsewhere, by their keys."""
    rows = closing_rows(job.newest(ARRIVAL).system or "")
    keys = {row.key for row in rows}
    return {known.did.key: known for row in rows for known in _of_step(job, row) if known.did.key in keys}


def _of_step(job: Job, row: ClosingRow) -> Iterator[Known]:
    if row.key == "cleared":
        yield from _cleared(job)
    elif row.key == "sac-cut":
        yield from _tried(job, row.key, "sac")
    elif row.key == "dry-fit":
        yield from _tried(job, row.key, "section")
    elif row.clock:
        yield from _sealed(job, row)
    elif row.key == "wet-tested":
        yield from _filled(job)
    elif row.key == "rested":
        yield from _rested(job)


def _cleared(job: Job) -> Iterator[Known]:
    for logged in job.log(MEASURE):
        if logged.values.cleaned is True:
            yield Known(Did("cleared", True), logged.entry, "measured after cleaning (Seal)")


def _tried(job: Job, key: str, place: str) -> Iterator[Known]:
    if passed_places(job).get(place):
        entries = [logged.entry for logged in job.log(TRIAL) if logged.values.place == place]
        yield Known(Did(key, True), entries[-1], "tried dry (Seal)")


def _sealed(job: Job, row: ClosingRow) -> Iterator[Known]:
    places = ("section",) if row.key in _SECTION else (row.clock, "sac")
    for logged in job.log(SEALANT):
        if logged.values.place in places and logged.values.sealant not in (None, "none"):
            tight = row.clock == "sac" and results_that_count(job).get("press") == "bubbles stop"
            yield Known(Did(row.key, True if tight else None), logged.entry, "sealant put on (Seal)")


def _filled(job: Job) -> Iterator[Known]:
    """Two fillings weighed: done; sound where the balance has nothing to say against them."""
    whole = [cycle for cycle in cycles(job) if cycle.filled]
    if len(whole) < 2:
        return
    answer = capacity_of(job)
    fine = answer is not None and not any(f.level in ("warning", "stop") for f in answer.findings)
    first = whole[-2].filled_ids[0]
    begun = next(logged.entry for logged in job.log(WEIGHING) if logged.entry.id == first)
    yield Known(Did("wet-tested", True if fine else None), begun, "two fillings weighed (Fill test)")


def _rested(job: Job) -> Iterator[Known]:
    for logged in job.log(LEAK_CHECK):
        rested, dry = logged.values.rested, logged.values.dry
        if rested is not None and rested.value >= NIGHT_H and dry is not None:
            yield Known(Did("rested", dry), logged.entry, "a night filled (Fill test)")


@once_a_state
def known_conditions(job: Job) -> frozenset[str]:
    """The conditions from outside that the record shows to be so; others are ticked, or asked about."""
    found: set[str] = set()
    opening = order_of(job)
    opened = {step.gives.key for step in opening.steps if step.state == "done" and step.gives} if opening else set()
    if moments_of(job) & {"before", "during"} or "pictured" in opened:
        found.add("pictured")
    if job.log(DRYING):
        found.add("clean-dry")
    if any(passed_places(job).values()):
        found.add("seal-made")
    for condition, keys in _MET.items():
        if any(logged.values.condition == condition for logged in job.log(MET)):
            found.update(keys)
    body = body_of(job)
    if "unknown" not in body and limit_of_materials(job, body, "shellac in alcohol").verdict != "never":
        found.add("sealant-suits")
    return frozenset(found)
