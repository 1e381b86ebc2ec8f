"""How much a pen draws, from its mass before and after filling, with an uncertainty budget."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import (
    Budget,
    Component,
    believed_spread,
    combine,
    decision_factor,
    from_half_width,
    mean_and_spread,
)
from pentools.calc.weighing.balance import Balance
from pentools.calc.weighing.density import air_density_simple, water_density, z_factor
from pentools.errors import InputError

__all__ = ["CapacityResult", "Conditions", "Handling", "Liquid", "capacity_from_weight", "ink_against_water"]

STARTS = ("dry", "drained")
PLAUSIBLE_FILL_G = 8.0
FEWEST_STEPS = 5  # a gain of fewer last digits asks for a finer balance (judged)
DROP_MEAN, DROP_SPREAD = 0.4, 1 / math.sqrt(12)  # of the largest drop, for a wiped nib (judged, see Handling)
INK_EXPANSION_PER_K = 2.5e-4  # judged, from water with 5 to 20 % of glycol: 2 to 3e-4 a kelvin
ASSUMED_INK_KG_M3 = 5.0  # an uncertainty this wide was not measured


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


@dataclass(frozen=True, slots=True)
class CapacityResult:
    """What the pen draws.

    Parameters
    ----------
    volume_ml : float
        Volume [mL]; 0 where the weighings come out lighter by less than they are sure of.
    at_most_ml : float
        Upper limit of the volume, 95 % one-sided [mL].
    told : bool
        Whether the gain can be told from nothing.
    budget : Budget
        Its uncertainty [mL].
    z_ml_per_g : float
        Factor from balance reading to volume [mL/g].
    gained_g : float
        Mass gained, as the balance shows it [g].
    correction_g : float
        What was added to it for the mean drop and the mean evaporation [g]; below 0 where the drop is the larger.
    balance : Balance
        The balance it was counted with.
    start : str
        "dry" or "drained".
    findings : tuple of Finding
        Advice.
    """

    volume_ml: float
    at_most_ml: float
    told: bool
    budget: Budget
    z_ml_per_g: float
    gained_g: float
    correction_g: float
    balance: Balance
    start: str
    findings: tuple[Finding, ...]


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


def capacity_from_weight(
    empty_g: Sequence[float],
    filled_g: Sequence[float],
    balance: Balance,
    conditions: Conditions = Conditions(),
    liquid: Liquid = Liquid(),
    *,
    start: str = "dry",
    handling: Handling = Handling(),
    confidence: float = 0.95,
) -> CapacityResult:
    """Volume drawn, from weighings before and after filling.

    Parameters
    ----------
    empty_g, filled_g : sequence of float
        Balance readings [g], one or more each, 0 to 200.
    balance : Balance
        The balance; where the readings were typed, as `as_read` allows it.
    conditions : Conditions
        The room.
    liquid : Liquid
        What was drawn.
    start : {"dry", "drained"}
        The pen before it was filled.
    handling : Handling
        The drop and the evaporation between the weighings.
    confidence : float
        Level of confidence of the expanded uncertainty [1], 0.5 to 0.9999.

    Returns
    -------
    CapacityResult
        Volume [mL] with its budget and findings; a gain too small to be told from nothing is said to be so.

    Raises
    ------
    InputError
        If a reading is out of range, the filled pen is lighter than the empty one by more than the weighings are
        sure of, or the start is not known.

    Notes
    -----
    V = (mean filled - mean empty - mean drop + mean evaporation) Z. Each weighing carries two roundings (its zero and
    its load), d/√12 each; the scale's linearity is one error for each of the two loads, shared by all weighings of
    that load, so it counts twice and is not averaged (QUAM example A2 does the same); repeatability is never below
    d/√12, since readings that are all alike on a coarse scale are rounding and not perfection. The scatter of the
    readings themselves, pooled over both states, is used with its degrees of freedom where it is wider than chance
    lets the balance's be (`believed_spread`). A gain is told from nothing above 1.645 standard uncertainties. Good
    for 0.05 to 8 mL and 5 to 35 °C. Sources: JCGM 100:2008; form of Z as in ISO 8655-6; drop and evaporation judged.
    That the stated 95 % hold is simulated in ``tests/calc/weighing/test_simulated.py``.

    Examples
    --------
    >>> from pentools.calc.weighing.balance import BALANCES
    >>> result = capacity_from_weight([23.26], [25.06], BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0))
    >>> round(result.volume_ml, 4), round(result.correction_g, 4), round(result.z_ml_per_g, 4)
    (1.7919, -0.0135, 1.003)
    """
    if start not in STARTS:
        raise InputError("state before filling", "dry or drained", start)
    for name, readings in (("empty mass", empty_g), ("filled mass", filled_g)):
        for reading in readings:
            if not 0 <= reading <= 200:
                raise InputError(name, "0 to 200 g", f"{reading:g} g", "Was it typed in another unit?")
    (empty, _), (filled, _) = mean_and_spread(empty_g), mean_and_spread(filled_g)
    (drop, drop_u), (dried, dried_u) = handling.drop(), handling.evaporation()
    gained, correction = filled - empty, dried - drop
    air = air_density_simple(conditions.temperature_c, conditions.pressure_kpa, conditions.humidity_share)
    density = liquid.density_kg_m3 or water_density(conditions.temperature_c)
    z = z_factor(density, air)
    components = [
        *_balance_components(balance, empty_g, filled_g, z),
        Component("drop left at the nib", drop_u, z),
        Component("evaporation between weighings", dried_u, z),
        *_density_components(gained + correction, z, density, liquid, conditions),
    ]
    budget = combine(components, confidence)
    volume = (gained + correction) * z
    if volume < -budget.expanded_uncertainty:
        raise InputError(
            "filled mass", f"above the empty mass of {empty:.3f} g", f"{filled:.3f} g",
            "Were the two mixed up, or was something taken off the pen between the weighings?",
        )  # fmt: skip
    least = decision_factor(budget.degrees_of_freedom) * budget.standard_uncertainty
    told = volume > least
    findings = (
        *_gain_findings(gained, told, least, z, balance),
        *_start_findings(start, liquid),
        *_reading_findings(balance, empty_g, filled_g),
    )
    return CapacityResult(
        max(volume, 0.0), max(volume, 0.0) + least, told, budget, z, gained, correction, balance, start, findings
    )


def _pooled(empty_g: Sequence[float], filled_g: Sequence[float]) -> tuple[float, int]:
    """Standard deviation of one reading from both states together, and its degrees of freedom."""
    freedom = len(empty_g) + len(filled_g) - 2
    if freedom == 0:
        return 0.0, 0
    squares = ((len(readings) - 1) * mean_and_spread(readings)[1] ** 2 for readings in (empty_g, filled_g))
    return math.sqrt(math.fsum(squares) / freedom), freedom


def _balance_components(
    balance: Balance, empty_g: Sequence[float], filled_g: Sequence[float], z: float
) -> list[Component]:
    spread, freedom = believed_spread(balance.spread_g, *_pooled(empty_g, filled_g))
    means = math.sqrt(1 / len(empty_g) + 1 / len(filled_g))
    kind = "repeat readings" if math.isfinite(freedom) else "instrument limit"
    limits = (
        ("linearity, counted twice", math.sqrt(2) * from_half_width(balance.linearity_g)),
        ("eccentric loading, two weighings", math.sqrt(2) * from_half_width(balance.eccentricity_g)),
    )
    return [
        Component("readability, two roundings a weighing", 2 * balance.rounding_g, z, kind="instrument limit"),
        Component("repeatability, two means", spread * means, z, freedom, kind),
        *(Component(name, u, z, kind="instrument limit") for name, u in limits),
    ]


def _density_components(
    gained: float, z: float, density: float, liquid: Liquid, conditions: Conditions
) -> list[Component]:
    c = conditions
    room = (c.temperature_c, c.pressure_kpa, c.humidity_share)

    def z_at(temperature_c: float, pressure_kpa: float, humidity_share: float) -> float:
        air = air_density_simple(temperature_c, pressure_kpa, humidity_share)
        if liquid.density_kg_m3 is None:
            return z_factor(water_density(temperature_c), air)
        return z_factor(density * (1 - INK_EXPANSION_PER_K * (temperature_c - c.temperature_c)), air)

    def slope(place: int, step: float, low: float, high: float) -> float:
        # a central difference; a step at the edge of a formula's range is taken inside it
        below, above = max(room[place] - step, low), min(room[place] + step, high)
        at_low, at_high = ((*room[:place], edge, *room[place + 1 :]) for edge in (below, above))
        return (z_at(*at_high) - z_at(*at_low)) / (above - below)

    air = air_density_simple(*room)
    widths = (
        ("temperature", c.temperature_half_width_c, slope(0, 0.5, 0.0, 40.0)),
        ("air pressure", c.pressure_half_width_kpa, slope(1, 0.5, 60.0, 110.0)),
        ("humidity", c.humidity_half_width_share, slope(2, 0.05, 0.0, 1.0)),
    )
    return [
        Component("density of the liquid", liquid.density_uncertainty_kg_m3, gained * z / (density - air)),
        *(Component(name, from_half_width(half), gained * per_unit) for name, half, per_unit in widths),
    ]


def _gain_findings(gained: float, told: bool, least_ml: float, z: float, balance: Balance) -> list[Finding]:
    found = []
    if not told:
        found.append(
            Finding(
                "warning",
                "weighing.gain-not-told",
                gained_g=gained,
                least_g=least_ml / z,
                digit_g=balance.readability_g,
            )
        )
    elif gained < FEWEST_STEPS * balance.readability_g * (1 - 1e-9):
        found.append(
            Finding("warning", "weighing.coarse-balance", gained_g=gained, steps=gained / balance.readability_g)
        )
    if gained > PLAUSIBLE_FILL_G:
        found.append(Finding("warning", "weighing.too-much", gained_g=gained))
    return found


def _start_findings(start: str, liquid: Liquid) -> list[Finding]:
    found = [Finding("note", "weighing.start-dry" if start == "dry" else "weighing.start-drained")]
    if liquid.name == "ink" and liquid.density_uncertainty_kg_m3 >= ASSUMED_INK_KG_M3:
        found.append(Finding("note", "weighing.ink-density", g_ml=(liquid.density_kg_m3 or 0.0) / 1000))
    return found


def _reading_findings(balance: Balance, empty_g: Sequence[float], filled_g: Sequence[float]) -> list[Finding]:
    found = []
    for name, readings in (("empty", empty_g), ("filled", filled_g)):
        apart = max(readings) - min(readings)
        # four standard deviations between the extremes of a few readings are out of the common run (judged)
        if apart > 4 * balance.spread_g and apart > 2 * balance.readability_g:
            found.append(Finding("warning", f"weighing.scatter-{name}", state=name, apart_g=apart))
    if min(len(empty_g), len(filled_g)) < 3:
        found.append(Finding("note", "weighing.few-weighings"))
    return found
