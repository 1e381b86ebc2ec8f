"""The tables of abrasives as the calculations' own types."""

from __future__ import annotations

import functools
import itertools

from pentools import tables
from pentools.calc.finish.grades import Catalogue, catalogue_from_rows
from pentools.calc.finish.limits import Material, Medium, Zone, materials_from_rows, media_from_rows, zones_from_rows
from pentools.errors import InputError

__all__ = ["catalogue", "gold_density_g_ml", "materials", "media", "surface_words", "zones"]


@functools.lru_cache(maxsize=1)
def catalogue() -> Catalogue:
    """Every grade and paste that the tables hold."""
    return catalogue_from_rows(tables.rows("abrasive_grades"), tables.rows("polishing_pastes"))


@functools.lru_cache(maxsize=1)
def materials() -> dict[str, Material]:
    """Material name to how it takes abrasives."""
    return materials_from_rows(tables.rows("abrasive_materials"))


@functools.lru_cache(maxsize=1)
def zones() -> dict[str, Zone]:
    """Zone of the pen to its removal budget."""
    return zones_from_rows(tables.rows("removal_budgets"))


@functools.lru_cache(maxsize=1)
def media() -> dict[str, Medium]:
    """Medium to its band of step ratios and its cut against paper."""
    return media_from_rows(tables.rows("abrasive_media"))


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
    found = {}
    for row in tables.rows("surface_words"):
        if row["kind"] == kind:
            size = float(row["size_um"])
            found[row["word"]] = (float(row["low_um"] or size), size, float(row["high_um"] or size))
    return found


def gold_density_g_ml(karat: float) -> float:
    """Density of a yellow gold alloy, between the table's rows on a straight line.

    Parameters
    ----------
    karat : float
        10 to 18.

    Returns
    -------
    float
        Density [g/ml].

    Raises
    ------
    InputError
        If the karat is outside the table.
    """
    points = sorted((float(row["karat"]), float(row["density_g_ml"])) for row in tables.rows("gold_alloys"))
    for (first, low), (last, high) in itertools.pairwise(points):
        if first <= karat <= last:
            return low + (high - low) * (karat - first) / (last - first)
    raise InputError("karat", f"{points[0][0]:g} to {points[-1][0]:g}", karat)
