"""From what was typed for the capacity sum to what its calculations take, and what was typed for nothing."""

from __future__ import annotations

import math
from collections.abc import Mapping

from pentools.calc.base.findings import Finding
from pentools.calc.weighing.capacity import BALANCES, Balance, Conditions, Liquid, ink_against_water
from pentools.calc.weighing.density import saturation_vapour_pressure_kpa
from pentools.calc.weighing.expected import ExpectedVolume, Measured
from pentools.errors import InputError
from pentools.fields import Value
from pentools.sums.weighing.fields import all_dimension_names, dimension_fields
from pentools.systems.dimensions import ASKED
from pentools.systems.volume import system_volume
from pentools.units import Reading

__all__ = [
    "balance_of",
    "conditions_of",
    "expected_of",
    "findings_on_input",
    "liquid_of",
    "masses_of",
    "number_or",
    "system_of",
]

Values = Mapping[str, Value]
ASSUMED_INK = Liquid("ink", 1005.0, 10.0 / math.sqrt(3))  # rectangular, half-width 1 % (judged: no source was found)
ROUGH_INK_KG_M3 = 5.0  # taken where a density is typed without ±
LENGTH_MM = 0.2  # a depth rod or a rule inside a barrel (judged)


def number_or(values: Values, name: str, usual: float) -> float:
    """The number typed for a field, or what is usual.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.
    name : str
        The field.
    usual : float
        Taken where nothing was typed, in the field's unit.

    Returns
    -------
    float
        The number, in the field's unit.
    """
    reading = values.get(name)
    return reading.value if isinstance(reading, Reading) else usual


def masses_of(values: Values, name: str) -> tuple[float, ...]:
    """The masses typed for one state of the pen.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.
    name : str
        "empty" or "filled".

    Returns
    -------
    tuple of float
        Masses [g], one or more.

    Raises
    ------
    InputError
        If there is none.
    """
    readings = values.get(name)
    found = tuple(r.value for r in readings if isinstance(r, Reading)) if isinstance(readings, tuple) else ()
    if not found:
        raise InputError(f"{name} mass", "one or more masses", "", "Type it like 23.26 g.")
    return found


def balance_of(values: Values) -> Balance:
    """The balance, with what its sheet does not say taken as usual for its readability.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.

    Returns
    -------
    Balance
        Its limits [g]; a ± typed with a mass raises the repeatability to it.
    """
    readability = number_or(values, "readability", 0.01)
    usual = BALANCES["0.01 g"] if readability >= 0.005 else BALANCES["0.001 g"]
    scale = readability / usual.readability_g
    typed = [r.standard_uncertainty or 0.0 for name in ("empty", "filled") for r in _readings(values.get(name))]
    return Balance(
        readability,
        max(number_or(values, "repeatability", usual.repeatability_g * scale), *typed, 0.0),
        number_or(values, "linearity", usual.linearity_g * scale),
        number_or(values, "eccentricity", usual.eccentricity_g * scale),
    )


def _readings(value: Value) -> tuple[Reading, ...]:
    return tuple(r for r in value if isinstance(r, Reading)) if isinstance(value, tuple) else ()


def conditions_of(values: Values) -> Conditions:
    """The room; a ± typed with a value is one standard uncertainty of it.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.

    Returns
    -------
    Conditions
        Temperature, pressure, humidity, each with its half-width.
    """
    usual = Conditions()
    found: list[float] = []
    for name, value, half_width in (
        ("temperature", usual.temperature_c, usual.temperature_half_width_c),
        ("pressure", usual.pressure_kpa, usual.pressure_half_width_kpa),
        ("humidity", usual.humidity_share, usual.humidity_half_width_share),
    ):
        reading = values.get(name)
        spread = reading.standard_uncertainty if isinstance(reading, Reading) else None
        found += [number_or(values, name, value), half_width if spread is None else spread * math.sqrt(3)]
    return Conditions(*found)


def liquid_of(values: Values, conditions: Conditions, balance: Balance) -> Liquid:
    """What the pen was filled with.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.
    conditions : Conditions
        The room.
    balance : Balance
        The balance the syringe was weighed on.

    Returns
    -------
    Liquid
        Water, or ink with its density as weighed, as typed, or as assumed.

    Raises
    ------
    InputError
        If the syringe was weighed with one liquid only.
    """
    if values.get("liquid") != "ink":
        return Liquid()
    ink, water = values.get("ink_mass"), values.get("water_mass")
    if (ink is None) != (water is None):
        raise InputError(
            "syringe",
            "weighed with ink and with water, to the same mark",
            "only one of the two",
            "Weigh the other, or leave both empty.",
        )
    if isinstance(ink, Reading) and isinstance(water, Reading):
        rounding = balance.readability_g / math.sqrt(12)
        one_reading = math.hypot(max(balance.repeatability_g, rounding), math.sqrt(2) * rounding)
        return ink_against_water(ink.value, water.value, conditions.temperature_c, one_reading)
    density = values.get("ink_density")
    if isinstance(density, Reading):
        u = density.standard_uncertainty
        return Liquid("ink", 1000 * density.value, ROUGH_INK_KG_M3 if u is None else 1000 * u)
    return ASSUMED_INK


def system_of(values: Values) -> str | None:
    """The filling system's key; None where it was not said.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.

    Returns
    -------
    str or None
        The key.
    """
    system = values.get("system")
    return system if isinstance(system, str) and system else None


def expected_of(values: Values, conditions: Conditions) -> ExpectedVolume | None:
    """What the pen should hold by its dimensions.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.
    conditions : Conditions
        The room.

    Returns
    -------
    ExpectedVolume or None
        None where the system or a dimension that it needs was not given.

    Raises
    ------
    InputError
        If a dimension is out of range or contradicts another.
    """
    system = system_of(values)
    if system is None:
        return None
    caliper = number_or(values, "caliper", 0.02)
    dimensions: dict[str, Measured | None] = {}
    for field in dimension_fields(system):
        value = values.get(field.name)
        if isinstance(value, Reading):
            given = value.standard_uncertainty
            dimensions[field.name] = Measured(
                value.value, _usual(field.name, field.unit, value.value, caliper) if given is None else given
            )
        elif isinstance(value, int | float) and not isinstance(value, bool):
            dimensions[field.name] = Measured(float(value))
    vapour = saturation_vapour_pressure_kpa(conditions.temperature_c)
    return system_volume(system, dimensions, conditions.pressure_kpa, vapour)


def _usual(name: str, unit: str, value: float, caliper: float) -> float:
    if unit == "1":
        return 0.05
    if unit == "ml":
        return 0.1 * value
    return max(caliper, LENGTH_MM) if ASKED[name].rough else caliper


def findings_on_input(values: Values) -> tuple[Finding, ...]:
    """What was typed and could not be used, so that nothing is dropped in silence.

    Parameters
    ----------
    values : mapping of str to Value
        Field name to value.

    Returns
    -------
    tuple of Finding
        Warnings and notes.
    """
    found = []
    if values.get("liquid") != "ink" and any(
        values.get(name) is not None for name in ("ink_density", "ink_mass", "water_mass")
    ):
        found.append(
            Finding(
                "warning",
                "An ink's density was given, but the liquid is water: it was not used. Say that the liquid is ink if it is.",
                "ink-unused",
            )
        )
    given = [name for name in all_dimension_names() if values.get(name) is not None]
    system = system_of(values)
    if system is None:
        if given:
            found.append(
                Finding(
                    "warning",
                    "Dimensions were given, but not the filling system: say which, and what it should hold can be worked out.",
                    "system-missing",
                )
            )
        return tuple(found)
    used = {field.name for field in dimension_fields(system)}
    unused = ", ".join(name.replace("_", " ") for name in given if name not in used)
    if unused:
        found.append(Finding("note", f"Not used for this filling system: {unused}.", "dimensions-unused"))
    return tuple(found)
