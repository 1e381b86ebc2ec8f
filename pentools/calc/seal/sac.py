"""Which sac: what its number means, which size slides into the barrel, goes on the nipple and keeps off the bar."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.errors import InputError

__all__ = ["MATERIALS", "SacFit", "sac_fit", "sac_number", "sac_outside_mm"]

SIXTY_FOURTH_MM = 25.4 / 64
AIR_MM = 0.25
TOUCH_MM = 0.05
END_MM = (3.0, 6.0)
NIPPLE_OVERLAP_MM = 5.0
LIMP_NUMBER = 22
STRETCH_LOW, STRETCH_HIGH = 0.02, 0.25
MATERIALS: dict[str, float] = {"latex": 0.5, "silicone": 0.6, "PVC": 0.6}
"""Sac material and the wall taken where none was measured [mm] (from memory: measure it)."""


@dataclass(frozen=True, slots=True)
class SacFit:
    """A sac for a pen.

    Parameters
    ----------
    number : int
        Number by the outside-diameter reading.
    outside_mm : float
        Outside diameter that the answer is worked out with [mm]: the measured one where there is one.
    number_by_hole : int
        Number by the other reading: the largest whose hole the barrel is.
    largest_mm : float
        Largest outside diameter that keeps its air all round, bar included [mm].
    air_mm : float
        Air left all round, a radial gap [mm].
    nipple_stretch_share : float or None
        How far the nipple stretches the sac's mouth [1]; None where the nipple was not measured.
    length_mm, length_low_mm, length_high_mm : float or None
        Length to cut, mouth to end, and its window [mm]; None where the depth was not measured.
    bar_length_mm : float or None
        Longest press bar for that sac [mm]; None where the depth was not measured.
    adhesive : str
        What holds the sac on its nipple.
    findings : tuple of Finding
        What to know.
    """

    number: int
    outside_mm: float
    number_by_hole: int
    largest_mm: float
    air_mm: float
    nipple_stretch_share: float | None
    length_mm: float | None
    length_low_mm: float | None
    length_high_mm: float | None
    bar_length_mm: float | None
    adhesive: str
    findings: tuple[Finding, ...]


def sac_outside_mm(number: float) -> float:
    """Diameter that a sac number stands for.

    Parameters
    ----------
    number : float
        Sac number, 5 to 40.

    Returns
    -------
    float
        number/64 in [mm]: outside diameter by one reading, smallest hole it slips into by the other.

    Raises
    ------
    InputError
        If the number is out of range.

    Notes
    -----
    Two repairers' pages disagree on the reading, so the measured diameter wins.

    Examples
    --------
    >>> round(sac_outside_mm(18), 2)
    7.14
    """
    if not 5 <= number <= 40:
        raise InputError("sac number", "5 to 40", f"{number:g}")
    return number * SIXTY_FOURTH_MM


def sac_number(diameter_mm: float) -> float:
    """Sac number of a diameter, not rounded.

    Parameters
    ----------
    diameter_mm : float
        Diameter [mm], 2 to 16.

    Returns
    -------
    float
        Diameter in 64ths of an inch [1].

    Raises
    ------
    InputError
        If the diameter is out of range.

    Examples
    --------
    >>> round(sac_number(6.35), 2)
    16.0
    """
    if not 2 <= diameter_mm <= 16:
        raise InputError("sac diameter", "2 to 16 mm", f"{diameter_mm:g} mm")
    return diameter_mm / SIXTY_FOURTH_MM


def sac_fit(
    barrel_mm: float,
    *,
    nipple_mm: float | None = None,
    depth_mm: float | None = None,
    sac_mm: float | None = None,
    wall_mm: float | None = None,
    bar_mm: float = 0.0,
    bore_before_mm: float | None = None,
    cleaned: bool | None = None,
    material: str = "latex",
    pneumatic: bool = False,
) -> SacFit:
    """A sac for a barrel, its nipple and its depth.

    Parameters
    ----------
    barrel_mm : float
        Bore of the barrel, or of the guard, where the sac lies, now [mm], 3 to 16.
    nipple_mm : float or None
        Nipple's outside diameter [mm].
    depth_mm : float or None
        From the nipple's shoulder to the barrel's end or the bar's bend [mm], 10 to 150.
    sac_mm : float or None
        Outside diameter measured on the sac [mm]; it wins over the number.
    wall_mm : float or None
        Wall of the sac [mm]; a figure from memory where it was not measured.
    bar_mm : float
        Bore that the press bar takes up [mm], 0 to 3.
    bore_before_mm : float or None
        The same bore before old rubber was cleaned out [mm].
    cleaned : bool or None
        Whether the barrel was cleaned of old rubber; None where nobody said.
    material : {"latex", "silicone", "PVC"}
        What the sac is made of.
    pneumatic : bool
        Whether the sac lies in a guard and is pressed by air.

    Returns
    -------
    SacFit
        Number by both readings, clearance, length, adhesive, findings.

    Raises
    ------
    InputError
        If a size is out of range or contradicts another, or the material is not known.

    Notes
    -----
    The sac slides in easily with air all round; err small (a repairer's page); 0.25 mm all round is proposed here.
    Nipple a little above the sac's inside; rule of thumb: sac number at most the nipple in 64ths (a size note).
    Length: 3 to 6 mm short of the barrel's end or the bar's bend, plus what goes on the nipple (from memory, common
    practice); a pneumatic sac only just reaches its guard's end, rather short. Bar about the sac's length, ending 2
    to 3 mm short (common practice).

    Examples
    --------
    >>> fit = sac_fit(7.9, nipple_mm=7.2)
    >>> fit.number, round(fit.outside_mm, 2), fit.number_by_hole
    (18, 7.14, 19)
    """
    sizes = (
        ("barrel bore", barrel_mm, 3.0, 16.0),
        ("nipple", nipple_mm, 1.5, 14.0),
        ("depth", depth_mm, 10.0, 150.0),
        ("sac", sac_mm, 2.0, 16.0),
        ("bore before cleaning", bore_before_mm, 2.0, 16.0),
    )
    _check(sizes, barrel_mm, nipple_mm, bar_mm, material)
    largest = barrel_mm - bar_mm - 2 * AIR_MM
    number = math.floor(sac_number(max(largest, 2.0)) + 1e-9)
    if nipple_mm is not None and sac_mm is None:
        number = min(number, math.floor(sac_number(nipple_mm) + 0.25))
    outside = sac_outside_mm(number) if sac_mm is None else sac_mm
    wall = MATERIALS[material] if wall_mm is None else wall_mm
    if 2 * wall >= outside:
        raise InputError("sac wall", f"below half the sac's {outside:.2f} mm", f"{wall:g} mm")
    air = (barrel_mm - bar_mm - outside) / 2
    stretch = None if nipple_mm is None else nipple_mm / (outside - 2 * wall) - 1
    length = low = high = bar_length = None
    if depth_mm is not None:
        short = (0.0, 2.0) if pneumatic else END_MM
        low, high = depth_mm - short[1], depth_mm - short[0]
        length = (low + high) / 2
        bar_length = None if pneumatic else length - 2.5
    findings = _bore_findings(barrel_mm, bore_before_mm, cleaned)
    findings += _size_findings(air, bar_mm, number if sac_mm is None else sac_number(sac_mm), sac_mm)
    findings += _nipple_findings(stretch, nipple_mm, outside, wall_mm is None)
    findings += _material_findings(material, pneumatic)
    by_hole = math.floor(sac_number(barrel_mm - bar_mm) + 1e-9)
    return SacFit(
        number if sac_mm is None else round(sac_number(sac_mm)),
        outside,
        by_hole,
        largest,
        air,
        stretch,
        length,
        low,
        high,
        bar_length,
        _adhesive(material),
        tuple(findings),
    )


def _check(
    sizes: tuple[tuple[str, float | None, float, float], ...],
    barrel: float,
    nipple: float | None,
    bar: float,
    material: str,
) -> None:
    for name, value, low, high in sizes:
        if value is not None and not low <= value <= high:
            raise InputError(name, f"{low:g} to {high:g} mm", f"{value:g} mm", "Was it typed in another unit?")
    if nipple is not None and nipple >= barrel:
        raise InputError(
            "nipple", f"below the barrel's bore of {barrel:g} mm", f"{nipple:g} mm", "Were the two mixed up?"
        )
    if not 0 <= bar <= min(3.0, barrel - 3.0):
        raise InputError("bore that the press bar takes", f"0 to {min(3.0, barrel - 3.0):g} mm", f"{bar:g} mm")
    if material not in MATERIALS:
        raise InputError("sac material", "one of " + ", ".join(MATERIALS), material)


def _bore_findings(barrel: float, before: float | None, cleaned: bool | None) -> list[Finding]:
    if cleaned is False:
        return [
            Finding(
                "stop",
                "Clean the old rubber out of the barrel and measure again: what is left makes every answer a size too small.",
                "old-rubber",
            )
        ]
    if before is not None and barrel - before > 0.1:
        gained = barrel - before
        sizes = gained / SIXTY_FOURTH_MM
        return [
            Finding(
                "note",
                f"Cleaning gained {gained:.2f} mm of bore, {sizes:.1f} sac sizes: the bore after cleaning is used.",
                "old-rubber",
            )
        ]
    if before is not None and before - barrel > 0.1:
        return [
            Finding(
                "warning",
                f"The bore after cleaning is {before - barrel:.2f} mm smaller than before: measure again.",
                "old-rubber",
            )
        ]
    if cleaned is None and before is None:
        return [
            Finding(
                "note",
                "Was old rubber cleaned out first? What sticks to the wall makes the bore read small: measure before and after.",
                "old-rubber",
            )
        ]
    return []


def _size_findings(air: float, bar: float, number: float, measured: float | None) -> list[Finding]:
    found = []
    where = "bar and wall" if bar else "the wall"
    if air < 0:
        found.append(Finding("stop", f"It does not go in: {-2 * air:.2f} mm too thick for {where}.", "too-thick"))
    elif air < TOUCH_MM:
        found.append(Finding("warning", f"It rubs on {where}: only {air:.2f} mm of air all round.", "rubs"))
    elif air < AIR_MM:
        found.append(
            Finding(
                "note",
                f"A close fit, {air:.2f} mm of air all round; {AIR_MM} mm is proposed, and small is the safer side.",
                "close",
            )
        )
    if not bar:
        found.append(
            Finding("note", "No press bar was counted: if there is one, give what it takes of the bore.", "no-bar")
        )
    if number >= LIMP_NUMBER - 1e-9:
        found.append(Finding("note", "Sizes from 22 up are limp, a repairer finds: they spring back poorly.", "limp"))
    if measured is None:
        found.append(
            Finding(
                "note", "Measure the sac itself: its number has two readings, and batches run small.", "measure-sac"
            )
        )
    return found


def _nipple_findings(stretch: float | None, nipple: float | None, outside: float, assumed: bool) -> list[Finding]:
    if stretch is None or nipple is None:
        return []
    guess = " (wall from memory: measure it)" if assumed else ""
    if stretch < STRETCH_LOW:
        return [
            Finding(
                "warning",
                f"The nipple of {nipple:.2f} mm hardly stretches this sac{guess}: it slips off. Build the nipple up with a sleeve cut from a smaller sac.",
                "nipple-small",
            )
        ]
    if stretch > STRETCH_HIGH:
        return [
            Finding(
                "warning",
                f"The nipple stretches it by {100 * stretch:.0f} %{guess}: it may split. A larger or a necked sac is wanted.",
                "nipple-large",
            )
        ]
    if outside > nipple + SIXTY_FOURTH_MM:
        return [
            Finding(
                "note",
                f"By the rule of thumb the sac's number is at most the nipple in 64ths, {sac_number(nipple):.1f}; it still grips by {100 * stretch:.0f} %.",
                "nipple-rule",
            )
        ]
    return []


def _adhesive(material: str) -> str:
    return {"latex": "shellac", "silicone": "silicone sealant", "PVC": "shellac"}[material]


def _material_findings(material: str, pneumatic: bool) -> list[Finding]:
    found = []
    if material == "latex":
        found.append(
            Finding(
                "note",
                "Shellac on the nipple; dust the sac with talc or graphite; no oil, no grease, no ammonia flush on it.",
                "adhesive",
            )
        )
    elif material == "silicone":
        found.append(
            Finding(
                "note",
                "Shellac does not hold silicone well; a silicone sealant does, but it gives off acetic acid: air it before it is closed, and keep it off metal.",
                "adhesive",
            )
        )
        found.append(Finding("note", "Ink dries out through a silicone sac in days, a repairer finds.", "gas"))
    else:
        found.append(
            Finding(
                "warning",
                "Soft vinyl may give off plasticiser that softens celluloid and polystyrene (a trade post): not against those barrels.",
                "plasticiser",
            )
        )
    if pneumatic:
        found.append(
            Finding(
                "note",
                "In a guard the sac only just reaches the end: rather short than long (a public page).",
                "pneumatic",
            )
        )
    return found
