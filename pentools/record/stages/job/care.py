"""What an owner is told about care, from what the record says of a pen; the lines themselves are the sum's."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from pentools.calc.base.findings import Finding
from pentools.calc.closing.care import TOPICS, CareLine, CareOf, care_told, inks_told, lines_for, never_told
from pentools.calc.treatment.limits import Verdict
from pentools.record.stages.closing.kinds import ROUND
from pentools.record.stages.closing.known import body_of
from pentools.record.stages.job.ending_kinds import EARLY, RESULT
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.repairs.work import mended
from pentools.record.stages.seal.kinds import MEASURE, SAC_RUBBER, SEALANT, SEALANTS, TRIAL
from pentools.record.stages.treatment.facts import all_materials, limit_of_materials, materials_of
from pentools.record.view import once_a_state
from pentools.sums.closing.care import care_rows, ink_findings, ink_rows, rubber_of

if TYPE_CHECKING:
    from pentools.record.job import Job

__all__ = [
    "TOPICS",
    "UNKNOWN",
    "CareLine",
    "care_lines",
    "care_of",
    "care_of_mends",
    "inks_of",
    "never_on",
    "suggested_care",
]

UNKNOWN = "unknown"
_RINGS = ("head", "packing", "washer")
_SEALANT_KEYS = frozenset(dict(SEALANTS))
_REPLACED = "replace part"
_SPOKEN_OF = {"glued crack": "crack", "welded crack": "weld"}
_SKIN = ("cap", "barrel", "clip", "bands", "section")


def care_lines(applies_to: str, key: str) -> tuple[CareLine, ...]:
    """What the table says of a system, a material or a sealant that was put in ("fitted")."""
    return lines_for(care_rows(), applies_to, [key])


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
    return care_told(_pen(job), care_rows(), lambda names, treatment: _judge(job, names, treatment))


@once_a_state
def never_on(job: Job) -> tuple[str, ...]:
    """What must never be done to this pen at home, in words, by the table of compatibility and the bench's own overrules.

    Returns
    -------
    tuple of str
        As `pentools.calc.closing.care.never_told` has it.
    """
    return never_told(_pen(job), lambda names, treatment: _judge(job, names, treatment))


@once_a_state
def inks_of(job: Job) -> tuple[Finding, ...]:
    """The inks that this pen does badly with, the gravest first, each with how sure that is."""
    return ink_findings(inks_told(_pen(job), ink_rows()))


def suggested_care(job: Job) -> str:
    """A draft of the care text: the lines of `care_of` as sentences, the general ones first and last."""
    return " ".join(line.line for line in care_of(job))


def care_of_mends(job: Job, said: str = "") -> tuple[str, ...]:
    """What the owner is told of the parts mended, a line each.

    Parameters
    ----------
    said : str
        What the restorer wrote on care: what it speaks of already is not told again.
    """
    told, own = said.casefold(), _parts_of_mends(job)
    lines = [line for line in care_of(job) if line.applies_to == "part" and line.key in own]
    return tuple(line.line for line in lines if _SPOKEN_OF.get(line.key, line.key) not in told)


def _judge(job: Job, names: Sequence[str], treatment: str) -> Verdict:
    return limit_of_materials(job, names, treatment).verdict


@once_a_state
def _pen(job: Job) -> CareOf:
    system = job.newest(ARRIVAL).system or ""
    parts = all_materials(job)
    return CareOf(
        system,
        body=body_of(job),
        seals=_seals(job, system),
        nib=_named(job, "nib"),
        other=tuple(dict.fromkeys(name for _, name, _ in parts)),
        outside=tuple(dict.fromkeys(name for part, name, _ in parts if part in _SKIN)),
        sealants=_sealants(job),
        parts=(*(("rubber ring",) if _tried(job) & set(_RINGS) else ()), *_parts_of_mends(job)),
        unmended=job.newest(RESULT).ending in EARLY,
    )


def _tried(job: Job) -> set[str]:
    """The places of seals that were measured or tried."""
    found = {logged.values.place for logged in job.log(MEASURE)} | {logged.values.place for logged in job.log(TRIAL)}
    return {place for place in found if place is not None}


def _named(job: Job, part: str) -> tuple[str, ...]:
    return tuple(name for name in materials_of(job, part) if name != UNKNOWN)


def _seals(job: Job, system: str) -> tuple[str, ...]:
    """What the seals are made of; latex where they are a sac or a diaphragm of which nothing else is known."""
    sac = [logged.values.material for logged in job.log(MEASURE) if logged.values.place == "sac"]
    if sac and sac[-1] in SAC_RUBBER:  # what was measured for the new sac stands for it
        return (SAC_RUBBER[sac[-1]],)
    named = _named(job, "seals")
    if named:
        return named
    if "cork" in _tried(job) | {logged.values.place for logged in job.log(SEALANT)}:
        return ("cork",)
    return rubber_of(system)


def _sealants(job: Job) -> tuple[str, ...]:
    """What was put on joints; grease inside the mechanism is no joint that an owner turns."""
    put = (logged.values for logged in job.log(SEALANT))
    found = [one.sealant or "" for one in put if one.sealant != "grease" or one.place in ("section", "inner-cap")]
    for logged in job.log(ROUND):
        found += [name for name in (logged.values.sac_with, logged.values.section_with) if name is not None]
    return (*found, *(key for key in _of_mends(job) if key in _SEALANT_KEYS))


def _parts_of_mends(job: Job) -> tuple[str, ...]:
    return tuple(key for key in _of_mends(job) if key not in _SEALANT_KEYS)


def _of_mends(job: Job) -> tuple[str, ...]:
    """What was done to parts that an owner has to know of, as the table of care names it; not of what was replaced since."""
    done = mended(job)
    stays = [
        one
        for number, one in enumerate(done)
        if not any(
            (later.row.part, later.row.place, later.row.consent) == (one.row.part, one.row.place, _REPLACED)
            for later in done[number + 1 :]
        )
    ]
    return tuple(dict.fromkeys(key for one in stays for key in one.row.care))
