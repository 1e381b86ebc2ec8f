"""What the capacity sum asks for: weighings, liquid, room, balance, and each filling system's own dimensions."""

from __future__ import annotations

import functools

from pentools import tables
from pentools.calc.weighing.expected import FAMILIES, SYSTEMS
from pentools.errors import InputError
from pentools.fields import Field

__all__ = ["FIELDS", "all_dimension_names", "dimension_fields", "needed_dimensions"]


def _mm(name: str, label: str, hint: str, low: float, high: float) -> Field:
    return Field(name, label, "quantity", unit="mm", hint=hint, low=low, high=high)


def _ml(name: str, label: str, hint: str, high: float) -> Field:
    return Field(name, label, "quantity", unit="ml", hint=hint, low=0, high=high)


def _share(name: str, label: str, hint: str) -> Field:
    return Field(name, label, "quantity", unit="1", hint=hint, low=0.1, high=1.0)


_DIMENSIONS: dict[str, Field] = {
    field.name: field
    for field in (
        _mm("bore", "Bore", "inside diameter where the head runs or the ink stands, at three angles; such as 8.50 mm", 1, 28),
        _mm("rod", "Rod", "diameter of the rod that stands in the ink; leave empty if it does not; such as 2.60 mm", 0, 15),
        _mm("stroke", "Stroke", "way of the head from end to end, by the depth rod; such as 28.0 mm", 2, 150),
        _mm("outside", "Sac, outside diameter", "measured on the sac, not read from its number; such as 6.35 mm", 2, 20),
        _mm("wall", "Sac, wall", "half of what two walls pressed together measure; such as 0.50 mm", 0.1, 3),
        _mm("length", "Length inside", "of the sac from nipple to end, or of the cartridge; such as 60 mm", 5, 150),
        _share("pressed_share", "Share that pressing empties", "about 75 % for a bar (judged), such as 75 %"),
        _mm("reach", "Reach of the breather tube", "from the section's face in the barrel to the tube's end; such as 55 mm", 3, 150),
        _mm("tube", "Breather tube, outside diameter", "such as 2.0 mm", 0.3, 8),
        _mm("depth", "Depth of the barrel", "from the section's face to the bottom, by the depth rod; such as 55 mm", 5, 160),
        _mm("nipple", "What stands in the barrel, diameter", "the section's tail or the carrier; such as 6.0 mm", 0, 15),
        _mm("nipple_length", "What stands in the barrel, length", "such as 6.0 mm", 0, 40),
        _ml("dead_behind", "Dead volume behind the washer", "air that stays behind it when the rod is drawn out; none if left empty; such as 0.06 ml", 1),
        _ml("dead_ahead", "Dead volume ahead of the washer", "air ahead of it at the end of the stroke; none if left empty; such as 0.10 ml", 1),
        _mm("head", "Height the liquid is lifted", "from the liquid's surface to the washer at its end; 60 mm if left empty", 0, 200),
        Field("strokes", "Strokes made", "count", low=0, high=60, hint="with the next one, to say what so many strokes should bring; leave empty if pumped until full"),
        _ml("stroke_volume", "Volume of a stroke", "what the diaphragm or bulb moves; such as 0.28 ml", 3),
        _ml("tube_volume", "Content of the breather tube", "pushed back first at each stroke; 0.03 ml (judged) if left empty", 0.5),
        _share("void_share", "Share of the cell that is open", "about 60 % (judged)"),
    )
}  # fmt: skip

FIELDS: tuple[Field, ...] = (
    Field("empty", "Empty mass", "quantities", unit="g", low=0, high=200, required=True, hint="one or several, such as 23.26 g; 23.25 g"),
    Field("filled", "Filled mass", "quantities", unit="g", low=0, high=200, required=True, hint="one or several, such as 25.06 g; 25.05 g"),
    Field("start", "State before filling", "choice", choices=(("dry", "empty and dry"), ("drained", "emptied and drained")), default="dry", hint="a dry first fill reads higher by what the feed holds"),
    Field("liquid", "Liquid", "choice", choices=(("water", "water"), ("ink", "ink")), default="water", hint="water is best for the test"),
    Field("ink_density", "Density of the ink", "quantity", unit="g/ml", low=0.9, high=1.3, hint="such as 1.005 ± 0.006 g/ml; assumed if left empty"),
    Field("ink_mass", "Syringe of ink", "quantity", unit="g", low=0, high=100, hint="ink alone, filled to one mark, such as 2.013 g"),
    Field("water_mass", "The same syringe of water", "quantity", unit="g", low=0, high=100, hint="water alone, to the same mark, such as 1.998 g"),
    Field("temperature", "Temperature", "quantity", unit="degC", low=5, high=35, default="20 °C", hint="of liquid and air, such as 21 °C"),
    Field("pressure", "Air pressure", "quantity", unit="kPa", low=75, high=107, default="1013 hPa", hint="such as 1005 hPa"),
    Field("humidity", "Humidity", "quantity", unit="1", low=0, high=1, default="50 %", hint="such as 45 %"),
    Field("readability", "Readability", "quantity", unit="g", low=0.00001, high=1, default="0.01 g", hint="the balance's last digit, such as 0.01 g"),
    Field("repeatability", "Repeatability", "quantity", unit="g", low=0, high=5, hint="from its sheet; taken from readability if left empty"),
    Field("linearity", "Linearity", "quantity", unit="g", low=0, high=5, hint="from its sheet, half-width, such as 0.02 g"),
    Field("eccentricity", "Eccentric loading", "quantity", unit="g", low=0, high=5, hint="from its sheet, half-width, such as 0.01 g"),
    Field("drop", "Drop left at the nib", "quantity", unit="g", low=0, high=0.2, default="0.02 g", hint="half-width; a drop is 0.02 to 0.04 g"),
    Field("evaporation", "Evaporation", "quantity", unit="g", low=0, high=0.5, default="0.005 g", hint="half-width, between the weighings"),
    Field("caliper", "Calliper", "quantity", unit="mm", low=0, high=1, default="0.02 mm", hint="one standard uncertainty of a reading; lengths inside are taken as 0.2 mm or this if it is more, unless typed with ±"),
    Field("level", "Level of confidence", "quantity", unit="1", low=0.5, high=0.9999, default="95 %", hint="of the ± that is shown, such as 95 % or 95.45 %"),
    Field("system", "Filling system", "choice", choices=tuple((row["key"], row["label"]) for row in tables.rows("filling_systems")), hint="to say what it should hold"),
    *_DIMENSIONS.values(),
)  # fmt: skip


@functools.cache
def dimension_fields(system: str) -> tuple[Field, ...]:
    """The dimensions that a filling system's volume is worked out from.

    Parameters
    ----------
    system : str
        A filling system key.

    Returns
    -------
    tuple of Field
        One field a dimension, in the order of measuring; none is required.

    Raises
    ------
    InputError
        If the system is not known.
    """
    if system not in SYSTEMS:
        raise InputError("filling system", "one of " + ", ".join(SYSTEMS), system)
    family = FAMILIES[SYSTEMS[system]]
    return tuple(_DIMENSIONS[name] for name in (*family.needs, *(name for name, _, _ in family.takes)))


def needed_dimensions(system: str) -> tuple[str, ...]:
    """The dimensions without which nothing can be said of what a filling system should hold.

    Parameters
    ----------
    system : str
        A filling system key.

    Returns
    -------
    tuple of str
        Their names.
    """
    return FAMILIES[SYSTEMS[system]].needs


def all_dimension_names() -> tuple[str, ...]:
    """The names of all dimensions of all filling systems."""
    return tuple(_DIMENSIONS)
