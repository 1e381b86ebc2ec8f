"""What was mended and how it stands: faults that wait, what each way needs, clocks, and parts that are away."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING

from pentools.calc.repairs.fitness import RepairFacts, RepairRow, Standing, Topic, repair_topics, standing
from pentools.errors import InputError
from pentools.record.entries import now
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.agree import yes_and_no
from pentools.record.stages.job.ending_kinds import LIMIT
from pentools.record.stages.job.intake_kinds import PART_CONDITION
from pentools.record.stages.repairs.kinds import BACK, IMPRINT, OUT, REPAIR, SPOT, Out, Repair
from pentools.record.stages.treatment.facts import limit_of_materials, materials_of
from pentools.record.view import once_a_state
from pentools.tables.part_repairs import repair_row, repairs_for

if TYPE_CHECKING:
    from collections.abc import Mapping

    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = [
    "WELD",
    "Fault", "Mended", "away", "clock_sentence", "curing", "faults_waiting", "holds_for_now", "mended", "method_of",
    "out_topics", "repair_facts", "topics_of",
]  # fmt: skip

_NAMES = dict(PARTS)
WELD = "solvent weld"
"""The treatment that a weld is, as the table of limits names it."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault of the survey that nothing was done about yet: its part, how serious, what is seen."""

    part: str
    severity: int
    seen: str


@dataclass(frozen=True, slots=True)
class Mended:
    """A part that was mended.

    Parameters
    ----------
    entry : Entry
        Its entry.
    values : Repair
        What was entered.
    row : RepairRow
        The way, as the table has it.
    stands : Standing or None
        How long it has to stand; None where it need not.
    """

    entry: Entry
    values: Repair
    row: RepairRow
    stands: Standing | None

    @property
    def words(self) -> str:
        """The part and what was done to it, such as "cap, lip: solvent weld"."""
        return f"{_NAMES.get(self.values.part or '', 'part')}, {self.row.label}"


def method_of(values: Repair) -> RepairRow | None:
    """The way that was chosen; None where none is named, or it is of another part."""
    row = None if values.method is None else repair_row(values.method)
    return row if row is not None and row.part == values.part else None


@once_a_state
def mended(job: Job) -> tuple[Mended, ...]:
    """Every part that was mended or left on purpose, in the order entered; of an entry that names no way nothing."""
    found = []
    for logged in job.log(REPAIR):
        row = method_of(logged.values)
        if row is None:
            continue
        # a correction does not start the clock again
        begun = job.first(logged.entry).time - dt.timedelta(
            hours=0 if logged.values.ago is None else logged.values.ago.value
        )
        typed = None if logged.values.stands is None else logged.values.stands.value
        found.append(Mended(logged.entry, logged.values, row, standing(row, begun, typed_h=typed)))
    return tuple(found)


def holds_for_now(one: Mended) -> bool:
    """Whether a mend only holds for now: as was said of it, else as is usual of its kind."""
    return one.row.for_now if one.values.for_now is None else one.values.for_now


@once_a_state
def faults_waiting(job: Job) -> tuple[Fault, ...]:
    """The faults of the survey for which there is a way of mending, and nothing is entered yet.

    Returns
    -------
    tuple of Fault
        Gravest first, the newest of a part and what is seen; without parts that were mended, sent out or left since.
    """
    since: dict[str, dt.datetime] = {}
    done = [*((e.entry, e.values.part) for e in job.log(REPAIR)), *((e.entry, e.values.part) for e in job.log(OUT))]
    done += [(e.entry, e.values.part) for e in job.log(LIMIT)]
    for entry, part in done:
        first = job.first(entry).time
        if part is not None:
            since[part] = max(first, since.get(part, first))
    found = {}
    for logged in job.log(PART_CONDITION):
        values = logged.values
        part, severity = values.part or "", int(values.severity or 0)
        open_ = part not in since or job.first(logged.entry).time > since[part]
        if severity > 0 and open_ and repairs_for(part):
            found[part, values.seen] = Fault(part, severity, values.seen or "")
    return tuple(sorted(found.values(), key=lambda fault: -fault.severity))


@once_a_state
def repair_facts(job: Job, part: str, method: str) -> RepairFacts:
    """What the record says as a part is about to be mended in a certain way."""
    row = repair_row(method)
    materials = materials_of(job, part)
    named = tuple(name for name in materials if name != "unknown")
    never = tuple(
        name for name in named if row.treatment and limit_of_materials(job, (name,), row.treatment).verdict == "never"
    )
    yes, no = yes_and_no(job)
    trials = [t.values.passed for t in job.log(SPOT) if (t.values.part, t.values.method) == (part, method)]
    rubbing = job.newest(IMPRINT).rubbing is True
    return RepairFacts(materials, never, yes, no, trials[-1] if trials else None, rubbing)


def topics_of(job: Job, values: Repair) -> tuple[Topic, ...]:
    """What stands in the way of a repair as it is entered; nothing while part and way are not both named.

    Raises
    ------
    InputError
        If the way is one of another part.
    """
    if values.part is None or values.method is None:
        return ()
    row = repair_row(values.method)
    if row.part != values.part:
        ways = ", ".join(other.label for other in repairs_for(values.part)) or "none"
        raise InputError("How", f"a way of mending the {_NAMES[values.part]}: {ways}", row.label)
    return repair_topics(row, repair_facts(job, values.part, values.method))


def out_topics(job: Job) -> tuple[Topic, ...]:
    """What stands in the way of sending a part out: that the owner said no, or nothing yet."""
    yes, no = yes_and_no(job)
    return ("refused",) if "send out" in no else () if "send out" in yes else ("consent",)


def curing(job: Job, moment: dt.datetime | None = None) -> tuple[Mended, ...]:
    """What was mended and has not stood its usual time yet, the longest last.

    Parameters
    ----------
    moment : datetime or None
        The time it is; now by default.
    """
    time = moment or now()
    waits = [one for one in mended(job) if one.stands is not None and one.stands.usual > time]
    return tuple(sorted(waits, key=lambda one: one.stands.usual if one.stands else time))


def clock_sentence(one: Mended, moment: dt.datetime | None = None) -> str:
    """When a mend has stood long enough, in one sentence; empty where it need not stand.

    Parameters
    ----------
    moment : datetime or None
        The time it is; now by default.
    """
    if one.stands is None:
        return ""
    time, until = moment or now(), one.row.until or "before it is used"
    where = _NAMES.get(one.values.part or "", "part")
    if one.stands.usual <= time:
        return f"The {where} ({one.row.method}) has had its time since {one.stands.usual:%d %B %H:%M}."
    hours = (one.stands.usual - time).total_seconds() / 3600
    left = f"{hours:.0f} h" if hours < 72 else f"{hours / 24:.0f} days"
    least = ""
    if one.stands.earliest < one.stands.usual:
        early = "over" if one.stands.earliest <= time else f"over on {one.stands.earliest:%d %B}"
        least = f" The shortest time is {early}."
    return f"The {where} ({one.row.method}) stands until {one.stands.usual:%d %B %H:%M}, {left} yet, {until}.{least}"


@once_a_state
def away(job: Job) -> Mapping[str, Out]:
    """Parts that are at another workshop: part to what was sent."""
    found: dict[str, Out] = {}
    steps: list[tuple[dt.datetime, str, Out | None]] = [
        *((sent.entry.time, sent.values.part or "", sent.values) for sent in job.log(OUT)),
        *((back.entry.time, back.values.part or "", None) for back in job.log(BACK)),
    ]
    for _, part, values in sorted(steps, key=lambda step: step[0]):
        if values is not None:
            found[part] = values
        else:
            found.pop(part, None)
    return MappingProxyType(found)
