"""Stock removed, measured two ways that must agree: by diameter and by mass."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = [
    "RemovalCheck", "compare_removal", "mass_per_um_mg", "removed_by_diameter_um", "removed_by_mass_um",
    "side_area_mm2",
]  # fmt: skip


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


def removed_by_mass_um(before_g: float, after_g: float, per_um_mg: float) -> float:
    """Stock removed a side from two dry masses.

    Parameters
    ----------
    before_g, after_g : float
        Masses [g], 0 to 1000.
    per_um_mg : float
        Mass of one micrometre of the polished stretch [mg/µm], above 0, as `mass_per_um_mg` gives it.

    Returns
    -------
    float
        Mass lost over the mass of a micrometre [µm]; below 0 where the part weighs more than before.

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
    _within("mass of a micrometre", per_um_mg, 1e-6, 1e6, "mg/µm")
    return 1000 * (before_g - after_g) / per_um_mg


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
    finding = Finding(
        "ok" if agrees else "warning",
        "finish.removal-agrees" if agrees else "finish.removal-differs:more" if difference > 0 else "finish.removal-differs:less",
        by_diameter=by_diameter_um, by_mass=by_mass_um,
    )  # fmt: skip
    return RemovalCheck(by_diameter_um, by_mass_um, difference, u, agrees, finding)


def _within(name: str, value: float, low: float, high: float, unit: str) -> None:
    if not low <= value <= high:
        raise InputError(name, f"{low:g} to {high:g} {unit}", value)
