"""The fill test: the pen is weighed empty and filled, and what it draws is held against what it should hold."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.fields import Value
from pentools.record.kinds import Stage, StageState
from pentools.record.stages.weighing.kinds import DIMENSIONS, LEAK_CHECK, LEAK_READING, SETUP, STATES, WEIGHING
from pentools.sums.base import SumAnswer
from pentools.sums.weighing.capacity import CAPACITY, dimension_fields
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.entries import Entry
    from pentools.record.job import Job

__all__ = ["FILL_TEST", "STATES", "FillCycle", "capacity_of", "cycles", "leak_points", "setup_values"]


# the setup's fields are the sum's own, so that a label and a range are written once
_FROM_BENCH = {
    "readability": ("balance", "readability"), "repeatability": ("balance", "repeatability"),
    "linearity": ("balance", "linearity"), "eccentricity": ("balance", "eccentricity"),
    "temperature": ("room", "temperature"), "pressure": ("room", "pressure"), "humidity": ("room", "humidity"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class FillCycle:
    """One filling: the weighings before it and after it.

    Parameters
    ----------
    start : str
        "dry" or "drained".
    empty_g, filled_g : tuple of float
        Masses [g] in the order they were taken.
    empty_ids, filled_ids : tuple of str
        The entries they come from.
    """

    start: str
    empty_g: tuple[float, ...]
    filled_g: tuple[float, ...]
    empty_ids: tuple[str, ...] = ()
    filled_ids: tuple[str, ...] = ()


def _mass_g(values: dict[str, Value]) -> float:
    reading = values["mass"]
    assert isinstance(reading, Reading)
    return reading.value


def cycles(job: Job) -> tuple[FillCycle, ...]:
    """The fillings of a job: each run of filled weighings with the run of empty ones before it.

    Parameters
    ----------
    job : Job
        The job.

    Returns
    -------
    tuple of FillCycle
        In order; a run of empty weighings with no filled ones after it is not yet a filling.
    """
    found: list[FillCycle] = []
    empties: list[tuple[Entry, float]] = []
    fills: list[tuple[Entry, float]] = []
    start = ""

    def close() -> None:
        if empties and fills:
            found.append(
                FillCycle(
                    start,
                    tuple(g for _, g in empties),
                    tuple(g for _, g in fills),
                    tuple(e.id for e, _ in empties),
                    tuple(e.id for e, _ in fills),
                )
            )

    for entry, values in job.log("fill test", "weighing"):
        state = str(values["state"])
        if state in ("dry", "drained"):
            if fills or state != start:
                close()
                empties, fills, start = [], [], state
            empties.append((entry, _mass_g(values)))
        elif state == "filled" and empties:
            fills.append((entry, _mass_g(values)))
    close()
    return tuple(found)


def leak_points(job: Job) -> tuple[list[float], list[float], list[float | None]]:
    """The leak weighings: hours since filling, masses [g], and the dummy's masses [g] or None."""
    hours: list[float] = []
    masses: list[float] = []
    blanks: list[float | None] = []
    for _, values in job.log("fill test", "leak reading"):
        after, blank = values["after"], values["blank"]
        assert isinstance(after, Reading)
        hours.append(after.value)
        masses.append(_mass_g(values))
        blanks.append(blank.value if isinstance(blank, Reading) else None)
    return hours, masses, blanks


def setup_values(job: Job) -> dict[str, Value]:
    """What the weighing was done with: as entered, else as the bench says, else the sum's default."""
    given = job.values("fill test", "setup")
    values: dict[str, Value] = {}
    for name in given:
        value = given.get(name)
        field = next(f for f in CAPACITY.fields if f.name == name)
        if value is None and name in _FROM_BENCH:
            value = field.read(job.bench.text(*_FROM_BENCH[name]))
        values[name] = field.read(field.default) if value is None and field.default else value
    return values


def sum_values(job: Job, cycle: FillCycle) -> dict[str, Value]:
    """Everything the capacity sum asks for, from the record, for one filling."""
    values: dict[str, Value] = dict.fromkeys(field.name for field in CAPACITY.fields)
    values.update({f.name: f.read(f.default) for f in CAPACITY.fields if f.default})
    values.update(setup_values(job))
    values["empty"] = tuple(Reading(g, "g") for g in cycle.empty_g)
    values["filled"] = tuple(Reading(g, "g") for g in cycle.filled_g)
    values["start"] = cycle.start
    system = job.values("intake", "arrival")["system"]
    if system is not None:
        values["system"] = system
        dimensions = job.values("fill test", "dimensions")
        wanted = {field.name for field in dimension_fields(str(system))}
        values.update({name: value for name, value in dimensions.items() if name in wanted})
    return values


def capacity_of(job: Job, cycle: FillCycle | None = None) -> SumAnswer | None:
    """What the pen draws, from its record.

    Parameters
    ----------
    job : Job
        The job.
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


def _state(job: Job) -> StageState:
    if not job.record.live("fill test"):
        return StageState("not begun")
    if not cycles(job):
        return StageState("open", "weigh it empty, then filled")
    if not job.record.live("fill test", "leak check"):
        return StageState("open", "the leak check is still to do")
    return StageState("done")


def _checks(job: Job) -> tuple[Finding, ...]:
    if not job.record.live("fill test", "weighing"):
        return (Finding("note", "Fill test: the pen has not been weighed.", "not-weighed"),)
    stroked = any(values["state"] == "stroke" for _, values in job.log("fill test", "weighing"))
    if not cycles(job) and not stroked:
        return (Finding("warning", "Fill test: there is no pair of an empty and a filled weighing yet.", "no-pair"),)
    answer = capacity_of(job)
    return () if answer is None else tuple(f for f in answer.findings if f.level in ("warning", "stop"))


FILL_TEST = Stage(
    "fill test",
    "Fill test",
    "Weighed empty and weighed filled: how much it draws, and why that is less than it should be.",
    (SETUP, DIMENSIONS, WEIGHING, LEAK_READING, LEAK_CHECK),
    panel="pentools.panels.stages.weighing.filling:FillTestPanel",
    section="pentools.writeup.sections.weighing.filling:section",
    state=_state,
    checks=_checks,
)
