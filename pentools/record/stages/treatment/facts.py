"""What is known before a hand is laid on: the material of each part, what it can take, and which cautions were read."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from pentools import tables
from pentools.calc.treatment.cautions import Caution, CautionRow, cautions_for
from pentools.calc.treatment.limits import (
    CompatibilityRow,
    Overrule,
    TreatmentLimit,
    Verdict,
    strictest,
    treatment_limits,
)
from pentools.calc.treatment.materials import UNKNOWN, material_name, treatment_name
from pentools.record.stages.common import PARTS
from pentools.record.stages.job.intake_kinds import ARRIVAL
from pentools.record.stages.treatment.opening_kinds import CAUTION_READ, MATERIAL, OVERRULE
from pentools.record.view import once_a_state
from pentools.tables.compatibility import material_names

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from pentools.record.job import Job

__all__ = [
    "BODY_PARTS",
    "all_materials",
    "cautions_of",
    "cautions_read",
    "limit_for",
    "limit_of_materials",
    "material_is_named",
    "material_words",
    "materials_of",
    "named_materials",
]

BODY_PARTS = ("cap", "barrel", "blind-cap")
"""The parts whose material the intake names."""


def material_words(text: str, part: str = "") -> tuple[str, str]:
    """The table's name of a material as it was typed, and what to say where it is not named.

    Parameters
    ----------
    text : str
        Such as "green marbled celluloid" or "ebonite".
    part : str
        A key of the parts, where it is known.

    Returns
    -------
    tuple of str
        The name, "unknown" where it is not in the table or not sure, and a sentence saying so.
    """
    return material_name(text, material_names(), part)


@once_a_state
def materials_of(job: Job, part: str) -> tuple[str, ...]:
    """What a part is made of.

    Parameters
    ----------
    part : str
        A key of the parts; "whole" stands for all that are named.

    Returns
    -------
    tuple of str
        Names as in the tables, "unknown" for what is not named or not sure: the newest entry of the opening for
        that part, else the intake's for cap, barrel and blind cap. One name, or for the whole pen all of them.
    """
    logged = _logged(job)
    if part == "whole":
        found = dict.fromkeys((*(materials_of(job, p)[0] for p in BODY_PARTS[:2]), *logged.values()))
        return tuple(found)
    if part in logged:
        return (logged[part],)
    arrival = job.newest(ARRIVAL).material
    if part in BODY_PARTS and arrival is not None:
        return (material_words(arrival, part)[0],)
    return (UNKNOWN,)


def material_is_named(job: Job, part: str = "barrel") -> bool:
    """Whether it is known what a part is made of: the one answer for heat, soak and polish alike.

    Parameters
    ----------
    part : str
        A key of the parts; "whole" asks for cap, barrel and every part that has an entry. The barrel stands for the
        pen where no part is in question yet.

    Returns
    -------
    bool
        False where nothing is written, where it is not sure, and where the words are not a name ("plastic").
    """
    return UNKNOWN not in materials_of(job, part)


@once_a_state
def _logged(job: Job) -> Mapping[str, str]:
    found = {}
    for logged in job.log(MATERIAL):
        part, material, sure = logged.values.part, logged.values.material, logged.values.sure
        if part is not None:
            found[part] = UNKNOWN if sure is False or material is None else material_words(material, part)[0]
    return found


def named_materials(job: Job) -> tuple[str, ...]:
    """All materials that are named in a job; none while nothing is named."""
    parts = {key for key, _ in PARTS if key != "whole"}
    return tuple(dict.fromkeys(n for part in sorted(parts) for n in materials_of(job, part) if n != UNKNOWN))


def all_materials(job: Job) -> list[tuple[str, str, str]]:
    """Each part with a material: its key, the name, and where that is known from."""
    logged = _logged(job)
    found = [(part, name, "told apart at the bench") for part, name in logged.items()]
    found += [
        (part, materials_of(job, part)[0], "as the intake says")
        for part in BODY_PARTS[:2]
        if part not in logged and job.newest(ARRIVAL).material is not None
    ]
    order = [key for key, _ in PARTS]
    return sorted(found, key=lambda row: order.index(row[0]))


@once_a_state
def limit_for(job: Job, part: str, treatment: str) -> TreatmentLimit:
    """How far a treatment may go on a part of this pen.

    Parameters
    ----------
    part : str
        A key of the parts.
    treatment : str
        A treatment in everyday words.

    Returns
    -------
    TreatmentLimit
        For several materials the strictest; where the bench overruled the table, its own decision.

    Raises
    ------
    InputError
        If there is no such treatment.
    """
    return limit_of_materials(job, materials_of(job, part), treatment)


def limit_of_materials(job: Job, materials: Iterable[str], treatment: str) -> TreatmentLimit:
    """As `limit_for`, for materials instead of a part."""
    rows = tables.read(CompatibilityRow, "compatibility")
    wanted = treatment_name(treatment, dict.fromkeys(row.treatment for row in rows))
    found = [treatment_limits(name, wanted, rows, overrule=_overrule(job, name, wanted)) for name in materials]
    return found[0] if len(found) == 1 else strictest(found)


def _overrule(job: Job, material: str, treatment: str) -> Overrule | None:
    for logged in reversed(job.log(OVERRULE)):
        said = logged.values
        names = {material_words(said.material or "", part)[0] for part in ("", "nib")}
        if said.verdict is not None and said.treatment == treatment and material in names:
            minutes = None if said.most_minutes is None else said.most_minutes.value
            warmth = None if said.most_warmth is None else said.most_warmth.value
            return Overrule(cast("Verdict", said.verdict), said.reason or "", said.how_far or "", minutes, warmth)
    return None


def cautions_read(job: Job) -> frozenset[str]:
    """Keys of the cautions that were acknowledged in this job."""
    return frozenset(logged.values.caution for logged in job.log(CAUTION_READ) if logged.values.caution is not None)


def cautions_of(job: Job, actions: Iterable[str], *, more_materials: Iterable[str] = ()) -> tuple[Caution, ...]:
    """The cautions that apply to this pen, those that were not yet acknowledged first.

    Parameters
    ----------
    actions : iterable of str
        What is about to be done, as the table of cautions names it; at least one.
    more_materials : iterable of str
        Materials at hand beside those that are named.

    Returns
    -------
    tuple of Caution
        All that apply; while no material is named, those of every material.
    """
    read = cautions_read(job)
    given = {*named_materials(job), *more_materials}
    found = cautions_for(given, actions, tables.read(CautionRow, "cautions"))
    return tuple(sorted(found, key=lambda caution: caution.key in read))
