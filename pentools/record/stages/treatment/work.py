"""The order of work for opening this pen: what is done, what may be done now, and what each step waits for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools import tables
from pentools.calc.treatment.materials import UNKNOWN
from pentools.calc.treatment.order import HoldRow, OpeningOrder, OpeningStep, StepRow, opening_order
from pentools.record.kinds import as_dict
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.treatment.facts import material_is_named, materials_of
from pentools.record.stages.treatment.opening_kinds import BLOCK, JOINT, MET, STEP
from pentools.record.stages.weighing.kinds import LEAK_CHECK
from pentools.record.view import once_a_state
from pentools.sums.seal.knockout import KNOCKOUT

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.sums.base import SumAnswer

__all__ = ["block_of", "opening_actions", "order_of", "step_waits"]

UNSEALED = ("none", "silicone grease")
"""What may stand at a joint without sealing it: such a joint is not warmed."""


@once_a_state
def order_of(job: Job) -> OpeningOrder | None:
    """The order of work for the pen's filling system, as far as it has come.

    Returns
    -------
    OpeningOrder or None
        None where the filling system is not named or has no order on record.
    """
    system = job.newest(ARRIVAL).system or ""
    steps = tables.read(StepRow, "opening_steps")
    count = sum(row.system == system for row in steps)
    if not count:
        return None
    numbers = [logged.values.number for logged in job.log(STEP)]
    done = {number for number in numbers if number is not None and 1 <= number <= count}
    without = ("sealed joint",) if _section_seal(job) in UNSEALED else ()
    holds = tables.read(HoldRow, "opening_holds")
    return opening_order(system, steps, holds, done=done, met=_met(job), without=without)


def _section_seal(job: Job) -> str:
    """What the section's joint is sealed with, by its newest entry; "unknown" where nobody has looked."""
    said = [logged.values.sealant for logged in job.log(JOINT) if logged.values.joint == "section"]
    return (said[-1] if said else None) or UNKNOWN


def _met(job: Job) -> set[str]:
    said = consents(job)
    met = {logged.values.condition for logged in job.log(MET) if logged.values.condition is not None}
    # what was named and agreed is asked of the record, not of a remark; a release with its reason lets it go
    met -= {"material-named"} | ({"heat-agreed"} if said.get("heat") is False else set())
    if material_is_named(job) or any(job.record.releases(hold) for hold in ("heat", "soak")):
        met.add("material-named")
    if said.get("heat") is True:
        met.add("heat-agreed")
    if _section_seal(job) != UNKNOWN:
        met |= {"joint-known", "joint-known-front"}
    if any(logged.values.dry is False for logged in job.log(LEAK_CHECK)):
        met.add("leak-seen")
    return met & {row.key for row in tables.read(HoldRow, "opening_holds")}


def opening_actions(job: Job) -> tuple[str, ...]:
    """What opening this pen may come to, as the table of cautions names it: always opening, and heat where it is likely."""
    joints = [logged.values.sealant or UNKNOWN for logged in job.log(JOINT)]
    actions = ["opening"]
    if any(sealant not in UNSEALED for sealant in joints) or job.record.live("open", "heat pass"):
        actions.append("dry heat")
    actions += ["rosin sealant"] * any("rosin" in sealant for sealant in joints)
    actions += [name for name in ("epoxy", "cyanoacrylate") if name in joints]
    return tuple(actions)


def step_waits(step: OpeningStep) -> str:
    """What a step waits for, as a clause; empty where it may be done."""
    return " ".join(hold.condition for hold in step.held_by).rstrip(".") if step.state == "held" else ""


def block_of(job: Job) -> SumAnswer | None:
    """Tube and block for knocking out nib and feed; None where they were not measured.

    Returns
    -------
    SumAnswer or None
        The answer of the knock-out sum.

    Raises
    ------
    InputError
        If a size is out of range or contradicts another.
    """
    said = job.newest(BLOCK)
    if None in (said.tail, said.shoulder, said.bore):
        return None
    # the section's material decides whether it may be soaked
    return KNOCKOUT.run(as_dict(BLOCK, said) | {"material": " and ".join(materials_of(job, "section"))})
