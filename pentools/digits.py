"""How finely a reading was typed, and the reading shown with just as many decimals."""

from __future__ import annotations

import re

from pentools.numbers import plain
from pentools.units import UNIT_WORDS, Reading, convert, format_reading

__all__ = ["last_digit", "reading_in_words"]

_TYPED = re.compile(r"[-+−]?\s*\d*(?:[.,](\d+))?\s*([^\d\s.,±+!-][^±+!]*)?(?:(?:±|\+/?-)\s*[\d.,]+\s*([^\d!]*))?!?")


def _decimals_and_unit(reading: Reading) -> tuple[int, str] | None:
    """How many decimals were typed and in which unit; None for a fraction, or where nothing was typed."""
    found = _TYPED.fullmatch(reading.typed.strip())
    if not reading.typed or found is None:
        return None
    word = (found[2] or found[3] or reading.unit).strip().rstrip(".")
    unit = UNIT_WORDS.get(word) or UNIT_WORDS.get(word.lower())
    return None if unit is None else (len(found[1] or ""), unit)


def last_digit(reading: Reading) -> float | None:
    """What one step of the last digit typed is worth: 23.2 g was not read to 0.01 g.

    Parameters
    ----------
    reading : Reading
        A reading as it was typed.

    Returns
    -------
    float or None
        The step [the reading's unit], above 0; None where a fraction was typed, or the value came as a number.

    Examples
    --------
    >>> last_digit(Reading(23.2, "g", typed="23.2 g"))
    0.1
    """
    found = _decimals_and_unit(reading)
    if found is None:
        return None
    step = convert(1 + 10.0 ** -found[0], found[1], reading.unit) - convert(1, found[1], reading.unit)
    return float(f"{step:.9g}")


def _decimals_typed(reading: Reading) -> int | None:
    """As many decimals as were typed, where it was typed in the unit that is shown: 128.5 mm is not 128.50 mm."""
    found = _decimals_and_unit(reading)
    return found[0] if found is not None and found[1] == reading.unit else None


def reading_in_words(reading: Reading) -> str:
    """A reading for a table: as many decimals as were typed, a length from 2 mm on in inches too."""
    if reading.unit == "1":
        return f"{plain(100 * reading.value, 6)}\u202f%"
    decimals = _decimals_typed(reading)
    if reading.unit == "mm" and reading.value >= 2:  # below 2 mm inches say nothing more
        shown = format_reading(reading, 2 if decimals is None else decimals)
        return f"{shown} ({reading.value / 25.4:.3f}\u202fin)"
    return format_reading(reading, decimals)
