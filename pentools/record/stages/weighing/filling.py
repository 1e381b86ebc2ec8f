"""The fill test: the pen is weighed empty and filled, and what it draws is held against what a sound one draws."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.weighing.balance import FIGURES
from pentools.fields import Value
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.weighing.dimensions import dimensions_of
from pentools.record.stages.weighing.kinds import DIMENSIONS, LEAK_CHECK, LEAK_READING, SETUP, STATES, WEIGHING
from pentools.record.view import once_a_state
from pentools.sums.base import Inputs, SumAnswer
from pentools.sums.weighing.capacity import CAPACITY
from pentools.sums.weighing.inputs import balance_of
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "FILL_TEST",
    "FROM_BENCH",
    "STATES",
    "FillCycle",
    "capacity_of",
    "cycles",
    "kept_when_drained",
    "next_state",
    "setup_values",
    "sum_values",
]

FROM_BENCH = {
    **{figure.name: "balance" for figure in FIGURES},
    **dict.fromkeys(("temperature", "pressure", "humidity"), "room"),
}
"""What is taken from ``bench.toml`` where the job says nothing: name to table."""


BEGUN_AGAIN = 0.5


@dataclass(frozen=True, slots=True)
class FillCycle:
    """One filling: the weighings before it and after it, or the gains on a tared balance.

    Parameters
    ----------
    start : str
        "dry" or "drained".
    empty, filled : tuple of Reading
        Masses [g] as they were typed, in the order they were taken.
    empty_ids, filled_ids : tuple of str
        The entries they come from.
    gains : tuple of Reading
        Instead of the two masses: what the balance showed after each dip [g], the empty pen tared away.
    gain_ids : tuple of str
        The entries they come from.
    """

    start: str
    empty: tuple[Reading, ...] = ()
    filled: tuple[Reading, ...] = ()
    empty_ids: tuple[str, ...] = ()
    filled_ids: tuple[str, ...] = ()
    gains: tuple[Reading, ...] = ()
    gain_ids: tuple[str, ...] = ()

    @property
    def empty_g(self) -> tuple[float, ...]:
        """Masses of the empty pen [g]."""
        return tuple(reading.value for reading in self.empty)

    @property
    def filled_g(self) -> tuple[float, ...]:
        """Masses of the filled pen [g]."""
        return tuple(reading.value for reading in self.filled)


@once_a_state
def cycles(job: Job) -> tuple[FillCycle, ...]:
    """The fillings of a job: each run of filled weighings with the run of empty ones before it.

    Returns
    -------
    tuple of FillCycle
        In order; a run of empty weighings with no filled ones after it is not yet a filling. Gains one after another
        are dips of one filling; one of less than half the gain before it begins the next (judged). They are taken as
        from dry, or from the state that was last weighed.
    """
    under_way = _UnderWay()
    for logged in job.log(WEIGHING):
        if logged.values.mass is not None:
            under_way.take(logged.values.state or "", logged.entry.id, logged.values.mass)
    return under_way.all()


class _UnderWay:
    """The fillings so far, and the weighings of the one under way."""

    def __init__(self) -> None:
        self._found: list[FillCycle] = []
        self._start, self._last = "", 0.0
        self._begin("")

    def _begin(self, start: str) -> None:
        self._empty: dict[str, Reading] = {}
        self._filled: dict[str, Reading] = {}
        self._gains: dict[str, Reading] = {}
        self._start = start

    def take(self, state: str, id_: str, mass: Reading) -> None:
        """One weighing more."""
        if state in ("dry", "drained"):
            if self._filled or self._gains or state != self._start:
                self._close(state)
            self._empty[id_] = mass
        elif state == "filled" and self._empty:
            self._filled[id_] = mass
        elif state == "gain":
            if self._filled or (self._gains and mass.value < BEGUN_AGAIN * self._last):
                self._close(self._start)
            self._gains[id_], self._last = mass, mass.value

    def all(self) -> tuple[FillCycle, ...]:
        """Every filling, the one under way too where it is complete."""
        self._close("")
        return tuple(self._found)

    def _close(self, start: str) -> None:
        empty, filled, gains = (tuple(run.items()) for run in (self._empty, self._filled, self._gains))
        if gains:
            self._found.append(FillCycle(self._start or "dry", gains=_masses(gains), gain_ids=_ids(gains)))
        elif empty and filled:
            self._found.append(FillCycle(self._start, _masses(empty), _masses(filled), _ids(empty), _ids(filled)))
        self._begin(start)


def _ids(run: tuple[tuple[str, Reading], ...]) -> tuple[str, ...]:
    return tuple(id_ for id_, _ in run)


def _masses(run: tuple[tuple[str, Reading], ...]) -> tuple[Reading, ...]:
    return tuple(mass for _, mass in run)


def setup_values(job: Job) -> dict[str, Value]:
    """What the weighing was done with: as entered, else as the bench says, else the sum's default."""
    given = job.newest(SETUP)
    values: dict[str, Value] = {}
    for field in SETUP.fields:
        value = getattr(given, field.name)
        if value is None and field.name in FROM_BENCH:
            value = field.read(job.bench.text(FROM_BENCH[field.name], field.name))
        values[field.name] = field.read(field.default) if value is None and field.default else value
    return values


def kept_when_drained(job: Job, cycle: FillCycle) -> Reading | None:
    """What section and feed of this pen keep when drained [mL], from its own weighings.

    Parameters
    ----------
    cycle : FillCycle
        A filling from drained.

    Returns
    -------
    Reading or None
        The mean drained mass of this filling less the mean dry mass of the nearest filling from dry before it, with
        √2 of a weighing's spread as its standard uncertainty; None for a filling from dry, for gains on a tared
        balance, or where the pen was never weighed dry.
    """
    if cycle.start != "drained" or not cycle.empty:
        return None
    before = cycles(job)
    earlier = before[: before.index(cycle)] if cycle in before else ()
    dry = next((c for c in reversed(earlier) if c.start == "dry" and c.empty), None)
    if dry is None:
        return None
    balance, _ = balance_of(Inputs({**setup_values(job), "dry": dry.empty, "drained": cycle.empty}), ("dry", "drained"))
    kept = math.fsum(cycle.empty_g) / len(cycle.empty_g) - math.fsum(dry.empty_g) / len(dry.empty_g)
    return Reading(max(kept, 0.0), "ml", math.sqrt(2) * balance.spread_g)


def sum_values(job: Job, cycle: FillCycle) -> dict[str, Value]:
    """Everything the capacity sum asks for, from the record, for one filling."""
    values = CAPACITY.usual()
    values.update({name: value for name, value in setup_values(job).items() if name in values})
    caliper = next(f for f in CAPACITY.fields if f.name == "caliper")
    values["caliper"] = caliper.read(job.bench.text("caliper", "uncertainty")) or values["caliper"]
    values["empty"], values["filled"], values["gain"] = cycle.empty or None, cycle.filled or None, cycle.gains or None
    values["start"] = cycle.start
    values["kept"] = kept_when_drained(job, cycle)
    system = job.newest(ARRIVAL).system
    if system is not None:
        values["system"] = system
        values.update(dimensions_of(job))
    return values


@once_a_state
def capacity_of(job: Job, cycle: FillCycle | None = None) -> SumAnswer | None:
    """What the pen draws, from its record.

    Parameters
    ----------
    cycle : FillCycle or None
        Which filling; the last complete one by default.

    Returns
    -------
    SumAnswer or None
        The answer of the capacity sum; None while there is no complete filling.

    Raises
    ------
    InputError
        If the weighings contradict each other (filled is lighter than empty).
    """
    all_cycles = cycles(job)
    chosen = cycle or (all_cycles[-1] if all_cycles else None)
    return None if chosen is None else CAPACITY.run(sum_values(job, chosen))


def next_state(job: Job) -> str:
    """The state that a pen is weighed in next: after an empty one comes the filled one, and gains go on.

    Returns
    -------
    str
        A key of `STATES`.
    """
    last = next((logged.values.state for logged in reversed(job.log(WEIGHING))), None)
    return {"dry": "filled", "drained": "filled", "filled": "filled", "gain": "gain"}.get(last or "", "dry")


def _state(job: Job) -> StageState:
    if not job.record.live("fill test"):
        return StageState("not begun")
    if job.log(LEAK_CHECK) and not job.log(WEIGHING):
        return StageState("done", "a night filled; it was not weighed")
    if not cycles(job):
        return StageState("open", "weigh it empty, then filled")
    if not job.log(LEAK_CHECK):
        return StageState("open", "the leak check is still to do")
    return StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    weighings = job.log(WEIGHING)
    if not weighings:
        return (Finding("note", "weighing.not-weighed").under("Fill test"),)
    if not cycles(job) and not any(logged.values.state == "stroke" for logged in weighings):
        return (Finding("warning", "weighing.no-pair").under("Fill test"),)
    answer = capacity_of(job)
    return () if answer is None else tuple(f for f in answer.findings if f.level in ("warning", "stop"))


FILL_TEST = Stage(
    "fill test",
    "Fill test",
    "Weighed empty and weighed filled: how much it draws, and how that stands to what a sound one draws.",
    (SETUP, DIMENSIONS, WEIGHING, LEAK_READING, LEAK_CHECK),
    panel="pentools.panels.stages.weighing.filling:FillTestPanel",
    section="pentools.writeup.sections.weighing.filling:section",
    state=_state,
    checks=_checks,
)
