"""Volumes of the spaces in a pen: an annulus, a sac, a plunger's one stroke, a pump's several."""

from __future__ import annotations

import math

from pentools.errors import InputError

__all__ = ["area_mm2", "head_kpa", "plunger_volume_ml", "pumped_volume_ml", "sac_volume_ml"]


def area_mm2(outer_mm: float, inner_mm: float = 0.0) -> float:
    """Area of a circle or of the ring between two.

    Parameters
    ----------
    outer_mm, inner_mm : float
        Diameters [mm].

    Returns
    -------
    float
        Area [mm²].
    """
    return math.pi / 4 * (outer_mm**2 - inner_mm**2)


def head_kpa(head_mm: float) -> float:
    """Pressure of a column of water.

    Parameters
    ----------
    head_mm : float
        Its height [mm].

    Returns
    -------
    float
        rho g h [kPa], with 998 kg/m³.

    Examples
    --------
    >>> round(head_kpa(60.0), 3)
    0.587
    """
    return 998.0 * 9.80665 * head_mm / 1e6


def sac_volume_ml(outside_mm: float, wall_mm: float, length_mm: float) -> float:
    """Inside volume of a sac with one round end.

    Parameters
    ----------
    outside_mm : float
        Outside diameter [mm].
    wall_mm : float
        Wall [mm], below half the outside diameter.
    length_mm : float
        Length from its mouth to its end [mm].

    Returns
    -------
    float
        Volume [mL].

    Raises
    ------
    InputError
        If the wall leaves no inside, or the sac is shorter than its round end.

    Notes
    -----
    V = π/4 d² (L - w - d/2) + π/12 d³ with d = outside - 2 w: a tube closed by a hemisphere. Derived here.
    """
    inside = outside_mm - 2 * wall_mm
    if inside <= 0:
        raise InputError("sac wall", f"below half the outside diameter of {outside_mm:g} mm", f"{wall_mm:g} mm")
    straight = length_mm - wall_mm - inside / 2
    if straight < 0:
        raise InputError("sac length", f"above {wall_mm + inside / 2:.1f} mm, its round end", f"{length_mm:g} mm")
    return (area_mm2(inside) * straight + math.pi / 12 * inside**3) / 1000


def plunger_volume_ml(
    swept_ml: float, behind_ml: float, ahead_ml: float, *, head_mm: float, ambient_kpa: float, vapour_kpa: float
) -> float:
    """What a sound plunger filler draws in one stroke.

    Parameters
    ----------
    swept_ml : float
        Annulus that the washer sweeps [mL], above 0.
    behind_ml, ahead_ml : float
        Dead volumes behind the washer at the start and ahead of it at the end [mL], zero or more; both hold air.
    head_mm : float
        Height the liquid is lifted [mm], 0 to 200.
    ambient_kpa : float
        Air pressure [kPa].
    vapour_kpa : float
        Vapour pressure of the liquid [kPa].

    Returns
    -------
    float
        Volume [mL].

    Raises
    ------
    InputError
        If a volume is below 0 or nothing is swept.

    Notes
    -----
    The air of both dead volumes, at ambient pressure p_0 before the stroke, ends at p_e - p_v with
    p_e = p_0 - rho g h, so V = V_d + V_s + V_f - (V_d + V_f) p_0/(p_e - p_v). Isothermal, no bubble lost, the washer
    free of the wall at its end, dwell long enough. The vapour pressure limits the vacuum before release, hardly the
    fill. Derived here from the gas law.

    Examples
    --------
    >>> round(plunger_volume_ml(3.189, 0.06, 0.10, head_mm=60.0, ambient_kpa=101.325, vapour_kpa=0.0), 3)
    3.188
    """
    if not (swept_ml > 0 and behind_ml >= 0 and ahead_ml >= 0):
        raise InputError(
            "plunger volumes",
            "above 0 mL swept, zero or more behind and ahead",
            f"{swept_ml:g}, {behind_ml:g}, {ahead_ml:g} mL",
        )
    dead = behind_ml + ahead_ml
    end = ambient_kpa - head_kpa(head_mm)
    return swept_ml + dead - dead * ambient_kpa / (end - vapour_kpa)


def pumped_volume_ml(strokes: float, stroke_ml: float, tube_ml: float, level_ml: float) -> float:
    """What a pump with a breather tube holds after some strokes.

    Parameters
    ----------
    strokes : float
        Number of strokes, zero or more.
    stroke_ml : float
        What the diaphragm or bulb moves a stroke [mL].
    tube_ml : float
        Content of the breather tube, which each stroke pushes back first [mL], below `stroke_ml`.
    level_ml : float
        What the barrel holds up to the tube's end [mL].

    Returns
    -------
    float
        Volume in the pen [mL].

    Raises
    ------
    InputError
        If a stroke moves no more than the tube holds, or another value is below 0.

    Notes
    -----
    V_n = min(n (v - v_t), V_b): a straight line, then flat. Derived here.

    Examples
    --------
    >>> [round(pumped_volume_ml(n, 0.28, 0.03, 1.6), 2) for n in (1, 2, 6, 7)]
    [0.25, 0.5, 1.5, 1.6]
    """
    if not (strokes >= 0 and level_ml > 0 and tube_ml >= 0 and stroke_ml > tube_ml):
        raise InputError("volume of a stroke", f"above the {tube_ml:g} mL that the tube holds", f"{stroke_ml:g} mL")
    return min(strokes * (stroke_ml - tube_ml), level_ml)
