"""What the capacity sum asks for: weighings, liquid, room, balance, and each filling system's own dimensions."""

from __future__ import annotations

import functools

from pentools.calc.weighing.balance import FIGURES
from pentools.calc.weighing.gain import MOST_G
from pentools.fields import Field
from pentools.systems.dimensions import ASKED, LIMITS
from pentools.systems.registry import system_choices, system_named

__all__ = ["BALANCE_FIELDS", "FIELDS", "all_dimension_names", "dimension_fields", "needed_dimensions"]


BALANCE_FIELDS: tuple[Field, ...] = tuple(
    Field(
        figure.name,
        figure.label,
        "quantity",
        unit="g",
        low=figure.low,
        high=figure.high,
        hint=figure.hint,
        default="0.01 g" if figure.name == "readability" else "",
    )
    for figure in FIGURES
)
"""What is asked of a balance, wherever something is weighed."""

_DIMENSIONS: dict[str, Field] = {name: ASKED[name].field() for name in LIMITS}

FIELDS: tuple[Field, ...] = (
    Field("empty", "Empty mass", "quantities", unit="g", low=0, high=200, hint="one or several, such as 23.26 g; 23.25 g"),
    Field("filled", "Filled mass", "quantities", unit="g", low=0, high=200, hint="one or several, such as 25.06 g; 25.05 g"),
    Field("gain", "Gain, tared", "quantities", unit="g", low=0, high=MOST_G, hint="instead of the two masses: what the balance shows after each dip, the empty pen tared away and not emptied between, such as 0.18 g; 0.31 g; 1.20 g"),
    Field("start", "State before filling", "choice", choices=(("dry", "empty and dry"), ("drained", "emptied and drained")), default="dry", hint="a dry first fill reads higher by what the feed holds"),
    Field("liquid", "Liquid", "choice", choices=(("water", "water"), ("ink", "ink")), default="water", hint="water is best for the test"),
    Field("ink_density", "Density of the ink", "quantity", unit="g/ml", low=0.9, high=1.3, hint="such as 1.005 ± 0.006 g/ml; assumed if left empty"),
    Field("ink_mass", "Syringe of ink", "quantity", unit="g", low=0, high=100, hint="ink alone, filled to one mark, such as 2.013 g"),
    Field("water_mass", "The same syringe of water", "quantity", unit="g", low=0, high=100, hint="water alone, to the same mark, such as 1.998 g"),
    Field("temperature", "Temperature", "quantity", unit="degC", low=5, high=35, default="20 °C", hint="of liquid and air, such as 21 °C"),
    Field("pressure", "Air pressure", "quantity", unit="kPa", low=75, high=107, default="1013 hPa", hint="such as 1005 hPa"),
    Field("humidity", "Humidity", "quantity", unit="1", low=0, high=1, default="50 %", hint="such as 45 %"),
    *BALANCE_FIELDS,
    Field("drop", "Largest drop at the nib", "quantity", unit="g", low=0, high=0.2, default="0.04 g", hint="the largest that may hang there after wiping: it only adds, and its mean is taken off; a drop is 0.02 to 0.04 g; 0 g where nib and section were blotted dry"),
    Field("evaporation", "Evaporation", "quantity", unit="g", low=0, high=0.5, default="0.005 g", hint="the most that may have dried away between the weighings: it only takes, and its mean is added"),
    Field("kept", "What it keeps when drained", "quantity", unit="ml", low=0, high=1, hint="drained less dry, where both were weighed; 0.25 to 0.32 ml in three pens of one wiki, taken as 0 to 0.32 ml if left empty"),
    Field("caliper", "Calliper", "quantity", unit="mm", low=0, high=1, default="0.02 mm", hint="one standard uncertainty of a reading; lengths inside are taken as 0.2 mm or this if it is more, unless typed with ±"),
    Field("level", "Level of confidence", "quantity", unit="1", low=0.5, high=0.9999, default="95 %", hint="of the ± that is shown, such as 95 % or 95.45 %"),
    Field("system", "Filling system", "choice", choices=system_choices(), by_words=True, hint="to say what it should hold"),
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
    return tuple(_DIMENSIONS[name] for name in system_named(system).dimensions())


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
    return system_named(system).family.needs


def all_dimension_names() -> tuple[str, ...]:
    """The names of all dimensions of all filling systems."""
    return tuple(_DIMENSIONS)
