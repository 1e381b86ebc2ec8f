"""The capacity sum: weighings in; what the pen draws, what it should hold and why the two differ out."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from pentools.calc.base.findings import Finding
from pentools.calc.base.uncertainty import coverage_factor, format_value, rounded_pair
from pentools.calc.weighing.capacity import CapacityResult, capacity_from_weight
from pentools.calc.weighing.diagnosis import Drawn, FillDiagnosis, diagnose_fill
from pentools.calc.weighing.expected import ExpectedVolume
from pentools.calc.weighing.gain import DippedResult, capacity_from_gain
from pentools.calc.weighing.setting import Conditions, Setting
from pentools.errors import InputError
from pentools.numbers import fixed, percent, plain
from pentools.sums.base import AskedFor, Inputs, Sum, SumAnswer
from pentools.sums.weighing.fields import FIELDS, all_dimension_names, dimension_fields, needed_dimensions
from pentools.sums.weighing.inputs import (
    balance_of,
    conditions_of,
    expected_of,
    findings_on_input,
    handling_of,
    kept_of,
    liquid_of,
    masses_of,
    usual_of,
)
from pentools.systems.registry import system_named
from pentools.tables.fillers import fill_suspects

__all__ = ["CAPACITY", "all_dimension_names", "capacity_answer", "dimension_fields"]


@dataclass(frozen=True, slots=True)
class _Worked:
    """What the sum worked out, before it is told."""

    result: CapacityResult
    dipped: DippedResult | None
    expected: ExpectedVolume | None
    diagnosis: FillDiagnosis | None
    level: float


def capacity_answer(given: Inputs) -> SumAnswer:
    """What a pen draws, and how that stands to what it should hold.

    Parameters
    ----------
    given : Inputs
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
    conditions, level = conditions_of(given), given.number("level", 0.95)
    result, dipped, digits = _weighed(given, conditions, level)
    expected = expected_of(given, conditions)
    diagnosis = None if expected is None else _diagnosis(given, result, expected, conditions)
    worked = _Worked(result, dipped, expected, diagnosis, level)
    findings = (*digits, *_findings(given, worked), *findings_on_input(given), *result.findings)
    sentence = _sentence(worked)
    return SumAnswer(sentence, _data(worked, findings, sentence), findings, _table(worked), result)


def _weighed(
    given: Inputs, conditions: Conditions, level: float
) -> tuple[CapacityResult, DippedResult | None, tuple[Finding, ...]]:
    """What it draws, from two masses or from the gain on a tared balance, and what the typed digits say."""
    tared = given.given("gain")
    if tared and (given.given("empty") or given.given("filled")):
        raise InputError(
            "weighings", "the two masses, or the gain on a tared balance", "both", "Leave one of the two ways empty."
        )
    balance, digits = balance_of(given, ("gain",) if tared else ("empty", "filled"))
    liquid, handling, start = liquid_of(given, conditions, balance), handling_of(given), given.text("start", "dry")
    if tared:
        setting = Setting(balance, conditions, liquid, handling, start, level)
        dipped = capacity_from_gain(given.numbers("gain"), setting)
        return dipped.drawn, dipped, digits
    empty, filled = masses_of(given, "empty"), masses_of(given, "filled")
    result = capacity_from_weight(
        empty, filled, balance, conditions, liquid, start=start, handling=handling, confidence=level
    )
    return result, None, digits


def _diagnosis(
    given: Inputs, result: CapacityResult, expected: ExpectedVolume, conditions: Conditions
) -> FillDiagnosis | None:
    system = given.text("system")
    if system is None:
        return None
    budget = result.budget
    return diagnose_fill(
        system_named(system).family.key,
        Drawn(
            result.volume_ml, budget.standard_uncertainty, budget.coverage_factor, start=result.start, told=result.told
        ),
        expected,
        usual_of(system),
        suspects=fill_suspects(system),
        kept_ml=kept_of(given),
        ambient_kpa=conditions.pressure_kpa,
        liquid_head_mm=given.number("head", 60.0),
    )


def _findings(given: Inputs, worked: _Worked) -> tuple[Finding, ...]:
    """What the dimensions and the diagnosis say."""
    system = given.text("system")
    if worked.expected is not None and worked.diagnosis is not None:
        assumed = worked.expected.assumed
        told = worked.diagnosis.findings
        return (*told, Finding("note", "weighing.assumed", names=assumed)) if assumed else told
    if system is None:
        return ()
    needed = needed_dimensions(system)
    labels = [f.label for f in dimension_fields(system) if f.name in needed and not given.given(f.name)]
    missing = [label[0].lower() + label[1:] for label in labels]
    return (Finding("note", "weighing.dimensions-missing", names=missing),)


def _sentence(worked: _Worked) -> str:
    result, expected, diagnosis = worked.result, worked.expected, worked.diagnosis
    if not result.told:
        text = f"What it draws cannot be told from nothing: at most {plain(result.at_most_ml, 2)} mL"
        share = percent(result.at_most_ml / expected.volume_ml) if expected else ""
    else:
        text = f"It draws {format_value(result.volume_ml, result.budget.expanded_uncertainty, 'mL')}{_in_dips(worked)}"
        share = percent(diagnosis.share_filled) if diagnosis else ""
    if expected is None or diagnosis is None:
        return text + "."
    text += f", {share} of {expected.holds}"
    if diagnosis.first_suspect:
        return f"{text}; {diagnosis.first_suspect} is the first suspect."
    ends = {
        "short": "; that is short.",
        "cannot tell": "; whether that is short cannot be told.",
        "as usual": ", as is usual." if result.told else ".",
        "more than full": "; that is more than it can hold.",
    }
    return text + ends[diagnosis.verdict]


def _in_dips(worked: _Worked) -> str:
    dips = 0 if worked.dipped is None else len(worked.dipped.volumes_ml)
    return f" in {dips} dips" if dips > 1 else ""


def _table(worked: _Worked) -> tuple[tuple[str, ...], ...]:
    result, expected, diagnosis = worked.result, worked.expected, worked.diagnosis
    volume, spread = rounded_pair(result.volume_ml, result.budget.expanded_uncertainty)
    k = f"k = {fixed(result.budget.coverage_factor, 2)}, {plain(100 * worked.level)}\u202f%"
    rows = [
        ("quantity", "value", "± or share", "how"),
        ("mass gained", f"{fixed(result.gained_g, 3)} g", "", _how_gained(worked)),
        ("correction", f"{fixed(result.correction_g, 3)} g", "", "the mean drop taken off, the mean evaporation added"),
        ("Z", f"{fixed(result.z_ml_per_g, 5)} mL/g", "", "from liquid and air density"),
        ("volume drawn", f"{volume} mL", f"{spread} mL", k),
    ]
    if expected is not None and diagnosis is not None:
        off_k = coverage_factor(expected.budget.degrees_of_freedom, worked.level)
        should, off = rounded_pair(expected.volume_ml, off_k * expected.budget.standard_uncertainty)
        points = 100 * result.budget.coverage_factor * diagnosis.share_uncertainty
        usual = diagnosis.usual
        rows += [
            ("it should hold", f"{should} mL", f"{off} mL", expected.holds),
            (
                "share filled",
                percent(diagnosis.share_filled),
                f"{plain(points, 2)} points",
                f"drawn over expected, k = {fixed(result.budget.coverage_factor, 2)}",
            ),
            (
                "usual share",
                f"{fixed(100 * usual.low, 0)} to {percent(usual.high)}",
                "",
                f"of sound ones, from {result.start} ({usual.certainty})",
            ),
        ]
    rows += [
        (
            c.source,
            f"{plain(1000 * c.contribution, 2)} µL",
            percent(share),
            "standard uncertainty and its share of the variance",
        )
        for c, share in zip(result.budget.components, result.budget.shares(), strict=True)
    ]
    return tuple(rows)


def _how_gained(worked: _Worked) -> str:
    return "mean filled less mean empty" if worked.dipped is None else "after the last dip, the empty pen tared away"


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _data(worked: _Worked, findings: tuple[Finding, ...], sentence: str) -> dict[str, Any]:
    result, expected, budget = worked.result, worked.expected, worked.result.budget
    return {
        "sentence": sentence,
        "volume_ml": result.volume_ml,
        "at_most_ml": result.at_most_ml,
        "gain_told": result.told,
        "standard_uncertainty_ml": budget.standard_uncertainty,
        "expanded_uncertainty_ml": budget.expanded_uncertainty,
        "coverage_factor": budget.coverage_factor,
        "level_of_confidence": worked.level,
        "degrees_of_freedom": _finite(budget.degrees_of_freedom),
        "z_ml_per_g": result.z_ml_per_g,
        "gained_g": result.gained_g,
        "dips_ml": list(worked.dipped.volumes_ml) if worked.dipped else None,
        "dip_standard_uncertainty_ml": worked.dipped.step_uncertainty_ml if worked.dipped else None,
        "correction_g": result.correction_g,
        "readability_g": result.balance.readability_g,
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
        **_diagnosis_data(worked.diagnosis),
        "findings": [f.as_json() for f in findings],
    }


def _diagnosis_data(diagnosis: FillDiagnosis | None) -> dict[str, Any]:
    implied = diagnosis.implied if diagnosis else None
    usual = diagnosis.usual if diagnosis else None
    return {
        "share_filled": diagnosis.share_filled if diagnosis else None,
        "share_standard_uncertainty": diagnosis.share_uncertainty if diagnosis else None,
        "verdict": diagnosis.verdict if diagnosis else None,
        "first_suspect": diagnosis.first_suspect or None if diagnosis else None,
        "usual_share_low": usual.low if usual else None,
        "usual_share_typical": usual.typical if usual else None,
        "usual_share_high": usual.high if usual else None,
        "usual_share_certainty": usual.certainty if usual else None,
        "implied_pressure_kpa": None if implied is None or implied.at_most_kpa is not None else implied.pressure_kpa,
        "implied_pressure_standard_uncertainty_kpa": implied.standard_uncertainty_kpa if implied else None,
        "implied_pressure_at_most_kpa": implied.at_most_kpa if implied else None,
    }


CAPACITY = Sum(
    "capacity",
    "Capacity from weight",
    "How much a pen draws, from its mass before and after filling or from the gain on a tared balance, with its uncertainty; and, if its dimensions are given, how that stands to what a sound one draws, and why it may be less.",
    FIELDS,
    capacity_answer,
    'pentools sums capacity --empty "23.26 g; 23.25 g; 23.26 g" --filled "25.06 g" --temperature "21 °C" --system piston --bore "9.0 mm" --stroke "31 mm"',
    asked_for=AskedFor(
        "system",
        all_dimension_names(),
        lambda system: {field.name for field in dimension_fields(system)} if system else (),
    ),
)
