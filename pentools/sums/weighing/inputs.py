"""From what was typed for a sum of weighing to what its calculations take, and what was typed for nothing."""

from __future__ import annotations

import math

from pentools.calc.base.findings import Finding
from pentools.calc.weighing.balance import FIGURES, Balance, as_read, usual_balance
from pentools.calc.weighing.density import saturation_vapour_pressure_kpa
from pentools.calc.weighing.diagnosis import UsualShare
from pentools.calc.weighing.expected import ExpectedVolume, Measured
from pentools.calc.weighing.setting import Conditions, Handling, Liquid, ink_against_water
from pentools.digits import last_digit
from pentools.errors import InputError
from pentools.sums.base import Inputs
from pentools.sums.weighing.fields import all_dimension_names, dimension_fields
from pentools.systems.dimensions import ASKED, LIMITS
from pentools.systems.registry import system_named
from pentools.systems.volume import system_volume
from pentools.tables.fillers import usual_fill

__all__ = [
    "balance_of",
    "conditions_of",
    "expected_of",
    "findings_on_input",
    "handling_of",
    "kept_of",
    "liquid_of",
    "masses_of",
    "usual_of",
]

ASSUMED_INK = Liquid("ink", 1005.0, 10.0 / math.sqrt(3))  # rectangular, half-width 1 % (judged: no source was found)
ROUGH_INK_KG_M3 = 5.0  # taken where a density is typed without ±
LENGTH_MM = 0.2  # a depth rod or a rule inside a barrel (judged)
USUAL_READABILITY_G = 0.01


def masses_of(given: Inputs, name: str) -> tuple[float, ...]:
    """The masses typed for one state of the pen.

    Parameters
    ----------
    given : Inputs
        What was typed.
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
    found = given.numbers(name)
    if not found:
        raise InputError(
            f"{name} mass",
            "filled in; or the gain on a tared balance instead of both masses",
            "",
            "Type it like 23.26 g.",
        )
    return found


def balance_of(given: Inputs, weighed: tuple[str, ...]) -> tuple[Balance, tuple[Finding, ...]]:
    """The balance, with what its sheet does not say taken as usual for its readability.

    Parameters
    ----------
    given : Inputs
        What was typed.
    weighed : tuple of str
        The fields that hold the masses read on it.

    Returns
    -------
    balance : Balance
        Its limits [g], no finer than the digits typed; a ± typed with a mass raises the repeatability to it.
    findings : tuple of Finding
        What was taken, where the digits do not bear out what was said.
    """
    known = {figure.name: given.number(figure.name) for figure in FIGURES}
    readings = [reading for name in weighed for reading in given.readings(name)]
    said = usual_balance(known["readability"] or USUAL_READABILITY_G, known)
    balance, findings = as_read(said, [last_digit(reading) for reading in readings])
    spread = max((reading.standard_uncertainty or 0.0 for reading in readings), default=0.0)
    if spread > balance.repeatability_g:
        balance = usual_balance(
            balance.readability_g,
            {f.name: spread if f.name == "repeatability" else getattr(balance, f"{f.name}_g") for f in FIGURES},
        )
    return balance, findings


def conditions_of(given: Inputs) -> Conditions:
    """The room; a ± typed with a value is one standard uncertainty of it.

    Parameters
    ----------
    given : Inputs
        What was typed.

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
        reading = given.reading(name)
        spread = reading.standard_uncertainty if reading else None
        found += [given.number(name, value), half_width if spread is None else spread * math.sqrt(3)]
    return Conditions(*found)


def handling_of(given: Inputs) -> Handling:
    """The largest drop and the most that dried away."""
    usual = Handling()
    return Handling(given.number("drop", usual.drop_g), given.number("evaporation", usual.evaporation_g))


def liquid_of(given: Inputs, conditions: Conditions, balance: Balance) -> Liquid:
    """What the pen was filled with.

    Parameters
    ----------
    given : Inputs
        What was typed.
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
    if given.text("liquid") != "ink":
        return Liquid()
    ink, water = given.reading("ink_mass"), given.reading("water_mass")
    if (ink is None) != (water is None):
        raise InputError(
            "syringe",
            "weighed with ink and with water, to the same mark",
            "only one of the two",
            "Weigh the other, or leave both empty.",
        )
    if ink and water:
        read, _ = as_read(balance, (last_digit(ink), last_digit(water)))
        one_reading = math.hypot(read.spread_g, math.sqrt(2) * read.rounding_g)
        return ink_against_water(ink.value, water.value, conditions.temperature_c, one_reading)
    density = given.reading("ink_density")
    if density:
        u = density.standard_uncertainty
        return Liquid("ink", 1000 * density.value, ROUGH_INK_KG_M3 if u is None else 1000 * u)
    return ASSUMED_INK


def expected_of(given: Inputs, conditions: Conditions) -> ExpectedVolume | None:
    """What the pen should hold by its dimensions.

    Parameters
    ----------
    given : Inputs
        What was typed.
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
    system = given.text("system")
    if system is None:
        return None
    caliper = given.number("caliper", 0.02)
    dimensions: dict[str, Measured | None] = {}
    for field in dimension_fields(system):
        value, reading = given.number(field.name), given.reading(field.name)
        if value is None:
            continue
        spread = reading.standard_uncertainty if reading else 0.0
        taken = _usual_doubt(field.name, field.unit, value, caliper) if spread is None else spread
        dimensions[field.name] = Measured(value, taken)
    vapour = saturation_vapour_pressure_kpa(conditions.temperature_c)
    return system_volume(system, dimensions, conditions.pressure_kpa, vapour)


def _usual_doubt(name: str, unit: str, value: float, caliper: float) -> float:
    if unit == "1":
        return 0.05
    if unit == "ml":
        return 0.1 * value
    return max(caliper, LENGTH_MM) if ASKED[name].rough else caliper


def usual_of(system: str) -> UsualShare:
    """What a sound pen of a system draws of what the kit works out that it should hold.

    Parameters
    ----------
    system : str
        Filling system key.

    Returns
    -------
    UsualShare
        The table's share; a sac's is a share of its whole inside there, and of what pressing empties here. Where the
        table has no row, anything from nothing to all is usual and no verdict is given.
    """
    found = usual_fill(system)
    if found is None:
        return UsualShare(0.0, 0.5, 1.0, "not known")
    pressed = next((value for name, value, _ in system_named(system).family.takes if name == "pressed_share"), 1.0)
    return UsualShare(found.low / pressed, found.typical / pressed, found.high / pressed, found.certainty)


def kept_of(given: Inputs) -> tuple[float, float] | None:
    """Least and most that this pen keeps when drained [mL], where it was weighed; else None.

    Parameters
    ----------
    given : Inputs
        What was typed; a ± typed with it is one standard uncertainty, 0.03 mL (judged, a drop) where there is none.

    Returns
    -------
    tuple of float or None
        Two standard uncertainties to each side.
    """
    kept = given.reading("kept")
    if kept is None:
        return None
    spread = 0.03 if kept.standard_uncertainty is None else kept.standard_uncertainty
    return max(kept.value - 2 * spread, 0.0), kept.value + 2 * spread


def findings_on_input(given: Inputs) -> tuple[Finding, ...]:
    """What was typed and could not be used, so that nothing is dropped in silence.

    Parameters
    ----------
    given : Inputs
        What was typed.

    Returns
    -------
    tuple of Finding
        Warnings and notes.
    """
    found = []
    if given.text("liquid") != "ink" and any(given.given(n) for n in ("ink_density", "ink_mass", "water_mass")):
        found.append(Finding("warning", "weighing.ink-unused"))
    typed = [name for name in all_dimension_names() if given.given(name)]
    system = given.text("system")
    if system is None:
        return (*found, Finding("warning", "weighing.system-missing")) if typed else tuple(found)
    used = {field.name for field in dimension_fields(system)}
    unused = [LIMITS[name].words for name in typed if name not in used]
    if unused:
        found.append(Finding("note", "weighing.dimensions-unused", names=unused))
    return tuple(found)
