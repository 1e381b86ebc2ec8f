"""A bench's own rings as text: ``1.78x5.28; mine=2.0±0.02 x 5.0±0.05``, measured section first, then inside diameter."""

from __future__ import annotations

import re
from collections.abc import Sequence

from pentools.calc.seal.gland import Ring
from pentools.errors import InputError
from pentools.units import read_number

__all__ = ["STOCK_HINT", "read_stock"]

STOCK_HINT = (
    "measured section x inside in mm, such as 1.78x5.28; 2.0x5.0; a name and a ± may be added: mine=1.80±0.02x5.3±0.05"
)
SECTION_HALF_WIDTH_MM = 0.02
INSIDE_HALF_WIDTH_MM = 0.05
_NUMBER = r"\d+(?:[.,]\d+)?"
_SIZE = rf"(?P<{{0}}>{_NUMBER})(?:\s*(?:±|\+/-)\s*(?P<{{0}}_half>{_NUMBER}))?\s*(?:mm)?"
_RING = re.compile(rf"(?:(?P<name>[^=;]+)=)?\s*{_SIZE.format('section')}\s*[x×X]\s*{_SIZE.format('inside')}\s*")


def read_stock(items: Sequence[str]) -> tuple[Ring, ...]:
    """Measured rings from their text.

    Parameters
    ----------
    items : sequence of str
        One ring each: ``[name=] section [± half-width] x inside [± half-width]``, in mm.

    Returns
    -------
    tuple of Ring
        The rings, marked as measured. Without ± a half-width of 0.02 mm in the section and 0.05 mm inside is taken
        (judged, for light caliper readings at four places).

    Raises
    ------
    InputError
        If a text cannot be read, a size is out of range, or section and inside look swapped.

    Examples
    --------
    >>> ring = read_stock(["1.78x5.28"])[0]
    >>> ring.section_mm, ring.inside_mm
    (1.78, 5.28)
    """
    return tuple(_ring(text.strip()) for text in items)


def _ring(text: str) -> Ring:
    found = _RING.fullmatch(text)
    if found is None:
        raise InputError("ring in stock", "section x inside in mm", text, "Type it like 1.78x5.28.")
    section, inside = read_number(found["section"], "section"), read_number(found["inside"], "inside diameter")
    if section > 1.5 * inside:
        raise InputError(
            "ring in stock",
            "section first, then inside diameter",
            text,
            f"A section of {section:g} mm on {inside:g} mm inside: were the two swapped?",
        )
    if not (0.3 <= section <= 8 and 0.3 <= inside <= 150):
        raise InputError("ring in stock", "0.3 to 8 mm section, 0.3 to 150 mm inside", text)
    halves = [
        read_number(found[f"{part}_half"], f"± of {part}") if found[f"{part}_half"] else None
        for part in ("section", "inside")
    ]
    name = (found["name"] or f"{inside:g}x{section:g}").strip()
    return Ring(
        name,
        inside,
        section,
        INSIDE_HALF_WIDTH_MM if halves[1] is None else halves[1],
        SECTION_HALF_WIDTH_MM if halves[0] is None else halves[0],
        measured=True,
    )
