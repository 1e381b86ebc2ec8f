"""What a material, a zone of the pen and an abrasive medium allow: the limits a progression is planned within."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pentools.errors import InputError

__all__ = [
    "NOT_SAID",
    "Interval",
    "Material",
    "Medium",
    "Zone",
    "materials_from_rows",
    "media_from_rows",
    "strictest_zone",
    "zone_budget_um",
    "zones_from_rows",
]


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


def materials_from_rows(rows: Iterable[Mapping[str, str]]) -> dict[str, Material]:
    """Materials out of the rows of the table ``abrasive_materials``.

    Parameters
    ----------
    rows : iterable of mapping
        Rows with material, property, value, low, high, text, certainty.

    Returns
    -------
    dict
        Name to material.
    """
    found = {}
    for name, facts in _grouped(rows, "material").items():
        share = facts["scratch share"]
        density = facts.get("density")
        found[name] = Material(
            name,
            Interval(float(share["low"]), float(share["value"]), float(share["high"])),
            float(density["value"]) if density else None,
            facts["wet or dry"]["value"] == "wet",
            facts["wet or dry"]["text"],
            float(facts["coarsest"]["value"]),
            facts["coarsest"]["text"],
            facts["caution"]["text"],
            share["certainty"],
            facts["zone"]["value"] if "zone" in facts else "",
        )
    return found


def zones_from_rows(rows: Iterable[Mapping[str, str]]) -> dict[str, Zone]:
    """Zones out of the rows of the table ``removal_budgets``.

    Parameters
    ----------
    rows : iterable of mapping
        Rows with zone, property, low, high, text, certainty.

    Returns
    -------
    dict
        Name to zone.
    """
    found = {}
    for name, facts in _grouped(rows, "zone").items():
        budget, coarsest = facts["budget"], facts.get("coarsest")
        limit = float(coarsest["high"]) if coarsest else None
        found[name] = Zone(
            name, float(budget["low"]), float(budget["high"]), limit, budget["text"], budget["certainty"]
        )
    return found


def media_from_rows(rows: Iterable[Mapping[str, str]]) -> dict[str, Medium]:
    """Media out of the rows of the table ``abrasive_media``.

    Parameters
    ----------
    rows : iterable of mapping
        Rows with medium, property, low, value, high.

    Returns
    -------
    dict
        Name to medium.
    """
    return {
        name: Medium(
            name, float(facts["ratio"]["low"]), float(facts["ratio"]["high"]), float(facts["cut share"]["value"])
        )
        for name, facts in _grouped(rows, "medium").items()
    }


def _grouped(rows: Iterable[Mapping[str, str]], key: str) -> dict[str, dict[str, Mapping[str, str]]]:
    groups: dict[str, dict[str, Mapping[str, str]]] = {}
    for row in rows:
        groups.setdefault(row[key], {})[row["property"]] = row
    return groups
