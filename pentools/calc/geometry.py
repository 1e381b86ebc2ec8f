"""What a pen should hold, from its dimensions: one formula a family of filling systems, uncertainty included."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pentools.calc.uncertainty import Budget, Component, combine
from pentools.errors import InputError

__all__ = ["FAMILIES", "SYSTEMS", "ExpectedVolume", "Family", "Measured", "expected_volume", "sac_volume_ml"]


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
        Dimensions that were not measured and were taken as usual.
    """

    volume_ml: float
    budget: Budget
    holds: str
    assumed: tuple[str, ...]


def _area_mm2(outer: float, inner: float = 0.0) -> float:
    return math.pi / 4 * (outer**2 - inner**2)


def sac_volume_ml(outside_mm: float, wall_mm: float, length_mm: float) -> float:
    """Inside volume of a sac with one round end.

    Parameters
    ----------
    outside_mm : float
        Outside diameter [mm].
    wall_mm : float
        Wall [mm], below half the outside diameter.
    length_mm : float
        Length from its mouth to its end [mm].

    Returns
    -------
    float
        Volume [mL].

    Raises
    ------
    InputError
        If the wall leaves no inside, or the sac is shorter than its round end.

    Notes
    -----
    V = π/4 d² (L - w - d/2) + π/12 d³ with d = outside - 2 w: a tube closed by a hemisphere. Derived here.
    """
    inside = outside_mm - 2 * wall_mm
    if inside <= 0:
        raise InputError("sac wall", f"below half the outside diameter of {outside_mm:g} mm", f"{wall_mm:g} mm")
    straight = length_mm - wall_mm - inside / 2
    if straight < 0:
        raise InputError("sac length", f"above {wall_mm + inside / 2:.1f} mm, its round end", f"{length_mm:g} mm")
    return (_area_mm2(inside) * straight + math.pi / 12 * inside**3) / 1000


def _piston(d: Mapping[str, float]) -> float:
    return _area_mm2(d["bore"], d["rod"]) * d["stroke"] / 1000


def _sac(d: Mapping[str, float]) -> float:
    return d["pressed_share"] * sac_volume_ml(d["outside"], d["wall"], d["length"])


def _breather(d: Mapping[str, float]) -> float:
    return _area_mm2(d["bore"], d["tube"]) * d["reach"] / 1000


def _reservoir(d: Mapping[str, float]) -> float:
    return (_area_mm2(d["bore"]) * d["depth"] - _area_mm2(d["nipple"]) * d["nipple_length"]) / 1000


def _cell(d: Mapping[str, float]) -> float:
    return d["void_share"] * _area_mm2(d["bore"]) * d["depth"] / 1000


def _tube(d: Mapping[str, float]) -> float:
    return _area_mm2(d["bore"]) * d["length"] / 1000


# values taken where nothing was measured are from memory or judged; they carry a wide uncertainty for it
FAMILIES: dict[str, Family] = {
    family.key: family
    for family in (
        Family("piston", ("bore", "stroke"), (("rod", 0.0, 0.0),), "what the stroke sweeps", _piston),
        Family("plunger", ("bore", "rod", "stroke"), (), "what the stroke sweeps beside its rod", _piston),
        Family("sac", ("outside", "length"), (("wall", 0.5, 0.08), ("pressed_share", 0.75, 0.08)), "what the pressed sac draws back", _sac),
        Family("pumped sac", ("outside", "length"), (("wall", 0.5, 0.08), ("pressed_share", 0.9, 0.06)), "what the sac holds after several strokes", _sac),
        Family("breather", ("bore", "reach"), (("tube", 2.0, 0.3),), "what the barrel holds up to the breather tube's end", _breather),
        Family("reservoir", ("bore", "depth"), (("nipple", 0.0, 0.0), ("nipple_length", 0.0, 0.0)), "what the barrel holds", _reservoir),
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
    "pneumatic-down-stroke": "sac",
    "pneumatic-extending-tube": "sac",
    "bellows": "pumped sac",
    "safety": "reservoir",
    "capillary": "cell",
    "cartridge-converter": "cartridge",
}
"""Filling system -> family of its formula."""

_BOUNDS = {
    "bore": (1.0, 28.0), "rod": (0.0, 15.0), "stroke": (2.0, 150.0), "outside": (2.0, 20.0), "wall": (0.1, 3.0),
    "length": (5.0, 150.0), "reach": (3.0, 150.0), "tube": (0.3, 8.0), "depth": (5.0, 160.0), "nipple": (0.0, 15.0),
    "nipple_length": (0.0, 40.0), "pressed_share": (0.1, 1.0), "void_share": (0.1, 1.0),
}  # fmt: skip


def expected_volume(system: str, dimensions: Mapping[str, Measured | None]) -> ExpectedVolume | None:
    """What a pen should hold, from its caliper readings.

    Parameters
    ----------
    system : str
        A key of `SYSTEMS`.
    dimensions : mapping of str to Measured or None
        Dimension name to value and standard uncertainty; None where it was not measured.

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
    for a piston only where its rod does). Sac: see `sac_volume_ml`, times the share that pressing empties. Breather
    tube: the barrel up to the tube's end, less the tube. Reservoir: the barrel less what stands in it. Elementary
    geometry, derived here; sensitivities by central difference.
    """
    if system not in SYSTEMS:
        raise InputError("filling system", "one of " + ", ".join(SYSTEMS), system)
    family = FAMILIES[SYSTEMS[system]]
    used: dict[str, Measured] = {}
    for name in family.needs:
        given = dimensions.get(name)
        if given is None:
            return None
        used[name] = given
    assumed = []
    for name, value, uncertainty in family.takes:
        given = dimensions.get(name)
        if given is None and value:
            assumed.append(name)
        used[name] = given if given is not None else Measured(value, uncertainty)
    _check(used)
    values = {name: m.value for name, m in used.items()}
    volume = family.volume_ml(values)
    components = [
        Component(name.replace("_", " "), m.standard_uncertainty, _slope(family, values, name, m), kind="judged" if name in assumed else "instrument limit")
        for name, m in used.items()
        if m.standard_uncertainty > 0
    ]
    return ExpectedVolume(volume, combine(components or [Component("none stated", 0.0)]), family.holds, tuple(assumed))


def _check(used: Mapping[str, Measured]) -> None:
    for name, m in used.items():
        low, high = _BOUNDS[name]
        if not low <= m.value <= high:
            unit = "(a share)" if name.endswith("share") else "mm"
            raise InputError(name.replace("_", " "), f"{low:g} to {high:g} {unit}", f"{m.value:g}", "Was it typed in another unit?")
    for inner, outer in (("rod", "bore"), ("tube", "bore"), ("nipple", "bore")):
        if inner in used and outer in used and used[inner].value >= used[outer].value:
            raise InputError(inner, f"below the {outer} of {used[outer].value:g} mm", f"{used[inner].value:g} mm", "Were the two mixed up?")


def _slope(family: Family, values: Mapping[str, float], name: str, m: Measured) -> float:
    step = min(m.standard_uncertainty, 0.01 * m.value) or 1e-6
    high = family.volume_ml({**values, name: m.value + step})
    low = family.volume_ml({**values, name: m.value - step})
    return (high - low) / (2 * step)
