"""The dimensions of one pen that its drawing needs; a dimension that was not measured is None, never 0."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, fields

from pentools.errors import InputError
from pentools.systems.dimensions import DIMENSIONS, dimension_named, dimension_words
from pentools.systems.registry import system_named

__all__ = ["DRAWN", "PenShape", "shape_from_measurements"]

_SMALLER: tuple[tuple[str, str], ...] = (
    ("bore", "barrel_diameter"), ("rod", "bore"), ("rod", "head_diameter"), ("sac_outside", "barrel_diameter"),
    ("groove_diameter", "head_diameter"), ("groove_width", "head_length"), ("breather_diameter", "bore"),
    ("feed_diameter", "section_diameter"), ("tube_diameter", "barrel_diameter"), ("barrel_length", "open_length"),
    ("barrel_length", "capped_length"), ("nib_length", "open_length"), ("section_length", "open_length"),
    ("cap_length", "capped_length"), ("stroke", "open_length"), ("sac_length", "open_length"),
    ("breather_length", "open_length"), ("nipple", "barrel_diameter"), ("barrel_depth", "barrel_length"),
    ("cartridge_diameter", "barrel_diameter"),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class PenShape:
    """What is known of a pen's proportions.

    Parameters
    ----------
    system : str
        Filling system key, one of `pentools.systems.registry.SYSTEMS`.
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
        system_named(self.system)
        for name in DRAWN:
            self._check(name, self.measured(name))
        for inner, outer in _SMALLER:
            small, large = self.measured(inner), self.measured(outer)
            if small is not None and large is not None and small >= large:
                limit = f"smaller than the {dimension_words(outer)} ({large:g} mm)"
                raise InputError(dimension_words(inner), limit, f"{small:g} mm", "Measure both again.")

    def _check(self, name: str, value: float | None) -> None:
        if value is None:
            return
        words, low, high = DIMENSIONS[name].words, DIMENSIONS[name].low, DIMENSIONS[name].high
        if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
            raise InputError(words, f"a length from {low:g} to {high:g} mm, or left blank", value)
        if not low <= value <= high or value <= 0:
            accepted = f"{low:g} to {high:g} mm" if low > 0 else f"above 0, at most {high:g} mm"
            raise InputError(words, accepted, f"{value:g} mm", "Was it read in another unit?")

    def measured(self, dimension: str) -> float | None:
        """A dimension by its name without the unit.

        Parameters
        ----------
        dimension : str
            One of `DRAWN`.

        Returns
        -------
        float or None
            The dimension [mm]; None where it was not measured.

        Raises
        ------
        InputError
            When there is no such dimension.
        """
        if dimension not in DRAWN:
            raise InputError("dimension", "one of " + ", ".join(DRAWN), dimension)
        value: float | None = getattr(self, f"{dimension}_mm")
        return value


DRAWN: tuple[str, ...] = tuple(field.name.removesuffix("_mm") for field in fields(PenShape) if field.name != "system")
"""The dimensions that a drawing takes up, in the order in which they are told."""


def shape_from_measurements(system: str, measurements: Mapping[str, float | None]) -> PenShape:
    """A pen's shape from the lengths a record holds, whatever else it holds.

    Parameters
    ----------
    system : str
        Filling system key.
    measurements : mapping of str to float or None
        Name -> length [mm], as `dimension_named` understands it; "length" alone is that of the sac, the breather tube
        or the cartridge, as the system has one. A name the drawing has no use for is passed over.

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
    length = system_named(system).length
    chosen: dict[str, float] = {}
    for raw, value in measurements.items():
        name = dimension_named(raw, length=length)
        if value is not None and name in DRAWN:
            chosen.setdefault(f"{name}_mm", value)
    return PenShape(system, **chosen)
