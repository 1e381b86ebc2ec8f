"""How far a pen is together: what its entries and other stages say was done and tested, what waits, and which clocks run."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.closing.changes import action_with
from pentools.calc.closing.order import ClosingOrder, ClosingRow, ClosingStep, Did
from pentools.calc.treatment.order import Hold
from pentools.numbers import in_words
from pentools.record.entries import now
from pentools.record.stages.closing.kinds import ROUND, STEP, Round, Step
from pentools.record.stages.closing.known import body_of, known_conditions, known_steps
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE, SAC_RUBBER, SEALANT
from pentools.record.stages.seal.measure import work_out
from pentools.record.stages.seal.trials import passed_places
from pentools.record.stages.weighing.dimensions import dimensions_of
from pentools.record.view import SPOILT, once_a_state
from pentools.sums.closing.care import rubber_of
from pentools.sums.closing.work import closing_rows, closing_work, cure_hours, step_changes, usual_sealant
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "Clock",
    "action_of",
    "clocks_of",
    "closing_of",
    "doubts_of",
    "fits_dry",
    "fitted_of",
    "met_of",
    "offered_at",
    "put_on",
    "shut_by",
    "step_values",
    "words_of_changes",
]

_AFTER_CLOSING = ("wet-tested", "rested")
"""What another stage says of these counts only once something was closed: the pen may have been filled as it came."""
_OUTCOME = {"passed": True, "failed": False, "untested": None}
_CLOSED_WITH = {"sac": ("sac",), "bulb": ("bulb", "sac"), "section": ("section",)}


@dataclass(frozen=True, slots=True)
class Clock:
    """What sets at a joint.

    Parameters
    ----------
    row : ClosingRow
        The step whose test waits for it.
    sealant : str
        What was put on, a key of the seal stage.
    test_at, ink_at : datetime
        When it may be tested, and when ink may go in.
    """

    row: ClosingRow
    sealant: str
    test_at: dt.datetime
    ink_at: dt.datetime


@dataclass(frozen=True, slots=True)
class _Event:
    at: int
    did: tuple[Did, ...]
    known: bool = False


def fitted_of(job: Job) -> tuple[str, ...]:
    """What the sac, bulb or diaphragm is made of; latex where nothing else is known."""
    said = [logged.values.material for logged in job.log(MEASURE) if logged.values.place == "sac"]
    return (
        (SAC_RUBBER.get(said[-1] or "", "latex"),) if said and said[-1] else rubber_of(job.newest(ARRIVAL).system or "")
    )


@once_a_state
def closing_of(job: Job) -> ClosingOrder | None:
    """The closing order of the pen, as far as it has come.

    Returns
    -------
    ClosingOrder or None
        None where the filling system is not named or has no order on record.
    """
    system = job.newest(ARRIVAL).system or ""
    rows = closing_rows(system)
    if not rows:
        return None
    did = [one for event in _events(job, rows) for one in event.did]
    return closing_work(system, did=did, met=met_of(job), left_out=_left_out(job, rows))


def met_of(job: Job) -> frozenset[str]:
    """The conditions from outside that are so: shown by the record, or ticked."""
    said = {key for logged in job.log(ROUND) for key in logged.values.so_before or ()}
    return known_conditions(job) | said


def _left_out(job: Job, rows: Sequence[ClosingRow]) -> set[str]:
    keys = {row.key for row in rows}
    return {key for logged in job.log(ROUND) for key in logged.values.left_out or ()} & keys


def _events(job: Job, rows: Sequence[ClosingRow]) -> list[_Event]:
    """Everything that was done, in the order of time; what other stages say only where no entry of closing does."""
    keys = [row.key for row in rows]
    said = [_Event(job.place_of(logged.entry), _of_round(logged.values, keys)) for logged in job.log(ROUND)]
    said += [_Event(job.place_of(logged.entry), _of_step(logged.values, keys)) for logged in job.log(STEP)]
    named = {one.key for event in said for one in event.did}
    known = [one for key, one in known_steps(job).items() if key not in named]
    found = [_Event(job.place_of(one.entry), (one.did,), True) for one in known]
    events = sorted((*said, *found), key=lambda event: event.at)
    return _only_after_closing(events, {row.key for row in rows if row.closes})


def _only_after_closing(events: Iterable[_Event], closing: set[str]) -> list[_Event]:
    kept: list[_Event] = []
    closed = False
    for event in events:
        if event.known and not closed and event.did[0].key in _AFTER_CLOSING:
            continue
        kept.append(event)
        closed = closed or any(one.key in closing for one in event.did)
    return kept


def _of_round(values: Round, keys: Sequence[str]) -> tuple[Did, ...]:
    """A round of ticks, in the order of the list; what was tested was done."""
    done, tested = set(values.done or ()), set(values.tested or ())
    return tuple(Did(key, True if key in tested else None) for key in keys if key in done | tested)


def _of_step(values: Step, keys: Sequence[str]) -> tuple[Did, ...]:
    if values.step not in keys or values.outcome not in _OUTCOME:
        return ()
    return (Did(values.step or "", _OUTCOME[values.outcome or ""]),)


# what is about to be entered -------------------------------------------------------------------------------


def _with(job: Job, form: Round | Step) -> tuple[ClosingOrder, tuple[str, ...]] | None:
    """The order as it would be with a form saved, and the steps that the form does for the first time."""
    system = job.newest(ARRIVAL).system or ""
    rows = closing_rows(system)
    if not rows:
        return None
    keys = [row.key for row in rows]
    before = [one for event in _events(job, rows) for one in event.did]
    more = _of_round(form, keys) if isinstance(form, Round) else _of_step(form, keys)
    met, left_out = set(met_of(job)), _left_out(job, rows)
    if isinstance(form, Round):
        met |= set(form.so_before or ())
        left_out |= set(form.left_out or ()) & set(keys)
    new = tuple(one.key for one in more if one.key not in {did.key for did in before})
    return closing_work(system, did=[*before, *more], met=met, left_out=left_out), new


@once_a_state
def fits_dry(job: Job) -> bool:
    """Whether the parts that sealant is to hold were tried dry on the way together, and no dry trial of a seal fails."""
    order = closing_of(job)
    if order is None or not all(passed_places(job).values()):
        return False
    dry = [step for step in order.steps if step.gives.key in ("sac-clears", "joint-fits", "cap-clears")]
    return (
        bool(dry) and all(step.state in ("done", "not needed") for step in dry) and any(s.state == "done" for s in dry)
    )


def shut_by(job: Job, form: Round | Step) -> str:
    """What a form would close over untested, as a clause; empty where it closes nothing of the kind.

    Parameters
    ----------
    form : Round or Step
        The form as it is about to be saved.
    """
    planned = _with(job, form)
    if planned is None:
        return ""
    order, new = planned
    for step in (order.step(key) for key in new):
        missing = [hold for hold in step.skipped if not hold.from_outside]
        if step.row.closes and missing:
            return closes_over(step, missing)
    return ""


def closes_over(step: ClosingStep, missing: Iterable[Hold]) -> str:
    """That a step closes over what is not tested, and what has to be so first, as a clause."""
    what = " ".join(dict.fromkeys(hold.condition for hold in missing)).rstrip(".")
    return f"step {step.row.step}, the {step.row.part}, closes over what is not tested. First this has to be so: {what}"


def doubts_of(job: Job, form: Round | Step) -> str:
    """What a form skips, as a question; empty where everything was so before.

    Parameters
    ----------
    form : Round or Step
        The form as it is about to be saved.
    """
    planned = _with(job, form)
    if planned is None:
        return ""
    order, new = planned
    skipped = [step for key in new if (step := order.step(key)).skipped]
    if not skipped:
        return ""
    what = " ".join(dict.fromkeys(hold.condition for step in skipped for hold in step.skipped))
    numbers = in_words(step.row.step for step in skipped)
    which = f"Step {numbers} wants" if len(skipped) == 1 else f"Steps {numbers} want"
    return f"{which} this first: {what} Is it so, or was it left out on purpose?"


# clocks and values -----------------------------------------------------------------------------------------


def put_on(job: Job, clock: str) -> tuple[str, dt.datetime] | None:
    """What was put on a joint and when; None where nobody has said it.

    Parameters
    ----------
    clock : {"sac", "bulb", "section"}
        The joint.

    Returns
    -------
    tuple of (str, datetime) or None
        A key of the seal stage's sealants; the newest entry of either stage.
    """
    found = []
    for logged in job.log(SEALANT):
        if logged.values.place in _CLOSED_WITH[clock] and logged.values.sealant not in (None, "none"):
            ago = logged.values.ago.value if logged.values.ago is not None else 0.0
            found.append((job.first(logged.entry).time - dt.timedelta(minutes=ago), logged.values.sealant or ""))
    for said in job.log(ROUND):
        adhesive = said.values.section_with if clock == "section" else said.values.sac_with
        if adhesive is not None:
            found.append((job.first(said.entry).time, adhesive))
    return max(found)[::-1] if found else None


@once_a_state
def _clocks(job: Job) -> tuple[Clock, ...]:
    order = closing_of(job)
    if order is None:
        return ()
    found = []
    for step in order.steps:
        started = _started(job, step)
        if started is None:
            continue
        sealant, at = started
        test = cure_hours(step.row, fitted_of(job), sealant) or 0.0
        ink = cure_hours(step.row, fitted_of(job), sealant, "ink") or 0.0
        found.append(Clock(step.row, sealant, at + dt.timedelta(hours=test), at + dt.timedelta(hours=ink)))
    return tuple(found)


def _started(job: Job, step: ClosingStep) -> tuple[str, dt.datetime] | None:
    """What sets at a step and since when; a step that was ticked without a word takes what is usual."""
    if not step.row.clock or step.state not in ("untested", "done", "failed"):
        return None
    said = put_on(job, step.row.clock)
    if said is not None:
        return said
    rows = [(logged.entry, logged.values.done or ()) for logged in job.log(ROUND)]
    times = [job.first(entry).time for entry, done in rows if step.row.key in done]
    return (usual_sealant(step.row.clock, fitted_of(job)), times[-1]) if times else None


def clocks_of(job: Job, moment: dt.datetime | None = None) -> tuple[Clock, ...]:
    """What still sets, the longest last.

    Parameters
    ----------
    moment : datetime or None
        The time it is; now by default.
    """
    time = moment or now()
    return tuple(sorted((c for c in _clocks(job) if c.ink_at > time), key=lambda clock: clock.ink_at))


def step_values(job: Job) -> dict[str, str]:
    """What was measured on the way, in words, by the name of its field: the newest entry of each.

    A tube's reach that was measured with the seal or for the fill test is known too.
    """
    found: dict[str, str] = {}
    reach = dimensions_of(job).get("reach")
    if isinstance(reach, Reading):
        found["tube_reach"] = ROUND.field("tube_reach").shown(reach)
    for logged in job.log(ROUND):
        for name in ("sac_length", "tube_reach", "bar_length", "presses"):
            value = getattr(logged.values, name)
            if value is not None:
                found[name] = ROUND.field(name).shown(value)
    return found


def offered_at(job: Job, row: ClosingRow) -> dict[str, str]:
    """What is known beforehand of what is typed at a step: the sac's adhesive by its material, its length by the sac's sum.

    Returns
    -------
    dict of str to str
        By the names of the fields of a round; the material must have been said.
    """
    found: dict[str, str] = {}
    said = [logged.values.material for logged in job.log(MEASURE) if logged.values.place == "sac"]
    if row.clock in ("sac", "bulb") and said and said[-1]:
        found["sac_with"] = usual_sealant(row.clock, fitted_of(job))
    if row.value == "sac_length":
        cut = _cut_mm(job)
        found |= {} if cut is None else {"sac_length": f"{cut:.0f} mm"}
    return found


def _cut_mm(job: Job) -> float | None:
    """How long the sac's sum says it is cut [mm]; None where it does not say, or its sizes contradict each other."""
    try:
        answer = work_out(job, "sac")
    except SPOILT:
        return None
    return None if answer is None else answer.data.get("cut_length_mm")


def action_of(job: Job, row: ClosingRow) -> str:
    """What is done at a step of this pen, as its materials leave it."""
    return action_with(row, step_changes(row, body_of(job), fitted_of(job)))


def words_of_changes(job: Job, row: ClosingRow) -> tuple[str, ...]:
    """What the materials of this pen change at a step."""
    return tuple(change.words for change in step_changes(row, body_of(job), fitted_of(job)))
