"""The flush mix of household ammonia and water, and what it puts into the air of the room."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from pentools.calc.base.findings import Finding, Level
from pentools.calc.treatment.cautions import CLOSING_LINE
from pentools.errors import InputError

__all__ = [
    "MG_M3_PER_PPM",
    "AirLimit",
    "FlushMix",
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
_BLEACH = ("bleach", "chlorine", "hypochlorite", "chlorine cleaner")
# percent by weight, g/ml: handbook values from memory, the same as in the table "mixtures"
_DENSITIES = ((0.0, WATER_G_ML), (2.0, 0.990), (5.0, 0.977), (10.0, 0.957))


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
    Straight lines between values at 0, 2, 5 and 10 %, the last one carried on to 12 %; handbook values from
    memory, to be confirmed. An error of 0.005 g/ml moves the mix's strength by half a per cent of itself.
    """
    if not 0 <= percent <= STRONGEST_PERCENT:
        raise InputError("ammonia", "0 to 12 % by weight", percent)
    pairs = list(itertools.pairwise(_DENSITIES))
    (x0, y0), (x1, y1) = next((pair for pair in pairs if percent <= pair[1][0]), pairs[-1])
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


def air_limits_from_rows(rows: Iterable[Mapping[str, str]]) -> tuple[AirLimit, ...]:
    """Limits for ammonia in air out of the table ``mixtures``.

    Parameters
    ----------
    rows : iterable of mapping
        Rows with mix, property, low, unit, text.

    Returns
    -------
    tuple of AirLimit
        Lowest first.
    """
    found = [
        AirLimit(row["text"], float(row["low"]))
        for row in rows
        if row["mix"] == "ammonia" and row["unit"] == "ppm" and not row["high"]
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

    Returns
    -------
    FlushMix
        Strength [% w/w], [mol/l], pH, worst air of the room [ppm], and findings; a level "stop" among them is a
        refusal.

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
    rho = ammonia_density(ammonia_percent)
    gram_per_part = ammonia_percent / 100 * rho
    percent = 100 * gram_per_part / (rho + parts_water * WATER_G_ML)
    gram_per_litre = 1000 * gram_per_part / (1 + parts_water)
    mol_l = gram_per_litre / MOLAR_MASS_G
    ppm = room_ppm(gram_per_litre * jar_ml / 1000, room_m3)
    ph = ammonia_ph(mol_l)
    advice_list = (
        *_refusals(beside, refused or {}),
        *_about_strength(ammonia_percent, percent, ph),
        *_about_air(ppm, jar_ml, room_m3, air_limits),
        Finding(
            "warning", f"Never with bleach or a chlorine cleaner: it gives chloramine gas. {CLOSING_LINE}", "bleach"
        ),
        Finding("note", "Not on casein, plated brass or a latex sac; rinse well afterwards.", "materials"),
    )
    return FlushMix(percent, mol_l, ph, ppm, advice_list)


def _refusals(beside: Iterable[str], refused: Mapping[str, str]) -> list[Finding]:
    found: list[Finding] = []
    for thing in beside:
        word = thing.strip().casefold()
        if any(name in word for name in _BLEACH):
            text = f"Refused: ammonia with {word} gives chloramine gas, which injures lungs. {CLOSING_LINE}"
            found.insert(0, Finding("stop", text, "refused"))
        elif word in refused:
            found.append(Finding("stop", f"Refused on {word}: {refused[word]}.", "refused"))
    return found


def _about_strength(typed_percent: float, percent: float, ph: float) -> list[Finding]:
    found = [Finding("ok", f"The mix holds {percent:.2f} % of ammonia by weight; pH about {ph:.1f}.", "strength")]
    if percent > USUAL_PERCENT:
        found[0] = Finding(
            "warning",
            f"The mix holds {percent:.2f} % of ammonia by weight, more than the usual half to one per cent: add water. pH about {ph:.1f}.",
            "strength",
        )
    if not 5 <= typed_percent <= 10:
        found.append(Finding("note", "Household ammonia is usually 5 to 10 %: read the label again.", "label"))
    return found


def _about_air(ppm: float, jar_ml: float, room_m3: float, limits: Sequence[AirLimit]) -> list[Finding]:
    if not limits:
        return []
    passed = [limit for limit in limits if ppm > limit.ppm]
    head = f"If all {jar_ml:g} ml evaporated in a closed room of {room_m3:g} m³ its air would hold {ppm:.0f} ppm"
    if passed:
        level: Level = "stop" if ppm > 300 else "warning"
        text = f"{head}, above {', '.join(f'{x.ppm:g} ppm ({x.name})' for x in passed)}. Lid on, window open, less of it. {CLOSING_LINE}"
        return [Finding(level, text, "air")]
    return [Finding("note", f"{head}, below {limits[0].ppm:g} ppm ({limits[0].name}). Lid on, window open.", "air")]
