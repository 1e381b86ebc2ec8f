"""What people type at a bench, read strictly: a number, a unit, perhaps an uncertainty.

A pattern of our own runs first, because a general unit library misreads ``4 7/8 in`` and ``11,9 mm``
without a word; the library then only converts between units whose names are already known.
"""

from __future__ import annotations

import functools
import math
import re
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from pentools.errors import InputError

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["UNIT_WORDS", "Reading", "convert", "dimension_of", "format_reading", "read_number", "read_quantity"]

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
    "µl": "ul", "μl": "ul", "µL": "ul", "μL": "ul", "uL": "ul", "mL": "ml", "ML": "ml", "Ml": "ml", "cc": "ml",
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

# units of one dimension that differ by a power of ten need no unit library, which is slow to load
_POWERS: dict[str, int] = {
    "um": -3, "mm": 0, "cm": 1, "m": 3, "ug": -6, "mg": -3, "g": 0, "kg": 3, "ul": -3, "ml": 0, "cl": 1, "l": 3,
    "Pa": -3, "hPa": -1, "mbar": -1, "kPa": 0, "bar": 2, "MPa": 3, "%": -2, "1": 0, "ppm": -6, "mN": -3, "N": 0,
    "g/ml": 0, "kg/m3": -3, "mg/h": 0, "g/h": 3,
}  # fmt: skip

UNIT_WORDS: Mapping[str, str] = {**{word: word for word in _UNITS}, **_ALIASES}
"""Every spelling of a unit that is understood, and the unit it stands for."""

_EXAMPLES = {
    "length": "12.31 mm or 0.485 in", "mass": "8.92 g", "volume": "1.5 ml", "temperature": "21 °C",
    "pressure": "1013 hPa", "time": "15 min", "density": "1.005 g/ml", "share": "55 %", "angle": "60 deg",
    "force": "2 N", "mass rate": "3 mg/h",
}  # fmt: skip
_SIGNED = frozenset({"temperature"})

_NUMBER = r"\d+(?:[.,]\d+)?|[.,]\d+"
_VALUE = rf"(?P<sign>[-+−])?\s*(?:(?:(?P<whole>\d+)(?:\s+|\s*-\s*))?(?P<top>\d+)\s*/\s*(?P<bottom>\d+)|(?P<number>{_NUMBER}))"
_UNIT = r"(?P<unit>[^\d\s.,±+-].*)?"
_MEASURE = re.compile(rf"{_VALUE}\s*{_UNIT}")
_SPREAD = re.compile(rf"(?P<number>{_NUMBER})\s*{_UNIT}")
_PLUS_MINUS = re.compile(r"\s*(?:±|\+/-|\+-)\s*")
_VULGAR = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}


@dataclass(frozen=True, slots=True)
class Reading:
    """One measured quantity as it was typed and as it is used.

    Parameters
    ----------
    value : float
        The value in ``unit``.
    unit : str
        The unit of ``value`` and of ``standard_uncertainty``.
    standard_uncertainty : float or None
        What was typed after ±, read as one standard uncertainty (k = 1); None where nothing was typed.
    typed : str
        The text as the person typed it.
    """

    value: float
    unit: str
    standard_uncertainty: float | None = None
    typed: str = ""

    def as_json(self) -> dict[str, Any]:
        """The reading as the JSON object that the record keeps."""
        return {"value": self.value, "unit": self.unit, "u": self.standard_uncertainty, "typed": self.typed}

    @classmethod
    def from_json(cls, data: Mapping[str, Any]) -> Reading:
        """A reading back from the record's JSON object."""
        u = data.get("u")
        return cls(float(data["value"]), str(data["unit"]), None if u is None else float(u), str(data.get("typed", "")))


@functools.lru_cache(maxsize=1)
def _registry() -> Any:
    import pint

    return pint.UnitRegistry()


def _known(word: str, name: str, text: str, unit: str) -> str:
    # "in." is an abbreviation; "g." is a full stop
    word = re.sub(r"\s+", " ", word.strip()).rstrip(".")
    if word in UNIT_WORDS:
        return UNIT_WORDS[word]
    if word.lower() in UNIT_WORDS:
        return UNIT_WORDS[word.lower()]
    raise InputError(
        name,
        f"a number with a unit of {dimension_of(unit)}",
        text,
        f"The unit “{word}” is not known here. Type it like {_EXAMPLES[dimension_of(unit)]}.",
    )


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


@functools.lru_cache(maxsize=512)
def _slope(source: str, target: str) -> float:
    """What one step in a unit is in another (every unit here is linear in the other)."""
    if source == target:
        return 1.0
    if source in _POWERS and target in _POWERS:
        return 10.0 ** (_POWERS[source] - _POWERS[target])
    quantity = _registry().Quantity
    first, second = _UNITS[source][0], _UNITS[target][0]
    return float((quantity(1e3, first).to(second) - quantity(0.0, first).to(second)).magnitude) / 1e3


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
        The value in `target`.

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
    if first in _POWERS and second in _POWERS:
        return float(f"{value * 10.0 ** (_POWERS[first] - _POWERS[second]):.14g}")
    exact = float(_registry().Quantity(value, _UNITS[first][0]).m_as(_UNITS[second][0]))
    return float(f"{exact:.14g}")  # 4-7/8 in is 123.825 mm, not 123.82499999999999


def read_number(text: str, name: str = "number") -> float:
    """A plain decimal number, with a point or a comma as its decimal sign.

    Parameters
    ----------
    text : str
        The text as typed, without a unit.
    name : str
        What it is for, used in the error's sentence.

    Returns
    -------
    float
        The number.

    Raises
    ------
    InputError
        If the text is not one finite number, or its comma could mean thousands.

    Examples
    --------
    >>> read_number("11,9")
    11.9
    """
    clean = text.strip().replace("−", "-")
    if not re.fullmatch(rf"[-+]?(?:{_NUMBER})", clean):
        raise InputError(name, "a plain number", text, "Type it like 12.5.")
    if re.fullmatch(r"[-+]?[1-9]\d{0,2},\d{3}", clean):
        point, whole = clean.replace(",", "."), clean.replace(",", "")
        raise InputError(
            name, "one clear number", text, f"Does the comma mean {point} or {whole}? Type the one you mean."
        )
    return float(clean.replace(",", "."))


def _refuse_odd_text(text: str, name: str, unit: str) -> str:
    clean = text.strip().replace("\u00a0", " ").replace("\u2009", " ").replace("\u202f", " ")
    for sign, fraction in _VULGAR.items():
        clean = re.sub(rf"(?<=\d)\s*{sign}", f" {fraction}", clean).replace(sign, fraction)
    wanted = f"a number with a unit of {dimension_of(unit)}"
    if not clean:
        raise InputError(name, wanted, text, f"Nothing was typed. Type it like {_EXAMPLES[dimension_of(unit)]}.")
    if re.match(r"[-+−]?\s*(nan|inf)", clean, re.IGNORECASE):
        raise InputError(name, wanted, text, "If it was not measured, leave the field empty.")
    return clean


def _from_match(found: re.Match[str], name: str, text: str) -> float:
    if found["top"]:
        if int(found["bottom"]) == 0:
            raise InputError(name, "a fraction with a bottom above 0", text)
        value = float(int(found["whole"] or 0) + Fraction(int(found["top"]), int(found["bottom"])))
        if found["whole"] and int(found["top"]) >= int(found["bottom"]):
            raise InputError(name, "a whole number and a proper fraction", text, "Type it like 5 3/8 in.")
    else:
        value = read_number(found["number"], name)
    return -value if found["sign"] in ("-", "−") else value


def read_quantity(
    text: str,
    unit: str,
    *,
    name: str = "value",
    low: float | None = None,
    high: float | None = None,
    negative: bool | None = None,
) -> Reading:
    """Read one typed quantity and give it in the unit asked for.

    Parameters
    ----------
    text : str
        What was typed: ``8.92 g``, ``5 3/8 in``, ``11,9 mm``, ``25 thou``, ``10.22 ± 0.01 g``. A ``!`` at the
        end says that a value outside the plausible range is meant.
    unit : str
        The unit wanted; it also fixes the dimension.
    name : str
        What is being measured, used in the error's sentence.
    low, high : float or None
        The plausible range [`unit`]; outside it the reader asks whether another unit was meant.
    negative : bool or None
        Whether values below zero make sense; by default only for temperatures.

    Returns
    -------
    Reading
        Value and standard uncertainty [`unit`], with the text as typed.

    Raises
    ------
    InputError
        If the text is not one number with one unit of the right dimension, is not finite, is negative where
        that makes no sense, is ambiguous (``1,234 mm``), or is out of the plausible range without ``!``.

    Examples
    --------
    >>> read_quantity("5 3/8 in", "mm").value
    136.525
    """
    clean = _refuse_odd_text(text, name, unit)
    meant = clean.endswith("!")
    clean = clean.removesuffix("!").rstrip()
    dimension = dimension_of(unit)
    wanted = f"a number with a unit of {dimension}"
    advice = f"Type it like {_EXAMPLES[dimension]}."
    measure, *spreads = _PLUS_MINUS.split(clean)
    found = _MEASURE.fullmatch(measure)
    spread = _SPREAD.fullmatch(spreads[0]) if spreads else None
    if found is None or len(spreads) > 1 or (spreads and spread is None):
        raise InputError(name, wanted, text, advice)
    words = [match["unit"] for match in (found, spread) if match is not None and match["unit"]]
    if not words:
        raise InputError(name, wanted, text, f"The unit is missing. {advice}")
    typed_units = {_known(word, name, text, unit) for word in words}
    if len(typed_units) > 1:
        raise InputError(name, wanted, text, "Value and ± must be in the same unit.")
    typed_unit = typed_units.pop()
    if dimension_of(typed_unit) != dimension:
        raise InputError(name, wanted, text, f"“{words[0]}” is a unit of {dimension_of(typed_unit)}. {advice}")
    raw = _from_match(found, name, text)
    value = convert(raw, typed_unit, unit)
    if not math.isfinite(value):
        raise InputError(name, wanted, text, advice)
    if raw < 0 and not (negative if negative is not None else dimension in _SIGNED):
        raise InputError(name, "zero or more", text, "A minus sign makes no sense here.")
    if not meant:
        _ask_if_implausible(raw, value, unit, typed_unit, name, text, low, high)
    uncertainty = None
    if spread is not None:
        slope = _slope(typed_unit, UNIT_WORDS[unit])
        uncertainty = read_number(spread["number"], f"{name}, after ±") * slope
    return Reading(value, unit, uncertainty, text.strip())


def _ask_if_implausible(  # noqa: PLR0917 - the parts of one question
    raw: float, value: float, unit: str, typed_unit: str, name: str, text: str, low: float | None, high: float | None
) -> None:
    floor = -math.inf if low is None else low
    ceiling = math.inf if high is None else high
    if floor <= value <= ceiling:
        return
    others = [
        word for word, (_, dimension) in _UNITS.items()
        if dimension == dimension_of(unit) and word != typed_unit and floor <= convert(raw, word, unit) <= ceiling
    ]  # fmt: skip
    likely = f" (perhaps {raw:g} {others[0]})" if others else ""
    parts = [] if low is None else [f"at least {low:g} {unit}"]
    parts += [] if high is None else [f"at most {high:g} {unit}"]
    shown = " and ".join(parts)
    raise InputError(
        name, shown, text, f"Was it typed in another unit{likely}? If it is right as it stands, put ! after it."
    )


def format_reading(reading: Reading, digits: int | None = None) -> str:
    """A reading in words for a table: the value with a thin no-break space and its unit.

    Parameters
    ----------
    reading : Reading
        What to show.
    digits : int or None
        Decimals to show; by default as many as carry meaning, at most 4.

    Returns
    -------
    str
        Text such as ``12.31 mm``.
    """
    number = f"{reading.value:.{digits}f}" if digits is not None else f"{round(reading.value, 4):g}"
    spread = f" ± {reading.standard_uncertainty:.2g}" if reading.standard_uncertainty else ""
    shown_unit = {"degC": "°C", "degF": "°F", "ml": "mL", "um": "µm", "1": ""}.get(reading.unit, reading.unit)
    return f"{number}{spread}\u202f{shown_unit}".rstrip("\u202f")
