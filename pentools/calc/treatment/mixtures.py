"""The flush mix of household ammonia and water, and what it puts into the air of the room."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import msgspec

from pentools.calc.base.findings import Finding, Level, gravest_first
from pentools.calc.treatment.hazards import HazardRow, hazards_of
from pentools.errors import InputError

__all__ = [
    "MG_M3_PER_PPM",
    "AirLimit",
    "FlushMix",
    "MixtureRow",
    "air_limits_from_rows",
    "ammonia_density",
    "ammonia_ph",
    "flush_mix",
    "room_ppm",
]

MOLAR_MASS_G = 17.031
MG_M3_PER_PPM = MOLAR_MASS_G / 24.45
"""Mass of 1 ppm of ammonia in air of 25 °C and 1 atm [mg/m³]: molar mass over 24.45 l/mol."""
WATER_G_ML = 0.998
BASE_CONSTANT = 1.8e-5
STRONGEST_PERCENT = 12.0
USUAL_PERCENT = 1.0
LIKELY_PERCENT = (5.0, 10.0)
IMMEDIATELY_DANGEROUS_PPM = 300.0
_BLEACH = ("bleach", "chlorine", "hypochlorite")
# percent by weight, g/ml at 20 °C: handbook values rounded to 0.001, the same as in the table "mixtures"
_DENSITIES = ((0.0, WATER_G_ML), (2.0, 0.990), (5.0, 0.977), (10.0, 0.957), (12.0, 0.950))


class MixtureRow(msgspec.Struct, frozen=True):
    """One row of the table ``mixtures``: a property of a mix and the ends of its range, in the unit it names."""

    mix: str
    property: str
    low: float | None
    high: float | None
    unit: str
    text: str


@dataclass(frozen=True, slots=True)
class AirLimit:
    """A limit for ammonia in air.

    Parameters
    ----------
    name : str
        Whose and for how long, in words.
    ppm : float
        The limit [ppm].
    """

    name: str
    ppm: float


@dataclass(frozen=True, slots=True)
class FlushMix:
    """A mix of household ammonia and water.

    Parameters
    ----------
    ammonia_percent_w_w : float
        Ammonia by weight [%].
    ammonia_mol_l : float
        Ammonia [mol/l].
    ph : float
        pH at 25 °C, estimated.
    room_ppm : float
        Ammonia in the air if the whole jar evaporated and no air moved [ppm].
    findings : tuple of Finding
        What to mind, and refusals.
    """

    ammonia_percent_w_w: float
    ammonia_mol_l: float
    ph: float
    room_ppm: float
    findings: tuple[Finding, ...]


def ammonia_density(percent: float) -> float:
    """Density of a weak ammonia solution.

    Parameters
    ----------
    percent : float
        Ammonia by weight [%], 0 to 12.

    Returns
    -------
    float
        Density at 20 °C [g/ml].

    Raises
    ------
    InputError
        If the strength is outside 0 to 12 %.

    Notes
    -----
    Straight lines between handbook values at 0, 2, 5, 10 and 12 %, rounded to 0.001. An error of 0.005 g/ml moves the mix's strength by half a per cent of itself.
    """
    if not 0 <= percent <= STRONGEST_PERCENT:
        raise InputError("ammonia", "0 to 12 % by weight", percent)
    pairs = list(itertools.pairwise(_DENSITIES))
    (x0, y0), (x1, y1) = next(pair for pair in pairs if percent <= pair[1][0])
    return y0 + (y1 - y0) * (percent - x0) / (x1 - x0)


def ammonia_ph(mol_l: float) -> float:
    """pH of ammonia in water at 25 °C.

    Parameters
    ----------
    mol_l : float
        Ammonia [mol/l], 0.001 to 7.

    Returns
    -------
    float
        pH.

    Raises
    ------
    InputError
        If it is outside 0.001 to 7 mol/l.

    Notes
    -----
    x²/(c - x) = Kb with Kb = 1.8e-5 mol/l, pH = 14 + log10 x. Ideal: no activity coefficients, no carbon dioxide
    from the air; good to about 0.1 below 1 mol/l.

    Examples
    --------
    >>> round(ammonia_ph(0.287), 1)
    11.4
    """
    if not 0.001 <= mol_l <= 7:
        raise InputError("ammonia", "0.001 to 7 mol/l", mol_l)
    x = (-BASE_CONSTANT + math.sqrt(BASE_CONSTANT**2 + 4 * BASE_CONSTANT * mol_l)) / 2
    return 14 + math.log10(x)


def room_ppm(ammonia_g: float, room_m3: float) -> float:
    """Ammonia in the air of a closed room if all of it evaporated: the worst case.

    Parameters
    ----------
    ammonia_g : float
        Ammonia [g], 0 or more.
    room_m3 : float
        Volume of the room [m³], 1 to 10 000.

    Returns
    -------
    float
        Ammonia in the air [ppm] at 25 °C and 1 atm.

    Raises
    ------
    InputError
        If a figure is out of its range.
    """
    if ammonia_g < 0:
        raise InputError("ammonia", "0 g or more", ammonia_g)
    if not 1 <= room_m3 <= 10_000:
        raise InputError("room", "1 to 10 000 m³", room_m3)
    return 1000 * ammonia_g / room_m3 / MG_M3_PER_PPM


def air_limits_from_rows(rows: Iterable[MixtureRow]) -> tuple[AirLimit, ...]:
    """Limits for ammonia in air out of the table ``mixtures``.

    Parameters
    ----------
    rows : iterable of MixtureRow
        The table.

    Returns
    -------
    tuple of AirLimit
        Lowest first.
    """
    found = [
        AirLimit(row.text, row.low)
        for row in rows
        if row.mix == "ammonia" and row.unit == "ppm" and row.low is not None and row.high is None
    ]
    return tuple(sorted(found, key=lambda limit: limit.ppm))


def flush_mix(
    ammonia_percent: float,
    parts_water: float,
    *,
    jar_ml: float = 100.0,
    room_m3: float = 30.0,
    air_limits: Sequence[AirLimit] = (),
    beside: Iterable[str] = (),
    refused: Mapping[str, str] | None = None,
    hazards: Sequence[HazardRow] = (),
) -> FlushMix:
    """One part of household ammonia and some parts of water, by volume.

    Parameters
    ----------
    ammonia_percent : float
        Strength of the household ammonia by weight [%], 0.5 to 12.
    parts_water : float
        Parts of water to one part of it, 1 to 200.
    jar_ml : float
        How much is mixed [ml], 1 to 5000.
    room_m3 : float
        Volume of the room [m³], 1 to 10 000.
    air_limits : sequence of AirLimit
        Limits to compare the air with.
    beside : iterable of str
        What the mix would meet: materials as the table names them, or "bleach".
    refused : mapping of str to str or None
        Materials that must not meet it, and why.
    hazards : sequence of HazardRow
        The table ``substance_hazards``; none by default.

    Returns
    -------
    FlushMix
        Strength [% w/w], [mol/l], pH, worst air of the room [ppm], and findings, the gravest first; a level
        "stop" among them is a refusal.

    Raises
    ------
    InputError
        If a figure is out of its range.

    Notes
    -----
    Mass balance with volumes taken as additive: w = p ρ / (ρ + n 0.998). With nine parts of water it is close to
    p/10. Nine to one is common practice, no source.

    Examples
    --------
    >>> round(flush_mix(5, 9).ammonia_percent_w_w, 2)
    0.49
    """
    _check_mix(ammonia_percent, parts_water, jar_ml)
    rho = ammonia_density(ammonia_percent)
    gram_per_part = ammonia_percent / 100 * rho
    percent = 100 * gram_per_part / (rho + parts_water * WATER_G_ML)
    gram_per_litre = 1000 * gram_per_part / (1 + parts_water)
    mol_l = gram_per_litre / MOLAR_MASS_G
    ppm = room_ppm(gram_per_litre * jar_ml / 1000, room_m3)
    ph = ammonia_ph(mol_l)
    findings = gravest_first(
        (
            *_refusals(beside, refused or {}),
            *_about_strength(ammonia_percent, percent, ph, hazards),
            *_about_air(ppm, jar_ml, room_m3, air_limits),
            Finding("warning", "treatment.bleach"),
            Finding("note", "treatment.materials"),
        )
    )
    return FlushMix(percent, mol_l, ph, ppm, findings)


def _check_mix(ammonia_percent: float, parts_water: float, jar_ml: float) -> None:
    if not 0.5 <= ammonia_percent <= STRONGEST_PERCENT:
        advice = (
            "Stronger ammonia is a laboratory chemical: do not dilute it at home."
            if ammonia_percent > 1
            else "Is it in per cent?"
        )
        raise InputError("household ammonia", "0.5 to 12 % by weight", ammonia_percent, advice)
    if not 1 <= parts_water <= 200:
        raise InputError("parts of water", "1 to 200", parts_water)
    if not 1 <= jar_ml <= 5000:
        raise InputError("jar", "1 to 5000 ml", jar_ml)


def _refusals(beside: Iterable[str], refused: Mapping[str, str]) -> list[Finding]:
    found: list[Finding] = []
    for thing in beside:
        word = " ".join(thing.split()).casefold()
        if any(name in word for name in _BLEACH):
            found.insert(0, Finding("stop", "treatment.refused:bleach", thing=word))
        elif word in refused:
            found.append(Finding("stop", "treatment.refused", thing=word, why=refused[word]))
    return found


def _about_strength(typed: float, percent: float, ph: float, hazards: Sequence[HazardRow]) -> Iterator[Finding]:
    in_mix, in_bottle = (hazards_of("ammonia", share, hazards) if hazards else () for share in (percent, typed))
    for hazard in in_mix[:1]:
        yield Finding(hazard.level, "treatment.hazard:mix", percent=percent, does=hazard.does, labelled=hazard.labelled)
    for hazard in in_bottle[:1]:
        yield Finding("warning", "treatment.hazard:bottle", percent=typed, does=hazard.does, labelled=hazard.labelled)
    strong = percent > USUAL_PERCENT
    yield Finding("warning" if strong else "ok", f"treatment.strength:{'strong' if strong else 'usual'}", percent=percent, ph=ph)  # fmt: skip
    if not LIKELY_PERCENT[0] <= typed <= LIKELY_PERCENT[1]:
        yield Finding("note", "treatment.label")


def _about_air(ppm: float, jar_ml: float, room_m3: float, limits: Sequence[AirLimit]) -> Iterator[Finding]:
    if not limits:
        return
    passed = [f"{limit.ppm:g} ppm ({limit.name})" for limit in limits if ppm > limit.ppm]
    lowest = f"{limits[0].ppm:g} ppm ({limits[0].name})"
    level: Level = "note" if not passed else "stop" if ppm > IMMEDIATELY_DANGEROUS_PPM else "warning"
    yield Finding(level, "treatment.air", ppm=ppm, jar_ml=jar_ml, room_m3=room_m3, passed=passed, lowest=lowest)
