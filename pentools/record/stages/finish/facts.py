"""What the finish asks of other stages: the material that is polished, and what the owner said."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pentools.calc.treatment.materials import UNKNOWN
from pentools.record.stages.finish.kinds import PLAN
from pentools.record.stages.job.agree import consents
from pentools.record.stages.treatment.facts import limit_of_materials, materials_of
from pentools.sums.finish.surface import read_surface

if TYPE_CHECKING:
    from pentools.calc.treatment.limits import TreatmentLimit
    from pentools.record.job import Job

__all__ = ["material_of", "overruled", "polish_refused"]

_POLISHED = ("barrel", "cap")


def material_of(job: Job) -> str | None:
    """What is polished: as the plan says, else as the opening and the intake say of barrel and cap.

    Returns
    -------
    str or None
        A material of the abrasives' tables; None where none is named, or barrel and cap differ.
    """
    said = job.newest(PLAN).material
    if said is not None:
        name = read_surface(said).material.name
        return None if name == UNKNOWN else name
    found = {name for part in _POLISHED for name in materials_of(job, part)} - {UNKNOWN}
    return found.pop() if len(found) == 1 else None


def overruled(job: Job, material: str) -> dict[str, TreatmentLimit]:
    """The limits for sanding and for a wheel, where the bench overruled the table for that material; else nothing."""
    name = read_surface(material).material.name
    found = {
        key: limit_of_materials(job, (name,), what)
        for key, what in (("sanding", "wet sanding"), ("wheel", "buffing wheel"))
    }
    return found if any(limit.overruled is not None for limit in found.values()) else {}


def polish_refused(job: Job) -> bool:
    """Whether the owner's newest word on polishing is a no, wherever it was entered."""
    return consents(job).get("polish") is False
