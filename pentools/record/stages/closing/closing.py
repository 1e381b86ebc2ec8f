"""Back together: the order, soft where a step is skipped and held where one closes over something untested; and what is owed."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding, gravest_first
from pentools.calc.closing.order import ClosingOrder, ClosingStep
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.closing.kinds import BEGUN, KINDS, ROUND, STEP, WRITING
from pentools.record.stages.closing.proofs import owed_now
from pentools.record.stages.closing.work import action_of, clocks_of, closes_over, closing_of
from pentools.record.stages.job.ending_kinds import EARLY, RESULT
from pentools.record.stages.seal.kinds import SEALANTS
from pentools.words.treatment import CLOSING_LINE

if TYPE_CHECKING:
    from pentools.record.job import Job
    from pentools.record.stages.closing.work import Clock

__all__ = [
    "CLOSING",
    "clock_words",
    "closed_untested",
    "closing_findings",
    "closing_sentence",
    "closing_untested",
    "grave_findings",
]

_GRAVE = ("shut", "skipped", "failed")
CAUTIONS = (
    f"Shellac is cut with alcohol, which burns: no flame near, fresh air, and let it dry in the open. {CLOSING_LINE}",
    f"Silicone adhesive gives off acetic acid while it cures: fresh air, not on skin or in eyes. {CLOSING_LINE}",
)


def closing_sentence(job: Job, moment: dt.datetime | None = None) -> str:
    """Where closing stands, as one sentence.

    Parameters
    ----------
    moment : datetime or None
        The time it is; now by default.
    """
    order = closing_of(job)
    if order is None:
        return "Say how it fills, at intake: the order hangs on it."
    coming, count = order.next_step, len(order.steps)
    if coming is None:
        owed = [proof.row.label for proof in owed_now(job, moment) if proof.state not in ("passed", "failed")]
        left = f" It still owes: {', '.join(owed)}." if owed else " It owes no test any more."
        return f"It is together, and every test on the way has passed.{left}"
    if coming.state == "untested":
        return f"Step {coming.row.step} of {count}, the {coming.row.part}, is done; its test is owed.{_wait(job, coming, moment)}"
    if coming.state == "failed":
        return f"Step {coming.row.step} of {count}, the {coming.row.part}, did not pass its test."
    return f"Next, step {coming.row.step} of {count}, the {coming.row.part}: {action_of(job, coming.row)}"


def _wait(job: Job, step: ClosingStep, moment: dt.datetime | None) -> str:
    waits = [clock for clock in clocks_of(job, moment) if clock.row.key == step.row.key]
    return f" {clock_words(waits[-1], moment)}" if waits else ""


def clock_words(clock: Clock, moment: dt.datetime | None = None) -> str:
    """When a joint may be tested and filled, as one sentence.

    Parameters
    ----------
    clock : Clock
        What sets.
    moment : datetime or None
        The time it is; where it is past the test, only the ink is told.
    """
    what = dict(SEALANTS).get(clock.sealant, clock.sealant)
    ink = f"ink from {clock.ink_at:%d %B %H:%M}"
    test = "" if moment is not None and clock.test_at <= moment else f"may be tested from {clock.test_at:%d %B %H:%M}, "
    return f"The {what} at the {clock.row.part} {test}{ink}."


def closing_untested(job: Job) -> str:
    """What was closed over untested, or the next closing step would close over, as a clause; empty where nothing is.

    Returns
    -------
    str
        The step, and what is not known to be so.
    """
    order = _judged(job)
    step = None if order is None else _shut(order)
    return "" if step is None else closes_over(step, step.untested)


def closed_untested(job: Job) -> bool:
    """Whether a step that closes something was done over what is not known to be so."""
    order = _judged(job)
    return order is not None and bool(_shut_in(order))


def _judged(job: Job) -> ClosingOrder | None:
    """The order of a pen that is being closed by it; who enters no closing is not judged by its order."""
    return closing_of(job) if job.entered(*KINDS) else None


def _shut_in(order: ClosingOrder) -> list[ClosingStep]:
    """The steps that have shut something in untested."""
    return [step for step in order.steps if step.state in ("done", "untested", "failed") and step.untested]


def _shut(order: ClosingOrder) -> ClosingStep | None:
    """The first closing step that has shut something in untested, else the next step where it would."""
    done = _shut_in(order)
    if done:
        return done[0]
    coming = order.next_step
    if coming is None or coming.state not in ("untested", "failed", "held"):
        return None
    return next((step for step in order.steps if step.state == "held"), None)


def closing_findings(job: Job) -> tuple[Finding, ...]:
    """Everything worth knowing about how a pen goes together, gravest first.

    Returns
    -------
    tuple of Finding
        Of the order; empty where the filling system is not named.
    """
    order = closing_of(job)
    return () if order is None else gravest_first(order.findings)


def grave_findings(job: Job) -> tuple[Finding, ...]:
    """Of `closing_findings` what went wrong: shut in untested, skipped, failed."""
    return tuple(f for f in closing_findings(job) if f.topic in _GRAVE)


def _state(job: Job) -> StageState:
    if not job.entered(*KINDS):
        return StageState("not begun")
    order = closing_of(job)
    if order is None:
        return StageState("open", "the filling system is not named, so there is no order")
    if order.next_step is None:
        return StageState("done")
    done = sum(step.state in ("done", "not needed") for step in order.steps)
    return StageState(
        "open", f"{done} of {len(order.steps)} steps done and tested; next: the {order.next_step.row.part}"
    )


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.entered(*KINDS):
        return ()
    found = [f.under("Back together", "warning") for f in grave_findings(job)]
    ending = job.newest(RESULT).ending
    if ending is not None and ending not in EARLY:
        owed = [proof.row.label for proof in owed_now(job) if proof.state not in ("passed", "failed")]
        failed = [proof.row.label for proof in owed_now(job) if proof.state == "failed"]
        found += [Finding("note", "closing.owed", tests=owed).under("Back together")] if owed else []
        found += [Finding("warning", "closing.sent-failed", tests=failed).under("Back together")] if failed else []
    return tuple(found)


CLOSING = Stage(
    "closing",
    "Back together",
    "In which order it went together, what was tested on the way, and what it owes before it goes.",
    (ROUND, STEP, BEGUN, WRITING),
    panel="pentools.panels.stages.closing.closing:ClosingPanel",
    section="pentools.writeup.sections.closing.closing:section",
    state=_state,
    checks=_checks,
    cautions=CAUTIONS,
)
