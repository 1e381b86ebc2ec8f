"""What is polished: a material in everyday words, the surface over it, and the zone on the pen, as the planner needs them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.finish.limits import Material, Zone, strictest_zone
from pentools.calc.treatment.limits import TreatmentLimit
from pentools.calc.treatment.materials import UNKNOWN, material_name
from pentools.tables import abrasives as tables

__all__ = ["Surface", "read_surface"]

# a coat over a body decides, whatever lies under it; the stricter words stand first
_COATS = (
    (re.compile(r"\bplat(?:ed|ing|e)\b|\bchrom|\bgilt\b|\bgilded\b|vermeil|rhodium|\btinned\b", re.IGNORECASE), "plated metal"),
    (re.compile(r"overlay|filigree", re.IGNORECASE), "metal overlay"),
    (re.compile(r"gold[ -]?filled|rolled[ -]gold", re.IGNORECASE), "gold-filled"),
    (re.compile(r"lacquer|urushi|maki-?e|\bpainted\b|enamel", re.IGNORECASE), "lacquer"),
)  # fmt: skip
_ROLLED_PLATE = re.compile(r"rolled[ -]gold[ -]plate", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Surface:
    """What is polished, and what it can spare.

    Parameters
    ----------
    material : Material
        The material, or the coat over it.
    zone : Zone
        The stricter of the place that was named and what the surface decides.
    findings : tuple of Finding
        What was not understood, and what holds instead.
    """

    material: Material
    zone: Zone
    findings: tuple[Finding, ...] = ()


def read_surface(
    material: str, zone: str = "", *, sanding: TreatmentLimit | None = None, wheel: TreatmentLimit | None = None
) -> Surface:
    """The surface that a material and a zone in words name.

    Parameters
    ----------
    material : str
        In everyday words, such as "ebonite", "rolled gold" or "lacquered brass"; empty or not understood is the strictest.
    zone : str
        A zone of the table ``removal_budgets``; empty where it was not said.
    sanding, wheel : TreatmentLimit or None
        The bench's own decision over the compatibility table; None: the table's.

    Returns
    -------
    Surface
        A coat goes before the body under it; an unknown material takes no abrasive at all.
    """
    name, unnamed = _name(material)
    found = tables.materials()[name]
    if sanding is not None and wheel is not None:
        found = tables.with_limits(found, sanding, wheel)
    zones = tables.zones()
    held = strictest_zone(zones.get(zone), zones.get(found.zone))
    if name != UNKNOWN:
        return Surface(found, held)
    said = unnamed or "The material is not named."
    stop = Finding("stop", "finish.material-not-named", said=said)
    note = Finding("note", "finish.materials-known", names=known_materials())
    return Surface(found, held, (stop, note))


def known_materials() -> tuple[str, ...]:
    """The materials that some abrasive may touch, as the tables name them."""
    return tuple(name for name, material in tables.materials().items() if material.coarsest_um > 0)


def _name(text: str) -> tuple[str, str]:
    """The name in the abrasives' tables, and what to say where there is none."""
    if text in tables.materials():
        return text, ""
    for pattern, coat in _COATS:
        if pattern.search(_ROLLED_PLATE.sub("rolled gold", text)):
            return coat, ""
    return material_name(text, tables.materials())
