"""What a material, a zone of the pen and an abrasive medium allow: the limits a progression is planned within."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from pentools.errors import InputError

__all__ = [
    "Interval",
    "Material",
    "Medium",
    "Zone",
    "materials_from_rows",
    "media_from_rows",
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
        Wet or dry, and what a wheel does to it, in words.
    coarsest_um : float
        Coarsest particle ever used on it [µm]; 0: no abrasive at all.
    coarsest_text : str
        Why.
    caution : str
        The usual caution.
    certainty : str
        How sure the scratch share is.
    """

    name: str
    scratch_share: Interval
    density_g_ml: float | None
    wet: bool
    wet_text: str
    wheel_text: str
    coarsest_um: float
    coarsest_text: str
    caution: str
    certainty: str


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
    zone : Zone
        The zone.
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
            facts["wheel"]["text"],
            float(facts["coarsest"]["value"]),
            facts["coarsest"]["text"],
            facts["caution"]["text"],
            share["certainty"],
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
