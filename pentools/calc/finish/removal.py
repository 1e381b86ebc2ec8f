"""Stock removed, measured two ways that must agree: by diameter and by mass; and the layer a gold mark stands for."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = [
    "GoldMark", "RemovalCheck", "compare_removal", "fine_gold_um", "gold_layer_um", "mass_per_um_mg", "read_gold_mark",
    "removed_by_diameter_um", "removed_by_mass_um", "side_area_mm2",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class GoldMark:
    """What a gold-filled or rolled-gold mark says.

    Parameters
    ----------
    mass_share : float
        Mass of the gold alloy over the mass of the whole, as a share 0-1.
    karat : float
        Parts of gold in 24.
    fine_gold_per_mille : float
        Fine gold in the whole [parts per thousand].
    """

    mass_share: float
    karat: float
    fine_gold_per_mille: float


@dataclass(frozen=True, slots=True)
class RemovalCheck:
    """Removal by diameter and by mass side by side.

    Parameters
    ----------
    by_diameter_um, by_mass_um : float
        Stock removed a side [µm].
    difference_um, difference_u_um : float
        By mass less by diameter, and its standard uncertainty [µm].
    agrees : bool
        Whether the difference is within twice its standard uncertainty.
    finding : Finding
        The same in words.
    """

    by_diameter_um: float
    by_mass_um: float
    difference_um: float
    difference_u_um: float
    agrees: bool
    finding: Finding


def side_area_mm2(diameter_mm: float, length_mm: float) -> float:
    """Side area of a plain cylinder.

    Parameters
    ----------
    diameter_mm, length_mm : float
        Outside diameter, 0.5 to 100, and length, 0.5 to 500 [mm].

    Returns
    -------
    float
        Area [mm²].

    Raises
    ------
    InputError
        If a measure is outside its range.

    Notes
    -----
    π D L; the ends are not polished. A tapered barrel: take its middle diameter.

    Examples
    --------
    >>> round(side_area_mm2(12, 70), 2)
    2638.94
    """
    _within("diameter", diameter_mm, 0.5, 100, "mm")
    _within("length", length_mm, 0.5, 500, "mm")
    return math.pi * diameter_mm * length_mm


def mass_per_um_mg(area_mm2: float, density_g_ml: float) -> float:
    """Mass of one micrometre of stock over an area.

    Parameters
    ----------
    area_mm2 : float
        Polished area [mm²], above 0 to 100000.
    density_g_ml : float
        Density of the material [g/ml], 0.5 to 25.

    Returns
    -------
    float
        Mass [mg per µm].

    Raises
    ------
    InputError
        If a figure is outside its range.

    Examples
    --------
    >>> round(mass_per_um_mg(side_area_mm2(12, 70), 1.40), 3)
    3.695
    """
    _within("area", area_mm2, 1e-6, 100000, "mm²")
    _within("density", density_g_ml, 0.5, 25, "g/ml")
    return area_mm2 * density_g_ml * 1e-3


def removed_by_diameter_um(before_mm: float, after_mm: float) -> float:
    """Stock removed a side from two diameters at one marked station.

    Parameters
    ----------
    before_mm, after_mm : float
        Diameters [mm], 0.5 to 100.

    Returns
    -------
    float
        Half the difference [µm]; below 0 where the part measures larger than before.

    Raises
    ------
    InputError
        If a diameter is outside its range.

    Examples
    --------
    >>> round(removed_by_diameter_um(12.02, 12.00), 3)
    10.0
    """
    _within("diameter before", before_mm, 0.5, 100, "mm")
    _within("diameter after", after_mm, 0.5, 100, "mm")
    return (before_mm - after_mm) * 500


def removed_by_mass_um(before_g: float, after_g: float, area_mm2: float, density_g_ml: float) -> float:
    """Stock removed a side from two dry masses.

    Parameters
    ----------
    before_g, after_g : float
        Masses [g], 0 to 1000.
    area_mm2 : float
        Polished area [mm²].
    density_g_ml : float
        Density of the material [g/ml].

    Returns
    -------
    float
        Mass lost over density and area [µm].

    Raises
    ------
    InputError
        If a figure is outside its range.

    Notes
    -----
    h = Δm / (ρ A). Weigh dry: celluloid and above all casein take up water, and a wet part seems to lose nothing.
    """
    _within("mass before", before_g, 0, 1000, "g")
    _within("mass after", after_g, 0, 1000, "g")
    return (before_g - after_g) * 1000 / mass_per_um_mg(area_mm2, density_g_ml)


def compare_removal(
    by_diameter_um: float, by_mass_um: float, *, diameter_u_um: float, mass_u_um: float
) -> RemovalCheck:
    """Whether the two ways of measuring removal tell the same story.

    Parameters
    ----------
    by_diameter_um, by_mass_um : float
        Stock removed a side [µm].
    diameter_u_um, mass_u_um : float
        Their standard uncertainties [µm], not both 0.

    Returns
    -------
    RemovalCheck
        The difference, and a finding: ok where it is within twice its uncertainty, else a warning with what to look for.

    Raises
    ------
    InputError
        If an uncertainty is below 0 or both are 0.
    """
    if min(diameter_u_um, mass_u_um) < 0 or diameter_u_um + mass_u_um == 0:
        raise InputError("uncertainty of the removal", "0 or more, one of them above 0", (diameter_u_um, mass_u_um))
    difference = by_mass_um - by_diameter_um
    u = math.hypot(diameter_u_um, mass_u_um)
    agrees = abs(difference) <= 2 * u
    both = f"{by_diameter_um:.3g} µm a side by diameter, {by_mass_um:.3g} µm by mass"
    if agrees:
        finding = Finding("ok", f"The two measurements agree: {both}.", "removal-agrees")
    elif difference > 0:
        hint = "Was more than the measured station polished, or was the part wet or dirty when first weighed?"
        finding = Finding("warning", f"Mass says more than diameter: {both}. {hint}", "removal-differs")
    else:
        hint = "Was the part still damp when weighed, or the diameter taken at another place?"
        finding = Finding("warning", f"Mass says less than diameter: {both}. {hint}", "removal-differs")
    return RemovalCheck(by_diameter_um, by_mass_um, difference, u, agrees, finding)


def read_gold_mark(text: str) -> GoldMark:
    """Mass share and karat out of a mark such as ``1/20 12K``.

    Parameters
    ----------
    text : str
        The mark: a fraction, then karat with K, Kt or ct, then anything.

    Returns
    -------
    GoldMark
        What it says.

    Raises
    ------
    InputError
        If there is no fraction below 1 or no karat of 1 to 24.

    Examples
    --------
    >>> read_gold_mark("1/20 12K GF").fine_gold_per_mille
    25.0
    """
    found = re.match(r"\s*1\s*/\s*(\d+)\s*,?\s*(\d+(?:\.\d+)?)\s*(?:K|Kt|ct|karat|carat)\b", text, re.IGNORECASE)
    if found is None or int(found[1]) < 2 or not 1 <= float(found[2]) <= 24:
        raise InputError("gold mark", "a fraction and a karat, like 1/20 12K", text)
    share, karat = 1 / int(found[1]), float(found[2])
    return GoldMark(share, karat, round(share * karat / 24 * 1000, 6))


def gold_layer_um(
    total_um: float, mass_share: float, alloy_density_g_ml: float, *, base_density_g_ml: float = 8.5, sides: int = 1
) -> float:
    """Thickness of the gold layer that a mass share stands for, as made.

    Parameters
    ----------
    total_um : float
        Thickness of the whole sheet [µm], 20 to 5000.
    mass_share : float
        Gold alloy over the whole by mass, above 0 and below 1.
    alloy_density_g_ml, base_density_g_ml : float
        Densities [g/ml], 5 to 25.
    sides : int
        1 or 2: layers the gold is shared among.

    Returns
    -------
    float
        Thickness of each layer [µm] when new; wear and old polishing have already been at it.

    Raises
    ------
    InputError
        If a figure is outside its range.

    Notes
    -----
    x = f ρb / (f ρb + (1 − f) ρa) of the thickness; densities from memory. Which side was clad is seldom known: show
    both.

    Examples
    --------
    >>> round(gold_layer_um(250, 1 / 20, 12.7), 2), round(gold_layer_um(250, 1 / 20, 12.7, sides=2), 2)
    (8.51, 4.25)
    """
    _within("sheet thickness", total_um, 20, 5000, "µm")
    _within("alloy density", alloy_density_g_ml, 5, 25, "g/ml")
    _within("base density", base_density_g_ml, 5, 25, "g/ml")
    if not 0 < mass_share < 1:
        raise InputError("mass share", "above 0 and below 1", mass_share)
    if sides not in (1, 2):
        raise InputError("gold sides", "1 or 2", sides)
    gold = mass_share * base_density_g_ml
    return total_um * gold / (gold + (1 - mass_share) * alloy_density_g_ml) / sides


def fine_gold_um(layer_um: float, fineness_per_mille: float, alloy_density_g_ml: float) -> float:
    """Thickness of fine gold with the gold of an alloy layer.

    Parameters
    ----------
    layer_um : float
        Alloy layer [µm], above 0 to 1000.
    fineness_per_mille : float
        Gold in the alloy [parts per thousand], 1 to 1000.
    alloy_density_g_ml : float
        Its density [g/ml], 5 to 25.

    Returns
    -------
    float
        Thickness [µm] of gold of 19.3 g/ml.

    Raises
    ------
    InputError
        If a figure is outside its range.
    """
    _within("layer", layer_um, 1e-6, 1000, "µm")
    _within("fineness", fineness_per_mille, 1, 1000, "parts per thousand")
    _within("alloy density", alloy_density_g_ml, 5, 25, "g/ml")
    return layer_um * fineness_per_mille / 1000 * alloy_density_g_ml / 19.3


def _within(name: str, value: float, low: float, high: float, unit: str) -> None:
    if not low <= value <= high:
        raise InputError(name, f"{low:g} to {high:g} {unit}", value)
