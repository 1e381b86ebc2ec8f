"""Which small drawings show where the balance or the calliper goes, for a form of the fill test."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.errors import InputError
from pentools.figures.pen.measure_here import measure_here
from pentools.figures.pen.weigh_here import weigh_here
from pentools.figures.pen_from_record import pen_shape
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.weighing.kinds import WEIGHING
from pentools.sums.weighing.capacity import dimension_fields
from pentools.systems.dimensions import ASKED
from pentools.systems.registry import SYSTEMS

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["dimension_drawings", "fill_test_drawing"]


def dimension_drawings(job: Job) -> tuple[Drawing, ...]:
    """Where each dimension of this pen's filler is measured.

    Returns
    -------
    tuple of Drawing
        One small drawing a dimension that a calliper can take; none where the filling system is not named.
    """
    system = job.newest(ARRIVAL).system or ""
    if system not in SYSTEMS:
        return ()
    shape = pen_shape(job)
    found = []
    for field in dimension_fields(system):
        if field.unit == "mm":
            try:
                found.append(
                    measure_here(system, "length" if field.name == "length" else ASKED[field.name].name, shape=shape)
                )
            except InputError:
                continue  # this one has no place in the drawing
    return tuple(found)


def fill_test_drawing(job: Job) -> Drawing:
    """The pen on the balance, empty and filled: what the fill test weighs.

    Returns
    -------
    Drawing
        With the latest readings on the balance where there are some.
    """
    system = job.newest(ARRIVAL).system or ""
    empty = filled = ""
    for logged in job.log(WEIGHING):
        mass = logged.values.mass
        shown = f"{mass.value:.2f} g" if mass is not None else ""
        if logged.values.state in ("dry", "drained"):
            empty, filled = shown, ""
        elif logged.values.state == "filled":
            filled = shown
    return weigh_here(system if system in SYSTEMS else "piston", readings=(empty, filled))
