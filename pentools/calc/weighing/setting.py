"""What a weighing is done with: the room, the liquid, the handling between, each with its share of the doubt."""

from __future__ import annotations

import math
from dataclasses import dataclass

from pentools.calc.base.uncertainty import Component, from_half_width
from pentools.calc.weighing.balance import BALANCES, Balance
from pentools.calc.weighing.density import air_density_simple, water_density, z_factor
from pentools.errors import InputError

__all__ = ["ROOM", "STARTS", "WATER", "WIPED", "Conditions", "Handling", "Liquid", "Setting", "ink_against_water"]

STARTS = ("dry", "drained")
DROP_MEAN, DROP_SPREAD = 0.4, 1 / math.sqrt(12)  # of the largest drop, for a wiped nib (judged, see Handling)
INK_EXPANSION_PER_K = 2.5e-4  # judged, from water with 5 to 20 % of glycol: 2 to 3e-4 a kelvin


@dataclass(frozen=True, slots=True)
class Conditions:
    """The room and its uncertainty.

    Parameters
    ----------
    temperature_c, temperature_half_width_c : float
        Liquid and air temperature and the half-width within which it is known [°C].
    pressure_kpa, pressure_half_width_kpa : float
        Air pressure and its half-width [kPa].
    humidity_share, humidity_half_width_share : float
        Relative humidity and its half-width [1].
    """

    temperature_c: float = 20.0
    temperature_half_width_c: float = 2.0
    pressure_kpa: float = 101.3
    pressure_half_width_kpa: float = 3.0
    humidity_share: float = 0.5
    humidity_half_width_share: float = 0.2


@dataclass(frozen=True, slots=True)
class Liquid:
    """What the pen was filled with.

    Parameters
    ----------
    name : str
        "water" or "ink".
    density_kg_m3 : float or None
        Its density [kg/m³]; None takes water's at the temperature.
    density_uncertainty_kg_m3 : float
        Standard uncertainty of the density [kg/m³].
    """

    name: str = "water"
    density_kg_m3: float | None = None
    density_uncertainty_kg_m3: float = 0.1


@dataclass(frozen=True, slots=True)
class Handling:
    """What the handling between the weighings may add or take away; each has one sign only.

    Parameters
    ----------
    drop_g : float
        The largest drop that may hang at nib and section after wiping [g], zero or more: it only adds.
    evaporation_g : float
        The most that may have dried away between the weighings [g], zero or more: it only takes.

    Notes
    -----
    The drop's standard deviation is that of any size alike, 1/√12 of the largest; its mean is taken as 0.4 of the
    largest instead of half, since it is sometimes nothing and a small one is likelier than a whole one (judged).
    Evaporation is anything up to the most alike.
    """

    drop_g: float = 0.04
    evaporation_g: float = 0.005

    def drop(self) -> tuple[float, float]:
        """Mean of the drop and its standard uncertainty [g]."""
        return DROP_MEAN * self.drop_g, DROP_SPREAD * self.drop_g

    def evaporation(self) -> tuple[float, float]:
        """Mean of what dried away and its standard uncertainty [g]."""
        return self.evaporation_g / 2, from_half_width(self.evaporation_g / 2)


ROOM, WATER, WIPED = Conditions(), Liquid(), Handling()
"""Room, liquid and handling where nothing is said."""


@dataclass(frozen=True, slots=True)
class Setting:
    """All that is not a reading: balance, room, liquid, handling.

    Parameters
    ----------
    balance : Balance
        The balance; where the readings were typed, as `as_read` allows it.
    conditions : Conditions
        The room.
    liquid : Liquid
        What was drawn.
    handling : Handling
        The drop and the evaporation between the weighings.
    start : {"dry", "drained"}
        The pen before it was filled.
    confidence : float
        Level of confidence of the expanded uncertainty [1], 0.5 to 0.9999.

    Raises
    ------
    InputError
        If the start is not known.
    """

    balance: Balance = BALANCES["0.01 g"]
    conditions: Conditions = ROOM
    liquid: Liquid = WATER
    handling: Handling = WIPED
    start: str = "dry"
    confidence: float = 0.95

    def __post_init__(self) -> None:
        if self.start not in STARTS:
            raise InputError("state before filling", "dry or drained", self.start)

    def density_kg_m3(self) -> float:
        """Density of the liquid [kg/m³]; water's at the temperature where none is known."""
        return self.liquid.density_kg_m3 or water_density(self.conditions.temperature_c)

    def z_ml_per_g(self) -> float:
        """Factor from balance reading to volume [mL/g]."""
        return z_factor(self.density_kg_m3(), air_density_simple(*self.room()))

    def room(self) -> tuple[float, float, float]:
        """Temperature [°C], pressure [kPa], humidity [1]."""
        c = self.conditions
        return (c.temperature_c, c.pressure_kpa, c.humidity_share)

    def density_components(self, gained_g: float) -> list[Component]:
        """What liquid and room give to the doubt of a volume [mL], for a mass gained [g]."""
        c, z = self.conditions, self.z_ml_per_g()
        widths = (
            ("temperature", c.temperature_half_width_c, self._slope(0, 0.5, 0.0, 40.0)),
            ("air pressure", c.pressure_half_width_kpa, self._slope(1, 0.5, 60.0, 110.0)),
            ("humidity", c.humidity_half_width_share, self._slope(2, 0.05, 0.0, 1.0)),
        )
        thin = self.density_kg_m3() - air_density_simple(*self.room())
        return [
            Component("density of the liquid", self.liquid.density_uncertainty_kg_m3, gained_g * z / thin),
            *(Component(name, from_half_width(half), gained_g * per_unit) for name, half, per_unit in widths),
        ]

    def _z_at(self, temperature_c: float, pressure_kpa: float, humidity_share: float) -> float:
        air = air_density_simple(temperature_c, pressure_kpa, humidity_share)
        if self.liquid.density_kg_m3 is None:
            return z_factor(water_density(temperature_c), air)
        warmer = temperature_c - self.conditions.temperature_c
        return z_factor(self.liquid.density_kg_m3 * (1 - INK_EXPANSION_PER_K * warmer), air)

    def _slope(self, place: int, step: float, low: float, high: float) -> float:
        """A central difference of Z; a step at the edge of a formula's range is taken inside it."""
        room = self.room()
        below, above = max(room[place] - step, low), min(room[place] + step, high)
        at_low, at_high = ((*room[:place], edge, *room[place + 1 :]) for edge in (below, above))
        return (self._z_at(*at_high) - self._z_at(*at_low)) / (above - below)


def ink_against_water(ink_g: float, water_g: float, temperature_c: float, reading_uncertainty_g: float) -> Liquid:
    """Density of an ink from one syringe filled to one mark, first with ink, then with water.

    Parameters
    ----------
    ink_g, water_g : float
        Masses of the syringe's content [g], above 0.
    temperature_c : float
        Temperature of both [°C], 0 to 40.
    reading_uncertainty_g : float
        Standard uncertainty of one mass [g], mark setting included.

    Returns
    -------
    Liquid
        The ink with its density and standard uncertainty.

    Raises
    ------
    InputError
        If a mass is not above 0 or the density cannot be an ink's (0.9 to 1.3 g/mL).

    Notes
    -----
    rho_ink = rho_water m_ink / m_water; buoyancy cancels to about 1e-5. Derived here.
    """
    if not (ink_g > 0 and water_g > 0):
        raise InputError("masses of ink and water", "above 0 g", f"{ink_g:g} and {water_g:g} g")
    density = water_density(temperature_c) * ink_g / water_g
    if not 900 <= density <= 1300:
        raise InputError(
            "ink density", "900 to 1300 kg/m³", f"{density:.0f} kg/m³", "Was the syringe filled to one mark both times?"
        )
    relative = reading_uncertainty_g * math.hypot(1 / ink_g, 1 / water_g)
    return Liquid("ink", density, density * relative)
