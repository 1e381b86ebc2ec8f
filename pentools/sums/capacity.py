"""The capacity sum: weighings in; what the pen draws, what it should hold and why the two differ out."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from pentools.calc.fill_diagnosis import FillDiagnosis, diagnose_fill
from pentools.calc.findings import Finding
from pentools.calc.geometry import ExpectedVolume, Measured, expected_volume
from pentools.calc.uncertainty import format_value, rounded_pair
from pentools.calc.weighing import BALANCES, Balance, CapacityResult, Conditions, Liquid, capacity_from_weight, ink_against_water
from pentools.errors import InputError
from pentools.fields import Value
from pentools.sums.base import Sum, SumAnswer
from pentools.sums.capacity_fields import FIELDS, all_dimension_names, dimension_fields
from pentools.units import Reading

__all__ = ["CAPACITY", "all_dimension_names", "capacity_answer", "dimension_fields"]

Values = Mapping[str, Value]
ASSUMED_INK = Liquid("ink", 1005.0, 10.0 / math.sqrt(3))


def _number(values: Values, name: str) -> float | None:
    reading = values.get(name)
    return reading.value if isinstance(reading, Reading) else None


def _balance(values: Values) -> Balance:
    readability = _number(values, "readability") or 0.01
    # what the sheet does not say is taken as usual for the readability: the next coarser preset, scaled
    usual = BALANCES["0.01 g"] if readability >= 0.005 else BALANCES["0.001 g"]
    scale = readability / usual.readability_g
    given = {name: _number(values, name) for name in ("repeatability", "linearity", "eccentricity")}
    return Balance(
        readability,
        usual.repeatability_g * scale if given["repeatability"] is None else given["repeatability"],
        usual.linearity_g * scale if given["linearity"] is None else given["linearity"],
        usual.eccentricity_g * scale if given["eccentricity"] is None else given["eccentricity"],
    )


def _conditions(values: Values) -> Conditions:
    usual = Conditions()
    found: list[float] = []
    for name, value, half_width in (
        ("temperature", usual.temperature_c, usual.temperature_half_width_c),
        ("pressure", usual.pressure_kpa, usual.pressure_half_width_kpa),
        ("humidity", usual.humidity_share, usual.humidity_half_width_share),
    ):
        reading = values.get(name)
        if isinstance(reading, Reading):
            spread = reading.standard_uncertainty
            found += [reading.value, half_width if spread is None else spread * math.sqrt(3)]
        else:
            found += [value, half_width]
    return Conditions(*found)


def _liquid(values: Values, conditions: Conditions, balance: Balance) -> Liquid:
    if values.get("liquid") != "ink":
        return Liquid()
    ink, water = _number(values, "ink_mass"), _number(values, "water_mass")
    if ink is not None and water is not None:
        one_reading = math.hypot(max(balance.repeatability_g, balance.readability_g / math.sqrt(12)), balance.readability_g / math.sqrt(6))
        return ink_against_water(ink, water, conditions.temperature_c, one_reading)
    density = values.get("ink_density")
    if isinstance(density, Reading):
        u = density.standard_uncertainty
        return Liquid("ink", 1000 * density.value, 1000 * u if u is not None else 5.0)
    return ASSUMED_INK


def _masses(values: Values, name: str) -> tuple[float, ...]:
    readings = values.get(name)
    if not isinstance(readings, tuple) or not readings:
        raise InputError(f"{name} mass", "one or more masses", "", "Type it like 23.26 g.")
    return tuple(r.value for r in readings if isinstance(r, Reading))


def _expected(values: Values) -> ExpectedVolume | None:
    system = values.get("system")
    if not isinstance(system, str):
        return None
    caliper = _number(values, "caliper") or 0.02
    dimensions: dict[str, Measured | None] = {}
    for field in dimension_fields(system):
        reading = values.get(field.name)
        if isinstance(reading, Reading):
            usual = 0.05 if field.unit == "1" else caliper
            given = reading.standard_uncertainty
            dimensions[field.name] = Measured(reading.value, usual if given is None else given)
    return expected_volume(system, dimensions)


def _sentence(result: CapacityResult, expected: ExpectedVolume | None, diagnosis: FillDiagnosis | None) -> str:
    text = f"It draws {format_value(result.volume_ml, result.budget.expanded_uncertainty, 'mL')}"
    if expected is None or diagnosis is None:
        return text + "."
    text += f", {100 * diagnosis.share_filled:.0f} % of {expected.holds}"
    return f"{text}; {diagnosis.first_suspect} is the first suspect." if diagnosis.first_suspect else f"{text}."


def _table(result: CapacityResult, expected: ExpectedVolume | None, diagnosis: FillDiagnosis | None) -> tuple[tuple[str, ...], ...]:
    volume, spread = rounded_pair(result.volume_ml, result.budget.expanded_uncertainty)
    rows = [
        ("quantity", "value", "± or share", "how"),
        ("mass gained", f"{result.gained_g:.3f} g", "", "mean filled less mean empty"),
        ("Z", f"{result.z_ml_per_g:.5f} mL/g", "", "from liquid and air density"),
        ("volume drawn", f"{volume} mL", f"{spread} mL", f"k = {result.budget.coverage_factor:.2f}, about 95 %"),
    ]
    if expected is not None and diagnosis is not None:
        should, off = rounded_pair(expected.volume_ml, 2 * expected.budget.standard_uncertainty)
        rows.append(("it should hold", f"{should} mL", f"{off} mL", expected.holds))
        rows.append(("share filled", f"{100 * diagnosis.share_filled:.0f} %", f"{200 * diagnosis.share_uncertainty:.0f} points", "drawn over expected, k = 2"))
    rows += [
        (c.source, f"{1000 * c.contribution:.2g} µL", f"{100 * share:.0f} %", "standard uncertainty and its share of the variance")
        for c, share in zip(result.budget.components, result.budget.shares(), strict=True)
    ]
    return tuple(rows)


def capacity_answer(values: Values) -> SumAnswer:
    """What a pen draws, and how that stands to what it should hold.

    Parameters
    ----------
    values : mapping of str to Value
        Values of the fields of `FIELDS`; missing ones None.

    Returns
    -------
    SumAnswer
        Sentence, findings, table, and the JSON object.

    Raises
    ------
    InputError
        If the weighings or the dimensions cannot be used.
    """
    balance, conditions = _balance(values), _conditions(values)
    result = capacity_from_weight(
        _masses(values, "empty"),
        _masses(values, "filled"),
        balance,
        conditions,
        _liquid(values, conditions, balance),
        str(values.get("start") or "dry"),
        _number(values, "drop") if values.get("drop") is not None else 0.02,
        _number(values, "evaporation") if values.get("evaporation") is not None else 0.005,
    )
    expected, diagnosis = _expected(values), None
    findings: tuple[Finding, ...] = ()
    if expected is not None:
        diagnosis = diagnose_fill(
            str(values["system"]), result.volume_ml, result.budget.standard_uncertainty,
            expected.volume_ml, expected.budget.standard_uncertainty, expected.holds,
        )  # fmt: skip
        findings = diagnosis.findings
        if expected.assumed:
            names = ", ".join(name.replace("_", " ") for name in expected.assumed)
            findings += (Finding("note", f"Not measured and taken as usual (from memory or judged): {names}.", "assumed"),)
    elif isinstance(values.get("system"), str):
        needed = ", ".join(f.label.lower() for f in dimension_fields(str(values["system"])))
        findings = (Finding("note", f"What it should hold is not known: measure {needed}.", "dimensions-missing"),)
    findings += result.findings
    sentence = _sentence(result, expected, diagnosis)
    data = _data(result, expected, diagnosis, findings, sentence)
    return SumAnswer(sentence, data, findings, _table(result, expected, diagnosis), result)


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _data(result: CapacityResult, expected: ExpectedVolume | None, diagnosis: FillDiagnosis | None, findings: tuple[Finding, ...], sentence: str) -> dict[str, Any]:
    budget = result.budget
    implied = diagnosis.implied if diagnosis else None
    return {
        "sentence": sentence,
        "volume_ml": result.volume_ml,
        "standard_uncertainty_ml": budget.standard_uncertainty,
        "expanded_uncertainty_ml": budget.expanded_uncertainty,
        "coverage_factor": budget.coverage_factor,
        "degrees_of_freedom": _finite(budget.degrees_of_freedom),
        "z_ml_per_g": result.z_ml_per_g,
        "gained_g": result.gained_g,
        "start": result.start,
        "budget": [
            {"source": c.source, "standard_uncertainty": c.contribution, "share": share, "kind": c.kind}
            for c, share in zip(budget.components, budget.shares(), strict=True)
        ],
        "expected_ml": expected.volume_ml if expected else None,
        "expected_standard_uncertainty_ml": expected.budget.standard_uncertainty if expected else None,
        "expected_holds": expected.holds if expected else None,
        "share_filled": diagnosis.share_filled if diagnosis else None,
        "share_standard_uncertainty": diagnosis.share_uncertainty if diagnosis else None,
        "implied_pressure_kpa": None if implied is None or implied.at_most_kpa is not None else implied.pressure_kpa,
        "implied_pressure_standard_uncertainty_kpa": implied.standard_uncertainty_kpa if implied else None,
        "implied_pressure_at_most_kpa": implied.at_most_kpa if implied else None,
        "findings": [f.as_json() for f in findings],
    }


CAPACITY = Sum(
    "capacity",
    "Capacity from weight",
    "How much a pen draws, from its mass before and after filling, with its uncertainty; and, if its dimensions are given, why that is less than it should hold.",
    FIELDS,
    capacity_answer,
    'pentools sums capacity --empty "23.26 g; 23.25 g; 23.26 g" --filled "25.06 g" --temperature "21 °C" --system piston --bore "9.0 mm" --stroke "31 mm"',
)
