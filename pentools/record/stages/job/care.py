"""What an owner is told about care: from the filling system, what the pen is made of, and what was put into it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import msgspec

from pentools import tables
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE, SEALANT
from pentools.record.stages.treatment.facts import limit_of_materials, materials_of
from pentools.systems.registry import SYSTEMS

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["care_lines", "suggested_care"]

_INK = "Use water-based fountain pen ink only."
_FLUSH = "Flush it with plain cool water and nothing else when you change ink or put it away."
_RINSE = "When you change ink or put it away, rinse it through the nib end only, with plain cool water and nothing else, and wipe the outside dry at once."
_EMPTY = "Do not fill it, and ask before anything is done to it."
_LAST = "Carry it nib up, and let it warm up uncapped before a flight or after the cold."
_RUBBER = {"sac", "bulb", "bellows", "diaphragm"}
UNKNOWN = "unknown"


class CareLine(msgspec.Struct, frozen=True):
    """One row: what is said of a system, a material or a sealant."""

    applies_to: str
    key: str
    line: str


def care_lines(applies_to: str, key: str) -> tuple[str, ...]:
    """What the table says of a system, a material or a sealant that was put in ("fitted")."""
    rows = tables.read(CareLine, "care_lines")
    return tuple(row.line for row in rows if (row.applies_to, row.key) == (applies_to, key))


_SACS = {"latex": "latex", "pleated": "latex", "silicone": "silicone", "PVC": "plasticised PVC"}


def _seals(job: Job, system: str) -> tuple[str, ...]:
    """What the seals are made of; latex where they are a sac or a diaphragm of which nothing else is known."""
    named = tuple(name for name in materials_of(job, "seals") if name != UNKNOWN)
    sac = [logged.values.material for logged in job.log(MEASURE) if logged.values.place == "sac"]
    if sac and sac[-1] in _SACS:  # what was measured for the new sac stands for it
        return (_SACS[sac[-1]],)
    rubber = system in SYSTEMS and not _RUBBER.isdisjoint(SYSTEMS[system].parts)
    return named or (("latex",) if rubber else ())


def suggested_care(job: Job) -> str:
    """A draft of the care text; a body that is not named gets the strictest line.

    Parameters
    ----------
    job : Job
        Its intake names filling system and material; the opening names what each part is made of, the seal stage
        what was put in.

    Returns
    -------
    str
        Sentences, the general ones first and last.
    """
    system = job.newest(ARRIVAL).system or ""
    body = [name for part in ("barrel", "cap") for name in materials_of(job, part)]
    nib = [name for name in materials_of(job, "nib") if name != UNKNOWN]
    fitted = [logged.values.sealant or "" for logged in job.log(SEALANT)]
    seals = _seals(job, system)
    soaks = limit_of_materials(job, body, "cold water soak").verdict == "ok"
    told = [line for name in (*body, *seals, *nib) for line in care_lines("material", name)]
    told += [line for name in fitted for line in care_lines("fitted", name)]
    if "degrading celluloid" in body:
        return " ".join((_EMPTY, *dict.fromkeys(told)))
    if soaks:  # water may stand only in what bears it
        told += [line for key in (system, *seals) for line in care_lines("resting", key)]
    return " ".join((_INK, _FLUSH if soaks else _RINSE, *care_lines("system", system), *dict.fromkeys(told), _LAST))
