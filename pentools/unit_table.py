"""The units of a bench: their spellings, their dimensions, and what each is in another, by exact factors.

The factors are the defined ones (inch, pound, US gallon, conventional millimetre of mercury, standard gravity); a test
holds every one against the unit library.
"""

from __future__ import annotations

import functools
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from pentools.errors import InputError

__all__ = ["LIBRARY_NAMES", "SHOWN", "UNIT_WORDS", "convert", "dimension_of", "registry", "slope", "unit_named"]

# word as typed -> (name the unit library knows, dimension)
_UNITS: dict[str, tuple[str, str]] = {
    "um": ("micrometer", "length"), "mm": ("millimeter", "length"), "cm": ("centimeter", "length"),
    "m": ("meter", "length"), "in": ("inch", "length"), "thou": ("thou", "length"), "ft": ("foot", "length"),
    "ug": ("microgram", "mass"), "mg": ("milligram", "mass"), "g": ("gram", "mass"), "kg": ("kilogram", "mass"),
    "oz": ("ounce", "mass"), "gr": ("grain", "mass"), "lb": ("pound", "mass"),
    "ul": ("microliter", "volume"), "ml": ("milliliter", "volume"), "cl": ("centiliter", "volume"),
    "l": ("liter", "volume"), "fl oz": ("US_fluid_ounce", "volume"), "gal": ("US_liquid_gallon", "volume"),
    "degC": ("degree_Celsius", "temperature"), "degF": ("degree_Fahrenheit", "temperature"),
    "K": ("kelvin", "temperature"),
    "Pa": ("pascal", "pressure"), "hPa": ("hectopascal", "pressure"), "kPa": ("kilopascal", "pressure"),
    "MPa": ("megapascal", "pressure"), "mbar": ("millibar", "pressure"), "bar": ("bar", "pressure"),
    "mmHg": ("mmHg", "pressure"), "inHg": ("inHg", "pressure"), "psi": ("psi", "pressure"),
    "s": ("second", "time"), "min": ("minute", "time"), "h": ("hour", "time"), "d": ("day", "time"),
    "g/ml": ("gram / milliliter", "density"), "kg/m3": ("kilogram / meter ** 3", "density"),
    "%": ("percent", "share"), "1": ("dimensionless", "share"), "ppm": ("ppm", "share"),
    "deg": ("degree", "angle"), "N": ("newton", "force"), "mN": ("millinewton", "force"),
    "gf": ("force_gram", "force"), "mg/h": ("milligram / hour", "mass rate"), "mg/d": ("milligram / day", "mass rate"),
    "g/h": ("gram / hour", "mass rate"), "m3": ("meter ** 3", "volume"),
}  # fmt: skip

_ALIASES: dict[str, str] = {
    "µm": "um", "μm": "um", "micron": "um", "microns": "um", "mu": "um",
    "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm", "metre": "m", "meter": "m",
    "inch": "in", "inches": "in", "ins": "in", '"': "in", "″": "in", "”": "in", "''": "in", "thousandths": "thou",
    "mil": "thou", "mils": "thou", "foot": "ft", "feet": "ft",
    "µg": "ug", "μg": "ug", "gram": "g", "grams": "g", "gramme": "g", "grammes": "g", "gm": "g", "gms": "g",
    "milligram": "mg", "milligrams": "mg", "kilogram": "kg", "ounce": "oz", "ounces": "oz", "grain": "gr",
    "grains": "gr", "lbs": "lb", "pound": "lb", "pounds": "lb",
    "µl": "ul", "μl": "ul", "µL": "ul", "μL": "ul", "uL": "ul", "mL": "ml", "ML": "ml", "cc": "ml",
    "cm3": "ml", "cm³": "ml", "millilitre": "ml", "millilitres": "ml", "milliliter": "ml", "milliliters": "ml",
    "cL": "cl", "L": "l", "litre": "l", "litres": "l", "liter": "l", "liters": "l",
    "floz": "fl oz", "gallon": "gal", "gallons": "gal", "m³": "m3",
    "°C": "degC", "° C": "degC", "ºC": "degC", "C": "degC", "℃": "degC", "deg C": "degC", "Celsius": "degC",
    "celsius": "degC", "degc": "degC", "c": "degC",
    "°F": "degF", "° F": "degF", "ºF": "degF", "F": "degF", "℉": "degF", "deg F": "degF", "Fahrenheit": "degF",
    "fahrenheit": "degF", "degf": "degF", "f": "degF", "k": "K", "kelvin": "K",
    "pa": "Pa", "hpa": "hPa", "kpa": "kPa", "mpa": "MPa", "mb": "mbar", "mmhg": "mmHg", "torr": "mmHg", "inhg": "inHg",
    "sec": "s", "secs": "s", "second": "s", "seconds": "s", "mins": "min", "minute": "min", "minutes": "min",
    "hr": "h", "hrs": "h", "hour": "h", "hours": "h", "day": "d", "days": "d",
    "g/mL": "g/ml", "g/cm3": "g/ml", "g/cm³": "g/ml", "g/cc": "g/ml", "kg/m³": "kg/m3", "kg/l": "g/ml", "kg/L": "g/ml",
    "percent": "%", "per cent": "%", "pct": "%",
    "°": "deg", "degree": "deg", "degrees": "deg", "newton": "N", "gram-force": "gf",
    "mg/hr": "mg/h", "mg/day": "mg/d", "mg per hour": "mg/h", "mg per day": "mg/d", "g/hr": "g/h",
}  # fmt: skip

UNIT_WORDS: Mapping[str, str] = {**{word: word for word in _UNITS}, **_ALIASES}
"""Every spelling of a unit that is understood, and the unit it stands for."""

LIBRARY_NAMES: Mapping[str, str] = {word: name for word, (name, _) in _UNITS.items()}
"""Each unit as the unit library calls it."""

SHOWN: Mapping[str, str] = {"degC": "°C", "degF": "°F", "ml": "mL", "ul": "µL", "l": "L", "um": "µm", "ug": "µg", "m3": "m³", "deg": "°", "1": ""}  # fmt: skip
"""Units that are shown otherwise than they are kept."""

_MILLI_OR_MEGA = frozenset({"mm", "mg", "ml", "mb", "mbar", "mpa", "mn", "mg/h", "mg/hr", "mg/d", "mg/day"})
_NO_CAPITALS = frozenset({"MB"})
"""In capitals these are something else, and not a thousandth of anything."""

# unit -> what one of it is in the base of its dimension (mm, g, ml, kPa, min, g/ml, 1, deg, N, mg/h), exact
_EXACT: dict[str, str] = {
    "um": "0.001", "mm": "1", "cm": "10", "m": "1000", "in": "25.4", "thou": "0.0254", "ft": "304.8",
    "ug": "0.000001", "mg": "0.001", "g": "1", "kg": "1000", "oz": "28.349523125", "gr": "0.06479891", "lb": "453.59237",
    "ul": "0.001", "ml": "1", "cl": "10", "l": "1000", "fl oz": "29.5735295625", "gal": "3785.411784", "m3": "1000000",
    "Pa": "0.001", "hPa": "0.1", "mbar": "0.1", "kPa": "1", "bar": "100", "MPa": "1000", "mmHg": "0.133322387415",
    "inHg": "3.386388640341", "psi": "8896443230521/1290320000000", "s": "1/60", "min": "1", "h": "60", "d": "1440",
    "g/ml": "1", "kg/m3": "0.001", "%": "0.01", "1": "1", "ppm": "0.000001", "deg": "1", "N": "1", "mN": "0.001",
    "gf": "0.00980665", "mg/h": "1", "mg/d": "1/24", "g/h": "1000", "degC": "1", "K": "1", "degF": "5/9",
}  # fmt: skip
_FACTORS = {unit: Fraction(text) for unit, text in _EXACT.items()}
_ZEROS = {"degC": Fraction(0), "K": Fraction("-273.15"), "degF": Fraction(-160, 9)}  # their noughts [degC]


@functools.lru_cache(maxsize=1)
def registry() -> Any:
    """The unit library's one registry, for who goes on computing with units; slow to load."""
    import pint

    return pint.UnitRegistry()


def unit_named(word: str) -> str | None:
    """The unit that a word stands for; None for one that is not known.

    Parameters
    ----------
    word : str
        A spelling of `UNIT_WORDS`, in capitals too.

    Returns
    -------
    str or None
        A key of `LIBRARY_NAMES`.

    Raises
    ------
    InputError
        If it is a capital or small m that could mean a thousandth or a million times.
    """
    if word in UNIT_WORDS:
        return UNIT_WORDS[word]
    found = UNIT_WORDS.get(word.lower())
    capitals = word.isupper() and word not in _NO_CAPITALS
    if found and word.lower() in _MILLI_OR_MEGA and word[0] != found[0] and not capitals:
        other = word[0] + found[1:]
        raise InputError("unit", "clear", word, f"A capital M is a million times, a small m a thousandth: {found} or {other}?")  # fmt: skip
    return found


def dimension_of(unit: str) -> str:
    """The dimension of a known unit, in words ("length", "mass", …).

    Parameters
    ----------
    unit : str
        A unit of `UNIT_WORDS`, in any of its spellings.

    Returns
    -------
    str
        The dimension's name.

    Raises
    ------
    InputError
        If the unit is not known.
    """
    word = UNIT_WORDS.get(unit)
    if word is None:
        raise InputError("unit", "one of " + ", ".join(_UNITS), unit)
    return _UNITS[word][1]


def slope(source: str, target: str) -> float:
    """What one step in a unit is in another (every unit here is linear in the other)."""
    return float(_FACTORS[source] / _FACTORS[target])


def convert(value: float, source: str, target: str) -> float:
    """A value in another unit of the same dimension.

    Parameters
    ----------
    value : float
        The value in `source`.
    source, target : str
        Units of `UNIT_WORDS`.

    Returns
    -------
    float
        The value in `target`, to fourteen digits.

    Raises
    ------
    InputError
        If a unit is not known or the dimensions differ.

    Examples
    --------
    >>> round(convert(0.469, "in", "mm"), 4)
    11.9126
    """
    if dimension_of(source) != dimension_of(target):
        raise InputError("unit", f"a {dimension_of(target)}", source)
    first, second = UNIT_WORDS[source], UNIT_WORDS[target]
    if first == second:
        return value
    shift = _ZEROS.get(first, Fraction(0)) - _ZEROS.get(second, Fraction(0))
    exact = value * slope(first, second) + float(shift / _FACTORS[second])
    return float(f"{exact:.14g}")  # 4-7/8 in is 123.825 mm, not 123.82499999999999
