"""What a pen should hold, from its dimensions: one formula a family of filling systems, uncertainty included."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pentools.calc.base.uncertainty import Budget, Component, combine
from pentools.calc.weighing.families import Family
from pentools.errors import InputError

__all__ = ["AMBIENT_KPA", "VAPOUR_KPA", "ExpectedVolume", "Limit", "Measured", "expected_volume"]

AMBIENT_KPA = 101.325
VAPOUR_KPA = 2.34  # of water at 20 °C


@dataclass(frozen=True, slots=True)
class Measured:
    """A dimension [mm, mL or a share] with its standard uncertainty in the same unit."""

    value: float
    standard_uncertainty: float = 0.0


@dataclass(frozen=True, slots=True)
class Limit:
    """What a dimension may be.

    Parameters
    ----------
    low, high : float
        The range [`unit`].
    unit : str
        The unit in words, as a sentence shows it: "mm", "mL", "(a share)", or nothing for a count.
    words : str
        What the dimension is called.
    """

    low: float
    high: float
    unit: str
    words: str


@dataclass(frozen=True, slots=True)
class ExpectedVolume:
    """What a pen should hold.

    Parameters
    ----------
    volume_ml : float
        Volume [mL].
    budget : Budget
        Its uncertainty [mL].
    holds : str
        What the volume is, in words.
    assumed : tuple of str
        Dimensions that were not measured and were taken as usual, where they make a difference.
    """

    volume_ml: float
    budget: Budget
    holds: str
    assumed: tuple[str, ...]


def expected_volume(
    family: Family,
    dimensions: Mapping[str, Measured | None],
    limits: Mapping[str, Limit],
    ambient_kpa: float = AMBIENT_KPA,
    vapour_kpa: float = VAPOUR_KPA,
) -> ExpectedVolume | None:
    """What a pen should hold, from its caliper readings.

    Parameters
    ----------
    family : Family
        The formula of the pen's filling system.
    dimensions : mapping of str to Measured or None
        Dimension name to value and standard uncertainty; None where it was not measured.
    limits : mapping of str to Limit
        Dimension name to what it may be; every dimension that the formula takes has to stand in it.
    ambient_kpa : float
        Air pressure [kPa], 60 to 110; matters for a plunger with dead volumes only.
    vapour_kpa : float
        Vapour pressure of the liquid [kPa]; likewise.

    Returns
    -------
    ExpectedVolume or None
        The volume [mL] with its budget; None where a dimension that the formula needs was not measured.

    Raises
    ------
    InputError
        If a dimension is out of range, or the dimensions contradict each other.

    Notes
    -----
    Piston and plunger: the annulus π/4 (bore² - rod²) times the stroke (the rod stands in the ink for a plunger;
    for a piston only where its rod does); a plunger's dead volumes by `plunger_volume_ml`. Sac: see `sac_volume_ml`,
    times the share that pressing empties. Breather tube: the barrel up to the tube's end, less the tube, or what
    the strokes made bring (`pumped_volume_ml`). Reservoir: the barrel less what stands in it. Elementary geometry,
    derived here; sensitivities by central difference.

    Examples
    --------
    >>> from pentools.calc.weighing.families import PISTON
    >>> pen = {"bore": Measured(8.4, 0.02), "stroke": Measured(28.0, 0.2)}
    >>> wide = dict.fromkeys(("bore", "stroke", "rod"), Limit(0.0, 150.0, "mm", "bore, stroke or rod"))
    >>> round(expected_volume(PISTON, pen, wide).volume_ml, 3)
    1.552
    """
    given = {name: m for name, m in dimensions.items() if m is not None}
    if any(name not in given for name in family.needs):
        return None
    used = {name: given[name] for name in family.needs}
    used.update({name: given.get(name, Measured(value, u)) for name, value, u in family.takes})
    _check(used, limits)
    values = {name: m.value for name, m in used.items()} | {"ambient_kpa": ambient_kpa, "vapour_kpa": vapour_kpa}
    volume = family.volume_ml(values)
    if volume <= 0:
        raise InputError(
            "dimensions", "those of a space that holds something", f"{volume:.2f} mL", "Were two of them mixed up?"
        )
    components = [
        Component(
            name.replace("_", " "),
            m.standard_uncertainty,
            _slope(family, values, name, m),
            kind="instrument limit" if name in given else "judged",
        )
        for name, m in used.items()
        if m.standard_uncertainty > 0
    ]
    components = [c for c in components if c.contribution > 0]
    assumed = tuple(c.source for c in components if c.kind == "judged")
    return ExpectedVolume(
        volume, combine(components or [Component("none stated", 0.0)]), _holds(family, values), assumed
    )


def _holds(family: Family, values: Mapping[str, float]) -> str:
    if values.get("strokes") and values.get("stroke_volume"):
        return f"what {values['strokes']:g} strokes bring"
    return family.holds


def _check(used: Mapping[str, Measured], limits: Mapping[str, Limit]) -> None:
    for name, m in used.items():
        limit = limits[name]
        if not limit.low <= m.value <= limit.high:
            raise InputError(
                limit.words,
                f"{limit.low:g} to {limit.high:g} {limit.unit}".rstrip(),
                f"{m.value:g}",
                "Was it typed in another unit?",
            )
    for inner, outer in (("rod", "bore"), ("tube", "bore"), ("nipple", "bore")):
        if inner in used and outer in used and used[inner].value >= used[outer].value:
            raise InputError(
                limits[inner].words,
                f"below the {outer} of {used[outer].value:g} mm",
                f"{used[inner].value:g} mm",
                "Were the two mixed up?",
            )


def _slope(family: Family, values: Mapping[str, float], name: str, m: Measured) -> float:
    step = min(m.standard_uncertainty, 0.01 * m.value) or 1e-6
    above, below = m.value + step, max(m.value - step, 0.0)
    return (family.volume_ml({**values, name: above}) - family.volume_ml({**values, name: below})) / (above - below)
