"""The filled pen at rest: its masses against time, and what they say of a leak."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.fields import Value
from pentools.record.stages.weighing.filling import setup_values
from pentools.record.stages.weighing.kinds import LEAK_READING
from pentools.record.view import once_a_state
from pentools.sums.base import SumAnswer
from pentools.sums.weighing.leak import LEAK
from pentools.units import Reading

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["leak_of", "leak_points", "leak_values"]


def leak_points(job: Job) -> tuple[tuple[Reading, ...], tuple[Reading, ...], tuple[Reading | None, ...]]:
    """The leak weighings: times since filling [h], masses [g], and the dummy's masses [g] or None."""
    hours: list[Reading] = []
    masses: list[Reading] = []
    blanks: list[Reading | None] = []
    for logged in job.log(LEAK_READING):
        after, mass = logged.values.after, logged.values.mass
        if after is not None and mass is not None:
            hours.append(after)
            masses.append(mass)
            blanks.append(logged.values.blank)
    return tuple(hours), tuple(masses), tuple(blanks)


def leak_values(job: Job) -> dict[str, Value]:
    """Everything the leak sum asks for, from the record; the dummy only where it was weighed every time."""
    hours, masses, blanks = leak_points(job)
    every = tuple(blank for blank in blanks if blank is not None)
    setup = setup_values(job)
    values: dict[str, Value] = {field.name: setup.get(field.name) for field in LEAK.fields}
    values["times"], values["masses"] = hours, masses
    values["blanks"] = every if len(every) == len(masses) else None
    return values


@once_a_state
def leak_of(job: Job) -> SumAnswer | None:
    """What the weighings at rest say of a leak.

    Returns
    -------
    SumAnswer or None
        The answer of the leak sum; None below two weighings at unlike times.
    """
    if len({reading.value for reading in leak_points(job)[0]}) < 2:
        return None
    try:
        return LEAK.run(leak_values(job))
    except InputError:
        return None
