"""How much a pen draws, from its mass before and after filling, with an uncertainty budget."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import Budget, Component, combine, from_half_width, mean_and_spread
from pentools.calc.weighing.density import air_density_simple, water_density, z_factor
from pentools.errors import InputError

__all__ = ["BALANCES", "Balance", "CapacityResult", "Conditions", "Liquid", "capacity_from_weight", "ink_against_water"]

START_WORDS = {"dry": "empty and dry", "drained": "emptied and drained"}
PLAUSIBLE_FILL_G = 8.0
INK_EXPANSION_PER_K = 2.5e-4  # judged, from water with 5 to 20 % of glycol: 2 to 3e-4 a kelvin
ASSUMED_INK_KG_M3 = 5.0  # an uncertainty this wide was not measured


@dataclass(frozen=True, slots=True)
class Balance:
    """What is known of a balance; all masses in gram.

    Parameters
    ----------
    readability_g : float
        Last digit [g], above 0.
    repeatability_g : float
        Standard deviation of repeated weighings [g].
    linearity_g : float
        Largest error of the scale, half-width [g].
    eccentricity_g : float
        Largest change off the pan's middle, half-width [g].
    """

    readability_g: float
    repeatability_g: float
    linearity_g: float
    eccentricity_g: float


# by readability only: what such balances commonly state (common practice, no source)
BALANCES: dict[str, Balance] = {
    "1 g": Balance(1.0, 1.0, 2.0, 1.0),
    "0.1 g": Balance(0.1, 0.1, 0.2, 0.1),
    "0.01 g": Balance(0.01, 0.01, 0.02, 0.01),
    "0.001 g": Balance(0.001, 0.002, 0.003, 0.002),
}


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
class CapacityResult:
    """What the pen draws.

    Parameters
    ----------
    volume_ml : float
        Volume [mL].
    budget : Budget
        Its uncertainty [mL].
    z_ml_per_g : float
        Factor from balance reading to volume [mL/g].
    gained_g : float
        Mass gained [g].
    start : str
        "dry" or "drained".
    findings : tuple of Finding
        Advice.
    """

    volume_ml: float
    budget: Budget
    z_ml_per_g: float
    gained_g: float
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


def capacity_from_weight(  # noqa: PLR0917 - the inputs of a weighing
    empty_g: Sequence[float],
    filled_g: Sequence[float],
    balance: Balance,
    conditions: Conditions = Conditions(),
    liquid: Liquid = Liquid(),
    start: str = "dry",
    residual_drop_g: float = 0.02,
    evaporation_g: float = 0.005,
    confidence: float = 0.95,
) -> CapacityResult:
    """Volume drawn, from weighings before and after filling.

    Parameters
    ----------
    empty_g, filled_g : sequence of float
        Balance readings [g], one or more each, 0 to 200.
    balance : Balance
        The balance.
    conditions : Conditions
        The room.
    liquid : Liquid
        What was drawn.
    start : {"dry", "drained"}
        The pen before it was filled.
    residual_drop_g : float
        Half-width of the drop that may hang at nib and section after wiping [g].
    evaporation_g : float
        Half-width of what may have gone into the air between the weighings [g].
    confidence : float
        Level of confidence of the expanded uncertainty [1], 0.5 to 0.9999.

    Returns
    -------
    CapacityResult
        Volume [mL] with its budget and findings.

    Raises
    ------
    InputError
        If a reading is out of range, filled is not heavier than empty, or the start is not known.

    Notes
    -----
    V = (mean filled - mean empty) Z. Each weighing carries two roundings (its zero and its load), d/√12 each; the
    scale's linearity counts once a weighing, so twice, which is a safe bound since the two loads lie close together
    (QUAM example A2 does the same); repeatability is never below d/√12, since readings that are all alike on a
    coarse scale are rounding and not perfection. The scatter of the readings themselves, pooled over both states,
    is used with its degrees of freedom where it is larger than what the balance states. Good for 0.05 to 8 mL and
    5 to 35 °C. Sources: JCGM 100:2008; form of Z as in ISO 8655-6; drop and evaporation are judged.

    Examples
    --------
    >>> result = capacity_from_weight([23.26], [25.06], BALANCES["0.01 g"], Conditions(21.0, 2.0, 100.0))
    >>> round(result.volume_ml, 4), round(result.z_ml_per_g, 4)
    (1.8055, 1.003)
    """
    if start not in START_WORDS:
        raise InputError("state before filling", "dry or drained", start)
    for name, readings in (("empty mass", empty_g), ("filled mass", filled_g)):
        for reading in readings:
            if not 0 <= reading <= 200:
                raise InputError(name, "0 to 200 g", f"{reading:g} g", "Was it typed in another unit?")
    if not balance.readability_g > 0:
        raise InputError("readability", "above 0 g", f"{balance.readability_g:g} g")
    empty, _ = mean_and_spread(empty_g)
    filled, _ = mean_and_spread(filled_g)
    gained = filled - empty
    if gained <= 0:
        raise InputError(
            "filled mass", f"above the empty mass of {empty:.3f} g", f"{filled:.3f} g",
            "Were the two mixed up, or was something taken off the pen between the weighings?",
        )  # fmt: skip
    air = air_density_simple(conditions.temperature_c, conditions.pressure_kpa, conditions.humidity_share)
    density = liquid.density_kg_m3 or water_density(conditions.temperature_c)
    z = z_factor(density, air)
    components = [
        *_balance_components(balance, empty_g, filled_g, z),
        Component("drop left at the nib", from_half_width(residual_drop_g), z),
        Component("evaporation between weighings", from_half_width(evaporation_g), z),
        *_density_components(gained, z, density, liquid, conditions),
    ]
    findings = (*_findings(gained, start, balance, liquid), *_reading_findings(balance, empty_g, filled_g))
    return CapacityResult(gained * z, combine(components, confidence), z, gained, start, findings)


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
    rounding = balance.readability_g / math.sqrt(12)
    stated = max(balance.repeatability_g, rounding)
    scatter, freedom = _pooled(empty_g, filled_g)
    means = math.sqrt(1 / len(empty_g) + 1 / len(filled_g))
    if scatter > stated:
        repeatability = Component("repeatability, two means", scatter * means, z, freedom, "repeat readings")
    else:
        repeatability = Component("repeatability, two means", stated * means, z, kind="instrument limit")
    limits = (
        ("readability, two roundings a weighing", 2 * rounding),
        ("linearity, counted twice", math.sqrt(2) * from_half_width(balance.linearity_g)),
        ("eccentric loading, two weighings", math.sqrt(2) * from_half_width(balance.eccentricity_g)),
    )
    first, *others = [Component(name, u, z, kind="instrument limit") for name, u in limits]
    return [first, repeatability, *others]


def _density_components(
    gained: float, z: float, density: float, liquid: Liquid, conditions: Conditions
) -> list[Component]:
    c = conditions

    def z_at(temperature_c: float, pressure_kpa: float, humidity_share: float) -> float:
        air = air_density_simple(temperature_c, pressure_kpa, humidity_share)
        if liquid.density_kg_m3 is None:
            return z_factor(water_density(temperature_c), air)
        return z_factor(density * (1 - INK_EXPANSION_PER_K * (temperature_c - c.temperature_c)), air)

    # central differences; a step at the edge of a formula's range is taken inside it
    t_low, t_high = max(c.temperature_c - 0.5, 0.0), min(c.temperature_c + 0.5, 40.0)
    p_low, p_high = max(c.pressure_kpa - 0.5, 60.0), min(c.pressure_kpa + 0.5, 110.0)
    h_low, h_high = max(c.humidity_share - 0.05, 0.0), min(c.humidity_share + 0.05, 1.0)
    per_degree = (z_at(t_high, c.pressure_kpa, c.humidity_share) - z_at(t_low, c.pressure_kpa, c.humidity_share)) / (
        t_high - t_low
    )
    per_kpa = (z_at(c.temperature_c, p_high, c.humidity_share) - z_at(c.temperature_c, p_low, c.humidity_share)) / (
        p_high - p_low
    )
    per_share = (z_at(c.temperature_c, c.pressure_kpa, h_high) - z_at(c.temperature_c, c.pressure_kpa, h_low)) / (
        h_high - h_low
    )
    air = air_density_simple(c.temperature_c, c.pressure_kpa, c.humidity_share)
    return [
        Component("density of the liquid", liquid.density_uncertainty_kg_m3, gained * z / (density - air)),
        Component("temperature", from_half_width(c.temperature_half_width_c), gained * per_degree),
        Component("air pressure", from_half_width(c.pressure_half_width_kpa), gained * per_kpa),
        Component("humidity", from_half_width(c.humidity_half_width_share), gained * per_share),
    ]


def _findings(gained: float, start: str, balance: Balance, liquid: Liquid) -> tuple[Finding, ...]:
    found = []
    if start == "dry":
        found.append(
            Finding(
                "note",
                "It was filled from dry, so the reading includes what the feed and section keep; a refill of a drained pen reads less by that.",
                "start-dry",
            )
        )
    else:
        found.append(
            Finding(
                "note", "It was filled from drained, so what the feed still held is not counted again.", "start-drained"
            )
        )
    if gained < 5 * balance.readability_g:
        found.append(
            Finding(
                "warning",
                f"The gain of {gained:.3g} g is only {gained / balance.readability_g:.0f} steps of this balance. A finer balance would tell more.",
                "coarse-balance",
            )
        )
    if gained > PLAUSIBLE_FILL_G:
        found.append(
            Finding(
                "warning",
                f"A gain of {gained:.2f} g is more than pens hold. Was the pen weighed with other parts the second time?",
                "too-much",
            )
        )
    if liquid.name == "ink" and liquid.density_uncertainty_kg_m3 >= ASSUMED_INK_KG_M3:
        found.append(
            Finding(
                "note",
                f"The ink's density, {(liquid.density_kg_m3 or 0) / 1000:.3f} g/mL, is assumed or known only roughly. To know it, weigh one syringe filled to one mark with ink and with water.",
                "ink-density",
            )
        )
    return tuple(found)


def _reading_findings(balance: Balance, empty_g: Sequence[float], filled_g: Sequence[float]) -> tuple[Finding, ...]:
    found = []
    stated = max(balance.repeatability_g, balance.readability_g / math.sqrt(12))
    for name, readings in (("empty", empty_g), ("filled", filled_g)):
        apart = max(readings) - min(readings)
        # four standard deviations between the extremes of a few readings are out of the common run (judged)
        if apart > 4 * stated and apart > 2 * balance.readability_g:
            found.append(
                Finding(
                    "warning",
                    f"The {name} weighings lie {apart:.3g} g apart, more than this balance scatters. Look for a draught, a drop, or a part left off, and weigh again; until then the scatter itself is in the ±.",
                    f"scatter-{name}",
                )
            )
    if min(len(empty_g), len(filled_g)) < 3:
        found.append(
            Finding(
                "note",
                "Three weighings of each state would show the balance's scatter; with fewer, its sheet is believed unless the readings scatter more.",
                "few-weighings",
            )
        )
    return tuple(found)
