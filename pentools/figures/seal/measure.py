"""Which small drawing shows where the calliper goes for the next reading at a seal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.figures.pen.measure_here import measurable, measure_here
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import PLACES
from pentools.systems.registry import SYSTEMS

if TYPE_CHECKING:
    from pentools.figures.drawing import Drawing
    from pentools.record.job import Job

__all__ = ["drawn_name", "measure_seal"]

# reading of the stage -> dimension of the drawing
_NAMES = {
    "bore": "bore", "bore_deep": "bore", "bore_before": "bore", "groove": "groove_diameter", "width": "groove_width",
    "head": "head_diameter", "rod": "rod", "housing": "housing", "nipple": "nipple", "depth": "barrel_depth",
    "tube": "breather_diameter", "reach": "breather_length",
}  # fmt: skip
# a pen that has the part, where the job's own filling system has not (or is not named)
_STAND_INS = {"head": "piston", "packing": "plunger-vacuum", "washer": "syringe", "cork": "piston", "stack": "plunger-vacuum", "sac": "lever-sac", "breather": "bulb", "collar": "cartridge-converter", "tube-ring": "plunger-vacuum", "gasket": "plunger-vacuum"}  # fmt: skip


def drawn_name(reading: str) -> str:
    """The dimension that shows a reading; empty where no drawing does."""
    return _NAMES.get(reading, "")


def measure_seal(job: Job, place: str, reading: str) -> Drawing | None:
    """Where the calliper goes for a reading at a seal.

    Parameters
    ----------
    job : Job
        The job; its own filling system is drawn where it has the part.
    place : str
        A key of `PLACES`.
    reading : str
        A field of the measurement; an empty one stands for the first of that place.

    Returns
    -------
    Drawing or None
        None where nothing is measured at that place, or no drawing shows that reading.
    """
    if place not in PLACES or not PLACES[place].asks:
        return None
    name = drawn_name(reading or next((n for n in PLACES[place].asks if drawn_name(n)), ""))
    if place == "bulb" and name == "nipple":
        return None  # what a bulb sits on is no nipple of a section
    if place in ("packing", "stack", "tube-ring", "gasket") and name == "groove_width":
        return None  # the drawing shows the head's groove
    if not name:
        return None
    own = job.newest(ARRIVAL).system or ""
    for system in dict.fromkeys((own, _STAND_INS.get(place, own), "syringe", "piston")):
        if system in SYSTEMS and name in measurable(system):
            return measure_here(system, name)
    return None
