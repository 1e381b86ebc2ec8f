"""One line that a balance prints: a mass in grams, or in words why it cannot be taken."""

from __future__ import annotations

import re
from dataclasses import dataclass

from pentools.errors import InputError
from pentools.unit_table import unit_named
from pentools.units import Reading, read_quantity

__all__ = ["Printed", "check_pattern", "read_line"]

LONGEST = 80
# marks of state before the number, a sign that may stand off from it, the number, a unit, marks after it
_USUAL = re.compile(
    r"(?P<before>(?:[A-Za-z]{1,5}[\s,:;.]+)*)"
    r"(?P<sign>[+-]?)\s*(?P<value>\d+(?:[.,]\d+)?)\s*(?P<unit>[A-Za-z]{1,5})"
    r"(?P<after>[\s,;]*[?*~]?|[\s,;]+[A-Za-z]{1,6})"
)
_UNSTABLE = {"us", "d", "sd", "unst", "unstable", "dyn", "?", "~", "*"}
_OVERLOAD = re.compile(r"(?i)\b(ol|oload|overload|over|hh+)\b|[+^¯]{3,}|\d?[-_]{3,}")
_GROUPS = {"value"}


@dataclass(frozen=True, slots=True)
class Printed:
    """What a balance printed.

    Parameters
    ----------
    reading : Reading
        The mass [g], with its last digit as printed.
    line : str
        The line as it came.
    """

    reading: Reading
    line: str


def check_pattern(pattern: str) -> re.Pattern[str] | None:
    """A pattern from ``bench.toml`` for a balance that prints in its own way.

    Parameters
    ----------
    pattern : str
        A regular expression of Python that fits the whole line, with a group ``value`` and, if the line has them,
        ``sign``, ``unit`` and ``unstable``; empty for a usual line.

    Returns
    -------
    Pattern or None
        None for a usual line.

    Raises
    ------
    InputError
        If it is no regular expression or has no group ``value``.
    """
    if not pattern:
        return None
    try:
        found = re.compile(pattern)
    except re.error as error:
        raise InputError("[balance] pattern", "a regular expression", pattern, f"{error}.") from error
    if not set(found.groupindex) >= _GROUPS:
        raise InputError("[balance] pattern", "one with a group named value", pattern, "Write (?P<value>…).")
    return found


def read_line(line: str, pattern: re.Pattern[str] | None = None) -> Printed:
    """Read one printed line.

    Parameters
    ----------
    line : str
        The line, without its end.
    pattern : Pattern or None
        The balance's own way, as `check_pattern` gives it; None for a usual line: marks, sign, number, unit, marks.

    Returns
    -------
    Printed
        The mass.

    Raises
    ------
    InputError
        If the balance was not steady or overloaded, the unit is no unit of mass or is missing, the mass is below
        nothing, or the line is not whole. The text says which.

    Notes
    -----
    A torn line can look whole ("4.86 g" of "14.86 g"): whoever reads from a cable begins after a line's end.

    Examples
    --------
    >>> read_line("ST,+00014.86  g").reading.value
    14.86
    """
    text = line.strip()[:LONGEST]
    if _OVERLOAD.search(text):
        raise InputError(
            "line from the balance", "a mass", text, "It is overloaded, or nothing lies on it as it should."
        )
    found = (pattern or _USUAL).fullmatch(text)
    if found is None:
        raise InputError(
            "line from the balance", "whole: a number with its unit", text, "Press the balance's print key again."
        )
    parts = {name: (value or "").strip() for name, value in found.groupdict().items()}
    marks = {mark.casefold() for mark in re.split(r"[\s,:;.]+", parts.get("before", "")) if mark}
    marks |= {parts.get("after", "").strip(" ,;").casefold(), "?" if parts.get("unstable") else ""}
    if marks & _UNSTABLE:
        raise InputError(
            "line from the balance", "steady", text, "Wait until the display stands still, and print again."
        )
    unit = parts.get("unit") or ("" if pattern is None or "unit" in pattern.groupindex else "g")
    if not unit or unit_named(unit) is None:
        raise InputError("line from the balance", "a mass in grams", text, f"The unit “{unit}” is none of mass.")
    if parts.get("sign") == "-" and re.search(r"[1-9]", parts["value"]):
        raise InputError("line from the balance", "zero or more", text, "Tare it, and weigh again.")
    reading = read_quantity(f"{parts['value'].replace(',', '.')} {unit}", "g", name="line from the balance")
    return Printed(reading, text)
