"""The tables of abrasives as the calculations' own types."""

from __future__ import annotations

import functools
from dataclasses import replace
from typing import Literal

import msgspec

from pentools import tables
from pentools.calc.finish.grades import Catalogue, GradeRow, PasteRow, catalogue_from_rows
from pentools.calc.finish.limits import (
    Interval,
    Material,
    MaterialFact,
    Medium,
    MediumFact,
    Zone,
    ZoneFact,
    materials_from_rows,
    media_from_rows,
    zones_from_rows,
)
from pentools.calc.treatment.limits import CompatibilityRow, TreatmentLimit, treatment_limits
from pentools.calc.treatment.materials import UNKNOWN
from pentools.numbers import capital

__all__ = ["UNNAMED", "catalogue", "materials", "media", "surface_words", "with_limits", "zones"]


class _Word(msgspec.Struct, frozen=True):
    kind: Literal["defect", "finish"]
    word: str
    low_um: float | None
    size_um: float
    high_um: float | None


@functools.lru_cache(maxsize=1)
def catalogue() -> Catalogue:
    """Every grade and paste that the tables hold."""
    return catalogue_from_rows(tables.read(GradeRow, "abrasive_grades"), tables.read(PasteRow, "polishing_pastes"))


UNNAMED = Material(
    UNKNOWN, Interval(0.05, 0.1, 0.2), None, False, "No water while it is not known what it is.", 0.0,
    "nothing is known of how it takes abrasives", "Sanding dust of any kind belongs in water or a filter, not in lungs; an unknown plastic may be celluloid, whose dust burns fiercely. Follow local codes; ask a licensed professional.", "judged",
)  # fmt: skip
"""A material that nobody has named, or of which no table knows how it takes abrasives: none is used on it."""
_LIKE = {"plated metal": "gold-plated steel"}


@functools.lru_cache(maxsize=1)
def materials() -> dict[str, Material]:
    """Material name to how it takes abrasives, as far as the table ``compatibility`` lets it.

    Every material of either table is there, and "unknown", which takes the strictest. Whether a material may be sanded
    or buffed at all is asked of the table ``compatibility`` alone.
    """
    known = materials_from_rows(tables.read(MaterialFact, "abrasive_materials"))
    rows = tables.read(CompatibilityRow, "compatibility")
    names = dict.fromkeys((*known, *(row.material for row in rows), UNKNOWN))
    found = {}
    for name in names:
        sanding, wheel = (
            treatment_limits(_LIKE.get(name, name), what, rows) for what in ("wet sanding", "buffing wheel")
        )
        found[name] = with_limits(known.get(name) or replace(UNNAMED, name=name), sanding, wheel)
    return found


def with_limits(material: Material, sanding: TreatmentLimit, wheel: TreatmentLimit) -> Material:
    """A material as far as the limits for sanding and for a wheel let it be worked.

    Parameters
    ----------
    material : Material
        How it takes abrasives.
    sanding, wheel : TreatmentLimit
        What the table ``compatibility``, or the bench over it, says.

    Returns
    -------
    Material
        With both in words; nothing bound may touch it where sanding is never allowed, and nothing at all where the table
        of abrasives knows no zone of its own for it, which is where a paste by hand is provided for.
    """
    never = sanding.verdict == "never"
    return replace(
        material,
        coarsest_um=0.0 if never and not material.zone else material.coarsest_um,
        sanding_text=_words("Sanding", sanding),
        never_text=sanding.reason if never else "",
        wheel_text=_words("A wheel", wheel),
    )


def _words(what: str, limit: TreatmentLimit) -> str:
    how = {"ok": "it is borne", "limited": "only within limits", "never": "never"}[limit.verdict]
    return f"{what}: {limit.limit or how}. {capital(limit.reason)}."


@functools.lru_cache(maxsize=1)
def zones() -> dict[str, Zone]:
    """Zone of the pen to its removal budget."""
    return zones_from_rows(tables.read(ZoneFact, "removal_budgets"))


@functools.lru_cache(maxsize=1)
def media() -> dict[str, Medium]:
    """Medium to its band of step ratios and its cut against paper."""
    return media_from_rows(tables.read(MediumFact, "abrasive_media"))


@functools.lru_cache(maxsize=2)
def surface_words(kind: str) -> dict[str, tuple[float, float, float]]:
    """Word to (low, typical, high) in micrometres.

    Parameters
    ----------
    kind : {"defect", "finish"}
        Words for a defect's depth, or for the finish to reach.

    Returns
    -------
    dict
        The words; low and high are the typical figure where the table has none.
    """
    return {
        row.word: (
            row.size_um if row.low_um is None else row.low_um,
            row.size_um,
            row.size_um if row.high_um is None else row.high_um,
        )
        for row in tables.read(_Word, "surface_words")
        if row.kind == kind
    }
