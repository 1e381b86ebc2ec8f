"""Sentences as they are spoken: units and signs as words, what stands in brackets left out, doubts rounded up."""

from __future__ import annotations

import math
import re

from pentools.calc.base.uncertainty import rounded_pair
from pentools.numbers import fixed

__all__ = ["spoken", "spoken_ml"]

_UNITS = {
    "mL": ("millilitre", "millilitres"), "µL": ("microlitre", "microlitres"), "mm": ("millimetre", "millimetres"),
    "µm": ("micrometre", "micrometres"), "mg": ("milligram", "milligrams"), "g": ("gram", "grams"),
    "h": ("hour", "hours"), "min": ("minute", "minutes"), "°C": ("degree", "degrees"), "%": ("percent", "percent"),
}  # fmt: skip
_NAMES = "|".join(re.escape(name) for name in sorted(_UNITS, key=len, reverse=True))
_QUANTITY = re.compile(rf"(?<![\w.])(\d+(?:[.,]\d+)?)[ \u00a0\u202f]*({_NAMES})(?![\w²³/])")
_BRACKETS = re.compile(r"\s*\([^()]*\)")
_SMALL = ("", "a", "two", "three", "four", "five", "six", "seven", "eight", "nine")


def spoken(text: str) -> str:
    """A sentence as one would say it.

    Parameters
    ----------
    text : str
        A sentence of a page.

    Returns
    -------
    str
        Its numbers as they are; what stands in brackets is left out.

    Examples
    --------
    >>> spoken("After 70 h at rest (nib up), it lost 5.1 mg ± 1.8 at 43 °C.").replace("\\u00a0", " ")
    'After 70 hours at rest, it lost 5.1 milligrams, give or take 1.8 at 43 degrees.'
    """
    said = _QUANTITY.sub(_in_words, _BRACKETS.sub("", text))
    said = re.sub(r"\s*±\s*", ", give or take ", said)
    return re.sub(r"(?<=\d)\s*–\s*(?=\d)", " to ", said).strip()


def spoken_ml(volume_ml: float, expanded_ml: float) -> str:
    """A volume with its doubt as one would say it.

    Parameters
    ----------
    volume_ml : float
        Volume [mL].
    expanded_ml : float
        Expanded uncertainty [mL], above 0.

    Returns
    -------
    str
        The doubt in hundredths or tenths of a millilitre, rounded up, and the volume to the same place.

    Examples
    --------
    >>> print(spoken_ml(1.748, 0.009))
    1.75 millilitres, give or take a hundredth
    """
    _, shown = rounded_pair(volume_ml, expanded_ml)  # the doubt as the pages have it
    doubt_ml = float(shown)
    for places, name in ((2, "hundredth"), (1, "tenth")):
        # a digit that only the computer's way of counting adds is none
        steps = max(1, math.ceil(doubt_ml * 10**places - 1e-9))
        if steps < len(_SMALL):
            return f"{fixed(volume_ml, places)}\u00a0millilitres, give or take {_SMALL[steps]} {name}{'s' if steps > 1 else ''}"
    return f"{fixed(volume_ml, 0)}\u00a0millilitres, give or take {math.ceil(doubt_ml - 1e-9)}"


def _in_words(found: re.Match[str]) -> str:
    one, many = _UNITS[found[2]]
    return f"{found[1]}\u00a0{one if found[1] == '1' else many}"
