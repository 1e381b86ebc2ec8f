"""Densities of water and of moist air, and Z, the factor from balance reading to volume."""

from __future__ import annotations

import math

from pentools.errors import InputError

__all__ = [
    "WEIGHTS_DENSITY_KG_M3",
    "air_density_simple",
    "saturation_vapour_pressure_kpa",
    "water_density",
    "z_factor",
]

WEIGHTS_DENSITY_KG_M3 = 8000.0


def _within(name: str, value: float, low: float, high: float, unit: str) -> None:
    if not low <= value <= high:
        raise InputError(name, f"{low:g} to {high:g} {unit}", f"{value:g} {unit}", "Check the value and its unit.")


def water_density(temperature_c: float) -> float:
    """Density of air-free water at 101.325 kPa.

    Parameters
    ----------
    temperature_c : float
        Temperature [°C], 0 to 40.

    Returns
    -------
    float
        Density [kg/m³].

    Raises
    ------
    InputError
        If the temperature is outside 0 to 40 °C.

    Notes
    -----
    rho = a5 (1 - (t + a1)² (t + a2) / (a3 (t + a4))), good for 0 to 40 °C; its standard uncertainty there is below
    0.001 kg/m³. Source: Tanaka et al., Metrologia 38 (2001) 301.

    Examples
    --------
    >>> round(water_density(20.0), 5)
    998.20675
    """
    _within("water temperature", temperature_c, 0, 40, "°C")
    a1, a2, a3, a4, a5 = -3.983035, 301.797, 522528.9, 69.34881, 999.974950
    return a5 * (1 - (temperature_c + a1) ** 2 * (temperature_c + a2) / (a3 * (temperature_c + a4)))


def air_density_simple(temperature_c: float, pressure_kpa: float, humidity_share: float) -> float:
    """Density of moist air by the short formula that is used for weighing.

    Parameters
    ----------
    temperature_c : float
        Temperature [°C], 0 to 40; 10 to 30 for the agreement stated below.
    pressure_kpa : float
        Pressure [kPa], 60 to 110.
    humidity_share : float
        Relative humidity [1], 0 to 1.

    Returns
    -------
    float
        Density [kg/m³].

    Raises
    ------
    InputError
        If a value is outside its range.

    Notes
    -----
    rho = (0.34848 p - 0.009 h exp(0.061 t)) / (273.15 + t), p in hPa, h in percent; within 2e-4 of CIPM-2007 for
    900 to 1100 hPa, 10 to 30 °C and up to 80 % humidity. Source: OIML R 111-1, the CIPM approximation.
    """
    _within("air temperature", temperature_c, 0, 40, "°C")
    _within("air pressure", pressure_kpa, 60, 110, "kPa")
    _within("relative humidity", humidity_share, 0, 1, "(a share)")
    numerator = 0.34848 * 10 * pressure_kpa - 0.009 * 100 * humidity_share * math.exp(0.061 * temperature_c)
    return numerator / (273.15 + temperature_c)


def saturation_vapour_pressure_kpa(temperature_c: float) -> float:
    """Vapour pressure of water at saturation.

    Parameters
    ----------
    temperature_c : float
        Temperature [°C], 0 to 40.

    Returns
    -------
    float
        Pressure [kPa].

    Raises
    ------
    InputError
        If the temperature is outside 0 to 40 °C.

    Notes
    -----
    The saturation term of CIPM-2007 (Metrologia 45 (2008) 149), within 0.1 % of IAPWS-95 for 0 to 40 °C.
    """
    _within("temperature", temperature_c, 0, 40, "°C")
    kelvin = temperature_c + 273.15
    return math.exp(1.2378847e-5 * kelvin**2 - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin) / 1000


def z_factor(liquid_kg_m3: float, air_kg_m3: float, weights_kg_m3: float = WEIGHTS_DENSITY_KG_M3) -> float:
    """Z: volume of liquid per gram of balance reading, buoyancy in air allowed for.

    Parameters
    ----------
    liquid_kg_m3 : float
        Density of the liquid [kg/m³], 700 to 1400.
    air_kg_m3 : float
        Density of the air [kg/m³], 0.5 to 1.5.
    weights_kg_m3 : float
        Density of the weights the balance was adjusted with [kg/m³]; 8000 by convention.

    Returns
    -------
    float
        Z [mL/g].

    Raises
    ------
    InputError
        If a density is outside its range.

    Notes
    -----
    Z = 1000 (1 - rho_air/rho_weights) / (rho_liquid - rho_air), the form of ISO 8655-6 and ISO 4787, with no
    correction for the vessel's expansion.

    Examples
    --------
    >>> round(z_factor(water_density(20.0), air_density_simple(20.0, 101.3, 0.5)), 4)
    1.0029
    """
    _within("liquid density", liquid_kg_m3, 700, 1400, "kg/m³")
    _within("air density", air_kg_m3, 0.5, 1.5, "kg/m³")
    _within("density of the weights", weights_kg_m3, 7000, 9000, "kg/m³")
    return 1000 * (1 - air_kg_m3 / weights_kg_m3) / (liquid_kg_m3 - air_kg_m3)
