"""Sacs, washers and sheet in a bench's drawer as text: ``latex 16``, ``latex 6.40 mm``, ``washer 8.5 x 1.5 mm``, ``sheet 0.64 mm``."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.seal.sac import MATERIALS, SacSize, sac_outside_mm
from pentools.errors import InputError
from pentools.sums.seal.stock import read_stock
from pentools.units import read_number, read_quantity

__all__ = ["SACS_HINT", "SHEETS_HINT", "InDrawer", "at_hand", "read_sacs", "read_washers"]

SACS_HINT = "sacs at hand, each with its material: latex 16; latex 6.40 mm; a name may be added: bag of May=latex 16"
SHEETS_HINT = "washers and sheet at hand, such as washer 8.5 x 1.5 mm; sheet 0.64 mm; cork sheet 6 mm"
_NUMBER = r"\d+(?:[.,]\d+)?"
_NAMED = re.compile(r"(?:(?P<name>[^=;]+)=)?\s*(?P<rest>.+)", re.DOTALL)
_SAC = re.compile(
    rf"(?P<material>[a-z]+)\s+(?:sac\s+)?(?:(?P<number>{_NUMBER})|(?P<size>{_NUMBER}\s*[a-z/0-9]+.*))", re.IGNORECASE
)
_WASHER = re.compile(
    rf"(?P<kind>washer|cork|cork ring)\s+(?P<outside>{_NUMBER})\s*(?:mm)?\s*[x×]\s*(?P<hole>{_NUMBER})\s*(?:mm)?",
    re.IGNORECASE,
)
_SHEET = re.compile(rf"(?P<kind>sheet|cork sheet|felt)\s+(?P<thick>{_NUMBER}.*)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class InDrawer:
    """A washer or a sheet at hand.

    Parameters
    ----------
    name : str
        What it is called.
    kind : {"washer", "cork", "sheet", "cork sheet", "felt"}
        What it is.
    outside_mm, hole_mm : float or None
        Of a washer or a cork ring [mm].
    thickness_mm : float or None
        Of a sheet [mm].
    """

    name: str
    kind: str
    outside_mm: float | None = None
    hole_mm: float | None = None
    thickness_mm: float | None = None


def read_sacs(items: Sequence[str], material: str) -> tuple[SacSize, ...]:
    """The sacs of a material that lie in the drawer.

    Parameters
    ----------
    items : sequence of str
        One each: material, then its number or its measured outside diameter; a name before ``=`` may be added.
    material : str
        A key of `pentools.calc.seal.sac.MATERIALS`; those of another are left out.

    Raises
    ------
    InputError
        If a text cannot be read, or its material is not known.

    Examples
    --------
    >>> [(sac.label, round(sac.outside_mm, 2)) for sac in read_sacs(["latex 16", "mine=silicone 6.4 mm"], "latex")]
    [('latex 16', 6.35)]
    """
    found = [_sac(text.strip()) for text in items]
    return tuple(size for of, size in found if of == material)


def at_hand(key: str, items: Sequence[str]) -> tuple[str, ...]:
    """What of a bench's drawer a sum can read; one bad text must not stand in the way of every answer.

    Parameters
    ----------
    key : {"seal", "sac", "washer"}
        The sum.
    items : sequence of str
        Texts as the sum's field ``drawer`` takes them.
    """
    return tuple(text for text in items if _reads(key, text))


def _reads(key: str, text: str) -> bool:
    try:
        if key == "seal":
            read_stock([text])
        elif key == "sac":
            _sac(text.strip())
        else:
            _washer(text.strip())
    except InputError:
        return False
    return True


def _sac(text: str) -> tuple[str, SacSize]:
    name, rest = _named(text)
    found = _SAC.fullmatch(rest)
    material = next((key for key in MATERIALS if found and key.casefold() == found["material"].casefold()), None)
    if found is None or material is None:
        raise InputError("sac in the drawer", f"a material ({', '.join(MATERIALS)}) and a number or a size", text, "Type it like latex 16, or latex 6.40 mm.")  # fmt: skip
    if found["number"]:
        number = read_number(found["number"], "sac number")
        if not (5 <= number <= 40 and number == int(number)):
            raise InputError("sac in the drawer", "a whole number from 5 to 40, or a size with its unit", text)
        return material, SacSize(name or rest, sac_outside_mm(number), int(number))
    outside = read_quantity(found["size"], "mm", name="sac in the drawer", low=2, high=16).value
    return material, SacSize(name or rest, outside)


def read_washers(items: Sequence[str]) -> tuple[InDrawer, ...]:
    """The washers, cork rings and sheets that lie in the drawer.

    Parameters
    ----------
    items : sequence of str
        One each: ``washer`` or ``cork`` with outside x hole, ``sheet``, ``cork sheet`` or ``felt`` with its thickness; a name
        before ``=`` may be added.

    Raises
    ------
    InputError
        If a text cannot be read, or a hole is not smaller than its washer.
    """
    return tuple(_washer(text.strip()) for text in items)


def _washer(text: str) -> InDrawer:
    name, rest = _named(text)
    washer, sheet = _WASHER.fullmatch(rest), _SHEET.fullmatch(rest)
    if washer:
        outside, hole = (read_number(washer[part], part) for part in ("outside", "hole"))
        if not 0 < hole < outside <= 30:
            raise InputError("washer in the drawer", "outside x hole, up to 30 mm", text, "Were the two swapped?")
        return InDrawer(name or rest, washer["kind"].casefold().split()[0], outside, hole)
    if sheet:
        thick = read_quantity(sheet["thick"] if re.search(r"[a-z]", sheet["thick"]) else f"{sheet['thick']} mm", "mm", name="sheet", low=0.05, high=30)  # fmt: skip
        return InDrawer(name or rest, sheet["kind"].casefold(), thickness_mm=thick.value)
    raise InputError("washer or sheet in the drawer", "a washer with its two sizes, or a sheet with its thickness", text, "Type it like washer 8.5 x 1.5 mm, or sheet 0.64 mm.")  # fmt: skip


def _named(text: str) -> tuple[str, str]:
    found = _NAMED.fullmatch(text)
    return ((found["name"] or "").strip(), found["rest"].strip()) if found else ("", text)
