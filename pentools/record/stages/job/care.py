"""What an owner is told about care: from the filling system, what the pen is made of, and what was put into it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import msgspec

from pentools import tables
from pentools.record.stages.job.ending_kinds import RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.seal.kinds import MEASURE, SEALANT, TRIAL
from pentools.record.stages.treatment.facts import all_materials, limit_of_materials, materials_of
from pentools.record.view import once_a_state
from pentools.systems.registry import SYSTEMS

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = ["TOPICS", "UNKNOWN", "CareLine", "care_lines", "care_of", "never_on", "suggested_care"]

TOPICS = ("ink", "rinsing", "filling", "force", "cleaning", "keeping", "joints", "resting", "carrying")
"""What the lines are about, in the order in which they are told."""
UNKNOWN = "unknown"
UNMENDED = ("stopped", "returned")
_WARMTH = {"dry heat", "hot water"}
_RUBBER = {"sac", "bulb", "bellows", "diaphragm"}
_SACS = {"latex": "latex", "pleated": "latex", "silicone": "silicone", "PVC": "plasticised PVC"}
# what an owner may come to do -> what it is called at home; those that touch the outside alone are asked of it alone
_AT_HOME = {
    "cold water soak": "soaking",
    "hot water": "hot water",
    "flush mix soak": "ammonia (it is in window cleaner)",
    "alcohol": "alcohol",
    "acetone": "nail-varnish remover",
    "bleach": "bleach",
    "ultrasonic": "an ultrasonic bath",
}
_BODY_ALONE = ("cold water soak",)
_OUTSIDE = {"buffing wheel": "polish", "wet sanding": "abrasive paper"}
_SKIN = ("cap", "barrel", "clip", "bands", "section")


class CareLine(msgspec.Struct, frozen=True):
    """One row: what is said of every pen, a system, a material, a sealant or a seal at rest."""

    applies_to: str
    key: str
    topic: str
    line: str
    against: tuple[str, ...] = ()
    allows: tuple[str, ...] = ()


def care_lines(applies_to: str, key: str) -> tuple[CareLine, ...]:
    """What the table says of a system, a material or a sealant that was put in ("fitted")."""
    rows = tables.read(CareLine, "care_lines")
    return tuple(row for row in rows if (row.applies_to, row.key) == (applies_to, key))


@once_a_state
def care_of(job: Job) -> tuple[CareLine, ...]:
    """What the owner of this pen is told, each line once, by `TOPICS`.

    Parameters
    ----------
    job : Job
        Its intake names filling system and material; the opening names what each part is made of, the seal stage
        what was put in. A body that is not named gets the strictest line.

    Returns
    -------
    tuple of CareLine
        Of a pen that goes home unmended, or decays, nothing that would lead to filling it.
    """
    system = job.newest(ARRIVAL).system or ""
    body, seals, nib = _body(job), _seals(job, system), _named(job, "nib")
    of_parts = _told("material", (*body, *seals, *nib))
    fitted = _told("fitted", _sealants(job))
    if "degrading celluloid" in body:
        return _in_order((*care_lines("pen", "decaying"), *of_parts), without=("ink", "rinsing"))
    if job.newest(RESULT).ending in UNMENDED:
        found = (*care_lines("pen", "not mended"), *care_lines("pen", "any"), *of_parts, *fitted)
        return _in_order(found, without=("ink", "rinsing", "resting", "carrying"))
    soaks = limit_of_materials(job, body, "cold water soak").verdict == "ok"
    wet = _told("resting", (system, *seals))
    every = [line for line in care_lines("pen", "any") if line.topic != "resting" or not wet]
    if not any(line.topic == "keeping" and not _WARMTH.isdisjoint(line.against) for line in of_parts):
        every += care_lines("pen", "cool")  # the material has no word on warmth of its own
    rinse = care_lines("pen", "bears water" if soaks else "bears no water")
    found = (*every, *rinse, *care_lines("system", system), *of_parts, *fitted)
    return _in_order((*found, *wet) if soaks else found)  # water may stand only in what bears it


@once_a_state
def never_on(job: Job) -> tuple[str, ...]:
    """What must never be done to this pen at home, in words, by the table of compatibility.

    Returns
    -------
    tuple of str
        What the table does not plainly allow of every material of the pen (what it limits is for the bench to
        measure); of soaking the body decides, of polish and abrasive paper what they would touch, where the table forbids.
    """
    body = _body(job)
    inside = {*body, *_seals(job, job.newest(ARRIVAL).system or ""), *_named(job, "nib")}
    inside |= {name for _, name, _ in all_materials(job)}
    outside = {*body, *(name for part, name, _ in all_materials(job) if part in _SKIN)}
    asked = {name: (set(body) if name in _BODY_ALONE else inside, {"limited", "never"}) for name in _AT_HOME}
    asked |= {name: (outside, {"never"}) for name in _OUTSIDE}
    return tuple(
        (_AT_HOME | _OUTSIDE)[treatment]
        for treatment, (names, barred) in asked.items()
        if limit_of_materials(job, sorted(names), treatment).verdict in barred
    )


def suggested_care(job: Job) -> str:
    """A draft of the care text: the lines of `care_of` as sentences, the general ones first and last."""
    return " ".join(line.line for line in care_of(job))


def _in_order(found: Iterable[CareLine], without: tuple[str, ...] = ()) -> tuple[CareLine, ...]:
    once: dict[str, CareLine] = {}
    for row in found:
        if row.topic not in without:
            once.setdefault(row.line, row)
    return tuple(sorted(once.values(), key=lambda row: TOPICS.index(row.topic)))


def _told(applies_to: str, keys: Iterable[str]) -> tuple[CareLine, ...]:
    return tuple(line for key in dict.fromkeys(keys) for line in care_lines(applies_to, key))


def _body(job: Job) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for part in ("barrel", "cap") for name in materials_of(job, part)))


def _named(job: Job, part: str) -> tuple[str, ...]:
    return tuple(name for name in materials_of(job, part) if name != UNKNOWN)


def _seals(job: Job, system: str) -> tuple[str, ...]:
    """What the seals are made of; latex where they are a sac or a diaphragm of which nothing else is known."""
    sac = [logged.values.material for logged in job.log(MEASURE) if logged.values.place == "sac"]
    if sac and sac[-1] in _SACS:  # what was measured for the new sac stands for it
        return (_SACS[sac[-1]],)
    named = _named(job, "seals")
    if named:
        return named
    tried = {logged.values.place for logged in job.log(MEASURE)} | {logged.values.place for logged in job.log(TRIAL)}
    if "cork" in tried | {logged.values.place for logged in job.log(SEALANT)}:
        return ("cork",)
    rubber = system in SYSTEMS and not _RUBBER.isdisjoint(SYSTEMS[system].parts)
    return ("latex",) if rubber else ()


def _sealants(job: Job) -> tuple[str, ...]:
    """What was put on joints; grease inside the mechanism is no joint that an owner turns."""
    put = (logged.values for logged in job.log(SEALANT))
    return tuple(one.sealant or "" for one in put if one.sealant != "grease" or one.place in ("section", "inner-cap"))
