"""The capacity sum: weighings in; what the pen draws, what it should hold and why the two differ out."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import format_value, rounded_pair
from pentools.calc.weighing.capacity import CapacityResult, capacity_from_weight
from pentools.calc.weighing.diagnosis import FillDiagnosis, diagnose_fill
from pentools.calc.weighing.expected import ExpectedVolume
from pentools.fields import Value
from pentools.sums.base import AskedFor, Sum, SumAnswer
from pentools.sums.weighing.fields import FIELDS, all_dimension_names, dimension_fields, needed_dimensions
from pentools.sums.weighing.inputs import (
    balance_of,
    conditions_of,
    expected_of,
    findings_on_input,
    liquid_of,
    masses_of,
    number_or,
    system_of,
)
from pentools.systems.registry import system_named
from pentools.tables.fillers import fill_suspects

__all__ = ["CAPACITY", "all_dimension_names", "capacity_answer", "dimension_fields"]

Values = Mapping[str, Value]


def _sentence(result: CapacityResult, expected: ExpectedVolume | None, diagnosis: FillDiagnosis | None) -> str:
    text = f"It draws {format_value(result.volume_ml, result.budget.expanded_uncertainty, 'mL')}"
    if expected is None or diagnosis is None:
        return text + "."
    text += f", {100 * diagnosis.share_filled:.0f} % of {expected.holds}"
    return f"{text}; {diagnosis.first_suspect} is the first suspect." if diagnosis.first_suspect else f"{text}."


def _table(
    result: CapacityResult, expected: ExpectedVolume | None, diagnosis: FillDiagnosis | None, level: float
) -> tuple[tuple[str, ...], ...]:
    volume, spread = rounded_pair(result.volume_ml, result.budget.expanded_uncertainty)
    rows = [
        ("quantity", "value", "± or share", "how"),
        ("mass gained", f"{result.gained_g:.3f} g", "", "mean filled less mean empty"),
        ("Z", f"{result.z_ml_per_g:.5f} mL/g", "", "from liquid and air density"),
        ("volume drawn", f"{volume} mL", f"{spread} mL", f"k = {result.budget.coverage_factor:.2f}, {100 * level:g} %"),
    ]
    if expected is not None and diagnosis is not None:
        should, off = rounded_pair(expected.volume_ml, 2 * expected.budget.standard_uncertainty)
        rows.append(("it should hold", f"{should} mL", f"{off} mL", expected.holds))
        rows.append(
            (
                "share filled",
                f"{100 * diagnosis.share_filled:.0f} %",
                f"{200 * diagnosis.share_uncertainty:.0f} points",
                "drawn over expected, k = 2",
            )
        )
    rows += [
        (
            c.source,
            f"{1000 * c.contribution:.2g} µL",
            f"{100 * share:.0f} %",
            "standard uncertainty and its share of the variance",
        )
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
    balance, conditions = balance_of(values), conditions_of(values)
    level = number_or(values, "level", 0.95)
    result = capacity_from_weight(
        masses_of(values, "empty"),
        masses_of(values, "filled"),
        balance,
        conditions,
        liquid_of(values, conditions, balance),
        start=str(values.get("start") or "dry"),
        residual_drop_g=number_or(values, "drop", 0.02),
        evaporation_g=number_or(values, "evaporation", 0.005),
        confidence=level,
    )
    system = system_of(values)
    expected, diagnosis = expected_of(values, conditions), None
    findings: tuple[Finding, ...] = ()
    if expected is not None and system is not None:
        diagnosis = diagnose_fill(
            system_named(system).family.key,
            (result.volume_ml, result.budget.standard_uncertainty),
            (expected.volume_ml, expected.budget.standard_uncertainty),
            expected.holds,
            fill_suspects(system),
            ambient_kpa=conditions.pressure_kpa,
            liquid_head_mm=number_or(values, "head", 60.0),
        )
        findings = diagnosis.findings
        if expected.assumed:
            names = ", ".join(expected.assumed)
            findings += (
                Finding("note", f"Not measured and taken as usual (from memory or judged): {names}.", "assumed"),
            )
    elif system is not None:
        missing = [
            f.label[0].lower() + f.label[1:]
            for f in dimension_fields(system)
            if f.name in needed_dimensions(system) and values.get(f.name) is None
        ]
        findings = (
            Finding("note", f"What it should hold is not known: measure {', '.join(missing)}.", "dimensions-missing"),
        )
    findings += findings_on_input(values) + result.findings
    sentence = _sentence(result, expected, diagnosis)
    data = _data(result, expected, diagnosis, findings, sentence, level=level)
    return SumAnswer(sentence, data, findings, _table(result, expected, diagnosis, level), result)


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _data(
    result: CapacityResult,
    expected: ExpectedVolume | None,
    diagnosis: FillDiagnosis | None,
    findings: tuple[Finding, ...],
    sentence: str,
    *,
    level: float,
) -> dict[str, Any]:
    budget = result.budget
    implied = diagnosis.implied if diagnosis else None
    return {
        "sentence": sentence,
        "volume_ml": result.volume_ml,
        "standard_uncertainty_ml": budget.standard_uncertainty,
        "expanded_uncertainty_ml": budget.expanded_uncertainty,
        "coverage_factor": budget.coverage_factor,
        "level_of_confidence": level,
        "degrees_of_freedom": _finite(budget.degrees_of_freedom),
        "z_ml_per_g": result.z_ml_per_g,
        "gained_g": result.gained_g,
        "start": result.start,
        "budget": [
            {
                "source": c.source,
                "standard_uncertainty": c.contribution,
                "share": share,
                "kind": c.kind,
                "degrees_of_freedom": _finite(c.degrees_of_freedom),
            }
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
    asked_for=AskedFor(
        "system",
        all_dimension_names(),
        lambda system: {field.name for field in dimension_fields(system)} if system else (),
    ),
)
