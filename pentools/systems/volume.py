"""What a pen of a filling system should hold: its formula with the ranges of its dimensions."""

from __future__ import annotations

from collections.abc import Mapping

from pentools.calc.weighing.expected import AMBIENT_KPA, VAPOUR_KPA, ExpectedVolume, Measured, expected_volume
from pentools.systems.dimensions import LIMITS
from pentools.systems.registry import system_named

__all__ = ["system_volume"]


def system_volume(
    system: str,
    dimensions: Mapping[str, Measured | None],
    ambient_kpa: float = AMBIENT_KPA,
    vapour_kpa: float = VAPOUR_KPA,
) -> ExpectedVolume | None:
    """What a pen of a filling system should hold, from its calliper readings.

    Parameters
    ----------
    system : str
        Filling system key.
    dimensions : mapping of str to Measured or None
        Dimension name (a key of `pentools.systems.dimensions.ASKED`) to its value; None where it was not measured.
    ambient_kpa, vapour_kpa : float
        Air pressure and the liquid's vapour pressure [kPa].

    Returns
    -------
    ExpectedVolume or None
        As `expected_volume`.

    Raises
    ------
    InputError
        When the system is unknown, a dimension is out of range, or two contradict each other.

    Examples
    --------
    >>> pen = {"bore": Measured(8.5, 0.02), "rod": Measured(2.6, 0.02), "stroke": Measured(62.0, 0.2)}
    >>> round(system_volume("plunger-vacuum", pen).volume_ml, 3)
    3.189
    """
    return expected_volume(system_named(system).family, dimensions, LIMITS, ambient_kpa, vapour_kpa)
