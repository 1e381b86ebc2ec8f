"""The filler's own dimensions wherever they were typed: at the fill test, with the seal, as the pen went together."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import TYPE_CHECKING

from pentools.record.stages.closing.kinds import ROUND
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE
from pentools.record.stages.weighing.kinds import DIMENSIONS
from pentools.record.view import once_a_state
from pentools.sums.weighing.capacity import dimension_fields
from pentools.systems.registry import SYSTEMS
from pentools.units import Reading

if TYPE_CHECKING:
    from collections.abc import Mapping

    from pentools.record.job import Job
    from pentools.record.stages.seal.kinds import Measure

__all__ = ["dimensions_elsewhere", "dimensions_of"]


@once_a_state
def dimensions_of(job: Job) -> Mapping[str, Reading | int | None]:
    """The dimensions of the pen's filling system: as typed for the fill test, else as another stage has them.

    Returns
    -------
    mapping of str to Reading, int or None
        By the names of the capacity sum; empty where the system is not named.
    """
    system = job.newest(ARRIVAL).system
    if system is None:
        return MappingProxyType({})
    typed, known = job.newest(DIMENSIONS), dimensions_elsewhere(job)
    found: dict[str, Reading | int | None] = {}
    for field in dimension_fields(system):
        value = getattr(typed, field.name)
        found[field.name] = known.get(field.name) if value is None else value
    return MappingProxyType(found)


@once_a_state
def dimensions_elsewhere(job: Job) -> Mapping[str, Reading]:
    """What the seal stage and the closing say of the filler's dimensions, the newest word of each.

    Returns
    -------
    mapping of str to Reading
        Of those that the filling system has. A sac's length inside is what it was cut to without what sits on the
        nipple, so it is known only where both are.
    """
    system = job.newest(ARRIVAL).system
    if system not in SYSTEMS:
        return MappingProxyType({})
    said: list[tuple[int, str, Reading | None]] = []
    for logged in job.log(MEASURE):
        at = job.line_of(logged.entry)
        said += [(at, name, reading) for name, reading in _of_seal(logged.values)]
    for rounds in job.log(ROUND):
        at = job.line_of(rounds.entry)
        said += [(at, "reach", rounds.values.tube_reach), (at, "cut", rounds.values.sac_length)]
    found = {name: reading for _, name, reading in sorted(said, key=lambda one: one[0]) if reading is not None}
    cut, nipple = found.pop("cut", None), found.pop("on nipple", None)
    if cut is not None and nipple is not None and SYSTEMS[system].length == "sac_length" and cut.value > nipple.value:
        found["length"] = replace(cut, value=cut.value - nipple.value, typed="")
    names = {field.name for field in dimension_fields(system)}
    return MappingProxyType({name: reading for name, reading in found.items() if name in names})


def _of_seal(values: Measure) -> tuple[tuple[str, Reading | None], ...]:
    if values.place == "breather":
        return (("reach", values.reach), ("tube", values.tube))
    if values.place == "sac":
        return (("outside", values.sac), ("wall", values.wall), ("on nipple", values.nipple_length))
    return ()
