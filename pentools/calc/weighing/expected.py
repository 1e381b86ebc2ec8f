"""What a pen should hold, from its dimensions: one formula a family of filling systems, uncertainty included."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pentools.calc.base.uncertainty import Budget, Component, combine
from pentools.calc.weighing.volumes import area_mm2, plunger_volume_ml, pumped_volume_ml, sac_volume_ml
from pentools.errors import InputError

__all__ = [
    "AMBIENT_KPA",
    "FAMILIES",
    "SYSTEMS",
    "ExpectedVolume",
    "Family",
    "Measured",
    "expected_volume",
    "sac_volume_ml",
]

AMBIENT_KPA = 101.325
VAPOUR_KPA = 2.34  # of water at 20 °C


@dataclass(frozen=True, slots=True)
class Measured:
    """A dimension [mm, mL or a share] with its standard uncertainty in the same unit."""

    value: float
    standard_uncertainty: float = 0.0


@dataclass(frozen=True, slots=True)
class Family:
    """Filling systems that share a formula.

    Parameters
    ----------
    key : str
        Its name.
    needs : tuple of str
        Dimensions without which there is no answer.
    takes : tuple of (str, float, float)
        Further dimensions with the value and the standard uncertainty taken where they are not measured.
    holds : str
        What the volume is, for a sentence ("what the stroke sweeps").
    volume_ml : callable
        Dimensions to volume [mL].
    """

    key: str
    needs: tuple[str, ...]
    takes: tuple[tuple[str, float, float], ...]
    holds: str
    volume_ml: Callable[[Mapping[str, float]], float]


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


def _piston(d: Mapping[str, float]) -> float:
    return area_mm2(d["bore"], d["rod"]) * d["stroke"] / 1000


def _plunger(d: Mapping[str, float]) -> float:
    return plunger_volume_ml(
        _piston(d),
        d["dead_behind"],
        d["dead_ahead"],
        head_mm=d["head"],
        ambient_kpa=d["ambient_kpa"],
        vapour_kpa=d["vapour_kpa"],
    )


def _sac(d: Mapping[str, float]) -> float:
    return d["pressed_share"] * sac_volume_ml(d["outside"], d["wall"], d["length"])


def _breather(d: Mapping[str, float]) -> float:
    level = area_mm2(d["bore"], d["tube"]) * d["reach"] / 1000
    if d["strokes"] and d["stroke_volume"]:
        return pumped_volume_ml(d["strokes"], d["stroke_volume"], d["tube_volume"], level)
    return level


def _reservoir(d: Mapping[str, float]) -> float:
    return (area_mm2(d["bore"]) * d["depth"] - area_mm2(d["nipple"]) * d["nipple_length"]) / 1000


def _cell(d: Mapping[str, float]) -> float:
    return d["void_share"] * area_mm2(d["bore"]) * d["depth"] / 1000


def _tube(d: Mapping[str, float]) -> float:
    return area_mm2(d["bore"]) * d["length"] / 1000


_WALL = ("wall", 0.5, 0.08)
_DEAD = (("dead_behind", 0.0, 0.0), ("dead_ahead", 0.0, 0.0), ("head", 60.0, 10.0))
_PUMP = (("tube", 2.0, 0.3), ("strokes", 0.0, 0.0), ("stroke_volume", 0.0, 0.0), ("tube_volume", 0.03, 0.01))
_TAIL = (("nipple", 0.0, 0.0), ("nipple_length", 0.0, 0.0))
_SAC_NEEDS = ("outside", "length")

# values taken where nothing was measured are from memory or judged; they carry a wide uncertainty for it
FAMILIES: dict[str, Family] = {
    family.key: family
    for family in (
        Family("piston", ("bore", "stroke"), (("rod", 0.0, 0.0),), "what the stroke sweeps", _piston),
        Family("plunger", ("bore", "rod", "stroke"), _DEAD, "what the stroke sweeps beside its rod", _plunger),
        Family("sac", _SAC_NEEDS, (_WALL, ("pressed_share", 0.75, 0.08)), "what the pressed sac draws back", _sac),
        Family(
            "pneumatic sac",
            _SAC_NEEDS,
            (_WALL, ("pressed_share", 0.85, 0.08)),
            "what the sac draws back once the air has pressed it flat",
            _sac,
        ),
        Family(
            "pumped sac",
            _SAC_NEEDS,
            (_WALL, ("pressed_share", 0.9, 0.06)),
            "what the sac holds after several strokes",
            _sac,
        ),
        Family("breather", ("bore", "reach"), _PUMP, "what the barrel holds up to the breather tube's end", _breather),
        Family("reservoir", ("bore", "depth"), _TAIL, "what the barrel holds", _reservoir),
        Family("cell", ("bore", "depth"), (("void_share", 0.6, 0.1),), "what the cell soaks up", _cell),
        Family("cartridge", ("bore", "length"), (), "what the cartridge or converter holds", _tube),
    )
}

SYSTEMS: dict[str, str] = {
    "eyedropper": "reservoir",
    "lever-sac": "sac",
    "button-sac": "sac",
    "crescent-sac": "sac",
    "slot-sac": "sac",
    "sleeve-squeeze": "pumped sac",
    "bulb": "breather",
    "diaphragm-pump": "breather",
    "plunger-vacuum": "plunger",
    "piston": "piston",
    "syringe": "piston",
    "pneumatic-down-stroke": "pneumatic sac",
    "pneumatic-extending-tube": "pneumatic sac",
    "bellows": "pumped sac",
    "safety": "reservoir",
    "capillary": "cell",
    "cartridge-converter": "cartridge",
}
"""Filling system -> family of its formula."""

_BOUNDS = {
    "bore": (1.0, 28.0), "rod": (0.0, 15.0), "stroke": (2.0, 150.0), "outside": (2.0, 20.0), "wall": (0.1, 3.0),
    "length": (5.0, 150.0), "reach": (3.0, 150.0), "tube": (0.3, 8.0), "depth": (5.0, 160.0), "nipple": (0.0, 15.0),
    "nipple_length": (0.0, 40.0), "pressed_share": (0.1, 1.0), "void_share": (0.1, 1.0), "dead_behind": (0.0, 1.0),
    "dead_ahead": (0.0, 1.0), "head": (0.0, 200.0), "strokes": (0.0, 60.0), "stroke_volume": (0.0, 3.0),
    "tube_volume": (0.0, 0.5),
}  # fmt: skip
_IN_ML = ("dead_behind", "dead_ahead", "stroke_volume", "tube_volume")


def expected_volume(
    system: str,
    dimensions: Mapping[str, Measured | None],
    ambient_kpa: float = AMBIENT_KPA,
    vapour_kpa: float = VAPOUR_KPA,
) -> ExpectedVolume | None:
    """What a pen should hold, from its caliper readings.

    Parameters
    ----------
    system : str
        A key of `SYSTEMS`.
    dimensions : mapping of str to Measured or None
        Dimension name to value and standard uncertainty; None where it was not measured.
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
        If the system is not known, a dimension is out of range, or the dimensions contradict each other.

    Notes
    -----
    Piston and plunger: the annulus π/4 (bore² - rod²) times the stroke (the rod stands in the ink for a plunger;
    for a piston only where its rod does); a plunger's dead volumes by `plunger_volume_ml`. Sac: see `sac_volume_ml`,
    times the share that pressing empties. Breather tube: the barrel up to the tube's end, less the tube, or what
    the strokes made bring (`pumped_volume_ml`). Reservoir: the barrel less what stands in it. Elementary geometry,
    derived here; sensitivities by central difference.

    Examples
    --------
    >>> pen = {"bore": Measured(8.5, 0.02), "rod": Measured(2.6, 0.02), "stroke": Measured(62.0, 0.2)}
    >>> round(expected_volume("plunger-vacuum", pen).volume_ml, 3)
    3.189
    """
    if system not in SYSTEMS:
        raise InputError("filling system", "one of " + ", ".join(SYSTEMS), system)
    family = FAMILIES[SYSTEMS[system]]
    given = {name: m for name, m in dimensions.items() if m is not None}
    if any(name not in given for name in family.needs):
        return None
    used = {name: given[name] for name in family.needs}
    used.update({name: given.get(name, Measured(value, u)) for name, value, u in family.takes})
    _check(used)
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


def _check(used: Mapping[str, Measured]) -> None:
    for name, m in used.items():
        low, high = _BOUNDS[name]
        if not low <= m.value <= high:
            unit = (
                "(a share)" if name.endswith("share") else "mL" if name in _IN_ML else "" if name == "strokes" else "mm"
            )
            raise InputError(
                name.replace("_", " "),
                f"{low:g} to {high:g} {unit}".rstrip(),
                f"{m.value:g}",
                "Was it typed in another unit?",
            )
    for inner, outer in (("rod", "bore"), ("tube", "bore"), ("nipple", "bore")):
        if inner in used and outer in used and used[inner].value >= used[outer].value:
            raise InputError(
                inner,
                f"below the {outer} of {used[outer].value:g} mm",
                f"{used[inner].value:g} mm",
                "Were the two mixed up?",
            )


def _slope(family: Family, values: Mapping[str, float], name: str, m: Measured) -> float:
    step = min(m.standard_uncertainty, 0.01 * m.value) or 1e-6
    above, below = m.value + step, max(m.value - step, 0.0)
    return (family.volume_ml({**values, name: above}) - family.volume_ml({**values, name: below})) / (above - below)
