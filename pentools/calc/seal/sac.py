"""Sacs: materials and sizes, what a number means, and one size held against a pen."""

from __future__ import annotations

from dataclasses import dataclass

from pentools.errors import InputError

__all__ = [
    "AIR_MM",
    "MATERIALS",
    "SIXTY_FOURTH_MM",
    "STRETCH_HIGH",
    "STRETCH_LOW",
    "TOUCH_MM",
    "SacChoice",
    "SacInHand",
    "SacMaterial",
    "SacRoom",
    "SacSize",
    "sac_number",
    "sac_outside_mm",
]

SIXTY_FOURTH_MM = 25.4 / 64
AIR_MM = 0.25
TOUCH_MM = 0.05
STRETCH_LOW, STRETCH_HIGH = 0.02, 0.25


@dataclass(frozen=True, slots=True)
class SacMaterial:
    """What a sac is made of.

    Parameters
    ----------
    wall_mm : float
        Wall taken where none was measured [mm] (from memory: measure it).
    adhesive : str
        What holds it on its nipple.
    cut : bool
        Whether it is cut to length.
    """

    wall_mm: float
    adhesive: str
    cut: bool = True


MATERIALS: dict[str, SacMaterial] = {
    "latex": SacMaterial(0.5, "shellac"),
    "silicone": SacMaterial(0.6, "silicone adhesive, or shellac bound with thread"),
    "PVC": SacMaterial(0.6, "shellac"),
    "pleated": SacMaterial(0.5, "shellac", cut=False),
}
"""Sac materials: latex, silicone, soft vinyl (PVC), and latex with pleats for a bellows filler."""


@dataclass(frozen=True, slots=True)
class SacSize:
    """A size that is sold.

    Parameters
    ----------
    label : str
        Its name in words, such as ``number 16``.
    outside_mm : float
        Outside diameter [mm].
    number : int or None
        Its trade number; None where it is sold by another measure.
    """

    label: str
    outside_mm: float
    number: int | None = None


@dataclass(frozen=True, slots=True)
class SacRoom:
    """What was measured of the pen.

    Parameters
    ----------
    barrel_mm : float
        Bore of the barrel, or of the guard, where the sac lies, now [mm], 3 to 16.
    nipple_mm : float or None
        Nipple's outside diameter [mm], 1.5 to 14.
    depth_mm : float or None
        From the nipple's shoulder to the barrel's end or the bar's bend [mm], 10 to 150.
    bar_mm : float
        Bore that the press bar takes up [mm], 0 to 3.
    bore_before_mm : float or None
        The same bore before old rubber was cleaned out [mm], 2 to 16.
    cleaned : bool or None
        Whether the barrel was cleaned of old rubber; None where nobody said.
    pneumatic : bool
        Whether the sac lies in a guard and is pressed by air.
    """

    barrel_mm: float
    nipple_mm: float | None = None
    depth_mm: float | None = None
    bar_mm: float = 0.0
    bore_before_mm: float | None = None
    cleaned: bool | None = None
    pneumatic: bool = False


@dataclass(frozen=True, slots=True)
class SacInHand:
    """What is known of the sac.

    Parameters
    ----------
    material : {"latex", "silicone", "PVC", "pleated"}
        What it is made of.
    outside_mm : float or None
        Outside diameter measured on it, over the pleats of a pleated one [mm], 2 to 16; it wins over the number.
    wall_mm : float or None
        Its wall [mm]; a figure from memory where it was not measured.
    mouth_mm : float or None
        Inside diameter of its mouth or neck, where that was measured [mm]; it wins over outside less two walls.
    """

    material: str = "latex"
    outside_mm: float | None = None
    wall_mm: float | None = None
    mouth_mm: float | None = None


@dataclass(frozen=True, slots=True)
class SacChoice:
    """One size held against the pen.

    Parameters
    ----------
    size : SacSize
        The size.
    air_mm : float
        Air left all round, a radial gap [mm].
    stretch_share : float or None
        How far the nipple stretches its mouth [1]; None where the nipple was not measured.
    """

    size: SacSize
    air_mm: float
    stretch_share: float | None

    @property
    def grade(self) -> int:
        """0 fits / 1 a close fit / 2 slips off its nipple or may split / 3 rubs / 4 does not go in."""
        if self.air_mm < 0:
            return 4
        if self.air_mm < TOUCH_MM:
            return 3
        if self.stretch_share is not None and not STRETCH_LOW <= self.stretch_share <= STRETCH_HIGH:
            return 2
        return 1 if self.air_mm < AIR_MM - 1e-9 else 0


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
