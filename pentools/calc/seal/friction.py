"""How hard a ring drags and how hard the vacuum pulls: estimates, each with its model named."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.errors import InputError

__all__ = ["ATMOSPHERE_KPA", "FRICTION_MODEL", "RingFriction", "gent_modulus_mpa", "ring_friction", "suction_force_n"]

ATMOSPHERE_KPA = 101.325
FRICTION_MODEL = "line load after Lindley (from memory), modulus after Gent, friction coefficient from a calculator page: good to a factor of two"
BREAKOUT_OVER_RUNNING = 3.0


@dataclass(frozen=True, slots=True)
class RingFriction:
    """An estimate of a ring's drag.

    Parameters
    ----------
    contact_n : float
        Force of the ring on the wall, all round [N].
    running_n, breakout_n : float
        Force to keep it moving, and at most to start it [N].
    model : str
        Where the figures come from.
    """

    contact_n: float
    running_n: float
    breakout_n: float
    model: str = FRICTION_MODEL


def gent_modulus_mpa(shore_a: float) -> float:
    """Young's modulus of rubber from its hardness.

    Parameters
    ----------
    shore_a : float
        Hardness [Shore A], 20 to 90.

    Returns
    -------
    float
        Modulus [MPa].

    Raises
    ------
    InputError
        If the hardness is out of range.

    Notes
    -----
    Gent's relation, E = 0.0981 (56 + 7.66 S)/(0.1375 (254 - 2.54 S)). Other printings carry more digits and differ
    by half a per cent; a reading of hardness repeats only to five points, which is a fifth of E.

    Examples
    --------
    >>> round(gent_modulus_mpa(70), 1)
    5.5
    """
    if not 20 <= shore_a <= 90:
        raise InputError("hardness", "20 to 90 Shore A", f"{shore_a:g}")
    return 0.0981 * (56 + 7.66 * shore_a) / (0.1375 * (254 - 2.54 * shore_a))


def ring_friction(
    mean_diameter_mm: float, section_mm: float, squeeze: float, shore_a: float = 70.0, friction_coefficient: float = 0.2
) -> RingFriction:
    """Drag of a squeezed ring on its wall.

    Parameters
    ----------
    mean_diameter_mm : float
        Diameter of the ring's middle line [mm], above 0.
    section_mm : float
        Section [mm], above 0.
    squeeze : float
        Squeeze [1], up to 0.5; at or below 0 there is no drag.
    shore_a : float
        Hardness [Shore A].
    friction_coefficient : float
        Lubricated: nitrile 0.12 to 0.20, fluoro 0.15 to 0.25, EPDM 0.16 to 0.28, silicone 0.18 to 0.35 (a weak page).

    Returns
    -------
    RingFriction
        Contact, running and break-out force [N].

    Raises
    ------
    InputError
        If a size is not above 0 or the squeeze is above 0.5.

    Notes
    -----
    F = pi D d E (1.25 C^1.5 + 50 C^6) for a squeeze C (Lindley, from memory); running friction is mu F, break-out up
    to three times that for 70 Shore after a rest (a ring maker's handbook). Good to a factor of two: use it to
    compare rings, not to predict a feel.

    Examples
    --------
    >>> drag = ring_friction(6.25, 1.78, 0.12)
    >>> round(drag.contact_n), round(drag.running_n)
    (10, 2)
    """
    if not (mean_diameter_mm > 0 and section_mm > 0):
        raise InputError("diameter and section", "above 0 mm", f"{mean_diameter_mm:g} and {section_mm:g} mm")
    if squeeze > 0.5:
        raise InputError("squeeze", "at most 0.5", f"{squeeze:g}", "Such a ring cannot be put in.")
    c = max(squeeze, 0.0)
    contact = math.pi * mean_diameter_mm * section_mm * gent_modulus_mpa(shore_a) * (1.25 * c**1.5 + 50 * c**6)
    running = friction_coefficient * contact
    return RingFriction(contact, running, BREAKOUT_OVER_RUNNING * running)


def suction_force_n(bore_mm: float, vacuum_kpa: float = ATMOSPHERE_KPA, rod_mm: float = 0.0) -> float:
    """Force of a vacuum on a head.

    Parameters
    ----------
    bore_mm : float
        Bore [mm], above 0.
    vacuum_kpa : float
        Pressure below the room's [kPa], 0 to 110; a full vacuum by default.
    rod_mm : float
        Rod that takes part of the area [mm].

    Returns
    -------
    float
        Force [N], pi/4 (B² - d²) p.

    Raises
    ------
    InputError
        If the bore is not above the rod or the vacuum is out of range.

    Examples
    --------
    >>> round(suction_force_n(8.0), 1)
    5.1
    """
    if not (bore_mm > rod_mm >= 0):
        raise InputError("bore", f"above the rod of {rod_mm:g} mm", f"{bore_mm:g} mm")
    if not 0 <= vacuum_kpa <= 110:
        raise InputError("vacuum", "0 to 110 kPa", f"{vacuum_kpa:g} kPa")
    return math.pi / 4 * (bore_mm**2 - rod_mm**2) * vacuum_kpa / 1000
