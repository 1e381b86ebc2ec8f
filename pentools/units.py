"""What people type at a bench, read strictly: a number, a unit, perhaps an uncertainty.

A pattern of our own, because a general unit library misreads ``4 7/8 in`` and ``11,9 mm`` without a word.
"""

from __future__ import annotations

import math
import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from pentools.errors import InputError
from pentools.numbers import fixed, plain
from pentools.unit_table import LIBRARY_NAMES, SHOWN, UNIT_WORDS, convert, dimension_of, registry, slope, unit_named

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

__all__ = [
    "UNIT_WORDS",
    "Reading",
    "convert",
    "dimension_of",
    "format_reading",
    "may_be_negative",
    "read_number",
    "read_quantity",
    "with_last_unit",
]

_EXAMPLES = {
    "length": "12.31 mm or 0.485 in", "mass": "8.92 g", "volume": "1.5 ml", "temperature": "21 °C",
    "pressure": "1013 hPa", "time": "15 min", "density": "1.005 g/ml", "share": "55 %", "angle": "60 deg",
    "force": "60 gf or 0.6 N", "mass rate": "3 mg/h",
}  # fmt: skip
_SIGNED = frozenset({"temperature"})
_LONGEST = 120  # no measurement takes more letters
_MOST_DIGITS = 15
# what may have been meant by a number that is out of range: units that are taken for each other, the likeliest first
_MISTAKEN: dict[str, tuple[str, ...]] = {
    "mm": ("cm", "um", "in"), "cm": ("mm", "in"), "m": ("mm", "cm"), "um": ("mm", "thou"), "in": ("mm", "thou", "cm"),
    "thou": ("um", "mm", "in"), "ft": ("in", "mm"), "g": ("mg", "gr"), "mg": ("g",), "kg": ("g",), "ug": ("mg", "g"),
    "oz": ("g", "gr"), "gr": ("g", "mg"), "lb": ("g", "oz"), "ml": ("ul", "cl"), "ul": ("ml",), "cl": ("ml",), "l": ("ml",),
    "fl oz": ("ml",), "gal": ("l",), "m3": ("l",), "degC": ("degF",), "degF": ("degC",), "K": ("degC",), "hPa": ("kPa", "mmHg"),
    "kPa": ("hPa", "bar"), "Pa": ("hPa", "kPa"), "bar": ("mbar", "kPa"), "mbar": ("kPa",), "mmHg": ("hPa", "kPa"),
    "inHg": ("mmHg", "hPa"), "psi": ("kPa",), "s": ("min",), "min": ("s", "h"), "h": ("min", "d"), "d": ("h",), "%": ("ppm",),
    "1": ("%",), "kg/m3": ("g/ml",), "g/ml": ("kg/m3",), "N": ("mN",), "mN": ("N",), "gf": ("mN",),
    "mg/h": ("mg/d",), "mg/d": ("mg/h",), "g/h": ("mg/h",),
}  # fmt: skip
_TOO_LITTLE = 200  # a guess that leaves less than this part of the highest value is none

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

    def text(self) -> str:
        """What reads back as this reading: as it was typed, else value and unit."""
        return self.typed or f"{plain(self.value, 15)} {self.unit}"

    def as_json(self) -> dict[str, Any]:
        """The reading as the JSON object that the record keeps."""
        return {"value": self.value, "unit": self.unit, "u": self.standard_uncertainty, "typed": self.typed}

    def quantity(self) -> Any:
        """The reading as a quantity of the unit library, in the kit's one registry."""
        return registry().Quantity(self.value, LIBRARY_NAMES[self.unit])

    @classmethod
    def from_json(cls, data: Mapping[str, Any]) -> Reading:
        """A reading back from the record's JSON object."""
        u = data.get("u")
        return cls(float(data["value"]), str(data["unit"]), None if u is None else float(u), str(data.get("typed", "")))


def may_be_negative(unit: str, said: bool | None = None) -> bool:
    """Whether a quantity in this unit may lie below zero: as said, else only a temperature."""
    return dimension_of(unit) in _SIGNED if said is None else said


def _wanted(unit: str) -> str:
    return "a number with a % sign" if dimension_of(unit) == "share" else f"a number with {_said_of(unit)}"


def _said_of(unit: str) -> str:
    return "a share" if dimension_of(unit) == "share" else f"a unit of {dimension_of(unit)}"


def _known(word: str, name: str, text: str, unit: str) -> str:
    # "in." is an abbreviation; "g." is a full stop
    word = re.sub(r"\s+", " ", word.strip()).rstrip(".")
    wanted = _wanted(unit)
    try:
        found = unit_named(word)
    except InputError as error:
        raise InputError(name, wanted, text, error.advice) from None
    if found is None:
        advice = f"The unit “{word}” is not known here. Type it like {_EXAMPLES[dimension_of(unit)]}."
        raise InputError(name, wanted, text, advice)
    return found


def read_number(text: str, name: str = "number", decimal_sign: str = ".") -> float:
    """A plain decimal number, with a point or a comma as its decimal sign.

    Parameters
    ----------
    text : str
        The text as typed, without a unit.
    name : str
        What it is for, used in the error's sentence.
    decimal_sign : {".", ","}
        The bench's own sign: where it is the comma, a point before three figures could part thousands too.

    Returns
    -------
    float
        The number.

    Raises
    ------
    InputError
        If the text is not one number of at most fifteen figures before its decimal sign, or the sign could mean
        thousands.

    Examples
    --------
    >>> read_number("11,9")
    11.9
    """
    if len(text) > _LONGEST:
        raise InputError(name, "a plain number", text, "That is too long to be one number.")
    clean = _with_plain_figures(text.strip().replace("−", "-"), name)
    if not re.fullmatch(rf"[-+]?(?:{_NUMBER})", clean):
        raise InputError(name, "a plain number", text, "Type it like 12.5.")
    if re.search(rf"\d{{{_MOST_DIGITS + 1}}}", re.split(r"[.,]", clean.lstrip("-+0"))[0]):
        raise InputError(name, f"a number of at most {_MOST_DIGITS} figures", text, "No figure of a bench is larger.")
    _ask_if_thousands(clean, text, name, decimal_sign)
    return float(clean.replace(",", "."))


def _ask_if_thousands(clean: str, text: str, name: str, decimal_sign: str) -> None:
    """``1,234`` may be a thousand; ``1.234`` too where the comma is the decimal sign."""
    sign = "," if "," in clean else "."
    if (sign == "." and decimal_sign != ",") or not re.fullmatch(r"[-+]?[1-9]\d{0,2}[.,]\d{3}", clean):
        return
    whole, part = re.split(r"[.,]", clean)
    word = "comma" if sign == "," else "point"
    ways = f"{whole}{decimal_sign}{part} or {whole}{part}"
    advice = (
        f"Does the {word} mean {ways}? Type the one you mean."
        if decimal_sign != ","
        else f"Does the {word} mean {ways}? Type {whole},{part}0 or {whole}{part}."
    )
    raise InputError(name, "one clear number", text, advice)


def _with_plain_figures(text: str, name: str) -> str:
    """The text with figures of full width made plain ones; figures of another script are refused."""
    if text.isascii():
        return text
    plain_text = "".join(unicodedata.normalize("NFKC", sign) if "\uff00" <= sign <= "\uff5e" else sign for sign in text)
    if re.search(r"[^\D0-9]", plain_text):
        raise InputError(name, "a number in the figures 0 to 9", text)
    return plain_text


def _refuse_odd_text(text: str, name: str, unit: str) -> str:
    wanted = _wanted(unit)
    if len(text) > _LONGEST:
        raise InputError(name, wanted, text, "That is too long to be one measurement.")
    clean = text.strip().replace("\u00a0", " ").replace("\u2009", " ").replace("\u202f", " ")
    clean = _with_plain_figures(clean, name)
    for sign, fraction in _VULGAR.items():
        clean = re.sub(rf"(?<=\d)\s*{sign}", f" {fraction}", clean).replace(sign, fraction)
    if not clean:
        raise InputError(name, wanted, text, f"Nothing was typed. Type it like {_EXAMPLES[dimension_of(unit)]}.")
    if re.match(r"[-+−]?\s*(nan|inf)", clean, re.IGNORECASE):
        raise InputError(name, wanted, text, "If it was not measured, leave the field empty.")
    return clean


def _from_match(found: re.Match[str], name: str, text: str, decimal_sign: str) -> float:
    if found["top"]:
        if max(len(found[part] or "") for part in ("whole", "top", "bottom")) > _MOST_DIGITS:
            raise InputError(name, "a fraction of ordinary numbers", text, "Type it like 5 3/8 in.")
        if int(found["bottom"]) == 0:
            raise InputError(name, "a fraction with a bottom above 0", text)
        _ask_if_run_together(found, name, text)
        value = float(int(found["whole"] or 0) + Fraction(int(found["top"]), int(found["bottom"])))
        if found["whole"] and int(found["top"]) >= int(found["bottom"]):
            raise InputError(name, "a whole number and a proper fraction", text, "Type it like 5 3/8 in.")
    else:
        value = read_number(found["number"], name, decimal_sign)
    return -value if found["sign"] in ("-", "−") else value


def _ask_if_run_together(found: re.Match[str], name: str, text: str) -> None:
    """``53/8`` is six and five eighths, or five and three eighths without its space."""
    top, bottom = found["top"], int(found["bottom"])
    if found["whole"] or int(top) < bottom:
        return
    for place in range(1, len(top)):
        if 0 < int(top[place:]) < bottom and top[place] != "0":
            apart, over = f"{top[:place]} {top[place:]}/{bottom}", Fraction(int(top), bottom)
            whole, rest = divmod(over.numerator, over.denominator)
            reduced = f"{whole} {rest}/{over.denominator}" if rest else str(whole)
            raise InputError(
                name, "one clear number", text, f"Does it mean {apart} or {reduced}? Type the one you mean."
            )


def read_quantity(
    text: str,
    unit: str,
    *,
    name: str = "value",
    low: float | None = None,
    high: float | None = None,
    negative: bool | None = None,
    decimal_sign: str = ".",
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
    decimal_sign : {".", ","}
        As for `read_number`.

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
    found, spread, typed_unit = _parts(clean.removesuffix("!").rstrip(), unit, name, text)
    dimension = dimension_of(unit)
    raw = _from_match(found, name, text, decimal_sign)
    value = convert(raw, typed_unit, unit)
    if not abs(value) <= 10**_MOST_DIGITS:
        raise InputError(
            name, _wanted(unit), text, f"No figure of a bench is larger. Type it like {_EXAMPLES[dimension]}."
        )
    if raw < 0 and not may_be_negative(unit, negative):
        raise InputError(name, "zero or more", text, "A minus sign makes no sense here.")
    if not meant:
        _ask_if_implausible(raw, value, unit, typed_unit, name, text, low, high)
    uncertainty = None
    if spread is not None:
        step = slope(typed_unit, UNIT_WORDS[unit])
        uncertainty = read_number(spread["number"], f"{name}, after ±", decimal_sign) * step
    return Reading(value, unit, uncertainty, text.strip())


def _parts(clean: str, unit: str, name: str, text: str) -> tuple[re.Match[str], re.Match[str] | None, str]:
    """The number, what stands after ±, and the one unit of both."""
    dimension, wanted = dimension_of(unit), _wanted(unit)
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
    if unit == "gf" and typed_unit == "g":
        typed_unit = "gf"  # a kitchen scale shows the force on it in grams
    if dimension_of(typed_unit) != dimension:
        raise InputError(name, wanted, text, f"“{words[0]}” is {_said_of(typed_unit)}. {advice}")
    return found, spread, typed_unit


def with_last_unit(parts: Sequence[str]) -> tuple[str, ...]:
    """Typed quantities of which only the last may bear the unit: ``9,10; 9,10; 9,05 mm``.

    Parameters
    ----------
    parts : sequence of str
        Each as it was typed; empty ones are left out.

    Returns
    -------
    tuple of str
        Each with its unit; as they were where the last has none, or one has another.
    """
    texts = [part.strip() for part in parts if part.strip()]
    last = _MEASURE.fullmatch(_PLUS_MINUS.split(texts[-1].removesuffix("!"))[-1].strip()) if texts else None
    unit = last["unit"] if last else None
    return tuple(f"{text} {unit}" if unit and re.fullmatch(_NUMBER, text) else text for text in texts)


def _ask_if_implausible(  # noqa: PLR0917 - the parts of one question
    raw: float, value: float, unit: str, typed_unit: str, name: str, text: str, low: float | None, high: float | None
) -> None:
    floor = -math.inf if low is None else low
    ceiling = math.inf if high is None else high
    if floor <= value <= ceiling:
        return
    least = max(floor, ceiling / _TOO_LITTLE) if floor >= 0 and ceiling < math.inf else floor
    others = [
        word
        for word in _MISTAKEN.get(typed_unit, ())
        if dimension_of(word) == dimension_of(unit) and least <= convert(raw, word, unit) <= ceiling
    ]
    likely = f" (perhaps {plain(raw, 6)} {SHOWN.get(others[0], others[0])})" if others else ""
    parts = [] if low is None else [f"at least {_bound(low, unit)}"]
    parts += [] if high is None else [f"at most {_bound(high, unit)}"]
    shown = " and ".join(parts)
    raise InputError(
        name, shown, text, f"Was it typed in another unit{likely}? If it is right as it stands, put ! after it."
    )


def _bound(value: float, unit: str) -> str:
    if unit == "1":
        return f"{plain(100 * value, 6)} %"
    return f"{plain(value, 6)} {SHOWN.get(unit, unit)}"


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
    number = fixed(reading.value, digits) if digits is not None else plain(round(reading.value, 4), 6)
    spread = f" ± {plain(reading.standard_uncertainty, 2)}" if reading.standard_uncertainty else ""
    return f"{number}{spread}\u202f{SHOWN.get(reading.unit, reading.unit)}".rstrip("\u202f")
