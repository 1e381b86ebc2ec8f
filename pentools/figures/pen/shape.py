"""The dimensions of one pen that its drawing needs; a dimension that was not measured is None, never 0."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, fields

from pentools.errors import InputError
from pentools.figures.pen.parts import SYSTEM_KEYS

__all__ = ["DIMENSIONS", "PenShape", "dimension_words", "length_of", "shape_from_measurements"]

DIMENSIONS: dict[str, tuple[str, float, float]] = {
    "open_length": ("length uncapped", 60.0, 220.0),
    "capped_length": ("length capped", 60.0, 220.0),
    "barrel_length": ("barrel length", 20.0, 160.0),
    "barrel_diameter": ("barrel diameter", 5.0, 30.0),
    "barrel_depth": ("barrel depth", 10.0, 160.0),
    "bore": ("bore", 2.0, 28.0),
    "section_length": ("section length", 5.0, 45.0),
    "section_diameter": ("section diameter", 4.0, 25.0),
    "nib_length": ("nib, exposed length", 3.0, 45.0),
    "feed_diameter": ("feed diameter", 1.5, 12.0),
    "nipple": ("nipple diameter", 2.0, 15.0),
    "cap_length": ("cap length", 20.0, 120.0),
    "cap_diameter": ("cap diameter", 6.0, 35.0),
    "thread_diameter": ("cap thread diameter", 5.0, 30.0),
    "thread_length": ("cap thread length", 0.5, 20.0),
    "end_length": ("end piece length", 2.0, 60.0),
    "rod": ("rod diameter", 0.5, 12.0),
    "stroke": ("stroke", 2.0, 120.0),
    "head_diameter": ("head diameter", 2.0, 28.0),
    "head_length": ("head length", 0.5, 30.0),
    "groove_diameter": ("groove diameter", 1.0, 27.0),
    "groove_width": ("groove width", 0.3, 10.0),
    "sac_outside": ("sac outside diameter", 2.0, 16.0),
    "sac_wall": ("sac wall", 0.1, 2.0),
    "sac_length": ("sac length", 8.0, 120.0),
    "breather_diameter": ("breather tube diameter", 0.5, 5.0),
    "breather_length": ("breather tube length", 2.0, 140.0),
    "tube_diameter": ("pneumatic tube diameter", 3.0, 25.0),
    "lever_length": ("lever length", 5.0, 50.0),
    "cartridge_length": ("cartridge or converter length", 15.0, 110.0),
    "cartridge_diameter": ("cartridge or converter diameter", 3.0, 14.0),
}
"""Dimension name -> (its words, lowest [mm], highest [mm]); the bounds only stop what cannot be a pen."""

_SMALLER: tuple[tuple[str, str], ...] = (
    ("bore", "barrel_diameter"), ("rod", "bore"), ("rod", "head_diameter"), ("sac_outside", "barrel_diameter"),
    ("groove_diameter", "head_diameter"), ("groove_width", "head_length"), ("breather_diameter", "bore"),
    ("feed_diameter", "section_diameter"), ("tube_diameter", "barrel_diameter"), ("barrel_length", "open_length"),
    ("barrel_length", "capped_length"), ("nib_length", "open_length"), ("section_length", "open_length"),
    ("cap_length", "capped_length"), ("stroke", "open_length"), ("sac_length", "open_length"),
    ("breather_length", "open_length"), ("nipple", "barrel_diameter"), ("barrel_depth", "barrel_length"),
    ("cartridge_diameter", "barrel_diameter"),
)  # fmt: skip
_OTHER_NAMES = {
    "outside": "sac_outside", "wall": "sac_wall", "head": "head_diameter", "groove": "groove_diameter",
    "width": "groove_width", "reach": "breather_length", "breather_tube": "breather_length", "tube": "breather_diameter", "section": "section_diameter",
    "length_capped": "capped_length", "length_uncapped": "open_length", "length_open": "open_length",
    "barrel": "barrel_diameter", "cap": "cap_diameter", "rod_diameter": "rod", "bore_diameter": "bore",
    "nipple_diameter": "nipple", "sac_diameter": "sac_outside", "blind_cap_length": "end_length",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class PenShape:
    """What is known of a pen's proportions.

    Parameters
    ----------
    system : str
        Filling system key, one of `pentools.figures.pen.parts.SYSTEM_KEYS`.
    open_length_mm, capped_length_mm : float or None
        Length without the cap and with it on [mm]; 60 to 220.
    barrel_length_mm, barrel_diameter_mm, barrel_depth_mm, bore_mm : float or None
        Barrel without section and end piece: length, greatest outside diameter, inside depth from the mouth,
        inside diameter [mm].
    section_length_mm, section_diameter_mm, nib_length_mm, feed_diameter_mm, nipple_mm : float or None
        Section as it is seen, its grip, the nib as far as it shows, the feed, the nipple [mm].
    cap_length_mm, cap_diameter_mm, thread_diameter_mm, thread_length_mm : float or None
        Cap and cap thread [mm].
    end_length_mm : float or None
        Blind cap, turning knob or end cap, as far as it shows behind the barrel [mm].
    rod_mm, stroke_mm, head_diameter_mm, head_length_mm, groove_diameter_mm, groove_width_mm : float or None
        Rod, its travel, piston head or plunger washer, and the groove in the head [mm].
    sac_outside_mm, sac_wall_mm, sac_length_mm : float or None
        Sac, or bellows, or bulb [mm].
    breather_diameter_mm, breather_length_mm : float or None
        Breather tube: outside diameter, length behind the section [mm].
    tube_diameter_mm, lever_length_mm, cartridge_length_mm, cartridge_diameter_mm : float or None
        Pneumatic tube, lever, cartridge or converter [mm].

    Raises
    ------
    InputError
        When the system is unknown, a dimension is not a number, lies outside what a pen can be, or is larger
        than the part it has to fit in.

    Notes
    -----
    Every dimension may be None: not measured. The drawing then takes a typical proportion and says so.

    Examples
    --------
    >>> PenShape("piston", barrel_diameter_mm=12.6, bore_mm=8.4).bore_mm
    8.4
    """

    system: str
    open_length_mm: float | None = None
    capped_length_mm: float | None = None
    barrel_length_mm: float | None = None
    barrel_diameter_mm: float | None = None
    barrel_depth_mm: float | None = None
    bore_mm: float | None = None
    section_length_mm: float | None = None
    section_diameter_mm: float | None = None
    nib_length_mm: float | None = None
    feed_diameter_mm: float | None = None
    nipple_mm: float | None = None
    cap_length_mm: float | None = None
    cap_diameter_mm: float | None = None
    thread_diameter_mm: float | None = None
    thread_length_mm: float | None = None
    end_length_mm: float | None = None
    rod_mm: float | None = None
    stroke_mm: float | None = None
    head_diameter_mm: float | None = None
    head_length_mm: float | None = None
    groove_diameter_mm: float | None = None
    groove_width_mm: float | None = None
    sac_outside_mm: float | None = None
    sac_wall_mm: float | None = None
    sac_length_mm: float | None = None
    breather_diameter_mm: float | None = None
    breather_length_mm: float | None = None
    tube_diameter_mm: float | None = None
    lever_length_mm: float | None = None
    cartridge_length_mm: float | None = None
    cartridge_diameter_mm: float | None = None

    def __post_init__(self) -> None:
        if self.system not in SYSTEM_KEYS:
            advice = "Settle how the pen fills first; the drawing follows from it."
            raise InputError("filling system", "one of " + ", ".join(SYSTEM_KEYS), self.system, advice)
        for name, (words, low, high) in DIMENSIONS.items():
            value = self.measured(name)
            if value is None:
                continue
            if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
                raise InputError(words, f"a length from {low:g} to {high:g} mm, or left blank", value)
            if not low <= value <= high:
                raise InputError(words, f"{low:g} to {high:g} mm", f"{value:g} mm", "Was it read in another unit?")
        for inner, outer in _SMALLER:
            small, large = self.measured(inner), self.measured(outer)
            if small is not None and large is not None and small >= large:
                limit = f"smaller than the {dimension_words(outer)} ({large:g} mm)"
                raise InputError(dimension_words(inner), limit, f"{small:g} mm", "Measure both again.")

    def measured(self, dimension: str) -> float | None:
        """A dimension by its name without the unit.

        Parameters
        ----------
        dimension : str
            A key of `DIMENSIONS`.

        Returns
        -------
        float or None
            The dimension [mm]; None where it was not measured.

        Raises
        ------
        InputError
            When there is no such dimension.
        """
        if dimension not in DIMENSIONS:
            raise InputError("dimension", "one of " + ", ".join(DIMENSIONS), dimension)
        value: float | None = getattr(self, f"{dimension}_mm")
        return value


def dimension_words(dimension: str) -> str:
    """A dimension's name in words.

    Parameters
    ----------
    dimension : str
        A key of `DIMENSIONS`.

    Returns
    -------
    str
        For example "sac outside diameter".

    Raises
    ------
    InputError
        When there is no such dimension.
    """
    if dimension not in DIMENSIONS:
        raise InputError("dimension", "one of " + ", ".join(DIMENSIONS), dimension)
    return DIMENSIONS[dimension][0]


def shape_from_measurements(system: str, measurements: Mapping[str, float | None]) -> PenShape:
    """A pen's shape from the lengths a record holds, whatever else it holds.

    Parameters
    ----------
    system : str
        Filling system key.
    measurements : mapping of str to float or None
        Name -> length [mm]. Names may end with ``_mm`` and use hyphens; "outside", "wall", "head", "groove",
        "width", "reach", "tube" and "length" (of the sac, the breather tube or the cartridge, as the system has one) are
        understood. A name the drawing has no use for is passed over.

    Returns
    -------
    PenShape
        Checked.

    Raises
    ------
    InputError
        As `PenShape`.

    Examples
    --------
    >>> shape_from_measurements("lever-sac", {"outside": 7.1, "length": 48.0, "clip-length": 40}).sac_length_mm
    48.0
    """
    known = {field.name for field in fields(PenShape)}
    chosen: dict[str, float] = {}
    for raw, value in measurements.items():
        name = raw.replace("-", "_").removesuffix("_mm")
        if name == "length":
            name = length_of(system)
        name = f"{_OTHER_NAMES.get(name, name)}_mm"
        if value is not None and name in known:
            chosen.setdefault(name, value)
    return PenShape(system, **chosen)


def length_of(system: str) -> str:
    """The dimension that "length" alone means for a filling system.

    Parameters
    ----------
    system : str
        Filling system key.

    Returns
    -------
    str
        Cartridge, breather tube or sac length.
    """
    if system == "cartridge-converter":
        return "cartridge_length"
    return "breather_length" if system in {"bulb", "diaphragm-pump"} else "sac_length"
