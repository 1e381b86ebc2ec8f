"""What a material, a zone of the pen and an abrasive medium allow: the limits a progression is planned within."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import msgspec

from pentools.errors import InputError

__all__ = [
    "NOT_SAID",
    "Interval",
    "Material",
    "MaterialFact",
    "Medium",
    "MediumFact",
    "Zone",
    "ZoneFact",
    "materials_from_rows",
    "media_from_rows",
    "strictest_zone",
    "zone_budget_um",
    "zones_from_rows",
]


class MaterialFact(msgspec.Struct, frozen=True):
    """One row of the table ``abrasive_materials``: a property of a material, a number or a word."""

    material: str
    property: str
    value: str
    low: float | None
    high: float | None
    text: str
    certainty: str


class ZoneFact(msgspec.Struct, frozen=True):
    """One row of the table ``removal_budgets``: a property of a zone of the pen and its range [µm]."""

    zone: str
    property: str
    low: float | None
    high: float | None
    text: str
    certainty: str


class MediumFact(msgspec.Struct, frozen=True):
    """One row of the table ``abrasive_media``: a property of a medium and its range, as shares of paper's or ratios."""

    medium: str
    property: str
    low: float | None
    value: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class Interval:
    """A figure with its interval.

    Parameters
    ----------
    low, typical, high : float
        Ends and the figure that is used; low <= typical <= high.
    """

    low: float
    typical: float
    high: float


@dataclass(frozen=True, slots=True)
class Material:
    """How a material takes abrasives.

    Parameters
    ----------
    name : str
        The material in words.
    scratch_share : Interval
        Depth of the scratch over the grain that made it, as a share 0-1 (k).
    density_g_ml : float or None
        Density [g/ml]; None where it says nothing.
    wet : bool
        Whether it is worked wet.
    wet_text, wheel_text : str
        Wet or dry, and how far a wheel may go, in words.
    coarsest_um : float
        Coarsest particle ever used on it [µm]; 0: no abrasive at all.
    coarsest_text : str
        Why.
    caution : str
        The usual caution.
    certainty : str
        How sure the scratch share is.
    zone : str
        The zone that the surface decides by itself, such as plating; empty where the place on the pen decides.
    sanding_text : str
        How far sanding may go, in words, as the compatibility table or the bench says; empty where nothing is said.
    never_text : str
        Why no paper, film, cloth or powder may touch it; empty where they may. A paste by hand is another matter.
    """

    name: str
    scratch_share: Interval
    density_g_ml: float | None
    wet: bool
    wet_text: str
    coarsest_um: float
    coarsest_text: str
    caution: str
    certainty: str
    zone: str = ""
    sanding_text: str = ""
    never_text: str = ""
    wheel_text: str = ""

    def allows(self, medium: str) -> bool:
        """Whether a grade carried by that medium may touch the material at all."""
        return self.coarsest_um > 0 and (medium == "paste" or not self.never_text)


@dataclass(frozen=True, slots=True)
class Zone:
    """How much a zone of the pen can spare.

    Parameters
    ----------
    name : str
        The zone in words.
    budget_low_um, budget_high_um : float
        Safe without knowing the wall, and never more [µm a side].
    coarsest_um : float or None
        Coarsest particle allowed there [µm]; None: whatever the material allows.
    text : str
        Why.
    certainty : str
        How sure the budget is.
    """

    name: str
    budget_low_um: float
    budget_high_um: float
    coarsest_um: float | None = None
    text: str = ""
    certainty: str = "common practice"


NOT_SAID = Zone("not said", 0.0, 0.0, None, "an imprint, threads and seats can spare nothing", "the strictest")
"""What holds while nobody has said where on the pen the work is."""


@dataclass(frozen=True, slots=True)
class Medium:
    """What carries the grain.

    Parameters
    ----------
    name : str
        paper, film, cushioned, paste or powder.
    ratio_low, ratio_high : float
        Band for the step down to a grade of this medium: finish size before over finish size after.
    cut_share : float
        How fast it cuts against paper of the same particle, as a share.
    """

    name: str
    ratio_low: float
    ratio_high: float
    cut_share: float


def zone_budget_um(zone: Zone, wall_mm: float | None = None) -> tuple[float, float]:
    """The budget of a zone, cut down to a tenth of the wall where that was measured.

    Parameters
    ----------
    wall_mm : float or None
        Thinnest wall measured there [mm], 0.05 to 10; None where it was not measured.

    Returns
    -------
    tuple of float
        Lower and upper end [µm a side].

    Raises
    ------
    InputError
        If the wall is outside 0.05 to 10 mm.

    Notes
    -----
    A tenth of the wall is common practice, no source.
    """
    if wall_mm is None:
        return zone.budget_low_um, zone.budget_high_um
    if not 0.05 <= wall_mm <= 10:
        raise InputError("wall", "0.05 to 10 mm", wall_mm)
    tenth_um = 100 * wall_mm
    return min(zone.budget_low_um, tenth_um), min(zone.budget_high_um, tenth_um)


def strictest_zone(said: Zone | None, surface: Zone | None) -> Zone:
    """The zone that holds: the place on the pen and the surface there, whichever can spare less.

    Parameters
    ----------
    said : Zone or None
        The place that was named; None where it was not.
    surface : Zone or None
        The zone that the material decides by itself; None where it decides none.

    Returns
    -------
    Zone
        Named for the stricter one; `NOT_SAID` where there is neither.
    """
    given = [zone for zone in (said, surface) if zone is not None]
    if not given:
        return NOT_SAID
    name = min(given, key=lambda zone: (zone.budget_high_um, zone.budget_low_um))
    coarsest = [zone.coarsest_um for zone in given if zone.coarsest_um is not None]
    low = min(zone.budget_low_um for zone in given)
    return Zone(name.name, low, name.budget_high_um, min(coarsest, default=None), name.text, name.certainty)


def materials_from_rows(rows: Iterable[MaterialFact]) -> dict[str, Material]:
    """Materials out of the rows of the table ``abrasive_materials``.

    Parameters
    ----------
    rows : iterable of MaterialFact
        The table.

    Returns
    -------
    dict
        Name to material.

    Raises
    ------
    InputError
        If a cell that must hold a number does not.
    """
    found = {}
    groups: dict[str, dict[str, MaterialFact]] = {}
    for row in rows:
        groups.setdefault(row.material, {})[row.property] = row
    for name, facts in groups.items():
        share = facts["scratch share"]
        density = facts.get("density")
        found[name] = Material(
            name,
            Interval(_given(share.low, name), _figure(share), _given(share.high, name)),
            _figure(density) if density else None,
            facts["wet or dry"].value == "wet",
            facts["wet or dry"].text,
            _figure(facts["coarsest"]),
            facts["coarsest"].text,
            facts["caution"].text,
            share.certainty,
            facts["zone"].value if "zone" in facts else "",
        )
    return found


def zones_from_rows(rows: Iterable[ZoneFact]) -> dict[str, Zone]:
    """Zones out of the rows of the table ``removal_budgets``.

    Parameters
    ----------
    rows : iterable of ZoneFact
        The table.

    Returns
    -------
    dict
        Name to zone.
    """
    found = {}
    groups: dict[str, dict[str, ZoneFact]] = {}
    for row in rows:
        groups.setdefault(row.zone, {})[row.property] = row
    for name, facts in groups.items():
        budget, coarsest = facts["budget"], facts.get("coarsest")
        limit = _given(coarsest.high, name) if coarsest else None
        low, high = _given(budget.low, name), _given(budget.high, name)
        found[name] = Zone(name, low, high, limit, budget.text, budget.certainty)
    return found


def media_from_rows(rows: Iterable[MediumFact]) -> dict[str, Medium]:
    """Media out of the rows of the table ``abrasive_media``.

    Parameters
    ----------
    rows : iterable of MediumFact
        The table.

    Returns
    -------
    dict
        Name to medium.
    """
    groups: dict[str, dict[str, MediumFact]] = {}
    for row in rows:
        groups.setdefault(row.medium, {})[row.property] = row
    found = {}
    for name, facts in groups.items():
        ratio = facts["ratio"]
        share = _given(facts["cut share"].value, name)
        found[name] = Medium(name, _given(ratio.low, name), _given(ratio.high, name), share)
    return found


def _given(figure: float | None, name: str) -> float:
    if figure is None:
        raise InputError(f"figure of {name}", "a number", "an empty cell")
    return figure


def _figure(fact: MaterialFact) -> float:
    try:
        return float(fact.value)
    except ValueError:
        raise InputError(f"{fact.property} of {fact.material}", "a number", fact.value) from None
