"""How much a pen draws, from its mass before and after filling, with an uncertainty budget."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

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
from pentools.calc.weighing.setting import ROOM, WATER, WIPED, Conditions, Handling, Liquid, Setting
from pentools.errors import InputError

__all__ = ["CapacityResult", "capacity_from_weight", "volume_of_gain"]

PLAUSIBLE_FILL_G = 8.0
FEWEST_STEPS = 5  # a gain of fewer last digits asks for a finer balance (judged)
ASSUMED_INK_KG_M3 = 5.0  # an uncertainty this wide was not measured


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
    below_nothing : bool
        Whether the pen came out lighter by more than the weighings are sure of.
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
    below_nothing: bool
    budget: Budget
    z_ml_per_g: float
    gained_g: float
    correction_g: float
    balance: Balance
    start: str
    findings: tuple[Finding, ...]


def capacity_from_weight(
    empty_g: Sequence[float],
    filled_g: Sequence[float],
    balance: Balance,
    conditions: Conditions = ROOM,
    liquid: Liquid = WATER,
    *,
    start: str = "dry",
    handling: Handling = WIPED,
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
    for name, readings in (("empty mass", empty_g), ("filled mass", filled_g)):
        for reading in readings:
            if not 0 <= reading <= 200:
                raise InputError(name, "0 to 200 g", f"{reading:g} g", "Was it typed in another unit?")
    (empty, _), (filled, _) = mean_and_spread(empty_g), mean_and_spread(filled_g)
    setting = Setting(balance, conditions, liquid, handling, start, confidence)
    result = volume_of_gain(filled - empty, _weighing_components(balance, empty_g, filled_g), setting)
    if result.below_nothing:
        raise InputError(
            "filled mass", f"above the empty mass of {empty:.3f} g", f"{filled:.3f} g",
            "Were the two mixed up, or was something taken off the pen between the weighings?",
        )  # fmt: skip
    return replace(result, findings=(*result.findings, *_reading_findings(balance, empty_g, filled_g)))


def volume_of_gain(gained_g: float, weighing: Sequence[Component], setting: Setting) -> CapacityResult:
    """Volume drawn, from the mass gained, however it was weighed.

    Parameters
    ----------
    gained_g : float
        Mass gained, as the balance shows it [g].
    weighing : sequence of Component
        What the balance gives to the doubt of it [g].
    setting : Setting
        Room, liquid, handling, and what the pen was before.

    Returns
    -------
    CapacityResult
        Volume [mL] with its budget, and findings on the gain and the start.
    """
    (drop, drop_u), (dried, dried_u) = setting.handling.drop(), setting.handling.evaporation()
    correction, z = dried - drop, setting.z_ml_per_g()
    budget = combine(
        [
            *(replace(part, sensitivity=part.sensitivity * z) for part in weighing),
            Component("drop left at the nib", drop_u, z),
            Component("evaporation between weighings", dried_u, z),
            *setting.density_components(gained_g + correction),
        ],
        setting.confidence,
    )
    volume = (gained_g + correction) * z
    least = decision_factor(budget.degrees_of_freedom) * budget.standard_uncertainty
    told = volume > least
    findings = (
        *_gain_findings(gained_g, told, least, z, setting.balance),
        *_start_findings(setting.start, setting.liquid),
    )
    drawn = max(volume, 0.0)
    return CapacityResult(
        drawn, drawn + least, told, volume < -budget.expanded_uncertainty, budget, z, gained_g, correction,
        setting.balance, setting.start, findings,
    )  # fmt: skip


def _pooled(empty_g: Sequence[float], filled_g: Sequence[float]) -> tuple[float, int]:
    """Standard deviation of one reading from both states together, and its degrees of freedom."""
    freedom = len(empty_g) + len(filled_g) - 2
    if freedom == 0:
        return 0.0, 0
    squares = ((len(readings) - 1) * mean_and_spread(readings)[1] ** 2 for readings in (empty_g, filled_g))
    return math.sqrt(math.fsum(squares) / freedom), freedom


def _weighing_components(balance: Balance, empty_g: Sequence[float], filled_g: Sequence[float]) -> list[Component]:
    spread, freedom = believed_spread(balance.spread_g, *_pooled(empty_g, filled_g))
    means = math.sqrt(1 / len(empty_g) + 1 / len(filled_g))
    kind = "repeat readings" if math.isfinite(freedom) else "instrument limit"
    limits = (
        ("linearity, counted twice", math.sqrt(2) * from_half_width(balance.linearity_g)),
        ("eccentric loading, two weighings", math.sqrt(2) * from_half_width(balance.eccentricity_g)),
    )
    return [
        Component("readability, two roundings a weighing", 2 * balance.rounding_g, kind="instrument limit"),
        Component("repeatability, two means", spread * means, 1.0, freedom, kind),
        *(Component(name, u, kind="instrument limit") for name, u in limits),
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
